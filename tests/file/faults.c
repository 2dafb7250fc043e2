/* faults.c: whatever is cut, lost or refused while the program writes: the old file or the new one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each act of fault-acts.h is done once to learn its calls (calls.h). Then the same act is done
 * anew for every call: failed there by what a disk may say, killed before it, within it and after
 * it; and from the list of calls is told what a power cut at any moment may leave (crash.h). The
 * careless acts must be caught by the same checks.
 */
#include "calls.h"
#include "crash.h"
#include "fault-acts.h"
#include "sample.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define MEMORY_DISK "/dev/shm"

/* One folder with what an act needs. */
typedef struct
{
  const FaultAct *act;
  char           *folder;
  char           *file;
  char           *path;
  gpointer        prepared;
  GBytes         *before; /* nullable */
} Stage;

/* How an act in a child ended. */
typedef struct
{
  gboolean is_killed;
  gboolean is_done;
  char     sentence[1024]; /* of what was not done */
} Ending;

static GBytes *
read_file (const char *path)
{
  char *text;
  gsize length;

  return g_file_get_contents (path, &text, &length, NULL) ? g_bytes_new_take (text, length) : NULL;
}

static gboolean
is_equal (GBytes *a,
          GBytes *b)
{
  return a == NULL || b == NULL ? a == b : g_bytes_equal (a, b);
}

static void
set_up (Stage          *self,
        const FaultAct *act)
{
  self->act = act;
  self->folder = g_dir_make_tmp ("pane-faults-XXXXXX", NULL);
  self->prepared = act->prepare (self->folder, &self->file);
  self->path = g_build_filename (self->folder, self->file, NULL);
  self->before = read_file (self->path);
}

static void
clear_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        clear_folder (path);
      else
        g_unlink (path);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
tear_down (Stage *self)
{
  if (self->act->let_go != NULL)
    self->act->let_go (self->prepared);
  clear_folder (self->folder);
  g_clear_pointer (&self->before, g_bytes_unref);
  g_free (self->path);
  g_free (self->file);
  g_free (self->folder);
}

/* The act without a fault: its calls, and in `after` what it leaves. (transfer full) */
static GPtrArray *
learn (const FaultAct *act,
       GBytes        **after)
{
  Stage stage;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) told = NULL;
  GPtrArray *calls;

  set_up (&stage, act);
  calls_watch (stage.folder, 0, CALLS_WELL, 0);
  g_assert_true (act->act (stage.folder, stage.prepared, &error));
  calls = calls_end ();
  *after = read_file (stage.path);
  told = crash_last (calls, stage.file, stage.before);
  g_assert_true (is_equal (told, *after)); /* no call went past us */
  g_assert_false (is_equal (stage.before, *after));
  tear_down (&stage);
  return calls;
}

static void
act_in_child (const Stage *stage,
              guint        at,
              CallsHow     how,
              int          error,
              Ending      *ending)
{
  int pipes[2], status;
  pid_t child;
  gssize n;

  g_assert_cmpint (pipe (pipes), ==, 0);
  child = fork ();
  if (child == 0)
    {
      g_autoptr (GError) failure = NULL;
      const char *sentence = "";

      calls_watch (stage->folder, at, how, error);
      if (!stage->act->act (stage->folder, stage->prepared, &failure))
        sentence = failure != NULL ? failure->message : "no sentence";
      if (write (pipes[1], sentence, strlen (sentence) + 1) < 0)
        _exit (3);
      _exit (0);
    }
  close (pipes[1]);
  n = read (pipes[0], ending->sentence, sizeof ending->sentence - 1);
  close (pipes[0]);
  ending->sentence[MAX (n, 0)] = '\0';
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  ending->is_killed = WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL;
  ending->is_done = !ending->is_killed && ending->sentence[0] == '\0';
  g_assert_true (ending->is_killed || (WIFEXITED (status) && WEXITSTATUS (status) == 0));
}

/* A power cut. */

typedef struct
{
  GBytes *before, *after;
  guint   n_calls; /* with all of them done the new one must be safe */
} Contents;

static gboolean
may_be_left (GBytes  *content,
             guint    n_calls,
             gpointer data)
{
  const Contents *self = data;

  if (is_equal (content, self->after))
    return TRUE;
  return n_calls < self->n_calls && is_equal (content, self->before);
}

static void
test_cuts (gconstpointer data)
{
  const FaultAct *act = data;
  g_autoptr (GBytes) after = NULL;
  g_autoptr (GPtrArray) calls = learn (act, &after);
  Stage stage;
  Contents contents = { .after = after, .n_calls = calls->len };
  g_autofree char *file = NULL;
  guint n_states, n_faults;

  set_up (&stage, act);
  contents.before = stage.before;
  /* the calls name the file as it was called when they were learnt */
  for (guint i = 0; i < calls->len && file == NULL; i++)
    {
      const Call *call = g_ptr_array_index (calls, i);

      file = call->kind == CALL_RENAME ? g_strdup (call->to) : NULL;
    }
  n_faults = crash_count_faults (calls, file != NULL ? file : stage.file, stage.before, may_be_left,
                                 &contents, &n_states);
  g_test_message ("%s: %u calls, %u states, %u of them bad", act->name, calls->len, n_states,
                  n_faults);
  g_assert_cmpuint (n_states, >, calls->len);
  if (act->is_careless)
    g_assert_cmpuint (n_faults, >, 0);
  else
    g_assert_cmpuint (n_faults, ==, 0);
  tear_down (&stage);
}

