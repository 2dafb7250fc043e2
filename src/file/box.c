/* box.c: the maker's box.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lock is on a file beside the box, because the box itself is another file after each change.
 * It ends with the process that holds it, however that ends.
 */
#include "config.h"

#include "file/box.h"

#include "file/box-write.h"
#include "file/json-scan.h"
#include "file/load.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/same-make.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/file.h>
#include <unistd.h>

#define PATIENCE_MSEC 5000 /* a change takes a few; who holds the lock longer hangs */
#define LOOK_MSEC 20

/* Changes `pieces`; FALSE leaves the box as it is. */
typedef gboolean (*Edit) (GPtrArray *pieces, gpointer data, GError **error);

static void
set_unusable (GError    **error,
              const char *path,
              const char *why)
{
  g_set_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO,
               _("The box could not be changed (%s): see to the folder of “%s” first."), why, path);
}

static int
open_lock (const char  *path,
           GError     **error)
{
  g_autofree char *lock = g_strconcat (path, ".lock", NULL);
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = -1;

  if (g_mkdir_with_parents (folder, 0700) == 0)
    fd = g_open (lock, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (fd < 0)
    set_unusable (error, path, g_strerror (errno));
  return fd;
}

/* The lock, to be let go with close(); -1 if another holds it and does not let it go. */
static int
take_lock (const char  *path,
           GError     **error)
{
  int fd = open_lock (path, error);

  if (fd < 0)
    return -1;
  for (int waited = 0; flock (fd, LOCK_EX | LOCK_NB) != 0; waited += LOOK_MSEC)
    {
      if ((errno != EWOULDBLOCK && errno != EINTR) || waited >= PATIENCE_MSEC)
        {
          set_unusable (error, path, waited >= PATIENCE_MSEC ? _("another window is at it")
                                                             : g_strerror (errno));
          close (fd);
          return -1;
        }
      g_usleep (LOOK_MSEC * 1000);
    }
  return fd;
}

static gboolean
change (const char  *path,
        Edit         edit,
        gpointer     data,
        GError     **error)
{
  int lock = take_lock (path, error);
  g_autoptr (GPtrArray) pieces = NULL;
  gboolean good;

  if (lock < 0)
    return FALSE;
  pieces = pp_box_load (path, error);
  good = pieces != NULL && edit (pieces, data, error) && pp_box_save (pieces, path, error);
  close (lock);
  return good;
}

static PpPiece *
find (GPtrArray  *pieces,
      const char *id,
      guint      *index)
{
  for (guint i = 0; id != NULL && i < pieces->len; i++)
    {
      PpPiece *piece = g_ptr_array_index (pieces, i);

      if (g_str_equal (piece->id, id))
        {
          *index = i;
          return piece;
        }
    }
  return NULL;
}

static gboolean
replace (GPtrArray     *pieces,
         guint          index,
         const PpPiece *draft,
         GError       **error)
{
  PpPiece *piece = pp_piece_new (draft, error);

  if (piece == NULL)
    return FALSE;
  pp_piece_unref (g_ptr_array_index (pieces, index));
  pieces->pdata[index] = piece;
  return TRUE;
}

/* Panels name pieces of the box for years, so an id is never given twice. */
static gboolean
add (GPtrArray     *pieces,
     const PpPiece *piece,
     char         **id,
     GError       **error)
{
  g_autofree char *number = g_uuid_string_random ();
  g_autofree char *own = g_strconcat ("box-", number, NULL);
  PpPiece draft = *piece;
  PpPiece *added;

  draft.id = own;
  draft.box = NULL;
  added = pp_piece_new (&draft, error);
  if (added == NULL)
    return FALSE;
  g_ptr_array_add (pieces, added);
  if (id != NULL)
    *id = g_steal_pointer (&own);
  return TRUE;
}

char *
pp_box_get_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "petalpane", "box.petalbox", NULL);
}

GPtrArray *
pp_box_load (const char  *path,
             GError     **error)
{
  g_autoptr (GBytes) bytes = NULL;
  GPtrArray *pieces;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  if (!pp_file_load (path, PP_JSON_MAX_BYTES, &bytes, error))
    return NULL;
  pieces = pp_box_read (bytes, error);
  if (pieces == NULL)
    /* Translators: the name of a file; the reason follows. */
    g_prefix_error (error, _("The box is damaged and is left as it is (“%s”): "), path);
  return pieces;
}

