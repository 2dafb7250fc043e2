/* box.c: the box over several processes, damaged, counted down, taken to the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/box-write.h"
#include "file/box.h"
#include "panel/new-panel.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/wait.h>
#include <fcntl.h>
#include <unistd.h>

#define N_TIMES 40

typedef struct
{
  char *folder;
  char *path;
} Fixture;

static void
set_up (Fixture      *self,
        gconstpointer data)
{
  self->folder = g_dir_make_tmp ("pane-box-XXXXXX", NULL);
  self->path = g_build_filename (self->folder, "own", "box.petalbox", NULL);
}

static void
tear_down (Fixture      *self,
           gconstpointer data)
{
  g_autofree char *lock = g_strconcat (self->path, ".lock", NULL);
  g_autofree char *own = g_path_get_dirname (self->path);

  g_remove (lock);
  g_remove (self->path);
  g_rmdir (own);
  g_assert_cmpint (g_rmdir (self->folder), ==, 0); /* nothing else is left behind */
  g_free (self->path);
  g_free (self->folder);
}

static PpPiece *
make_piece (const char *name,
            guint       count,
            double      side)
{
  const PpPoint corners[] = { { 0, 0 }, { side, 0 }, { side, side }, { 0, side } };
  g_autoptr (PpOutline) outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  g_autoptr (GError) error = NULL;
  PpPiece draft = pp_piece_draft ();
  PpPiece *piece;

  draft.id = "sedge";
  draft.name = name;
  draft.count = count;
  draft.thickness = 4;
  draft.outline = outline;
  piece = pp_piece_new (&draft, &error);
  g_assert_no_error (error);
  return piece;
}

static char *
put (Fixture    *self,
     const char *name,
     guint       count)
{
  g_autoptr (PpPiece) piece = make_piece (name, count, 20);
  g_autoptr (GError) error = NULL;
  char *id = NULL;

  g_assert_true (pp_box_put (self->path, piece, &id, &error));
  g_assert_no_error (error);
  return id;
}

static GPtrArray *
load (Fixture *self)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *pieces = pp_box_load (self->path, &error);

  g_assert_no_error (error);
  return pieces;
}

static const PpPiece *
get (GPtrArray *pieces,
     guint      i)
{
  g_assert_cmpuint (i, <, pieces->len);
  return g_ptr_array_index (pieces, i);
}

static void
test_put (Fixture      *self,
          gconstpointer data)
{
  g_autoptr (GPtrArray) none = load (self);
  g_autofree char *first = put (self, "Sedge", 3);
  g_autofree char *second = put (self, "Sedge", 2);
  g_autofree char *again = NULL;
  g_autoptr (GPtrArray) two = load (self), after = NULL;
  g_autoptr (PpPiece) piece = make_piece ("Tall sedge", 9, 30);
  PpPiece draft = *piece;
  g_autoptr (PpPiece) taken = NULL;

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (two->len, ==, 2);
  g_assert_cmpstr (first, !=, second);
  g_assert_cmpstr (get (two, 0)->id, ==, first);
  draft.box = first;
  taken = pp_piece_new (&draft, NULL);
  g_assert_true (pp_box_put (self->path, taken, &again, NULL));
  after = load (self);
  g_assert_cmpstr (again, ==, first);
  g_assert_cmpuint (after->len, ==, 2);
  g_assert_cmpstr (get (after, 0)->name, ==, "Tall sedge");
  g_assert_cmpuint (get (after, 0)->count, ==, 3);
}

static void
test_count (Fixture      *self,
            gconstpointer data)
{
  static const struct
  {
    int   by;
    guint left;
  } rows[] = { { -1, 2 }, { -1, 1 }, { 1, 2 }, { -5, 0 }, { -1, 0 }, { 4, 4 } };
  g_autofree char *id = put (self, "Sedge", 3);
  g_autofree char *other = put (self, "Reed", 7);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GPtrArray) pieces = NULL;

      g_assert_true (pp_box_count (self->path, id, rows[i].by, NULL));
      pieces = load (self);
      g_assert_cmpuint (get (pieces, 0)->count, ==, rows[i].left);
      g_assert_cmpuint (get (pieces, 1)->count, ==, 7);
    }
  g_assert_true (pp_box_remove (self->path, other, NULL));
  g_assert_true (pp_box_count (self->path, other, 3, NULL)); /* gone: passed over */
}

/* A child that changes the box as often as its father does at the same time. */
static pid_t
count_in_child (Fixture    *self,
                const char *id)
{
  pid_t child = fork ();

  if (child != 0)
    return child;
  for (guint i = 0; i < N_TIMES; i++)
    if (!pp_box_count (self->path, id, -1, NULL))
      _exit (1);
  _exit (0);
}

