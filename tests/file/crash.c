/* crash.c: what a power cut may leave of a file, told from the calls that were made.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two lists are made of the calls: for each file its changes of content, and the changes of names.
 * A state is a subset of the names' changes that are not synced, and for the file that then has the
 * name one of the ways its unsynced content may have come out.
 */
#include "crash.h"

#include <string.h>

#define MOST_PENDING 10 /* names' changes between two syncs of the folder */

/* A file, under whatever name. */
typedef struct
{
  GPtrArray *contents; /* GBytes: whole, after each change; the first: as it began */
  guint      n_synced; /* of them that are safe: the last of those at least is there */
} File;

/* One change of names: `name` now is `file` (NULL: gone), and `other` (nullable) is gone. */
typedef struct
{
  const char *name;
  File       *file;
  const char *other;
} Naming;

typedef struct
{
  GHashTable *names;    /* as the program sees them: name -> File */
  GHashTable *safe;     /* as they stand after the last sync of the folder */
  GHashTable *openings; /* number of an opening -> File; the folder: NULL */
  GArray     *pending;  /* Naming */
  GPtrArray  *files;    /* owns them */
} Disk;

static void
free_file (gpointer data)
{
  File *file = data;

  g_ptr_array_unref (file->contents);
  g_free (file);
}

static File *
add_file (Disk   *disk,
          GBytes *content)
{
  File *file = g_new0 (File, 1);

  file->contents = g_ptr_array_new_with_free_func ((GDestroyNotify) g_bytes_unref);
  g_ptr_array_add (file->contents, content != NULL ? g_bytes_ref (content) : g_bytes_new (NULL, 0));
  file->n_synced = 1;
  g_ptr_array_add (disk->files, file);
  return file;
}

static Disk *
new_disk (const char *name,
          GBytes     *before)
{
  Disk *disk = g_new0 (Disk, 1);

  disk->names = g_hash_table_new (g_str_hash, g_str_equal);
  disk->safe = g_hash_table_new (g_str_hash, g_str_equal);
  disk->openings = g_hash_table_new (NULL, NULL);
  disk->pending = g_array_new (FALSE, FALSE, sizeof (Naming));
  disk->files = g_ptr_array_new_with_free_func (free_file);
  if (before != NULL)
    {
      File *file = add_file (disk, before);

      g_hash_table_insert (disk->names, (gpointer) name, file);
      g_hash_table_insert (disk->safe, (gpointer) name, file);
    }
  return disk;
}

static void
free_disk (Disk *disk)
{
  g_hash_table_unref (disk->names);
  g_hash_table_unref (disk->safe);
  g_hash_table_unref (disk->openings);
  g_array_unref (disk->pending);
  g_ptr_array_unref (disk->files);
  g_free (disk);
}

static void
apply (GHashTable   *names,
       const Naming *naming)
{
  if (naming->file != NULL)
    g_hash_table_insert (names, (gpointer) naming->name, naming->file);
  else
    g_hash_table_remove (names, naming->name);
  if (naming->other != NULL)
    g_hash_table_remove (names, naming->other);
}

static void
rename_to (Disk       *disk,
           const char *name,
           File       *file,
           const char *other)
{
  Naming naming = { name, file, other };

  apply (disk->names, &naming);
  g_array_append_val (disk->pending, naming);
}

static GBytes *
last_of (const File *file)
{
  return g_ptr_array_index (file->contents, file->contents->len - 1);
}

static void
open_file (Disk       *disk,
           const Call *call)
{
  File *file = call->name != NULL ? g_hash_table_lookup (disk->names, call->name) : NULL;

  if (call->creates)
    {
      file = add_file (disk, NULL);
      rename_to (disk, call->name, file, NULL);
    }
  if (call->truncates)
    g_ptr_array_add (file->contents, g_bytes_new (NULL, 0));
  g_hash_table_insert (disk->openings, GUINT_TO_POINTER (call->file), file);
}

/* All writes go on where the last ended: so do those of what is tested. */
static void
write_to (File   *file,
          GBytes *more)
{
  gsize length, added;
  const void *text = g_bytes_get_data (last_of (file), &length);
  const void *tail = g_bytes_get_data (more, &added);
  GByteArray *whole = g_byte_array_new ();

  if (length > 0)
    g_byte_array_append (whole, text, (guint) length);
  if (added > 0)
    g_byte_array_append (whole, tail, (guint) added);
  g_ptr_array_add (file->contents, g_byte_array_free_to_bytes (whole));
}