typedef struct
{
  const PpPiece *piece;
  char         **id;
} Put;

static gboolean
put (GPtrArray *pieces,
     gpointer   data,
     GError   **error)
{
  Put *self = data;
  PpPiece draft = *self->piece;
  guint index;
  const PpPiece *old = find (pieces, self->piece->box, &index);

  if (old == NULL)
    return add (pieces, self->piece, self->id, error);
  draft.id = old->id;
  draft.count = old->count;
  draft.box = NULL;
  if (self->id != NULL)
    *self->id = g_strdup (old->id);
  return replace (pieces, index, &draft, error);
}

gboolean
pp_box_put (const char     *path,
            const PpPiece  *piece,
            char          **id,
            GError        **error)
{
  g_autofree char *given = NULL;
  Put data = { piece, &given };

  g_return_val_if_fail (path != NULL && piece != NULL, FALSE);
  if (!change (path, put, &data, error))
    return FALSE;
  if (id != NULL)
    *id = g_steal_pointer (&given);
  return TRUE;
}

typedef struct
{
  const char *id;
  int         by;
} Count;

static gboolean
count (GPtrArray *pieces,
       gpointer   data,
       GError   **error)
{
  const Count *self = data;
  guint index;
  const PpPiece *piece = find (pieces, self->id, &index);
  PpPiece draft;

  if (piece == NULL)
    return TRUE;
  draft = *piece;
  draft.count = (guint) MAX ((gint64) piece->count + self->by, 0);
  return replace (pieces, index, &draft, error);
}

gboolean
pp_box_count (const char  *path,
              const char  *id,
              int          by,
              GError     **error)
{
  Count data = { id, by };

  g_return_val_if_fail (path != NULL && id != NULL, FALSE);
  return change (path, count, &data, error);
}

static gboolean
take_out (GPtrArray *pieces,
          gpointer   id,
          GError   **error)
{
  guint index;

  if (find (pieces, id, &index) != NULL)
    g_ptr_array_remove_index (pieces, index);
  return TRUE;
}

gboolean
pp_box_remove (const char  *path,
               const char  *id,
               GError     **error)
{
  g_return_val_if_fail (path != NULL && id != NULL, FALSE);
  return change (path, take_out, (gpointer) id, error);
}

static gboolean
import_one (GPtrArray     *pieces,
            const PpPiece *piece,
            GError       **error)
{
  for (guint i = 0; i < pieces->len; i++)
    if (pp_piece_is_same_make (g_ptr_array_index (pieces, i), piece))
      {
        PpPiece draft = *(const PpPiece *) g_ptr_array_index (pieces, i);

        draft.count += piece->count;
        return replace (pieces, i, &draft, error);
      }
  return add (pieces, piece, NULL, error);
}

static gboolean
import (GPtrArray *pieces,
        gpointer   data,
        GError   **error)
{
  GPtrArray *others = data;

  for (guint i = 0; i < others->len; i++)
    if (!import_one (pieces, g_ptr_array_index (others, i), error))
      return FALSE;
  return TRUE;
}

gboolean
pp_box_import (const char  *path,
               GPtrArray   *pieces,
               GError     **error)
{
  g_return_val_if_fail (path != NULL && pieces != NULL, FALSE);
  return change (path, import, pieces, error);
}

PpPanel *
pp_box_take (const PpPanel  *panel,
             const PpPiece  *piece,
             guint           count_taken,
             GError        **error)
{
  g_autoptr (PpPiece) more = NULL;
  PpPiece draft;

  g_return_val_if_fail (panel != NULL && piece != NULL, NULL);

  draft = *piece;
  for (guint i = 0; i < panel->tray->len; i++)
    {
      const PpPiece *there = g_ptr_array_index (panel->tray, i);

      if (g_strcmp0 (there->box, piece->id) != 0)
        continue;
      draft = *there;
      draft.count += count_taken;
      more = pp_piece_new (&draft, error);
      return more != NULL ? pp_edit_set_piece (panel, more, error) : NULL;
    }
  draft.box = piece->id;
  draft.count = count_taken;
  more = pp_piece_new (&draft, error);
  return more != NULL ? pp_edit_add_piece (panel, more, NULL, error) : NULL;
}
