/* test-vase.c: vases from measures, their pockets, and what is fused from a piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/vase.h"

#include "panel/edit.h"
#include "panel/panel-error.h"
#include "panel/tolerance.h"

#include "small-panel.h"

#define STEPS 50 /* of a side, as in vase.c */
#define SEAM 10.0

/* Widths between inner knots by PchipInterpolator of scipy 1.10.1, which has the same slopes there. */
static const struct
{
  PpVase vase;
  guint  step;
  double width;
} widths[] = {
  { { PP_VASE_JUG, 150, 90, 120, 80 }, 8, 73.8 },
  { { PP_VASE_JUG, 150, 90, 120, 80 }, 10, 74.78726062299663 },
  { { PP_VASE_JUG, 150, 90, 120, 80 }, 15, 84.03333607298431 },
  { { PP_VASE_JUG, 150, 90, 120, 80 }, 24, 109.76666392701568 },
  { { PP_VASE_JUG, 150, 90, 120, 80 }, 31, 120 },
  { { PP_VASE_JUG, 150, 50, 60, 90 }, 10, 41.23205074810682 }, /* wider all the way down */
  { { PP_VASE_JUG, 150, 50, 60, 90 }, 20, 47.83868205206674 },
  { { PP_VASE_JUG, 150, 50, 60, 90 }, 28, 56.62935041178798 },
  { { PP_VASE_BOTTLE, 200, 40, 60, 100 }, 22, 45.45209738250834 },
  { { PP_VASE_BOTTLE, 200, 40, 60, 100 }, 30, 58.40668233801447 },
  { { PP_VASE_BOTTLE, 200, 40, 100, 60 }, 15, 40 },
  { { PP_VASE_BOTTLE, 200, 40, 100, 60 }, 18, 45.537109375 },
  { { PP_VASE_BOTTLE, 200, 40, 100, 60 }, 26, 86.083984375 },
  { { PP_VASE_BOTTLE, 200, 40, 100, 60 }, 30, 99.326171875 },
};

static void
test_widths (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      g_autoptr (PpOutline) outline = pp_vase_outline (&widths[i].vase, (PpPoint) { 0, 0 });
      guint step = widths[i].step, n;
      const PpPoint *p = pp_outline_get_ring (outline, 0, &n);

      g_assert_cmpfloat_with_epsilon (p[2 * STEPS + 1 - step].x - p[step].x, widths[i].width, PP_TIE);
    }
}

static const PpVase vases[] = {
  { PP_VASE_JUG, 150, 90, 120, 80 },    { PP_VASE_JUG, 33.3, 5, 70, 5 },
  { PP_VASE_PAIL, 120, 100, 100, 70 },  { PP_VASE_PAIL, 60, 40, 66, 66 },
  { PP_VASE_BOWL, 80, 160, 170, 60 },   { PP_VASE_BOTTLE, 200, 40, 100, 60 },
  { PP_VASE_BOTTLE, 25.4, 101.6, 5, 9 },
};

/* Foot and height are where they were said to be, and no width swings over the widest one. */
static void
test_box (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (vases); i++)
    {
      const PpVase *vase = &vases[i];
      g_autoptr (PpOutline) outline = pp_vase_outline (vase, (PpPoint) { 150, 400 });
      PpBox box = pp_outline_get_box (outline);
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, 0, &n);

      g_assert_cmpfloat_with_epsilon (box.y1, 400, PP_TIE);
      g_assert_cmpfloat_with_epsilon (pp_box_height (box), vase->height, PP_TIE);
      g_assert_cmpfloat_with_epsilon (pp_box_middle (box).x, 150, PP_TIE);
      g_assert_cmpfloat_with_epsilon (pp_box_width (box),
                                      fmax (fmax (vase->mouth, vase->widest), vase->foot), PP_TIE);
      g_assert_cmpfloat_with_epsilon (p[2 * STEPS + 1].x - p[0].x, vase->mouth, PP_TIE);
      g_assert_cmpfloat_with_epsilon (p[STEPS + 1].x - p[STEPS].x, vase->foot, PP_TIE);
    }
}

static PpPoint
shift (PpPoint       p,
       gconstpointer data)
{
  return (PpPoint) { p.x + 37.123, p.y - 211.7 };
}