static void
sync_names (Disk *disk)
{
  for (guint i = 0; i < disk->pending->len; i++)
    apply (disk->safe, &g_array_index (disk->pending, Naming, i));
  g_array_set_size (disk->pending, 0);
}

static void
step (Disk       *disk,
      const Call *call)
{
  File *file = g_hash_table_lookup (disk->openings, GUINT_TO_POINTER (call->file));

  if (call->kind == CALL_OPEN && call->file != 0)
    open_file (disk, call);
  else if (call->kind == CALL_WRITE && call->bytes != NULL)
    write_to (file, call->bytes);
  else if (call->kind == CALL_SYNC && file != NULL)
    file->n_synced = file->contents->len;
  else if (call->kind == CALL_SYNC && call->file != 0)
    sync_names (disk);
  else if (call->kind == CALL_RENAME && call->to != NULL)
    rename_to (disk, call->to, g_hash_table_lookup (disk->names, call->name), call->name);
  else if (call->kind == CALL_LINK && call->to != NULL)
    rename_to (disk, call->to, g_hash_table_lookup (disk->names, call->name), NULL);
  else if (call->kind == CALL_UNLINK)
    rename_to (disk, call->name, NULL, NULL);
}

/* What is counted. */
typedef struct
{
  CrashCheck check;
  gpointer   data;
  guint      n_calls;
  guint      n_states;
  guint      n_faults;
} Count;

static void
ask (Count  *count,
     GBytes *content)
{
  count->n_states++;
  count->n_faults += !count->check (content, count->n_calls, count->data);
}

/* The last change cut in the middle, or as long as it should be and empty. */
static void
ask_torn (Count        *count,
          GBytes       *before,
          GBytes       *after)
{
  gsize old = g_bytes_get_size (before), length = g_bytes_get_size (after);
  g_autofree char *zeros = NULL;
  g_autoptr (GBytes) cut = NULL, empty = NULL;

  if (length <= old)
    return;
  cut = g_bytes_new_from_bytes (after, 0, (old + length) / 2);
  zeros = g_malloc0 (length);
  if (old > 0)
    memcpy (zeros, g_bytes_get_data (before, NULL), old);
  empty = g_bytes_new (zeros, length);
  ask (count, cut);
  ask (count, empty);
}

static void
ask_file (Count      *count,
          const File *file)
{
  if (file == NULL)
    {
      ask (count, NULL);
      return;
    }
  for (guint i = file->n_synced - 1; i < file->contents->len; i++)
    {
      ask (count, g_ptr_array_index (file->contents, i));
      if (i >= file->n_synced)
        ask_torn (count, g_ptr_array_index (file->contents, i - 1),
                  g_ptr_array_index (file->contents, i));
    }
}

static void
ask_states (Count      *count,
            const Disk *disk,
            const char *name)
{
  g_assert_cmpuint (disk->pending->len, <=, MOST_PENDING);
  for (guint subset = 0; subset < 1U << disk->pending->len; subset++)
    {
      GHashTable *names = g_hash_table_new (g_str_hash, g_str_equal);
      GHashTableIter iter;
      gpointer key, file;

      g_hash_table_iter_init (&iter, disk->safe);
      while (g_hash_table_iter_next (&iter, &key, &file))
        g_hash_table_insert (names, key, file);
      for (guint i = 0; i < disk->pending->len; i++)
        if ((subset >> i & 1) != 0)
          apply (names, &g_array_index (disk->pending, Naming, i));
      ask_file (count, g_hash_table_lookup (names, name));
      g_hash_table_unref (names);
    }
}

guint
crash_count_faults (GPtrArray  *calls,
                    const char *name,
                    GBytes     *before,
                    CrashCheck  check,
                    gpointer    data,
                    guint      *n_states)
{
  Disk *disk = new_disk (name, before);
  Count count = { .check = check, .data = data };

  for (guint i = 0; i <= calls->len; i++)
    {
      count.n_calls = i;
      ask_states (&count, disk, name);
      if (i < calls->len)
        step (disk, g_ptr_array_index (calls, i));
    }
  free_disk (disk);
  if (n_states != NULL)
    *n_states = count.n_states;
  return count.n_faults;
}

GBytes *
crash_last (GPtrArray  *calls,
            const char *name,
            GBytes     *before)
{
  Disk *disk = new_disk (name, before);
  const File *file;
  GBytes *last;

  for (guint i = 0; i < calls->len; i++)
    step (disk, g_ptr_array_index (calls, i));
  file = g_hash_table_lookup (disk->names, name);
  last = file != NULL ? g_bytes_ref (last_of (file)) : NULL;
  free_disk (disk);
  return last;
}
