/* hanging-view-draw.c: the picture, the wire, the hook, the cut seen from the side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Glass and pieces are kept as a picture without wire and holes: while those are dragged it is
 * only laid down, turned as the panel tilts.
 */
#include "config.h"

#include "desk/hanging-view-private.h"

#include "art/draw.h"
#include "desk/canvas-piece.h"
#include "desk/ink.h"
#include "panel/edit.h"
#include "sheet/hanging-side.h"

#include <math.h>

#define PIECES_ALPHA 0.8 /* so that holes and figures stand out */
#define PICTURE_EDGE 8.0 /* mm about the picture, for shadows */
#define SIDE_ALPHA 0.2
#define LIT_PX 20.0

void
pp_hanging_view_drop (PpHangingView *self)
{
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  g_clear_pointer (&self->pictured, pp_panel_unref);
}

/* (transfer full) */
static PpPanel *
make_bare (const PpPanel *panel)
{
  PpPanel *bare = pp_edit_set_wire (panel, NULL, NULL);

  while (bare != NULL && bare->holes->len > 0)
    {
      g_autoptr (PpPanel) before = bare;

      bare = pp_edit_remove_hole (before, pp_panel_hole (before, 0)->id, NULL);
    }
  return bare != NULL ? bare : pp_panel_ref (panel);
}

static gboolean
is_pictured (PpHangingView *self,
             const PpPanel *panel)
{
  const PpPanel *other = self->pictured;

  return other != NULL && other->placements == panel->placements && other->tray == panel->tray
         && other->fused == panel->fused && other->background == panel->background
         && self->picture_scale == self->map.scale;
}

static void
ensure_picture (PpHangingView *self,
                PpGallery     *gallery)
{
  PpScene *present = pp_document_get_scene (self->document);
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  double scale = self->map.scale;
  g_autoptr (PpScene) scene = NULL;
  PpBox box;
  cairo_t *cr;

  if (is_pictured (self, present->panel))
    return;
  pp_hanging_view_drop (self);
  self->pictured = make_bare (present->panel);
  self->picture_scale = scale;
  scene = pp_scene_new (self->pictured, present);
  box = pp_outline_get_box (scene->background_outline);
  for (guint i = 0; i < scene->n_bodies; i++)
    box = pp_box_union (box, scene->bodies[i]->box);
  self->picture_box = pp_box_grow (box, PICTURE_EDGE);
  self->picture = cairo_image_surface_create (CAIRO_FORMAT_ARGB32,
                                              (int) ceil (pp_box_width (self->picture_box) * scale
                                                          * factor),
                                              (int) ceil (pp_box_height (self->picture_box)
                                                          * scale * factor));
  cairo_surface_set_device_scale (self->picture, factor, factor);
  cr = cairo_create (self->picture);
  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -self->picture_box.x0, -self->picture_box.y0);
  pp_draw_scene (cr, scene, gallery, NULL, NULL, NULL);
  cairo_destroy (cr);
}

static void
draw_picture (PpHangingView *self,
              cairo_t       *cr)
{
  PpGallery *gallery = pp_document_get_gallery (self->document);

  if (gallery == NULL)
    return;
  ensure_picture (self, gallery);
  cairo_save (cr);
  cairo_translate (cr, self->map.at.x, self->map.at.y);
  cairo_rotate (cr, self->map.tilt * G_PI / 180);
  cairo_set_source_surface (cr, self->picture,
                            (self->picture_box.x0 - self->map.about.x) * self->map.scale,
                            (self->picture_box.y0 - self->map.about.y) * self->map.scale);
  cairo_paint_with_alpha (cr, PIECES_ALPHA);
  cairo_restore (cr);
}

static void
add_point (PpHangingView *self,
           cairo_t       *cr,
           PpPoint        mm)
{
  PpPoint px = pp_hanging_map_to_px (&self->map, mm);

  cairo_line_to (cr, px.x, px.y);
}

