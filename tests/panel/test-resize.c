/* test-resize.c: another size of glass under the same arrangement.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/resize.h"

#include "panel/edit.h"
#include "panel/panel-error.h"

#include "small-panel.h"

/* On glass 300 x 420 mm: where a hole was, the new size, where it is then. */
static const struct
{
  PpPoint before;
  PpPoint size;
  PpPoint after;
} rows[] = {
  { { 40, 50 }, { 300, 420 }, { 40, 50 } },
  { { 40, 50 }, { 400, 500 }, { 40, 50 } },    /* near the left and the top */
  { { 260, 50 }, { 400, 500 }, { 360, 50 } },  /* near the right */
  { { 260, 400 }, { 400, 500 }, { 360, 480 } }, /* and the bottom */
  { { 150, 50 }, { 400, 420 }, { 200, 50 } },  /* the middle stays the middle */
  { { 150, 210 }, { 100, 600 }, { 50, 300 } },
  { { 260, 50 }, { 200, 420 }, { 160, 50 } },
  { { 40, 50 }, { 60, 420 }, { 30, 50 } },     /* not past the middle */
  { { 260, 50 }, { 60, 420 }, { 30, 50 } },
};

static PpPanel *
make_panel (PpPoint hole_at)
{
  const SmallPanel words = { .tray = "oxeye", .placements = "p1 p2" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autoptr (PpHole) hole = NULL;
  PpHole draft = pp_hole_draft ();

  draft.id = "hole";
  draft.x = hole_at.x;
  draft.y = hole_at.y;
  draft.diameter = 6;
  hole = pp_hole_new (&draft, NULL);
  return pp_edit_set_hole (panel, hole, NULL);
}

static void
test_holes (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (PpPanel) panel = make_panel (rows[i].before);
      g_autoptr (PpPanel) next = pp_edit_resize (panel, rows[i].size.x, rows[i].size.y, NULL);
      const PpHole *hole = pp_panel_hole (next, 0);

      g_test_message ("row %u", i);
      g_assert_cmpfloat (next->background->width, ==, rows[i].size.x);
      g_assert_cmpfloat (next->background->height, ==, rows[i].size.y);
      g_assert_cmpfloat (hole->x, ==, rows[i].after.x);
      g_assert_cmpfloat (hole->y, ==, rows[i].after.y);
      /* Pieces stay, the very same records. */
      for (guint k = 0; k < panel->placements->len; k++)
        g_assert_true (pp_panel_placement (next, k) == pp_panel_placement (panel, k));
    }
}

/* Holes 40 mm from either side, a wire with 20 mm of slack. */
static PpPanel *
make_wired (PpPanel    *bare,
            const char *knotted_at)
{
  g_autoptr (PpPanel) panel = bare;
  g_autoptr (PpPanel) two = NULL;
  g_autoptr (PpHole) hole = NULL;
  g_autoptr (PpWire) wire = NULL;
  PpHole other = *pp_panel_hole (panel, 0);
  PpWire draft = pp_wire_draft ();

  other.id = "other";
  other.x = panel->background->width - 40;
  hole = pp_hole_new (&other, NULL);
  two = pp_edit_set_hole (panel, hole, NULL);
  draft.from = "hole";
  draft.to = "other";
  draft.length = other.x - 40 + 20;
  draft.knotted_at = knotted_at;
  wire = pp_wire_new (&draft, NULL);
  return pp_edit_set_wire (two, wire, NULL);
}

static void
test_slack (void)
{
  g_autoptr (PpPanel) panel = make_wired (make_panel ((PpPoint) { 40, 50 }), NULL);
  g_autoptr (PpPanel) wide = pp_edit_resize (panel, 400, 400, NULL);
  g_autoptr (PpPanel) knotted = make_wired (make_panel ((PpPoint) { 40, 50 }),
                                            "2026-06-01T10:00:00+01:00");
  g_autoptr (PpPanel) moved = NULL, held = NULL;
  g_autoptr (PpHole) hole = NULL;
  PpHole draft = *pp_panel_hole (panel, 1);

  g_assert_cmpfloat (wide->wire->length, ==, 400 - 2 * 40 + 20);
  draft.x = 40;
  draft.y = 125;
  hole = pp_hole_new (&draft, NULL);
  moved = pp_edit_move_hole (panel, hole, NULL);
  g_assert_cmpfloat (moved->wire->length, ==, 75 + 20);
  held = pp_edit_move_hole (knotted, hole, NULL);
  g_assert_cmpfloat (held->wire->length, ==, knotted->wire->length);
}

static void
test_corner (void)
{
  g_autoptr (PpPanel) panel = make_panel ((PpPoint) { 40, 50 });
  g_autoptr (PpBackground) background = NULL;
  g_autoptr (PpPanel) round = NULL, small = NULL, large = NULL;
  PpBackground draft = *panel->background;

  draft.corner_radius = 60;
  background = pp_background_new (&draft, NULL);
  round = pp_edit_set_background (panel, background, NULL);
  small = pp_edit_resize (round, 80, 200, NULL);
  large = pp_edit_resize (round, 800, 600, NULL);
  g_assert_cmpfloat (small->background->corner_radius, ==, 40);
  g_assert_cmpfloat (large->background->corner_radius, ==, 60);
}

static void
test_refused (void)
{
  static const PpPoint sizes[] = { { 0, 100 }, { 100, -1 }, { NAN, 100 }, { 100, INFINITY } };
  g_autoptr (PpPanel) panel = make_panel ((PpPoint) { 40, 50 });

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (pp_edit_resize (panel, sizes[i].x, sizes[i].y, &error));
      g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
    }
}

static void
test_free_shape (void)
{
  g_autoptr (PpPanel) panel = make_panel ((PpPoint) { 40, 50 });
  g_autoptr (PpOutline) square = small_square ();
  g_autoptr (PpBackground) background = NULL;
  g_autoptr (PpPanel) odd = NULL;
  g_autoptr (GError) error = NULL;
  PpBackground draft = *panel->background;

  draft.shape = PP_SHAPE_FREE;
  draft.outline = square;
  background = pp_background_new (&draft, NULL);
  odd = pp_edit_set_background (panel, background, NULL);
  g_assert_null (pp_edit_resize (odd, 400, 400, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/resize/holes", test_holes);
  g_test_add_func ("/resize/slack", test_slack);
  g_test_add_func ("/resize/corner", test_corner);
  g_test_add_func ("/resize/refused", test_refused);
  g_test_add_func ("/resize/free-shape", test_free_shape);
  return g_test_run ();
}
