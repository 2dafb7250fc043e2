/* earlier.c: what stood in a file before is kept, a few of it, and no more than has room.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/earlier.h"
#include "file/save.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>
#include <utime.h>

#define ROOM (1 << 20)

typedef struct
{
  char *folder;
  char *history;
  char *path;
} Fixture;

static void
set_up (Fixture      *self,
        gconstpointer data)
{
  self->folder = g_dir_make_tmp ("pane-earlier-XXXXXX", NULL);
  self->history = g_build_filename (self->folder, "state", "earlier", NULL);
  self->path = g_build_filename (self->folder, "towpath.petalpane", NULL);
}

static void
remove_all (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inner = g_build_filename (path, name, NULL);

      remove_all (inner);
    }
  g_remove (path);
}

static void
tear_down (Fixture      *self,
           gconstpointer data)
{
  remove_all (self->folder);
  g_assert_false (g_file_test (self->folder, G_FILE_TEST_EXISTS));
  g_free (self->path);
  g_free (self->history);
  g_free (self->folder);
}

/* As if written so many seconds after the beginning of 2026. */
static void
write_at (const char *path,
          const char *content,
          gint64      seconds)
{
  struct utimbuf times = { 1767225600 + seconds, 1767225600 + seconds };
  g_autoptr (GError) error = NULL;

  pp_file_save (path, content, strlen (content), &error);
  g_assert_no_error (error);
  g_assert_cmpint (g_utime (path, &times), ==, 0);
}

static void
keep (Fixture    *self,
      const char *path)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (pp_earlier_keep (self->history, path, ROOM, &error));
  g_assert_no_error (error);
}

/* What is kept, the latest first, in one line. (transfer full) */
static char *
tell (Fixture    *self,
      const char *path)
{
  g_autoptr (GPtrArray) kept = pp_earlier_list (self->history, path);
  g_autoptr (GString) line = g_string_new (NULL);

  for (guint i = 0; i < kept->len; i++)
    {
      const PpEarlier *one = g_ptr_array_index (kept, i);
      g_autofree char *content = NULL;

      g_assert_true (g_file_get_contents (one->path, &content, NULL, NULL));
      g_string_append_printf (line, "%s%s", i > 0 ? " " : "", content);
    }
  return g_string_free (g_steal_pointer (&line), FALSE);
}

static void
assert_kept (Fixture    *self,
             const char *path,
             const char *expected)
{
  g_autofree char *kept = tell (self, path);

  g_assert_cmpstr (kept, ==, expected);
}

static void
test_saves (Fixture      *self,
            gconstpointer data)
{
  g_autoptr (GPtrArray) kept = NULL;
  g_autofree char *when = NULL;
  g_autoptr (GDateTime) utc = NULL;

  keep (self, self->path); /* nothing there yet */
  assert_kept (self, self->path, "");
  write_at (self->path, "a", 10);
  keep (self, self->path);
  keep (self, self->path);
  assert_kept (self, self->path, "a");
  write_at (self->path, "b", 20);
  keep (self, self->path);
  write_at (self->path, "a", 30); /* the same as one before the last: it was another save */
  keep (self, self->path);
  assert_kept (self, self->path, "a b a");
  kept = pp_earlier_list (self->history, self->path);
  utc = g_date_time_to_utc (((PpEarlier *) g_ptr_array_index (kept, 1))->saved);
  when = g_date_time_format_iso8601 (utc);
  g_assert_cmpstr (when, ==, "2026-01-01T00:00:20Z");
}

static void
test_same_moment (Fixture      *self,
                  gconstpointer data)
{
  write_at (self->path, "a", 10);
  keep (self, self->path);
  write_at (self->path, "b", 10);
  keep (self, self->path);
  assert_kept (self, self->path, "b a");
}

static void
test_own_history (Fixture      *self,
                  gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.petalpane", NULL);
  g_autofree char *round = g_build_filename (self->folder, "state", "..", "other.petalpane", NULL);

  write_at (self->path, "a", 10);
  write_at (other, "b", 20);
  keep (self, self->path);
  keep (self, other);
  assert_kept (self, self->path, "a");
  assert_kept (self, other, "b");
  assert_kept (self, round, "b");
}