static void
draw_wire (PpHangingView   *self,
           cairo_t         *cr,
           const PpPalette *palette)
{
  PpScene *scene = pp_document_get_scene (self->document);
  gboolean is_chosen = pp_document_get_chosen (self->document) == PP_CHOSEN_WIRE;

  cairo_new_path (cr);
  add_point (self, cr, pp_scene_knot_place (scene, 0));
  if (self->is_hung)
    add_point (self, cr, self->hung.hook);
  add_point (self, cr, pp_scene_knot_place (scene, 1));
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  pp_ink_stroke (cr, palette, &palette->accent, is_chosen ? 3 : 2);
}

/* From the hook down through where the weight is centred, which hangs under it. */
static void
draw_plumb (PpHangingView   *self,
            cairo_t         *cr,
            const PpPalette *palette)
{
  const double dash[] = { 6, 5 };
  PpPoint hook = pp_hanging_map_to_px (&self->map, self->hung.hook);
  PpPoint mass = pp_hanging_map_to_px (&self->map, (PpPoint) { self->mass.x, self->mass.y });
  double radius = PP_HANGING_HOOK_PX - 1;

  cairo_move_to (cr, hook.x, hook.y);
  cairo_line_to (cr, hook.x, mass.y);
  cairo_set_dash (cr, dash, 2, 0);
  pp_ink_stroke (cr, palette, &palette->faint, 1);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_arc (cr, mass.x, mass.y, radius, 0, 2 * G_PI);
  pp_ink_stroke (cr, palette, &palette->ink, 1.5);
  for (guint quarter = 0; quarter < 2; quarter++)
    {
      cairo_move_to (cr, mass.x, mass.y);
      cairo_arc (cr, mass.x, mass.y, radius, (quarter * 2) * G_PI / 2,
                 (quarter * 2 + 1) * G_PI / 2);
      cairo_close_path (cr);
    }
  pp_palette_set (cr, &palette->ink, 1);
  cairo_fill (cr);
}

static void
draw_holes (PpHangingView   *self,
            cairo_t         *cr,
            const PpPalette *palette)
{
  const PpPanel *panel = pp_document_get_panel (self->document);

  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);
      PpPoint at = pp_hanging_map_to_px (&self->map, (PpPoint) { hole->x, hole->y });
      gboolean is_chosen = pp_document_is_chosen (self->document, hole->id);

      cairo_new_sub_path (cr);
      cairo_arc (cr, at.x, at.y, pp_hanging_view_get_hole_px (self, hole), 0, 2 * G_PI);
      pp_palette_set (cr, &palette->paper, 0.9);
      cairo_fill_preserve (cr);
      pp_ink_stroke (cr, palette, is_chosen ? &palette->accent : &palette->ink,
                     is_chosen ? 3 : 2);
    }
}

/* A round head with a point in it: taken hold of, it makes the wire longer. */
static void
draw_hook (PpHangingView   *self,
           cairo_t         *cr,
           const PpPalette *palette,
           PpPoint          mm)
{
  PpPoint at = pp_hanging_map_to_px (&self->map, mm);

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, PP_HANGING_HOOK_PX, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_ink_stroke (cr, palette, &palette->accent, 2.5);
  if (!self->is_hung)
    return;
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, PP_HANGING_HOOK_PX / 3, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->accent, 1);
  cairo_fill (cr);
}

