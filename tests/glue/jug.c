/* jug.c: a fused jug with a pocket for stems.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "jug.h"

#include "rings.h"

void
jug_add (TestDraft *draft)
{
  g_autoptr (PpOutline) outline = test_outline ("70 130, 130 130, 130 190, 70 190");
  g_autoptr (PpOutline) insert = test_outline ("90 110, 110 110, 110 180, 90 180");
  g_autoptr (GError) error = NULL;
  PpFused fused = pp_fused_draft ();

  fused.id = "jug";
  fused.thickness = 3;
  fused.outline = outline;
  fused.has_pocket = TRUE;
  fused.pocket.insert = insert;
  fused.pocket.insert_thickness = 6;
  g_ptr_array_add (draft->panel.fused, pp_fused_new (&fused, &error));
  g_assert_no_error (error);
}

void
jug_place_stem (TestDraft  *draft,
                const char *id,
                double      x,
                double      y)
{
  g_autoptr (GError) error = NULL;
  PpPlacement placement = pp_placement_draft ();

  placement.id = id;
  placement.piece = "stem";
  placement.x = x;
  placement.y = y;
  placement.pocket = "jug";
  g_ptr_array_add (draft->panel.placements, pp_placement_new (&placement, &error));
  g_assert_no_error (error);
}