/* A save a minute for a day: the latest and the first are there, and what lies between is spread so
 * that no gap is more than most of its age. */
static void
test_thinned_out (Fixture      *self,
                  gconstpointer data)
{
  const int minutes = 24 * 60;
  g_autoptr (GPtrArray) kept = NULL;
  GDateTime *latest;

  for (int i = 0; i < minutes; i++)
    {
      g_autofree char *content = g_strdup_printf ("%d", i);

      write_at (self->path, content, 60 * i);
      keep (self, self->path);
    }
  kept = pp_earlier_list (self->history, self->path);
  g_assert_cmpuint (kept->len, ==, PP_EARLIER_MOST);
  latest = ((PpEarlier *) g_ptr_array_index (kept, 0))->saved;
  for (guint i = 0; i + 1 < kept->len; i++)
    {
      const PpEarlier *newer = g_ptr_array_index (kept, i), *older = g_ptr_array_index (kept, i + 1);
      double gap = (double) g_date_time_difference (newer->saved, older->saved) / G_TIME_SPAN_MINUTE;
      double ago = (double) g_date_time_difference (latest, older->saved) / G_TIME_SPAN_MINUTE;

      g_test_message ("%.0f minutes before the latest", ago);
      g_assert_cmpfloat (gap, <=, MAX (0.85 * ago, 2));
    }
  g_assert_cmpfloat ((double) g_date_time_difference (
                       latest, ((PpEarlier *) g_ptr_array_index (kept, kept->len - 1))->saved),
                     ==, (double) (minutes - 1) * G_TIME_SPAN_MINUTE);
}

static void
test_room (Fixture      *self,
           gconstpointer data)
{
  g_autofree char *other = g_build_filename (self->folder, "other.petalpane", NULL);
  g_autoptr (GError) error = NULL;

  write_at (other, "oldest-000", 5);
  keep (self, other);
  write_at (self->path, "first-0000", 10);
  keep (self, self->path);
  write_at (self->path, "second-000", 20);
  g_assert_true (pp_earlier_keep (self->history, self->path, 20, &error));
  assert_kept (self, self->path, "second-000 first-0000");
  assert_kept (self, other, "");
  write_at (self->path, "third-0000", 30);
  g_assert_true (pp_earlier_keep (self->history, self->path, 10, &error));
  assert_kept (self, self->path, "third-0000");
}

static void
test_refused (Fixture      *self,
              gconstpointer data)
{
  g_autofree char *state = g_build_filename (self->folder, "state", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (state, "a file where the folder should be", -1, NULL));
  write_at (self->path, "a", 10);
  g_assert_false (pp_earlier_keep (self->history, self->path, ROOM, &error));
  g_assert_nonnull (error);
  assert_kept (self, self->path, "");
}

/* Names that are none of ours are neither shown nor counted nor taken away. */
static void
test_strange_names (Fixture      *self,
                    gconstpointer data)
{
  static const char * const names[] = {
    "notes.txt", "2026-13-01T00-00-00.000000.petalpane", "2026-01-01T00-00-00.000000.petalpane.bak",
    "2026-01-01.petalpane", ".petalpane-abcdef",
  };
  g_autoptr (GPtrArray) kept = NULL;
  g_autofree char *own = NULL;

  write_at (self->path, "a", 10);
  keep (self, self->path);
  kept = pp_earlier_list (self->history, self->path);
  own = g_path_get_dirname (((PpEarlier *) g_ptr_array_index (kept, 0))->path);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (own, names[i], NULL);

      write_at (path, "x", 99);
    }
  write_at (self->path, "b", 20);
  g_assert_true (pp_earlier_keep (self->history, self->path, 1, NULL));
  assert_kept (self, self->path, "b");
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (own, names[i], NULL);

      g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
    }
}

#define TEST(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE); /* a thousand syncs: there they cost nothing */
  g_test_init (&argc, &argv, NULL);
  TEST ("/earlier/saves", test_saves);
  TEST ("/earlier/same-moment", test_same_moment);
  TEST ("/earlier/own-history", test_own_history);
  TEST ("/earlier/thinned-out", test_thinned_out);
  TEST ("/earlier/room", test_room);
  TEST ("/earlier/refused", test_refused);
  TEST ("/earlier/strange-names", test_strange_names);
  return g_test_run ();
}
