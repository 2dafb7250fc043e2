/* earlier.c: what stood in a panel's file before it was saved over.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A folder for each panel, named by a checksum of its file's path, as a path is longer than a name
 * may be. What has been dropped by another process meanwhile is passed over.
 */
#include "config.h"

#include "file/earlier.h"

#include "file/file-error.h"
#include "file/json-scan.h"
#include "file/load.h"
#include "file/save.h"
#include "panel/i18n.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define ENDING ".petalpane"
#define NAME_FORMAT "%04d-%02d-%02dT%02d-%02d-%02d.%06d" ENDING

void
pp_earlier_free (PpEarlier *self)
{
  if (self == NULL)
    return;
  g_free (self->path);
  g_clear_pointer (&self->saved, g_date_time_unref);
  g_free (self);
}

char *
pp_earlier_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "petalpane", "earlier", NULL);
}

/* (transfer full) */
static char *
get_own_folder (const char *folder,
                const char *path)
{
  g_autofree char *whole = g_canonicalize_filename (path, NULL);
  g_autofree char *name = g_compute_checksum_for_string (G_CHECKSUM_SHA256, whole, -1);

  return g_build_filename (folder, name, NULL);
}

/* (transfer full) */
static char *
make_path (const char *folder,
           GDateTime  *saved)
{
  g_autoptr (GDateTime) utc = g_date_time_to_utc (saved);
  g_autofree char *name = g_strdup_printf (
      NAME_FORMAT, g_date_time_get_year (utc), g_date_time_get_month (utc),
      g_date_time_get_day_of_month (utc), g_date_time_get_hour (utc), g_date_time_get_minute (utc),
      g_date_time_get_second (utc), g_date_time_get_microsecond (utc));

  return g_build_filename (folder, name, NULL);
}

/* NULL for a file of another name. (transfer full) */
static PpEarlier *
read_name (const char *folder,
           const char *name)
{
  int year, month, day, hour, minute, second, micro, end = 0;
  g_autoptr (GDateTime) utc = NULL;
  PpEarlier *self;

  if (sscanf (name, NAME_FORMAT "%n", &year, &month, &day, &hour, &minute, &second, &micro,
              &end) != 7
      || end == 0 || name[end] != '\0')
    return NULL;
  utc = g_date_time_new_utc (year, month, day, hour, minute, second + micro / 1e6);
  if (utc == NULL)
    return NULL;
  self = g_new0 (PpEarlier, 1);
  self->path = g_build_filename (folder, name, NULL);
  self->saved = g_date_time_to_local (utc);
  return self;
}

/* By the names, which are exact. */
static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  const PpEarlier *one = *(PpEarlier * const *) a, *other = *(PpEarlier * const *) b;
  const char *first = strrchr (one->path, G_DIR_SEPARATOR);
  const char *second = strrchr (other->path, G_DIR_SEPARATOR);

  return strcmp (second, first);
}

static void
add_all (GPtrArray  *found,
         const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      PpEarlier *one = read_name (folder, name);

      if (one != NULL)
        g_ptr_array_add (found, one);
    }
}

static GPtrArray *
list_own (const char *own)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_earlier_free);

  add_all (found, own);
  g_ptr_array_sort (found, compare_names);
  return found;
}

GPtrArray *
pp_earlier_list (const char *folder,
                 const char *path)
{
  g_autofree char *own = NULL;

  g_return_val_if_fail (folder != NULL && path != NULL,
                        g_ptr_array_new_with_free_func ((GDestroyNotify) pp_earlier_free));
  own = get_own_folder (folder, path);
  return list_own (own);
}

static gboolean
is_content (const char *path,
            GBytes     *bytes)
{
  g_autoptr (GBytes) there = NULL;

  return pp_file_load (path, PP_JSON_MAX_BYTES, &there, NULL) && g_bytes_equal (there, bytes);
}

/* When the file was written; of two in one microsecond the second counts as a little later.
 * (transfer full) */
