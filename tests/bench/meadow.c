/* meadow.c: invented panels of any number of pieces, and what measuring needs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "meadow.h"

#include "file/panel-read.h"

#include <math.h>
#include <stdlib.h>
#include <time.h>

#define REACH 9.0 /* mm, of a drag either way */

PpPanel *
meadow_step (PpPanel *panel,
             PpPanel *next)
{
  g_assert_nonnull (next);
  pp_panel_unref (panel);
  return next;
}

static PpPanel *
load_bare (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("PP_SOURCE_ROOT"), "samples",
                                            "estuary-meadow.petalpane", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  PpPanel *panel = pp_panel_load (path, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < panel->placements->len; i++)
    g_ptr_array_add (ids, (gpointer) pp_panel_placement (panel, i)->id);
  g_ptr_array_add (ids, NULL);
  return meadow_step (panel, pp_edit_remove (panel, (const char * const *) ids->pdata, NULL));
}

/* Glass of six to five, its wire across the middle third, a fifth down. */
static PpPanel *
resize (PpPanel *panel,
        double   width,
        double   height)
{
  PpBackground glass = *panel->background;
  PpWire wire = *panel->wire;
  g_autoptr (PpBackground) larger = NULL;
  g_autoptr (PpWire) longer = NULL;

  glass.width = width;
  glass.height = height;
  larger = pp_background_new (&glass, NULL);
  panel = meadow_step (panel, pp_edit_set_background (panel, larger, NULL));
  for (guint i = 0; i < panel->holes->len; i++)
    {
      PpHole hole = *pp_panel_hole (panel, i);
      g_autoptr (PpHole) moved = NULL;

      hole.x = g_str_equal (hole.id, wire.from) ? width / 3 : 2 * width / 3;
      hole.y = height / 5;
      moved = pp_hole_new (&hole, NULL);
      panel = meadow_step (panel, pp_edit_set_hole (panel, moved, NULL));
    }
  wire.length = 1.15 * width / 3;
  longer = pp_wire_new (&wire, NULL);
  return meadow_step (panel, pp_edit_set_wire (panel, longer, NULL));
}

PpPanel *
meadow_new (guint  n,
            double room)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (20);
  double width = sqrt (n * room * 6 / 5), height = n * room / width;
  PpPanel *panel = resize (load_bare (), width, height);

  for (guint i = 0; i < n; i++)
    {
      guint which = (guint) g_rand_int_range (dice, 0, (int) panel->tray->len);
      PpPose pose = { g_rand_double_range (dice, 0, width), g_rand_double_range (dice, 0, height),
                      g_rand_double_range (dice, 0, 360), FALSE };

      panel = meadow_step (panel, pp_edit_place (panel, pp_panel_piece (panel, which)->id, pose,
                                                 NULL, NULL));
    }
  return panel;
}

guint
meadow_choose (const PpPanel *panel,
               GRand         *dice)
{
  return (guint) g_rand_int_range (dice, 0, (int) panel->placements->len);
}

PpPanel *
meadow_drag (const PpPanel *panel,
             guint          which,
             GRand         *dice)
{
  const char *ids[] = { pp_panel_placement (panel, which)->id, NULL };

  return pp_edit_move (panel, ids, g_rand_double_range (dice, -REACH, REACH),
                       g_rand_double_range (dice, -REACH, REACH), NULL);
}

double
bench_now (void)
{
  struct timespec t;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e3 + (double) t.tv_nsec / 1e6;
}

static int
compare_doubles (const void *a,
                 const void *b)
{
  const double *p = a, *q = b;

  return *p < *q ? -1 : *p > *q;
}

double
bench_median (double *values,
              guint   n)
{
  qsort (values, n, sizeof *values, compare_doubles);
  return values[n / 2];
}

void
bench_say (const char *what,
           double      figure,
           const char *unit,
           const char *aim)
{
  g_print ("%-62s %10.3g %-8s %s\n", what, figure, unit, aim);
}
