/* check-again.c: a check and an order made from the ones before say the same, number for number.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Samples, 200 strewn pieces, the same made steep, and a heap among fused parts on a free outline are
 * edited at random as a maker would: dragged, turned, mirrored, lifted, lowered, placed, removed; now and then the
 * glass, a fused part, a limit or the unit changes. After each edit the check from the previous
 * one and a check from nothing are written out and compared. Some are dragged by so little that
 * the wire hardly moves, which is where most is taken over.
 */
#include "meadow.h"

#include "file/check-write.h"
#include "file/panel-read.h"
#include "glue/order.h"

#define STEPS 20

typedef struct
{
  const char *panel; /* a sample, or what invent () knows */
  guint32     seed;
  double      reach; /* mm, of a drag either way */
} Row;

static const Row rows[] = {
  { "estuary-meadow", 1, 25 },
  { "estuary-meadow", 2, 0.6 },
  { "towpath-in-june", 3, 25 },
  { "walled-garden", 4, 25 },
  { "walled-garden", 5, 0.6 },
  { "strewn", 7, 25 },
  { "strewn", 8, 0.6 },
  { "free", 9, 25 },
  { "free", 10, 0.6 },
  { "steep", 11, 6 },
  { "steep", 12, 0.6 },
};

#define STREWN 200
#define IN_BAYS 50

/* In the frame of the unit square: a bay from above and one from the right. */
static const PpPoint bays[] = {
  { 0, 0.1 }, { 0.4, 0 }, { 0.45, 0.12 }, { 0.6, 0.12 }, { 0.65, 0 }, { 1, 0.05 },
  { 1, 0.5 }, { 0.85, 0.6 }, { 1, 0.7 }, { 0.9, 1 }, { 0.1, 1 },
};

/* A jug, a leaning pane, and a sill that stands out beyond the glass. */
static const PpPoint parts[][4] = {
  { { 0.35, 0.55 }, { 0.65, 0.55 }, { 0.7, 0.95 }, { 0.3, 0.95 } },
  { { 0.2, 0.1 }, { 0.5, 0.2 }, { 0.45, 0.6 }, { 0.15, 0.5 } },
  { { 0.6, 0.8 }, { 1.1, 0.85 }, { 1.1, 0.95 }, { 0.6, 0.9 } },
};

static PpOutline *
stretch_ring (const PpPoint *points,
              guint          n,
              double         width,
              double         height)
{
  g_autofree PpPoint *ring = g_new (PpPoint, n + 1);

  for (guint i = 0; i <= n; i++)
    ring[i] = (PpPoint) { width * points[i % n].x, height * points[i % n].y };
  return pp_outline_new_ring (ring, n + 1);
}

static PpPanel *
fuse (PpPanel *panel,
      guint    which)
{
  g_autofree char *id = g_strdup_printf ("part%u", which);
  g_autoptr (PpOutline) outline = stretch_ring (parts[which], G_N_ELEMENTS (parts[which]),
                                                panel->background->width,
                                                panel->background->height);
  PpFused draft = pp_fused_draft ();
  g_autoptr (PpFused) part = NULL;

  draft.id = id;
  draft.thickness = 3;
  draft.outline = outline;
  draft.glass.transmittance = 0.3 * which;
  part = pp_fused_new (&draft, NULL);
  return meadow_step (panel, pp_edit_set_fused (panel, part, NULL));
}