/* A kill. */

static gboolean
is_spoilt_by_kill (const FaultAct *act,
                   GBytes         *after,
                   guint           at,
                   CallsHow        how)
{
  Stage stage;
  Ending ending;
  g_autoptr (GBytes) left = NULL, again = NULL;
  gboolean is_whole;

  set_up (&stage, act);
  act_in_child (&stage, at, how, 0, &ending);
  g_assert_true (ending.is_killed);
  left = read_file (stage.path);
  is_whole = is_equal (left, stage.before) || is_equal (left, after);
  act_in_child (&stage, 0, CALLS_WELL, 0, &ending); /* what was left stops nobody */
  again = read_file (stage.path);
  is_whole = is_whole && (!ending.is_done || is_equal (again, after));
  if (!act->is_torn_by_kill)
    g_assert_true (ending.is_done);
  tear_down (&stage);
  return !is_whole;
}

static void
test_kills (gconstpointer data)
{
  const FaultAct *act = data;
  g_autoptr (GBytes) after = NULL;
  g_autoptr (GPtrArray) calls = learn (act, &after);
  guint n = 0, n_faults = 0;

  for (guint at = 1; at <= calls->len; at++)
    for (CallsHow how = CALLS_KILL; how <= CALLS_KILL_AFTER; how++)
      {
        const Call *call = g_ptr_array_index (calls, at - 1);

        if (how == CALLS_KILL_HALF && call->kind != CALL_WRITE)
          continue;
        n++;
        n_faults += is_spoilt_by_kill (act, after, at, how);
      }
  g_test_message ("%s: killed %u times, %u times bad", act->name, n, n_faults);
  if (act->is_torn_by_kill)
    g_assert_cmpuint (n_faults, >, 0);
  else
    g_assert_cmpuint (n_faults, ==, 0);
}

/* What a disk says. */

static const int errors[] = { ENOSPC, EDQUOT, EIO, EROFS, EACCES };
static const int lasting_errors[] = { ENOSPC, EROFS };

/* The last step: the new file is in place, and only its safety not confirmed (save.h). */
static gboolean
is_sync_of_folder (GPtrArray *calls,
                   guint      at)
{
  const Call *call = g_ptr_array_index (calls, at - 1);

  return call->kind == CALL_SYNC && (call->name == NULL || strchr (call->name, '.') == NULL);
}

static void
expect_sentence (const char *sentence)
{
  g_assert_true (g_utf8_validate (sentence, -1, NULL));
  g_assert_null (strchr (sentence, '\n'));
  g_assert_true (g_str_has_suffix (sentence, "."));
}

static void
fail_once (const FaultAct *act,
           GPtrArray      *calls,
           GBytes         *after,
           guint           at,
           CallsHow        how,
           int             error)
{
  Stage stage;
  Ending ending;
  g_autoptr (GBytes) left = NULL;
  guint n_names;

  set_up (&stage, act);
  n_names = sample_count (stage.folder);
  act_in_child (&stage, at, how, error, &ending);
  left = read_file (stage.path);
  g_assert_false (ending.is_killed);
  if (ending.is_done)
    g_assert_true (is_equal (left, after));
  else
    {
      expect_sentence (ending.sentence);
      if (how == CALLS_FAIL_ON ? is_equal (left, after) : is_sync_of_folder (calls, at))
        g_assert_true (is_equal (left, after));
      else
        {
          g_assert_true (is_equal (left, stage.before));
          g_assert_cmpuint (sample_count (stage.folder), ==, n_names); /* nothing lies about */
        }
    }
  tear_down (&stage);
}

static void
test_failures (gconstpointer data)
{
  const FaultAct *act = data;
  g_autoptr (GBytes) after = NULL;
  g_autoptr (GPtrArray) calls = learn (act, &after);

  for (guint at = 1; at <= calls->len; at++)
    {
      for (guint i = 0; i < G_N_ELEMENTS (errors); i++)
        fail_once (act, calls, after, at, CALLS_FAIL, errors[i]);
      for (guint i = 0; i < G_N_ELEMENTS (lasting_errors); i++)
        fail_once (act, calls, after, at, CALLS_FAIL_ON, lasting_errors[i]);
      fail_once (act, calls, after, at, CALLS_SHORT, 0);
    }
  g_test_message ("%s: failed %u times", act->name,
                  calls->len
                      * (guint) (G_N_ELEMENTS (errors) + G_N_ELEMENTS (lasting_errors)));
}

int
main (int    argc,
      char **argv)
{
  /* thousands of syncs: on a disk of memory, where there is one, they cost nothing */
  if (g_access (MEMORY_DISK, W_OK) == 0)
    g_setenv ("TMPDIR", MEMORY_DISK, TRUE);
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < n_fault_acts; i++)
    {
      const FaultAct *act = &fault_acts[i];
      g_autofree char *cuts = g_strdup_printf ("/faults/%s/cuts", act->name);
      g_autofree char *kills = g_strdup_printf ("/faults/%s/kills", act->name);
      g_autofree char *failures = g_strdup_printf ("/faults/%s/failures", act->name);

      g_test_add_data_func (cuts, act, test_cuts);
      g_test_add_data_func (kills, act, test_kills);
      if (!act->is_careless)
        g_test_add_data_func (failures, act, test_failures);
    }
  return g_test_run ();
}