/* Its measures stand in the outline, also of one that was moved about. */
static void
test_read (void)
{
  g_autoptr (PpOutline) square = small_square ();
  PpVase own = pp_vase_read (square);

  for (guint i = 0; i < G_N_ELEMENTS (vases); i++)
    {
      g_autoptr (PpOutline) outline = pp_vase_outline (&vases[i], (PpPoint) { 150, 400 });
      g_autoptr (PpOutline) moved = pp_outline_map (outline, shift, NULL);
      PpVase read = pp_vase_read (moved);

      g_assert_cmpint (read.kind, ==, vases[i].kind);
      g_assert_cmpfloat_with_epsilon (read.height, vases[i].height, PP_TIE);
      g_assert_cmpfloat_with_epsilon (read.mouth, vases[i].mouth, PP_TIE);
      g_assert_cmpfloat_with_epsilon (read.widest, vases[i].widest, PP_TIE);
      g_assert_cmpfloat_with_epsilon (read.foot, vases[i].foot, PP_TIE);
    }
  g_assert_cmpint (own.kind, ==, PP_VASE_OWN);
  g_assert_cmpfloat (own.widest, ==, 20);
  g_assert_cmpfloat (own.height, ==, 20);
}

static double
segment_distance (PpPoint a,
                  PpPoint b,
                  PpPoint p)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);

  t = CLAMP (t, 0, 1);
  return hypot (p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/* Of the slot's corners under the rim from the vase's sides and foot, and the other way round. */
static double
find_seam (const PpOutline *vase,
           const PpOutline *slot)
{
  double top = pp_outline_get_box (vase).y0, least = INFINITY;
  guint n, m;
  const PpPoint *p = pp_outline_get_ring (vase, 0, &n), *q = pp_outline_get_ring (slot, 0, &m);

  for (guint i = 0; i + 1 < n; i++)
    for (guint j = 0; j + 1 < m; j++)
      {
        if (fmax (p[i].y, p[i + 1].y) < top + 0.5)
          continue;
        if (q[j].y >= top)
          least = fmin (least, segment_distance (p[i], p[i + 1], q[j]));
        least = fmin (least, segment_distance (q[j], q[j + 1], p[i].y > p[i + 1].y ? p[i] : p[i + 1]));
      }
  return least;
}

static PpPanel *
make_panel (void)
{
  const SmallPanel words = { .tray = "oxeye sedge", .placements = "p1 p2:sedge p3" };

  return small_panel_good (&words);
}

static void
test_largest_slot (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  const PpVase small = { PP_VASE_JUG, 30, 20, 25, 15 };
  g_autoptr (PpOutline) too_small = pp_vase_outline (&small, (PpPoint) { 0, 0 });
  double width, depth;

  for (PpVaseKind kind = PP_VASE_JUG; kind < PP_VASE_OWN; kind++)
    {
      PpVase vase = pp_vase_wish (panel, kind);
      g_autoptr (PpOutline) outline = pp_vase_outline (&vase, (PpPoint) { 150, 400 });
      g_autoptr (PpOutline) slot = NULL;
      double seam;

      g_assert_true (pp_vase_largest_slot (outline, SEAM, &width, &depth));
      slot = pp_vase_slot (outline, 150, width, depth);
      seam = find_seam (outline, slot);
      g_assert_cmpfloat (seam, >=, SEAM);
      g_assert_cmpfloat (seam, <=, 2.5 * SEAM);
      g_assert_cmpfloat (pp_outline_get_box (slot).y0, <, pp_outline_get_box (outline).y0);
      g_assert_cmpfloat_with_epsilon (pp_box_width (pp_outline_get_box (slot)), width, PP_TIE);
    }
  g_assert_false (pp_vase_largest_slot (too_small, SEAM, &width, &depth));
}

static const PpFused *
get_fused (const PpPanel *panel,
           const char    *id)
{
  return pp_panel_find_fused (panel, id, NULL);
}

static void
test_fuse_vase (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autofree char *id = NULL, *second = NULL;
  g_autoptr (PpPanel) next = pp_edit_fuse_vase (panel, "Jug", &id, NULL);
  g_autoptr (PpPanel) more = pp_edit_fuse_vase (next, "Jug", &second, NULL);
  const PpFused *fused = get_fused (next, id);

  g_assert_cmpuint (panel->fused->len, ==, 0);
  g_assert_true (next->placements == panel->placements || next->placements->len == 3);
  g_assert_cmpstr (fused->name, ==, "Jug");
  g_assert_cmpint (fused->role, ==, PP_ROLE_VASE);
  g_assert_true (fused->has_pocket);
  g_assert_cmpint (pp_vase_read (fused->outline).kind, ==, PP_VASE_JUG);
  g_assert_cmpstr (second, !=, id);
  g_assert_true (pp_outline_get_box (fused->outline).y1 < panel->background->height);
}

/* The panel with a jug that has p2 in its pocket. */
static PpPanel *
make_with_stem (char **id)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpPanel) with = pp_edit_fuse_vase (panel, "Jug", id, NULL);

  return pp_edit_set_pocket (with, "p2", *id, NULL);
}