/* Pieces in a heap on glass with bays, fused parts under them. */
static PpPanel *
new_free (void)
{
  PpPanel *panel = meadow_new (IN_BAYS, HEAP_ROOM);
  PpBackground draft = *panel->background;
  g_autoptr (PpOutline) outline = stretch_ring (bays, G_N_ELEMENTS (bays), draft.width,
                                                draft.height);
  g_autoptr (PpBackground) glass = NULL;

  draft.shape = PP_SHAPE_FREE;
  draft.outline = outline;
  glass = pp_background_new (&draft, NULL);
  panel = meadow_step (panel, pp_edit_set_background (panel, glass, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    panel = fuse (panel, i);
  return panel;
}

static PpPanel *
load (const char *name)
{
  g_autofree char *path = g_strdup_printf ("%s/samples/%s.petalpane", g_getenv ("PP_SOURCE_ROOT"),
                                           name);

  return pp_panel_load (path, NULL);
}

#define STEEPER 4

/* Pieces that lines of sight meet more than once, looked at from far aside. */
static PpPanel *
new_steep (void)
{
  PpPanel *panel = meadow_new (STREWN, MEADOW_ROOM);
  PpDisplay display = *panel->display;
  g_autoptr (PpDisplay) aslant = NULL;

  display.sideways = 60;
  display.updown = 40;
  aslant = pp_display_new (&display, NULL);
  panel = meadow_step (panel, pp_edit_set_display (panel, aslant, NULL));
  for (guint i = 0; i < panel->tray->len; i++)
    {
      PpPiece draft = *pp_panel_piece (panel, i);
      g_autoptr (PpPiece) piece = NULL;

      draft.form.rise *= STEEPER;
      piece = pp_piece_new (&draft, NULL);
      panel = meadow_step (panel, pp_edit_set_piece (panel, piece, NULL));
    }
  return panel;
}

/* The panel of a row. */
static PpPanel *
invent (const char *name)
{
  if (g_str_equal (name, "strewn"))
    return meadow_new (STREWN, MEADOW_ROOM);
  if (g_str_equal (name, "steep"))
    return new_steep ();
  return g_str_equal (name, "free") ? new_free () : load (name);
}

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
move_part (GRand         *dice,
           const PpPanel *panel)
{
  guint which = (guint) g_rand_int_range (dice, 0, (int) panel->fused->len);

  return pp_edit_move_fused (panel, pp_panel_fused (panel, which)->id,
                             g_rand_double_range (dice, -9, 9), g_rand_double_range (dice, -9, 9),
                             NULL);
}

static PpPanel *
change_ground (GRand         *dice,
               const PpPanel *panel)
{
  PpBackground glass = *panel->background;
  g_autoptr (PpBackground) thicker = NULL;

  if (panel->fused->len > 0 && g_rand_boolean (dice))
    return move_part (dice, panel);
  if (g_rand_boolean (dice))
    return pp_edit_set_units (panel, panel->units == PP_UNITS_MM ? PP_UNITS_INCH : PP_UNITS_MM);
  if (g_rand_boolean (dice))
    return with_limit (panel, PP_LIMIT_STEADY, g_rand_double_range (dice, 1, 6));
  glass.thickness += 0.5;
  thicker = pp_background_new (&glass, NULL);
  return pp_edit_set_background (panel, thicker, NULL);
}

/* The first above a random one that a prop holds up; 0 if there is none. */
static guint
find_propped (GRand         *dice,
              const PpCheck *check)
{
  for (guint i = (guint) g_rand_int_range (dice, 1, (int) check->n); i < check->n; i++)
    if (check->rests[i]->has_prop)
      return i;
  return 0;
}

/* Something below it comes with the corner nearest to a propped piece right under the prop's foot, so
 * that it hardly meets that piece; or nothing does. */
static PpPanel *
slip_under_prop (GRand         *dice,
                 const PpCheck *check)
{
  guint held = find_propped (dice, check), n;
  guint which = (guint) g_rand_int_range (dice, 0, (int) MAX (held, 1));
  const char *ids[] = { pp_panel_placement (check->panel, which)->id, NULL };
  const PpPoint *ring = pp_outline_get_ring (check->scene->bodies[which]->outline, 0, &n);
  const PpPoint *near = ring, foot = check->rests[held]->prop;
  PpPoint middle = check->scene->bodies[held]->centroid;
  PpPoint away = { foot.x - middle.x, foot.y - middle.y };

  if (held == 0)
    return pp_edit_move (check->panel, ids, 1, 1, NULL);
  for (guint i = 0; i < n; i++)
    if (ring[i].x * away.x + ring[i].y * away.y < near->x * away.x + near->y * away.y)
      near = &ring[i];
  return pp_edit_move (check->panel, ids, foot.x - near->x, foot.y - near->y, NULL);
}

static PpPanel *
edit (GRand         *dice,
      const PpCheck *check,
      double         reach)
{
  const PpPanel *panel = check->panel;

  switch (g_rand_int_range (dice, 0, 12))
    {
    case 0:
      return turn (dice, panel);
    case 1:
      return restack (dice, panel);
    case 2:
      return place_or_remove (dice, panel);
    case 3:
      return change_ground (dice, panel);
    case 4:
    case 5:
      return slip_under_prop (dice, check);
    default:
      return drag (dice, panel, reach);
    }
}

/* What is written reads back exactly, so that one text is one answer; what it leaves out is asked
 * apart. */
static void
compare (const PpCheck *again,
         const PpCheck *anew)
{
  g_autoptr (GString) one = pp_check_write (again, NULL, NULL);
  g_autoptr (GString) other = pp_check_write (anew, NULL, NULL);

  g_assert_cmpstr (one->str, ==, other->str);
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
  g_autoptr (GRand) dice = g_rand_new_with_seed (row->seed);
  PpPanel *panel = invent (row->panel);
  PpCheck *check;
  PpOrder *order;

  g_assert_nonnull (panel);
  check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  order = pp_order_new (check);
  for (int step = 0; step < STEPS; step++)
    {
      PpPanel *next = edit (dice, check, row->reach);
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
  g_autoptr (GRand) dice = g_rand_new_with_seed (6);
  PpPanel *panel = load ("estuary-meadow"), *next;
  const char *ids[] = { NULL, NULL };
  g_autoptr (PpCheck) before = NULL;
  g_autoptr (PpCheck) again = NULL;
  g_autoptr (PpCheck) anew = NULL;

  g_assert_nonnull (panel);
  for (guint i = 0; i < HEAPED; i++)
    {
      const char *piece = pp_panel_piece (panel, i % panel->tray->len)->id;
      PpPose pose = { .rotation = 9.0 * i };

      pose.x = g_rand_double_range (dice, 180, 220);
      pose.y = g_rand_double_range (dice, 180, 220);
      panel = meadow_step (panel, pp_edit_place (panel, piece, pose, NULL, NULL));
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
      g_autofree char *path = g_strdup_printf ("/check-again/%s/%u", rows[i].panel, rows[i].seed);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_func ("/check-again/heap", test_heap);
  return g_test_run ();
}
