/* workers.c: the core's work in threads, as the window does it, for a sanitizer to watch.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A check in a thread while the panel is edited and the check before is read; putting right on two
 * threads; a picture's pieces found in two threads from one photo; art drawn by two; a draft written
 * by two; sheets written by one and shown by another. Threads are told by pthreads, which every
 * sanitizer knows. With RACE in the environment there is one race on purpose, to see that it is seen.
 */
#include "advise/advise.h"
#include "art/art.h"
#include "file/check-write.h"
#include "file/draft.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/edit.h"

#include "workers.h"

#include <glib/gstdio.h>
#include <string.h>

#define EDITS 6
#define STEPS 60
#define DRAWINGS 8

GBytes *
load (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("PP_SOURCE_ROOT"), "tests", "fuzz", "corpus", name, NULL);
  g_autoptr (GError) error = NULL;
  char *text;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (text, length);
}

static PpPanel *
load_panel (void)
{
  g_autoptr (GBytes) bytes = load ("panel/three-pieces.petalpane");
  g_autoptr (GError) error = NULL;
  PpPanel *panel = pp_panel_read (bytes, &error);

  g_assert_no_error (error);
  return panel;
}

pthread_t
start (void *(*work) (void *data),
       void *data)
{
  pthread_t thread;

  g_assert_cmpint (pthread_create (&thread, NULL, work, data), ==, 0);
  return thread;
}

void
join (pthread_t thread)
{
  g_assert_cmpint (pthread_join (thread, NULL), ==, 0);
}

/* Checks, each with the one before, which is read meanwhile. */

typedef struct
{
  const PpPanel *panel;
  const PpCheck *previous;
  PpCheck       *check;
  GString       *text;
} Job;

static void *
check (void *data)
{
  Job *job = data;
  g_autoptr (PpPlan) plan = NULL;

  job->check = pp_check_new (job->panel, job->previous, NULL, NULL, NULL, NULL);
  plan = pp_plan_new (job->check, 500, NULL, NULL, NULL, NULL);
  job->text = pp_check_write (job->check, plan, NULL);
  return NULL;
}

static guint
read_findings (const PpCheck *made)
{
  guint n = 0;

  for (guint i = 0; made != NULL && i < made->findings->len; i++)
    n += (guint) strlen (((const PpFinding *) g_ptr_array_index (made->findings, i))->text);
  return n;
}

static void
test_checks (void)
{
  const char * const ids[] = { "a", NULL };
  g_autoptr (PpPanel) panel = load_panel ();
  PpCheck *previous = NULL;

  for (guint i = 0; i < EDITS; i++)
    {
      Job job = { .panel = pp_panel_ref (panel), .previous = previous };
      pthread_t thread = start (check, &job);
      g_autoptr (PpPanel) next = pp_edit_move (panel, ids, 1, 0.5, NULL);
      g_autoptr (GString) text = pp_panel_write (panel);
      guint n = read_findings (previous);

      g_test_message ("%u letters of findings, %" G_GSIZE_FORMAT " of the panel", n, text->len);
      join (thread);
      g_assert_cmpuint (job.text->len, >, 0);
      g_string_free (job.text, TRUE);
      pp_panel_unref (job.panel);
      g_clear_pointer (&previous, pp_check_unref);
      previous = job.check;
      pp_panel_unref (panel);
      panel = g_steal_pointer (&next);
    }
  g_clear_pointer (&previous, pp_check_unref);
}

static PpAdvice *
put_right (guint threads)
{
  const PpSearchLimits limits = { .seed = 3, .steps = STEPS, .threads = threads };
  g_autoptr (PpPanel) panel = load_panel ();

  return pp_advise_all (panel, &limits, NULL, NULL, NULL);
}

static void
test_putting_right (void)
{
  g_autoptr (PpAdvice) alone = put_right (1);
  g_autoptr (PpAdvice) together = put_right (2);
  g_autoptr (GString) one = pp_panel_write (alone->panel);
  g_autoptr (GString) other = pp_panel_write (together->panel);

  g_assert_cmpstr (one->str, ==, other->str);
}

static void *
draw (void *art)
{
  for (guint i = 0; i < DRAWINGS; i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 64, 64);
      cairo_t *cr = cairo_create (surface);

      cairo_translate (cr, 32, 32);
      cairo_scale (cr, 1 + i, 1 + i);
      pp_art_draw (art, cr);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
  pp_art_unref (art);
  return NULL;
}

static void
test_art (void)
{
  g_autoptr (GBytes) svg = load ("art/gradient.svg");
  PpArt *art = pp_art_new (svg, NULL);
  pthread_t threads[] = { start (draw, pp_art_ref (art)), start (draw, pp_art_ref (art)) };

  pp_art_unref (art);
  join (threads[0]);
  join (threads[1]);
}

static void *
keep_aside (void *data)
{
  const PpDraftOrigin origin = { NULL, NULL };
  g_autoptr (PpPanel) panel = load_panel ();
  PpDraft *draft = data;

  for (guint i = 0; i < EDITS; i++)
    pp_draft_write (draft, panel, &origin, NULL);
  pp_draft_unref (draft);
  return NULL;
}

static void
test_draft (void)
{
  g_autofree char *folder = g_dir_make_tmp ("pane-threads-XXXXXX", NULL);
  PpDraft *draft = pp_draft_new (folder, NULL);
  pthread_t threads[] = { start (keep_aside, pp_draft_ref (draft)),
                          start (keep_aside, pp_draft_ref (draft)) };

  pp_draft_clear (draft);
  join (threads[0]);
  pp_draft_discard (draft);
  join (threads[1]);
  pp_draft_unref (draft);
  g_assert_cmpint (g_rmdir (folder), ==, 0); /* nothing is left */
}

static int shared;

static void *
race (void *data)
{
  shared++;
  return NULL;
}

static void
test_race (void)
{
  pthread_t thread = start (race, NULL);

  shared++;
  join (thread);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/threads/checks", test_checks);
  g_test_add_func ("/threads/putting-right", test_putting_right);
  g_test_add_func ("/threads/picture", test_picture);
  g_test_add_func ("/threads/art", test_art);
  g_test_add_func ("/threads/draft", test_draft);
#ifndef __SANITIZE_THREAD__ /* which cannot see the locks of the libraries that draw letters */
  g_test_add_func ("/threads/sheets", test_sheets);
#endif
  if (g_getenv ("RACE") != NULL)
    g_test_add_func ("/threads/race", test_race);
  return g_test_run ();
}
