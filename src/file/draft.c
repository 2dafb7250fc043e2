/* draft.c: what is not saved yet, kept aside: one draft a panel in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A draft is three lines (a mark, the path as a URI, what told its content apart; "-" where there
 * is none) and then a panel file. Replaced whole by pp_file_save(), so that it is never torn. The
 * lock is a file of its own, because the draft is another file after each writing.
 */
#include "config.h"

#include "file/draft.h"

#include "file/json-scan.h"
#include "file/load.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "file/save.h"
#include "panel/i18n.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define MARK "petalpane-draft 1"
#define ENDING ".draft"
#define LOCK_ENDING ".lock"
#define TEMPORARY ".petalpane-"
#define NONE "-"
#define HEAD_LINES 3
#define HEAD_MAX_BYTES 65536
#define TRIES 20

struct _PpDraft
{
  gatomicrefcount count;
  GMutex          mutex;
  char           *path;
  int             lock;         /* file descriptor */
  gboolean        is_discarded;
};

char *
pp_draft_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "petalpane", "drafts", NULL);
}

void
pp_draft_origin_clear (PpDraftOrigin *self)
{
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->content, g_free);
}

static char *
get_lock_path (const char *draft)
{
  return g_strconcat (draft, LOCK_ENDING, NULL);
}

/* Whether the open file is still the one of that name: its last owner may have taken it away
 * between our opening and our locking it. */
static gboolean
is_named (int         fd,
          const char *path)
{
  struct stat mine, named;

  return fstat (fd, &mine) == 0 && lstat (path, &named) == 0 && mine.st_dev == named.st_dev
         && mine.st_ino == named.st_ino;
}

/* The lock of a draft, or -1 and errno: EWOULDBLOCK if somebody holds it. The file stays. */
static int
take_lock (const char *draft)
{
  g_autofree char *path = get_lock_path (draft);

  for (guint i = 0; i < TRIES; i++)
    {
      int fd = g_open (path, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
      int failure;

      if (fd < 0)
        return -1;
      failure = flock (fd, LOCK_EX | LOCK_NB) == 0 ? 0 : errno;
      if (failure == 0 && is_named (fd, path))
        return fd;
      close (fd);
      errno = failure;
      if (failure != 0 && failure != EINTR)
        return -1;
    }
  errno = EWOULDBLOCK;
  return -1;
}

/* Takes over path and lock. */
static PpDraft *
make (char *path,
      int   lock)
{
  PpDraft *self = g_new0 (PpDraft, 1);

  g_atomic_ref_count_init (&self->count);
  g_mutex_init (&self->mutex);
  self->path = path;
  self->lock = lock;
  return self;
}

/* Under a name of its own. NULL and errno: EWOULDBLOCK if one who clears locks away was quicker,
 * which then goes with the lock. */
static PpDraft *
make_new (const char *folder)
{
  g_autofree char *name = g_uuid_string_random ();
  g_autofree char *file = g_strconcat (name, ENDING, NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autofree char *lock_path = get_lock_path (path);
  int lock = take_lock (path);
  int failure = errno;

  if (lock >= 0)
    return make (g_steal_pointer (&path), lock);
  if (failure != EWOULDBLOCK)
    g_unlink (lock_path);
  errno = failure;
  return NULL;
}

PpDraft *
pp_draft_new (const char  *folder,
              GError     **error)
{
  PpDraft *self = NULL;
  int failure;

  g_return_val_if_fail (folder != NULL, NULL);

  if (g_mkdir_with_parents (folder, 0700) == 0)
    for (guint i = 0; i < TRIES && self == NULL; i++)
      {
        self = make_new (folder);
        if (self == NULL && errno != EWOULDBLOCK)
          break;
      }
  if (self != NULL)
    return self;
  failure = errno;
  g_set_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO,
               _("What you do cannot be kept aside until you save it (%s): save often."),
               g_strerror (failure));
  return NULL;
}

PpDraft *
pp_draft_ref (PpDraft *self)
{
  g_return_val_if_fail (self != NULL, NULL);
  g_atomic_ref_count_inc (&self->count);
  return self;
}

/* Taken away while it is held, so that nobody takes over one that is not there. */
static void
let_go_of_lock (PpDraft *self)
{
  g_autofree char *path = get_lock_path (self->path);

  if (self->lock < 0)
    return;
  g_unlink (path);
  close (self->lock);
  self->lock = -1;
}

void
pp_draft_unref (PpDraft *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->count))
    return;
  let_go_of_lock (self);
  g_mutex_clear (&self->mutex);
  g_free (self->path);
  g_free (self);
}

static GString *
compose (const PpPanel       *panel,
         const PpDraftOrigin *origin,
         GError             **error)
{
  g_autofree char *uri = origin->path != NULL ? g_filename_to_uri (origin->path, NULL, NULL) : NULL;
  g_autoptr (GString) body = pp_panel_write_readable (panel, error);
  GString *text;

  if (body == NULL)
    return NULL;
  text = g_string_new (NULL);
  g_string_append_printf (text, "%s\n%s\n%s\n", MARK, uri != NULL ? uri : NONE,
                          origin->content != NULL ? origin->content : NONE);
  g_string_append_len (text, body->str, (gssize) body->len);
  return text;
}