static char *
find_free_path (const char *own,
                const char *path)
{
  GStatBuf status;
  g_autoptr (GDateTime) saved = NULL;
  char *free_path;

  if (g_stat (path, &status) == 0)
    {
      g_autoptr (GDateTime) whole = g_date_time_new_from_unix_utc (status.st_mtim.tv_sec);

      saved = g_date_time_add (whole, status.st_mtim.tv_nsec / 1000);
    }
  if (saved == NULL)
    saved = g_date_time_new_now_utc ();
  free_path = make_path (own, saved);
  while (g_file_test (free_path, G_FILE_TEST_EXISTS))
    {
      GDateTime *later = g_date_time_add (saved, 1);

      g_date_time_unref (saved);
      saved = later;
      g_free (free_path);
      free_path = make_path (own, saved);
    }
  return free_path;
}

static void
drop (GPtrArray *kept,
      guint      index)
{
  const PpEarlier *one = g_ptr_array_index (kept, index);

  g_unlink (one->path);
  g_ptr_array_remove_index (kept, index);
}

/* How far its neighbours are from each other, as a share of how long ago the older one was. */
static double
get_spread (GPtrArray *kept,
            guint      index)
{
  const PpEarlier *latest = g_ptr_array_index (kept, 0);
  const PpEarlier *newer = g_ptr_array_index (kept, index - 1);
  const PpEarlier *older = g_ptr_array_index (kept, index + 1);
  double ago = (double) g_date_time_difference (latest->saved, older->saved);

  return ago > 0 ? (double) g_date_time_difference (newer->saved, older->saved) / ago : 0;
}

/* The latest and the first always stay. */
static void
thin_out (const char *own)
{
  g_autoptr (GPtrArray) kept = list_own (own);

  while (kept->len > PP_EARLIER_MOST)
    {
      guint closest = 1;

      for (guint i = 2; i + 1 < kept->len; i++)
        if (get_spread (kept, i) < get_spread (kept, closest))
          closest = i;
      drop (kept, closest);
    }
}

static guint64
get_size (const PpEarlier *one)
{
  GStatBuf status;

  return g_lstat (one->path, &status) == 0 ? (guint64) status.st_size : 0;
}

static void
bound (const char *folder,
       guint64     most)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_earlier_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint64 sum = 0;
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *own = g_build_filename (folder, name, NULL);

      add_all (all, own);
    }
  g_ptr_array_sort (all, compare_names);
  for (guint i = 0; i < all->len; i++)
    sum += get_size (g_ptr_array_index (all, i));
  while (sum > most && all->len > 0)
    {
      PpEarlier *oldest = g_ptr_array_index (all, all->len - 1);
      g_autofree char *own = g_path_get_dirname (oldest->path);

      sum -= get_size (oldest);
      drop (all, all->len - 1);
      g_rmdir (own); /* which it is only when it is empty */
    }
}

static gboolean
keep (const char  *own,
      const char  *path,
      GBytes      *bytes,
      GError     **error)
{
  g_autofree char *kept = NULL;
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);

  if (g_mkdir_with_parents (own, 0700) != 0)
    {
      g_set_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO,
                   _("What is saved over cannot be kept (%s)."), g_strerror (errno));
      return FALSE;
    }
  kept = find_free_path (own, path);
  return pp_file_save (kept, text, length, error);
}

gboolean
pp_earlier_keep (const char  *folder,
                 const char  *path,
                 guint64      most,
                 GError     **error)
{
  g_autofree char *own = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GPtrArray) kept = NULL;

  g_return_val_if_fail (folder != NULL && path != NULL, FALSE);

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return TRUE;
  if (!pp_file_load (path, PP_JSON_MAX_BYTES, &bytes, error))
    return FALSE;
  own = get_own_folder (folder, path);
  kept = list_own (own);
  if (kept->len > 0 && is_content (((PpEarlier *) g_ptr_array_index (kept, 0))->path, bytes))
    return TRUE;
  if (!keep (own, path, bytes, error))
    return FALSE;
  thin_out (own);
  bound (folder, most);
  return TRUE;
}
