/* draft.c: what is not saved yet, kept aside: read as written, left behind, taken over.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Another process that holds a lock is a child of this one, so that its end is the system's doing
 * and not ours.
 */
#include "file/draft.h"

#include "file/file-error.h"
#include "file/json-scan.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/edit.h"

#include "sample.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct
{
  char    *folder;
  PpPanel *panel;
} Fixture;

static int flock_failure; /* errno; 0: as the system does it */

/* Stands before that of the C library. */
int
flock (int fd,
       int operation)
{
  if (flock_failure == 0)
    return (int) syscall (SYS_flock, fd, operation);
  errno = flock_failure;
  return -1;
}

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  g_autofree char *text = sample_new ();
  g_autoptr (GBytes) bytes = sample_to_bytes (text);

  self->folder = g_dir_make_tmp ("petalpane-draft-XXXXXX", NULL);
  self->panel = pp_panel_read (bytes, NULL);
  g_assert_nonnull (self->panel);
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  g_autoptr (GDir) dir = g_dir_open (self->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (self->folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (self->folder);
  g_free (self->folder);
  pp_panel_unref (self->panel);
}

static void
assert_same (const PpPanel *a,
             const PpPanel *b)
{
  g_autoptr (GString) one = pp_panel_write (a), other = pp_panel_write (b);

  g_assert_cmpstr (one->str, ==, other->str);
}

static void
test_round (Fixture       *self,
            gconstpointer  data)
{
  static const PpDraftOrigin origins[] = {
    { NULL, NULL },
    { (char *) "/shelf/Towpath in June.petalpane", (char *) "abc123" },
    { (char *) "/shelf/no\nsuch \xff name", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (origins); i++)
    {
      g_autoptr (PpDraft) draft = pp_draft_new (self->folder, NULL);
      g_auto (PpDraftOrigin) origin = { NULL, NULL };
      g_autoptr (PpPanel) panel = NULL;

      g_assert_true (pp_draft_write (draft, self->panel, &origins[i], NULL));
      panel = pp_draft_read (draft, &origin, NULL);
      assert_same (panel, self->panel);
      g_assert_cmpstr (origin.path, ==, origins[i].path);
      g_assert_cmpstr (origin.content, ==, origins[i].content);
    }
}

static void
write_draft (const Fixture *self,
             PpDraft       *draft)
{
  const PpDraftOrigin origin = { NULL, NULL };

  g_assert_true (pp_draft_write (draft, self->panel, &origin, NULL));
}

/* Ours while we hold it, and afterwards whoever's asks first. */
static void
test_left_behind (Fixture       *self,
                  gconstpointer  data)
{
  PpDraft *draft = pp_draft_new (self->folder, NULL);
  g_autoptr (GPtrArray) none = NULL, found = NULL, again = NULL;
  g_auto (PpDraftOrigin) origin = { NULL, NULL };
  g_autoptr (PpPanel) panel = NULL;

  write_draft (self, draft);
  none = pp_draft_find (self->folder);
  g_assert_cmpuint (none->len, ==, 0);
  pp_draft_unref (draft);
  found = pp_draft_find (self->folder);
  g_assert_cmpuint (found->len, ==, 1);
  again = pp_draft_find (self->folder);
  g_assert_cmpuint (again->len, ==, 0);
  panel = pp_draft_read (g_ptr_array_index (found, 0), &origin, NULL);
  assert_same (panel, self->panel);
}

/* A child that holds a draft with something in it, and waits to be ended. */
static GPid
start_holder (const Fixture *self)
{
  int ready[2];
  GPid child;
  char byte;

  g_assert_cmpint (pipe (ready), ==, 0);
  child = fork ();
  if (child == 0)
    {
      PpDraft *draft = pp_draft_new (self->folder, NULL);

      write_draft (self, draft);
      g_assert_cmpint (write (ready[1], "x", 1), ==, 1);
      for (;;)
        pause ();
    }
  g_assert_cmpint (read (ready[0], &byte, 1), ==, 1);
  close (ready[0]);
  close (ready[1]);
  return child;
}

static void
test_killed (Fixture       *self,
             gconstpointer  data)
{
  GPid child = start_holder (self);
  g_autoptr (GPtrArray) before = pp_draft_find (self->folder);
  g_autoptr (GPtrArray) after = NULL;

  g_assert_cmpuint (before->len, ==, 0);
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  after = pp_draft_find (self->folder);
  g_assert_cmpuint (after->len, ==, 1);
}

static void
test_saved (Fixture       *self,
            gconstpointer  data)
{
  PpDraft *draft = pp_draft_new (self->folder, NULL);
  g_autoptr (GPtrArray) found = NULL;

  write_draft (self, draft);
  pp_draft_clear (draft);
  write_draft (self, draft); /* it goes on */
  pp_draft_clear (draft);
  pp_draft_unref (draft);
  g_assert_cmpuint (sample_count (self->folder), ==, 0);
  found = pp_draft_find (self->folder);
  g_assert_cmpuint (found->len, ==, 0);
}

/* A writer that comes too late writes nothing. */
static void
test_discarded (Fixture       *self,
                gconstpointer  data)
{
  g_autoptr (PpDraft) draft = pp_draft_new (self->folder, NULL);

  write_draft (self, draft);
  pp_draft_discard (draft);
  write_draft (self, draft);
  g_assert_cmpuint (sample_count (self->folder), ==, 0);
}

static void
test_two (Fixture       *self,
          gconstpointer  data)
{
  g_autoptr (PpDraft) first = pp_draft_new (self->folder, NULL);
  g_autoptr (PpDraft) second = pp_draft_new (self->folder, NULL);

  write_draft (self, first);
  write_draft (self, second);
  pp_draft_discard (first);
  g_assert_cmpuint (sample_count (self->folder), ==, 2); /* the other, and its lock */
}

static void
test_torn (Fixture       *self,
           gconstpointer  data)
{
  static const char * const texts[] = { "", "petalpane-draft 1", "petalpane-draft 1\n-\n-\n",
                                        "petalpane-draft 2\n-\n-\n{}", "{}",
                                        "petalpane-draft 1\n-\n-\n{\"format\":" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *path = g_build_filename (self->folder, "torn.draft", NULL);
      g_autoptr (GPtrArray) found = NULL;
      g_auto (PpDraftOrigin) origin = { NULL, NULL };
      g_autoptr (GError) error = NULL;

      g_assert_true (g_file_set_contents (path, texts[i], -1, NULL));
      found = pp_draft_find (self->folder);
      g_assert_cmpuint (found->len, ==, 1);
      g_assert_null (pp_draft_read (g_ptr_array_index (found, 0), &origin, &error));
      g_assert_nonnull (error);
      g_assert_true (error->domain == PP_FILE_ERROR);
      pp_draft_discard (g_ptr_array_index (found, 0));
    }
}

/* Locks without a draft go, and so do old torn temporary files; a young one stays. */
static void
test_cleared (Fixture       *self,
              gconstpointer  data)
{
  g_autofree char *lock = g_build_filename (self->folder, "gone.draft.lock", NULL);
  g_autofree char *young = g_build_filename (self->folder, ".petalpane-YOUNG1", NULL);
  g_autofree char *old = g_build_filename (self->folder, ".petalpane-OLD111", NULL);
  const struct timespec days_ago[] = { { time (NULL) - 3 * 86400, 0 },
                                       { time (NULL) - 3 * 86400, 0 } };
  g_autoptr (GPtrArray) found = NULL;

  g_assert_true (g_file_set_contents (lock, "", -1, NULL));
  g_assert_true (g_file_set_contents (young, "x", -1, NULL));
  g_assert_true (g_file_set_contents (old, "x", -1, NULL));
  g_assert_cmpint (utimensat (AT_FDCWD, old, days_ago, 0), ==, 0);
  found = pp_draft_find (self->folder);
  g_assert_cmpuint (found->len, ==, 0);
  g_assert_false (g_file_test (lock, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (old, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (young, G_FILE_TEST_EXISTS));
}

static void
test_nowhere (Fixture       *self,
              gconstpointer  data)
{
  g_autofree char *below = g_build_filename (self->folder, "file", "drafts", NULL);
  g_autofree char *file = g_build_filename (self->folder, "file", NULL);
  g_autoptr (GPtrArray) found = pp_draft_find (below);
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (found->len, ==, 0);
  g_assert_true (g_file_set_contents (file, "", -1, NULL));
  g_assert_null (pp_draft_new (below, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
}

/* A file system without locks is told as what it is, and nothing is left there. */
static void
test_without_locks (Fixture       *self,
                    gconstpointer  data)
{
  g_autoptr (GError) error = NULL;

  flock_failure = ENOLCK;
  g_assert_null (pp_draft_new (self->folder, &error));
  flock_failure = 0;
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
  g_assert_nonnull (strstr (error->message, g_strerror (ENOLCK)));
  g_assert_cmpuint (sample_count (self->folder), ==, 0);
}

/* A panel with drawings of 64 MiB together. */
static PpPanel *
make_large (const PpPanel *panel)
{
  g_autofree char *drawing = g_strnfill (PP_PIECE_MAX_ART, ' ');
  g_autoptr (GBytes) art = g_bytes_new_take (g_steal_pointer (&drawing), PP_PIECE_MAX_ART);
  PpPiece draft = *(const PpPiece *) g_ptr_array_index (panel->tray, 0);
  PpPanel *large = pp_panel_ref (panel);

  draft.art = art;
  for (gsize size = 0; size < PP_JSON_MAX_BYTES; size += PP_PIECE_MAX_ART)
    {
      g_autoptr (PpPiece) piece = pp_piece_new (&draft, NULL);
      g_autoptr (PpPanel) before = large;

      large = pp_edit_add_piece (before, piece, NULL, NULL);
      g_assert_nonnull (large);
    }
  return large;
}

/* What could not be read again is refused, in the same words as where it is saved. */
static void
test_too_large (Fixture       *self,
                gconstpointer  data)
{
  const PpDraftOrigin origin = { NULL, NULL };
  g_autoptr (PpPanel) large = make_large (self->panel);
  g_autoptr (PpDraft) draft = pp_draft_new (self->folder, NULL);
  g_autofree char *file = g_build_filename (self->folder, "large.petalpane", NULL);
  g_autoptr (GError) error = NULL, saving = NULL;

  g_assert_false (pp_draft_write (draft, large, &origin, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT);
  g_assert_false (pp_panel_save (large, file, &saving));
  g_assert_cmpstr (error->message, ==, saving->message);
  g_assert_cmpuint (sample_count (self->folder), ==, 1); /* the lock */
}

int
main (int    argc,
      char **argv)
{
  static const struct
  {
    const char *path;
    void      (*test) (Fixture *, gconstpointer);
  } tests[] = {
    { "/draft/round", test_round },     { "/draft/left-behind", test_left_behind },
    { "/draft/killed", test_killed },   { "/draft/saved", test_saved },
    { "/draft/two", test_two },         { "/draft/discarded", test_discarded },
    { "/draft/torn", test_torn },       { "/draft/cleared", test_cleared },
    { "/draft/nowhere", test_nowhere }, { "/draft/without-locks", test_without_locks },
    { "/draft/too-large", test_too_large },
  };

  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Fixture, NULL, set_up, tests[i].test, tear_down);
  return g_test_run ();
}