gboolean
pp_draft_write (PpDraft              *self,
                const PpPanel        *panel,
                const PpDraftOrigin  *origin,
                GError              **error)
{
  g_autoptr (GString) text = NULL;
  gboolean good = TRUE;

  g_return_val_if_fail (self != NULL && panel != NULL && origin != NULL, FALSE);

  text = compose (panel, origin, error);
  if (text == NULL)
    return FALSE;
  g_mutex_lock (&self->mutex);
  if (!self->is_discarded)
    good = pp_file_save (self->path, text->str, text->len, error);
  g_mutex_unlock (&self->mutex);
  return good;
}

/* The lines of the head, and in `rest` where the panel begins; FALSE for what is no draft. */
static gboolean
read_head (const char  *text,
           gsize        length,
           char        *lines[HEAD_LINES],
           const char **rest)
{
  for (guint i = 0; i < HEAD_LINES; i++)
    {
      const char *end = memchr (text, '\n', MIN (length, HEAD_MAX_BYTES));

      if (end == NULL)
        return FALSE;
      lines[i] = g_strndup (text, (gsize) (end - text));
      length -= (gsize) (end + 1 - text);
      text = end + 1;
    }
  *rest = text;
  return g_str_equal (lines[0], MARK);
}

static PpPanel *
read_parts (GBytes         *bytes,
            PpDraftOrigin  *origin,
            GError        **error)
{
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  char *lines[HEAD_LINES + 1] = { NULL };
  const char *rest = NULL;
  gboolean good = text != NULL && read_head (text, length, lines, &rest);
  g_autoptr (GBytes) body = NULL;
  PpPanel *panel = NULL;

  if (good)
    {
      body = g_bytes_new_from_bytes (bytes, (gsize) (rest - text), length - (gsize) (rest - text));
      panel = pp_panel_read (body, error);
    }
  else
    g_set_error_literal (error, PP_FILE_ERROR, PP_FILE_ERROR_FORMAT, _("This is no draft."));
  if (panel != NULL && !g_str_equal (lines[1], NONE))
    origin->path = g_filename_from_uri (lines[1], NULL, NULL);
  if (panel != NULL && !g_str_equal (lines[2], NONE))
    origin->content = g_strdup (lines[2]);
  for (guint i = 0; i < HEAD_LINES; i++)
    g_free (lines[i]);
  return panel;
}

PpPanel *
pp_draft_read (PpDraft        *self,
               PpDraftOrigin  *origin,
               GError        **error)
{
  g_autoptr (GBytes) bytes = NULL;

  g_return_val_if_fail (self != NULL && origin != NULL, NULL);

  *origin = (PpDraftOrigin) { NULL, NULL };
  if (!pp_file_load (self->path, PP_JSON_MAX_BYTES + HEAD_LINES * HEAD_MAX_BYTES, &bytes, error))
    return NULL;
  return read_parts (bytes, origin, error);
}

void
pp_draft_clear (PpDraft *self)
{
  g_return_if_fail (self != NULL);

  g_mutex_lock (&self->mutex);
  g_unlink (self->path);
  g_mutex_unlock (&self->mutex);
}

void
pp_draft_discard (PpDraft *self)
{
  g_return_if_fail (self != NULL);

  g_mutex_lock (&self->mutex);
  self->is_discarded = TRUE;
  g_unlink (self->path);
  let_go_of_lock (self);
  g_mutex_unlock (&self->mutex);
}

/* A draft left behind, with its lock; NULL if it belongs to somebody, or was taken meanwhile. */
static PpDraft *
take_over (const char *path)
{
  int lock = take_lock (path);
  PpDraft *self;

  if (lock < 0)
    return NULL;
  self = make (g_strdup (path), lock);
  if (g_file_test (path, G_FILE_TEST_IS_REGULAR))
    return self;
  pp_draft_unref (self); /* which takes the lock away */
  return NULL;
}

/* A writer that was stopped leaves its temporary file; one that still writes is done in a day. */
static void
clear_temporary (const char *path)
{
  GStatBuf status;

  if (g_lstat (path, &status) == 0 && status.st_mtime < time (NULL) - 24 * 60 * 60)
    g_unlink (path);
}

static gint64
get_age (const PpDraft *draft)
{
  GStatBuf status;

  return g_stat (draft->path, &status) == 0 ? (gint64) status.st_mtime : 0;
}

static int
compare_age (gconstpointer a,
             gconstpointer b)
{
  const PpDraft *one = *(PpDraft * const *) a, *other = *(PpDraft * const *) b;
  gint64 first = get_age (one), second = get_age (other);

  if (first != second)
    return first < second ? -1 : 1;
  return strcmp (one->path, other->path);
}

/* What a name in the folder stands for. */
static void
look_at (GPtrArray  *found,
         const char *folder,
         const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  PpDraft *draft = NULL;

  if (g_str_has_prefix (name, TEMPORARY))
    clear_temporary (path);
  else if (g_str_has_suffix (name, ENDING))
    draft = take_over (path);
  else if (g_str_has_suffix (name, ENDING LOCK_ENDING))
    {
      path[strlen (path) - strlen (LOCK_ENDING)] = '\0';
      if (!g_file_test (path, G_FILE_TEST_EXISTS))
        draft = take_over (path);
    }
  if (draft != NULL)
    g_ptr_array_add (found, draft);
}

GPtrArray *
pp_draft_find (const char *folder)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_draft_unref);
  g_autoptr (GDir) dir = NULL;
  const char *name;

  g_return_val_if_fail (folder != NULL, found);

  dir = g_dir_open (folder, 0, NULL);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    look_at (found, folder, name);
  g_ptr_array_sort (found, compare_age);
  return found;
}