/* The wire behind the glass, up to the hook at the same height as in front. */
static void
draw_side_wire (PpHangingView   *self,
                cairo_t         *cr,
                const PpPalette *palette,
                const PpScene   *scene)
{
  double back = -scene->panel->background->thickness;

  if (!self->is_hung)
    return;
  cairo_move_to (cr, back, pp_scene_knot_place (scene, 0).y);
  cairo_line_to (cr, back - scene->panel->wire->diameter, self->hung.hook.y);
  cairo_save (cr);
  cairo_identity_matrix (cr);
  pp_palette_set (cr, &palette->accent, 1);
  cairo_set_line_width (cr, 2);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
fill_and_stroke (cairo_t       *cr,
                 const GdkRGBA *fill,
                 double         alpha,
                 const GdkRGBA *line,
                 double         width)
{
  pp_palette_set (cr, fill, alpha);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, line, 1);
  cairo_save (cr);
  cairo_identity_matrix (cr);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_side (PpHangingView   *self,
           cairo_t         *cr,
           const PpPalette *palette)
{
  PpScene *scene = pp_document_get_scene (self->document);
  const PpCheck *check = pp_document_get_check (self->document);
  PpBox glass = pp_outline_get_box (scene->background_outline);
  double back = -scene->panel->background->thickness - 3;

  cairo_save (cr);
  cairo_translate (cr, self->side_x, self->map.at.y);
  cairo_scale (cr, self->map.scale, self->map.scale);
  cairo_translate (cr, 0, -self->map.about.y);
  if (scene->panel->display->place == PP_PLACE_WALL)
    {
      cairo_rectangle (cr, back - 4, glass.y0 - 14, 4, pp_box_height (glass) + 28);
      pp_palette_set (cr, &palette->line, 0.6);
      cairo_fill (cr);
    }
  pp_hanging_side_lean (cr, scene, self->has_hang ? &self->hang : NULL);
  if (self->has_hang)
    draw_side_wire (self, cr, palette, scene);
  if (check != NULL)
    {
      pp_hanging_side_add_pieces (cr, check);
      fill_and_stroke (cr, &palette->ink, SIDE_ALPHA, &palette->faint, 1);
    }
  pp_hanging_side_add_glass (cr, scene);
  fill_and_stroke (cr, &palette->accent, SIDE_ALPHA, &palette->ink, 1.5);
  cairo_restore (cr);
}

static void
draw_ring (PpHangingView   *self,
           cairo_t         *cr,
           const PpPalette *palette,
           PpPoint          mm,
           double           radius)
{
  PpPoint at = pp_hanging_map_to_px (&self->map, mm);

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  pp_ink_stroke (cr, palette, &palette->accent, 2);
}

static void
draw_focus (PpHangingView   *self,
            cairo_t         *cr,
            const PpPalette *palette)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  PpPoint hook;

  if (gtk_widget_has_focus (self->hook) && pp_hanging_view_get_hook (self, &hook))
    draw_ring (self, cr, palette, hook, PP_HANGING_HOOK_PX + 6);
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);

      for (guint j = 0; j < self->holes->len; j++)
        if (gtk_widget_has_focus (g_ptr_array_index (self->holes, j))
            && g_str_equal (pp_canvas_piece_get_id (g_ptr_array_index (self->holes, j)), hole->id))
          draw_ring (self, cr, palette, (PpPoint) { hole->x, hole->y },
                     pp_hanging_view_get_hole_px (self, hole) + 6);
    }
  if (self->is_lit)
    draw_ring (self, cr, palette, self->lit, LIT_PX);
}

void
pp_hanging_view_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  PpHangingView *self = PP_HANGING_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  PpPalette palette = pp_palette_of (widget);
  cairo_t *cr;
  PpPoint hook;

  if (self->document == NULL)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width,
                                                                 (float) height));
  draw_picture (self, cr);
  draw_side (self, cr, &palette);
  if (self->is_hung)
    draw_plumb (self, cr, &palette);
  pp_hanging_view_draw_measures (self, cr, &palette);
  if (self->has_hang)
    draw_wire (self, cr, &palette);
  draw_holes (self, cr, &palette);
  if (pp_hanging_view_get_hook (self, &hook))
    draw_hook (self, cr, &palette, hook);
  pp_hanging_view_draw_words (self, cr, &palette);
  draw_focus (self, cr, &palette);
  cairo_destroy (cr);
}
