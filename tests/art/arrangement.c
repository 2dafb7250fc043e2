/* arrangement.c: a small arrangement on the glass, for the tests of the picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Filled by hand, so that these tests hold the drawing against plain numbers and nothing else.
 */
#include "arrangement.h"

static PpOutline *
make_rectangle (double x0,
                double y0,
                double x1,
                double y1)
{
  const PpPoint corners[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  return pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
}

static PpOutline *
place_rectangle (const PpFrame *frame)
{
  const PpPoint corners[]
    = { pp_frame_to_panel (frame, (PpPoint) { 0, 0 }),
        pp_frame_to_panel (frame, (PpPoint) { 20, 0 }),
        pp_frame_to_panel (frame, (PpPoint) { 20, 10 }),
        pp_frame_to_panel (frame, (PpPoint) { 0, 10 }) };

  return pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
}

static GBytes *
make_art (void)
{
  static const char svg[] = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 20 10'>"
                            "<rect width='20' height='10' fill='#00f'/>"
                            "<rect x='10' width='10' height='10' fill='#f00'/></svg>";

  return g_bytes_new_static (svg, sizeof svg - 1);
}

static void
place (Arrangement       *self,
       const PpPlacement *placement)
{
  self->placement = *placement;
  self->body = (PpBody) { .placement = &self->placement,
                          .piece = &self->piece,
                          .frame = pp_frame_of (&self->placement) };
  self->body.outline = place_rectangle (&self->body.frame);
  self->body.box = pp_outline_get_box (self->body.outline);
  self->body.cells = pp_cells_new (self->body.outline);
  pp_heights_init (&self->body.heights, &self->piece);
  self->bodies[0] = &self->body;
  self->scene.bodies = self->bodies;
  self->pockets[0] = PP_NO_INDEX;
  self->scene.pockets = self->pockets;
  self->scene.n_bodies = 1;
}

void
arrangement_init (Arrangement       *self,
                  const PpPlacement *placement,
                  gboolean           with_art)
{
  const PpGlass clear = { .transmittance = 0.9, .refractive_index = 1.52, .colour = "#eef4f2" };
  const PpGlass amber = { .transmittance = 0.4, .refractive_index = 1.52, .colour = "#c98a2b" };

  *self = (Arrangement) { 0 };
  self->background = (PpBackground) { .shape = PP_SHAPE_RECTANGLE, .width = 100, .height = 80,
                                      .thickness = 6, .glass = clear };
  self->fused = (PpFused) { .id = "jug", .outline = make_rectangle (10, 55, 40, 75),
                            .thickness = 3, .glass = amber };
  self->holes[0] = (PpHole) { .id = "a", .x = 20, .y = 10, .diameter = 6, .drilled = TRUE };
  self->holes[1] = (PpHole) { .id = "b", .x = 80, .y = 10, .diameter = 6 };
  self->wire = (PpWire) { .from = "a", .to = "b", .diameter = 1.2, .knot_diameter = 8 };
  self->piece = (PpPiece) { .id = "dock", .kind = PP_KIND_LEAF, .thickness = 5,
                            .colour = "#00a000", .outline = make_rectangle (0, 0, 20, 10),
                            .art = with_art ? make_art () : NULL };
  self->panel = (PpPanel) { .background = &self->background, .wire = &self->wire,
                            .fused = g_ptr_array_new (), .holes = g_ptr_array_new (),
                            .tray = g_ptr_array_new () };
  g_ptr_array_add (self->panel.fused, &self->fused);
  g_ptr_array_add (self->panel.holes, &self->holes[0]);
  g_ptr_array_add (self->panel.holes, &self->holes[1]);
  g_ptr_array_add (self->panel.tray, &self->piece);
  self->scene = (PpScene) { .panel = &self->panel,
                            .background_outline = make_rectangle (0, 0, 100, 80),
                            .knots = { 0, 1 },
                            .n_knots = 2 };
  if (placement != NULL)
    place (self, placement);
  self->gallery = pp_gallery_new (&self->panel, NULL);
}

void
arrangement_clear (Arrangement *self)
{
  pp_gallery_unref (self->gallery);
  pp_outline_unref (self->fused.outline);
  pp_outline_unref (self->piece.outline);
  pp_outline_unref (self->scene.background_outline);
  pp_outline_unref (self->body.outline);
  g_clear_pointer (&self->body.cells, pp_cells_unref);
  g_clear_pointer (&self->body.relief, pp_relief_free);
  g_clear_pointer (&self->piece.art, g_bytes_unref);
  g_ptr_array_unref (self->panel.fused);
  g_ptr_array_unref (self->panel.holes);
  g_ptr_array_unref (self->panel.tray);
}