static void
test_move (void)
{
  g_autofree char *id = NULL;
  g_autoptr (PpPanel) panel = make_with_stem (&id);
  g_autoptr (PpPanel) next = pp_edit_move_fused (panel, id, 12, -3.5, NULL);
  const PpFused *before = get_fused (panel, id), *after = get_fused (next, id);
  const char * const moved[] = { "p2", NULL };
  g_autoptr (PpPanel) by_hand = pp_edit_move (panel, moved, 12, -3.5, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpfloat_with_epsilon (pp_outline_get_box (after->outline).x0,
                                  pp_outline_get_box (before->outline).x0 + 12, PP_TIE);
  g_assert_cmpfloat_with_epsilon (pp_outline_get_box (after->pocket.insert).y1,
                                  pp_outline_get_box (before->pocket.insert).y1 - 3.5, PP_TIE);
  for (guint i = 0; i < 3; i++)
    {
      g_assert_cmpfloat (pp_panel_placement (next, i)->x, ==, pp_panel_placement (by_hand, i)->x);
      g_assert_cmpfloat (pp_panel_placement (next, i)->y, ==, pp_panel_placement (by_hand, i)->y);
    }
  g_assert_null (pp_edit_move_fused (panel, "p1", 1, 1, &error));
  small_assert_error (error, PP_PANEL_ERROR_REFERENCE, "There is no “p1”");
}

static PpBox
insert_box (const PpPanel *panel,
            const char    *id)
{
  return pp_outline_get_box (get_fused (panel, id)->pocket.insert);
}

/* A pocket as large as can be stays so; one cut by the maker keeps its measures. */
static void
test_set_vase (void)
{
  g_autofree char *id = NULL;
  g_autoptr (PpPanel) panel = make_with_stem (&id);
  PpVase vase = pp_vase_read (get_fused (panel, id)->outline);
  double foot = pp_outline_get_box (get_fused (panel, id)->outline).y1;
  g_autoptr (PpPanel) taller = NULL, cut = NULL, cut_taller = NULL, pail = NULL;
  double width, depth;

  vase.height += 20;
  vase.mouth += 10;
  taller = pp_edit_set_vase (panel, id, &vase, NULL);
  g_assert_cmpfloat_with_epsilon (pp_outline_get_box (get_fused (taller, id)->outline).y1, foot,
                                  PP_TIE);
  g_assert_cmpfloat_with_epsilon (pp_vase_read (get_fused (taller, id)->outline).mouth, vase.mouth,
                                  PP_TIE);
  g_assert_true (pp_vase_largest_slot (get_fused (taller, id)->outline, SEAM, &width, &depth));
  g_assert_cmpfloat_with_epsilon (pp_box_width (insert_box (taller, id)), width, PP_TIE);
  cut = pp_edit_cut_pocket (panel, id, 21.5, 40, NULL);
  g_assert_cmpfloat_with_epsilon (pp_box_width (insert_box (cut, id)), 21.5, PP_TIE);
  cut_taller = pp_edit_set_vase (cut, id, &vase, NULL);
  g_assert_cmpfloat_with_epsilon (pp_box_width (insert_box (cut_taller, id)), 21.5, PP_TIE);
  g_assert_cmpfloat_with_epsilon (insert_box (cut_taller, id).y1, foot - vase.height + 40, PP_TIE);
  vase = pp_vase_wish (panel, PP_VASE_PAIL);
  pail = pp_edit_set_vase (cut, id, &vase, NULL);
  g_assert_cmpint (pp_vase_read (get_fused (pail, id)->outline).kind, ==, PP_VASE_PAIL);
  g_assert_true (pp_vase_largest_slot (get_fused (pail, id)->outline, SEAM, &width, &depth));
  g_assert_cmpfloat_with_epsilon (pp_box_width (insert_box (pail, id)), width, PP_TIE);
  g_assert_cmpstr (pp_panel_find_placement (pail, "p2", NULL)->pocket, ==, id);
}

static void
test_pocket (void)
{
  g_autofree char *id = NULL;
  g_autoptr (PpPanel) panel = make_with_stem (&id);
  g_autoptr (PpPanel) closed = pp_edit_close_pocket (panel, id, NULL);
  g_autoptr (PpPanel) again = pp_edit_cut_pocket (closed, id, NAN, NAN, NULL);
  g_autoptr (PpPanel) small = NULL;
  g_autoptr (GError) error = NULL;
  const PpVase cup = { PP_VASE_PAIL, 20, 20, 20, 20 };

  g_assert_false (get_fused (closed, id)->has_pocket);
  g_assert_null (pp_panel_find_placement (closed, "p2", NULL)->pocket);
  g_assert_true (pp_outline_near (get_fused (again, id)->pocket.insert,
                                  get_fused (panel, id)->pocket.insert));
  small = pp_edit_set_vase (closed, id, &cup, NULL);
  g_assert_null (pp_edit_cut_pocket (small, id, NAN, NAN, &error));
  small_assert_error (error, PP_PANEL_ERROR_VALUE, "There is no room for a pocket");
}

/* An outline of its own is stretched, with an insert of its own; its foot stays. */
static void
test_own (void)
{
  const SmallPanel words = { .fused = "jug+", .tray = "oxeye", .placements = "p1" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  PpBox before = pp_outline_get_box (get_fused (panel, "jug")->outline);
  PpVase vase = pp_vase_read (get_fused (panel, "jug")->outline);
  g_autoptr (PpPanel) next = NULL, pocket = NULL;
  PpBox box;

  vase.widest = 50;
  vase.height = 70;
  next = pp_edit_set_vase (panel, "jug", &vase, NULL);
  box = pp_outline_get_box (get_fused (next, "jug")->outline);
  g_assert_cmpfloat_with_epsilon (pp_box_width (box), 50, PP_TIE);
  g_assert_cmpfloat_with_epsilon (pp_box_height (box), 70, PP_TIE);
  g_assert_cmpfloat_with_epsilon (box.y1, before.y1, PP_TIE);
  pocket = pp_edit_cut_pocket (next, "jug", 15, 30, NULL);
  g_assert_cmpfloat_with_epsilon (pp_box_width (insert_box (pocket, "jug")), 15, PP_TIE);
  g_assert_cmpfloat_with_epsilon (insert_box (pocket, "jug").y1, box.y0 + 30, PP_TIE);
}

static void
test_fuse_piece (void)
{
  g_autoptr (PpPanel) panel = make_panel ();
  g_autoptr (PpOutline) outline = small_square ();
  g_autofree char *id = NULL;
  g_autoptr (PpPanel) next = pp_edit_fuse_piece (panel, "p3", outline, &id, NULL);
  const PpFused *fused = get_fused (next, id);
  const PpPiece *piece = pp_panel_piece (panel, 0);
  g_autoptr (GError) error = NULL;

  g_assert_null (pp_panel_find_placement (next, "p3", NULL));
  g_assert_true (fused->outline == outline);
  g_assert_cmpfloat (fused->thickness, ==, piece->thickness);
  g_assert_cmpstr (fused->glass.colour, ==, piece->colour);
  g_assert_cmpint (fused->role, ==, PP_ROLE_SHAPE);
  g_assert_false (fused->has_pocket);
  g_assert_null (pp_edit_fuse_piece (panel, "jug", outline, NULL, &error));
  small_assert_error (error, PP_PANEL_ERROR_REFERENCE, "There is no “jug”");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/vase/widths", test_widths);
  g_test_add_func ("/vase/box", test_box);
  g_test_add_func ("/vase/read", test_read);
  g_test_add_func ("/vase/largest-slot", test_largest_slot);
  g_test_add_func ("/vase/fuse-vase", test_fuse_vase);
  g_test_add_func ("/vase/move", test_move);
  g_test_add_func ("/vase/set-vase", test_set_vase);
  g_test_add_func ("/vase/pocket", test_pocket);
  g_test_add_func ("/vase/own", test_own);
  g_test_add_func ("/vase/fuse-piece", test_fuse_piece);
  return g_test_run ();
}
