/* check-again.c: a check and an order made from the ones before say the same, number for number.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Samples are edited at random as a maker would: dragged, turned, mirrored, lifted, lowered,
 * placed, removed; now and then the glass, a limit or the unit changes. After each edit the
 * check from the previous one and a check from nothing are written out and compared. Some are
 * dragged by so little that the wire hardly moves, which is where most is taken over.
 */
#include "file/check-write.h"
#include "file/panel-read.h"
#include "glue/order.h"
#include "panel/edit.h"

#define STEPS 20

typedef struct
{
  const char *sample;
  guint32     seed;
  double      reach; /* mm, of a drag either way */
} Row;

static const Row rows[] = {
  { "estuary-meadow", 1, 25 },
  { "estuary-meadow", 2, 0.6 },
  { "towpath-in-june", 3, 25 },
  { "walled-garden", 4, 25 },
  { "walled-garden", 5, 0.6 },
};

static const char *
pick_placement (GRand         *dice,
                const PpPanel *panel)
{
  return pp_panel_placement (panel, (guint) g_rand_int_range (dice, 0,
                                                              (int) panel->placements->len))->id;
}

static PpPanel *
drag (GRand         *dice,
      const PpPanel *panel,
      double         reach)
{
  const char *ids[] = { pick_placement (dice, panel), NULL };

  return pp_edit_move (panel, ids, g_rand_double_range (dice, -reach, reach),
                       g_rand_double_range (dice, -reach, reach), NULL);
}

static PpPanel *
turn (GRand         *dice,
      const PpPanel *panel)
{
  const char *id = pick_placement (dice, panel);
  const PpPlacement *placement = pp_panel_find_placement (panel, id, NULL);

  return pp_edit_set_pose (panel, id, (PpPose) { placement->x, placement->y,
                                                 g_rand_double_range (dice, 0, 360),
                                                 g_rand_boolean (dice) }, NULL);
}

static PpPanel *
restack (GRand         *dice,
         const PpPanel *panel)
{
  return pp_edit_restack (panel, pick_placement (dice, panel),
                          (guint) g_rand_int_range (dice, 0, (int) panel->placements->len - 1),
                          NULL);
}

static PpPanel *
place_or_remove (GRand         *dice,
                 const PpPanel *panel)
{
  const char *ids[] = { pick_placement (dice, panel), NULL };

  if (panel->placements->len > 5 && g_rand_boolean (dice))
    return pp_edit_remove (panel, ids, NULL);
  return pp_edit_place (panel, pp_panel_find_placement (panel, ids[0], NULL)->piece,
                        (PpPose) { g_rand_double_range (dice, 0, panel->background->width),
                                   g_rand_double_range (dice, 0, panel->background->height), 30,
                                   FALSE }, NULL, NULL);
}

static PpPanel *
with_limit (const PpPanel *panel,
            PpLimit        limit,
            double         value)
{
  PpPanel draft = *panel;

  draft.limits.value[limit] = value;
  return pp_panel_new (&draft, NULL);
}

static PpPanel *
change_ground (GRand         *dice,
               const PpPanel *panel)
{
  PpBackground glass = *panel->background;
  g_autoptr (PpBackground) thicker = NULL;

  if (g_rand_boolean (dice))
    return pp_edit_set_units (panel, panel->units == PP_UNITS_MM ? PP_UNITS_INCH : PP_UNITS_MM);
  if (g_rand_boolean (dice))
    return with_limit (panel, PP_LIMIT_STEADY, g_rand_double_range (dice, 1, 6));
  glass.thickness += 0.5;
  thicker = pp_background_new (&glass, NULL);
  return pp_edit_set_background (panel, thicker, NULL);
}

static PpPanel *
edit (GRand         *dice,
      const PpPanel *panel,
      double         reach)
{
  switch (g_rand_int_range (dice, 0, 10))
    {
    case 0:
      return turn (dice, panel);
    case 1:
      return restack (dice, panel);
    case 2:
      return place_or_remove (dice, panel);
    case 3:
      return change_ground (dice, panel);
    default:
      return drag (dice, panel, reach);
    }
}

/* The wire, to the last figure: what is written is rounded. */
static void
compare_wires (const PpConceal *again,
               const PpConceal *anew)
{
  g_assert_cmpfloat (again->hung.hidden, ==, anew->hung.hidden);
  g_assert_cmpfloat (again->lying.hidden, ==, anew->lying.hidden);
  g_assert_cmpfloat (again->barely, ==, anew->barely);
  for (guint i = 0; i < PP_N_VIEWS; i++)
    g_assert_cmpfloat (again->views[i].share, ==, anew->views[i].share);
}