static void
test_two_at_once (Fixture      *self,
                  gconstpointer data)
{
  g_autofree char *id = put (self, "Sedge", 3 * N_TIMES);
  g_autoptr (GPtrArray) pieces = NULL;
  pid_t child = count_in_child (self, id);
  int status;

  for (guint i = 0; i < N_TIMES; i++)
    {
      g_autofree char *added = put (self, "Reed", 1);

      g_assert_true (pp_box_count (self->path, id, -1, NULL));
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_cmpint (status, ==, 0);
  pieces = load (self);
  g_assert_cmpuint (pieces->len, ==, 1 + N_TIMES);
  g_assert_cmpuint (get (pieces, 0)->count, ==, N_TIMES);
}

static void
test_damaged (Fixture      *self,
              gconstpointer data)
{
  g_autofree char *id = put (self, "Sedge", 3);
  g_autofree char *text = NULL, *kept = NULL;
  g_autoptr (GError) read = NULL, changed = NULL;
  g_autoptr (PpPiece) piece = make_piece ("Reed", 1, 20);

  g_assert_true (g_file_get_contents (self->path, &text, NULL, NULL));
  text[strlen (text) / 2] = '\0';
  g_assert_true (g_file_set_contents (self->path, text, -1, NULL));
  g_assert_null (pp_box_load (self->path, &read));
  g_assert_error (read, PP_FILE_ERROR, PP_FILE_ERROR_SYNTAX);
  g_assert_nonnull (strstr (read->message, self->path));
  g_assert_false (pp_box_put (self->path, piece, NULL, &changed));
  g_assert_nonnull (changed);
  g_assert_true (g_file_get_contents (self->path, &kept, NULL, NULL));
  g_assert_cmpstr (kept, ==, text);
}

/* Where another window holds the box and never lets it go, the maker is told and not made to
 * wait. */
static void
test_held (Fixture      *self,
           gconstpointer data)
{
  g_autofree char *id = put (self, "Sedge", 3);
  g_autofree char *lock = g_strconcat (self->path, ".lock", NULL);
  int fd = g_open (lock, O_RDWR | O_CLOEXEC, 0);
  gint64 before = g_get_monotonic_time ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pieces = NULL;

  g_assert_cmpint (flock (fd, LOCK_EX), ==, 0);
  g_assert_false (pp_box_count (self->path, id, -1, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
  g_assert_cmpint (g_get_monotonic_time () - before, <, 60 * G_USEC_PER_SEC);
  close (fd);
  pieces = load (self);
  g_assert_cmpuint (get (pieces, 0)->count, ==, 3);
}

/* Alike but for its weight. (transfer full) */
static PpPiece *
make_heavier (const PpPiece *piece)
{
  PpPiece draft = *piece;

  draft.id = "heavier";
  draft.mass = 77;
  return pp_piece_new (&draft, NULL);
}

static void
test_import (Fixture      *self,
             gconstpointer data)
{
  g_autofree char *out = g_build_filename (self->folder, "lent.petalbox", NULL);
  g_autofree char *id = put (self, "Sedge", 3);
  g_autoptr (GPtrArray) lent = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autoptr (GPtrArray) back = NULL, pieces = NULL;
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (lent, make_piece ("Sedge", 2, 20));
  g_assert_true (pp_box_save (lent, out, &error));
  back = pp_box_load (out, &error);
  g_assert_no_error (error);
  g_ptr_array_add (back, make_piece ("Sedge", 5, 21));
  g_ptr_array_add (back, make_heavier (g_ptr_array_index (lent, 0)));
  g_assert_true (pp_box_import (self->path, back, &error));
  pieces = load (self);
  g_assert_cmpuint (pieces->len, ==, 3);
  g_assert_cmpuint (get (pieces, 0)->count, ==, 5);
  g_assert_cmpstr (get (pieces, 0)->id, ==, id);
  g_assert_cmpuint (get (pieces, 1)->count, ==, 5);
  g_assert_cmpfloat (get (pieces, 2)->mass, ==, 77);
  g_assert_cmpint (g_remove (out), ==, 0);
}

static void
test_take (Fixture      *self,
           gconstpointer data)
{
  g_autofree char *id = put (self, "Sedge", 3);
  g_autoptr (GPtrArray) pieces = load (self);
  PpNewPanel wish = pp_new_panel_wish (PP_UNITS_MM);
  g_autoptr (PpPanel) bare = pp_new_panel (&wish, NULL, NULL);
  g_autoptr (PpPanel) once = pp_box_take (bare, get (pieces, 0), 2, NULL);
  g_autoptr (PpPanel) twice = pp_box_take (once, get (pieces, 0), 1, NULL);

  g_assert_cmpuint (bare->tray->len, ==, 0);
  g_assert_cmpuint (get (once->tray, 0)->count, ==, 2);
  g_assert_cmpstr (get (once->tray, 0)->box, ==, id);
  g_assert_cmpuint (twice->tray->len, ==, 1);
  g_assert_cmpuint (get (twice->tray, 0)->count, ==, 3);
}

static void
add (const char *name,
     void      (*test) (Fixture *self, gconstpointer data))
{
  g_autofree char *path = g_strconcat ("/box/", name, NULL);

  g_test_add (path, Fixture, NULL, set_up, test, tear_down);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("put", test_put);
  add ("count", test_count);
  add ("two-at-once", test_two_at_once);
  add ("damaged", test_damaged);
  add ("held", test_held);
  add ("import", test_import);
  add ("take", test_take);
  return g_test_run ();
}
