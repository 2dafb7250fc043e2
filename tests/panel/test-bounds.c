/* test-bounds.c: how much may lie on one panel, to just within and just beyond.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/bounds.h"
#include "panel/panel-error.h"

#include <string.h>

#define GLASS 3000.0 /* mm a side, the largest there is */

/* A rectangle; where `teeth` is not 0 its upper side runs down to near the lower and back so often;
 * where `corners` is not 0 it has so many, all but four on its upper side. */
typedef struct
{
  double width;
  double height;
  guint  teeth;
  guint  corners;
} Shape;

static PpOutline *
make_outline (Shape   shape,
              PpPoint at)
{
  guint n = shape.teeth > 0 ? 2 * shape.teeth : shape.corners > 4 ? shape.corners - 2 : 2;
  g_autofree PpPoint *p = g_new (PpPoint, n + 2);

  for (guint i = 0; i < n; i++)
    p[i] = (PpPoint) { at.x + shape.width * i / (n - 1),
                       at.y + (shape.teeth > 0 && i % 2 == 1 ? shape.height - 1 : 0) };
  p[n] = (PpPoint) { at.x + shape.width, at.y + shape.height };
  p[n + 1] = (PpPoint) { at.x, at.y + shape.height };
  return pp_outline_new_ring (p, n + 2);
}

typedef struct
{
  const char *name;
  Shape       piece;
  guint       copies;
  double      far;   /* mm: from there on, both ways, `copies` lie */
  double      fused; /* mm: a fused part of 100 mm ends there, both ways; 0: none */
  double      hole;  /* mm: a hole of 2 mm lies there, both ways; 0: none */
  const char *says;  /* NULL: it may be */
} Row;

static const Row rows[] = {
  { "covered/within", { 1000, 1000 }, 12, 1000, 0, 0, NULL },
  { "covered/beyond", { 1000, 1000 }, 13, 1000, 0, 0, "12 m²" },
  { "piece/within", { 1500, 1000 }, 1, 1000, 0, 0, NULL },
  { "piece/beyond", { 1501, 1000 }, 1, 1000, 0, 0, "1.5 m²" },
  { "room/fused-within", { 10, 10 }, 1, 10, 5000, 0, NULL },
  { "room/fused-beyond", { 10, 10 }, 1, 10, 5001, 0, "25 m²" },
  { "room/pieces-beyond", { 1200, 1200 }, 2, 4400, 4500, 0, "25 m²" },
  { "room/floats", { 1200, 1200 }, 2, 99000, 4500, 0, NULL },
  { "length/within", { 1000, 1000, 4990 }, 1, 1000, 0, 0, NULL },
  { "length/beyond", { 1000, 1000, 4990 }, 2, 1000, 0, 0, "10 km" },
  { "positions/within", { 10, 10, 0, 9999 }, 200, 1000, 0, 0, NULL },
  { "positions/beyond", { 10, 10, 0, 9999 }, 201, 1000, 0, 0, "2 million" },
  /* Their upper sides, of 0.001 mm, lie in a row; about the hole are those within 1 mm of it. */
  { "about-hole/within", { 10, 10, 0, 9999 }, 5, 1000, 0, 1000, NULL },
  { "about-hole/beyond", { 10, 10, 0, 9999 }, 6, 1000, 0, 1000, "6000 sides" },
  { "about-hole/far", { 10, 10, 0, 9999 }, 6, 1000, 0, 998, NULL },
  { "many-as-made", { 120, 120, 0, 999 }, 400, 1000, 0, 0, NULL },
};

static PpPanel *
make_panel (const Row *row,
            GError   **error)
{
  g_autoptr (GPtrArray) fused = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_fused_unref);
  g_autoptr (GPtrArray) holes = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_hole_unref);
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autoptr (GPtrArray) placements
      = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  g_autoptr (PpOutline) outline = make_outline (row->piece, (PpPoint) { 0, 0 });
  g_autoptr (PpOutline) part = make_outline ((Shape) { 100, 100 },
                                             (PpPoint) { row->fused - 100, row->fused - 100 });
  g_autoptr (PpBackground) background = NULL;
  PpBackground glass = pp_background_draft ();
  PpFused jug = pp_fused_draft ();
  PpHole drilled = pp_hole_draft ();
  PpPiece piece = pp_piece_draft ();
  PpPanel draft = pp_panel_draft ();

  glass.width = glass.height = GLASS;
  glass.thickness = 6;
  background = pp_background_new (&glass, NULL);
  draft.background = background;
  jug.id = "jug";
  jug.thickness = 3;
  jug.outline = part;
  drilled.id = "left";
  drilled.x = drilled.y = row->hole;
  drilled.diameter = 2;
  if (row->hole > 0)
    g_ptr_array_add (holes, pp_hole_new (&drilled, NULL));
  if (row->fused > 0)
    g_ptr_array_add (fused, pp_fused_new (&jug, NULL));
  piece.id = "fern";
  piece.thickness = 4;
  piece.outline = outline;
  g_ptr_array_add (tray, pp_piece_new (&piece, NULL));
  for (guint i = 0; i < row->copies; i++)
    {
      g_autofree char *id = g_strdup_printf ("p%u", i);
      PpPlacement placement = pp_placement_draft ();

      placement.id = id;
      placement.piece = "fern";
      placement.x = placement.y = row->far;
      g_ptr_array_add (placements, pp_placement_new (&placement, NULL));
    }
  draft.fused = fused;
  draft.holes = holes;
  draft.tray = tray;
  draft.placements = placements;
  return pp_panel_new (&draft, error);
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = make_panel (row, &error);

  if (row->says == NULL)
    g_assert_no_error (error);
  else
    {
      g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT);
      g_assert_nonnull (strstr (error->message, row->says));
      g_assert_true (g_str_has_prefix (error->message, "placements: "));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/bounds/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  return g_test_run ();
}