static void
compare (const PpCheck *again,
         const PpCheck *anew)
{
  g_autoptr (GString) one = pp_check_write (again, NULL, NULL);
  g_autoptr (GString) other = pp_check_write (anew, NULL, NULL);

  g_assert_cmpstr (one->str, ==, other->str);
  g_assert_cmpfloat (again->depth, ==, anew->depth);
  if (anew->conceal != NULL)
    compare_wires (again->conceal, anew->conceal);
  for (guint i = 0; i < again->n; i++)
    {
      g_assert_cmpmem (again->joints[i], sizeof (PpJoint), anew->joints[i], sizeof (PpJoint));
      g_assert_cmpfloat (again->rests[i]->raised, ==, anew->rests[i]->raised);
    }
}

/* An order made from the one before is the one made from nothing. */
static void
compare_orders (const PpOrder *after,
                const PpOrder *anew,
                guint          n)
{
  g_assert_cmpmem (after->hard, after->n_hard * sizeof (PpEdge), anew->hard,
                   anew->n_hard * sizeof (PpEdge));
  g_assert_cmpmem (after->drawn, after->n_drawn * sizeof (PpEdge), anew->drawn,
                   anew->n_drawn * sizeof (PpEdge));
  g_assert_cmpmem (after->tucks, after->n_tucks * sizeof (PpEdge), anew->tucks,
                   anew->n_tucks * sizeof (PpEdge));
  for (guint i = 0; i < n; i++)
    g_assert_cmpmem (after->below[i], after->n_below[i] * sizeof (guint), anew->below[i],
                     anew->n_below[i] * sizeof (guint));
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *path = g_strdup_printf ("%s/samples/%s.petalpane", g_getenv ("PP_SOURCE_ROOT"),
                                           row->sample);
  g_autoptr (GRand) dice = g_rand_new_with_seed (row->seed);
  PpPanel *panel = pp_panel_load (path, NULL);
  PpCheck *check;
  PpOrder *order;

  g_assert_nonnull (panel);
  check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  order = pp_order_new (check);
  for (int step = 0; step < STEPS; step++)
    {
      PpPanel *next = edit (dice, panel, row->reach);
      PpCheck *again = pp_check_new (next, check, NULL, NULL, NULL, NULL);
      g_autoptr (PpCheck) anew = pp_check_new (next, NULL, NULL, NULL, NULL, NULL);

      PpOrder *after = pp_order_new_after (again, check, order);
      g_autoptr (PpOrder) fresh = pp_order_new (anew);

      compare (again, anew);
      compare_orders (after, fresh, again->n);
      pp_order_unref (order);
      pp_check_unref (check);
      pp_panel_unref (panel);
      order = after;
      check = again;
      panel = next;
    }
  pp_order_unref (order);
  pp_check_unref (check);
  pp_panel_unref (panel);
}

#define HEAPED 40

/* What lies over a piece dragged at the foot of a heap is settled again all the way up. */
static void
test_heap (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("PP_SOURCE_ROOT"), "samples",
                                            "estuary-meadow.petalpane", NULL);
  g_autoptr (GRand) dice = g_rand_new_with_seed (6);
  PpPanel *panel = pp_panel_load (path, NULL), *next;
  const char *ids[] = { NULL, NULL };
  g_autoptr (PpCheck) before = NULL;
  g_autoptr (PpCheck) again = NULL;
  g_autoptr (PpCheck) anew = NULL;

  g_assert_nonnull (panel);
  for (guint i = 0; i < HEAPED; i++)
    {
      next = pp_edit_place (panel, pp_panel_piece (panel, i % panel->tray->len)->id,
                            (PpPose) { g_rand_double_range (dice, 180, 220),
                                       g_rand_double_range (dice, 180, 220), 9.0 * i, FALSE },
                            NULL, NULL);
      pp_panel_unref (panel);
      panel = next;
    }
  before = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  ids[0] = pp_panel_placement (panel, panel->placements->len - HEAPED)->id;
  next = pp_edit_move (panel, ids, 5, 3, NULL);
  again = pp_check_new (next, before, NULL, NULL, NULL, NULL);
  anew = pp_check_new (next, NULL, NULL, NULL, NULL, NULL);
  compare (again, anew);
  pp_panel_unref (panel);
  pp_panel_unref (next);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/check-again/%s/%u", rows[i].sample, rows[i].seed);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_func ("/check-again/heap", test_heap);
  return g_test_run ();
}
