/* canvas-fused.c: what is fused onto the glass: chosen, moved, made larger.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A vase grows about its foot: the handle on its right makes it wider to both sides, the one on top
 * taller.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/fuse-acts.h"
#include "desk/ink.h"
#include "panel/edit.h"
#include "panel/i18n.h"

#define HANDLE_REACH 9.0 /* px */
#define BELOW 18         /* px from the foot to its width */
#define BESIDE 34        /* px from the side to its height */

/* NULL if none is chosen. */
static const PpFused *
get_chosen (PpCanvas *self)
{
  if (pp_document_get_chosen (self->document) != PP_CHOSEN_FUSED)
    return NULL;
  return pp_panel_find_fused (pp_document_get_panel (self->document),
                              pp_document_get_chosen_ids (self->document)[0], NULL);
}

gboolean
pp_canvas_hit_vase_handle (PpCanvas *self,
                           PpPoint   px,
                           gboolean *right,
                           gboolean *top)
{
  const PpFused *fused = get_chosen (self);
  PpPoint on_right, on_top, corner, middle;
  PpBox box;

  if (fused == NULL || pp_canvas_is_aslant (self))
    return FALSE;
  box = pp_outline_get_box (fused->outline);
  middle = pp_box_middle (box);
  on_right = pp_canvas_to_px (self, box.x1, middle.y);
  on_top = pp_canvas_to_px (self, middle.x, box.y0);
  corner = pp_canvas_to_px (self, box.x1, box.y0);
  *right = pp_point_distance (px, on_right) <= HANDLE_REACH
           || pp_point_distance (px, corner) <= HANDLE_REACH;
  *top = pp_point_distance (px, on_top) <= HANDLE_REACH
         || pp_point_distance (px, corner) <= HANDLE_REACH;
  return *right || *top;
}

static void
draw_insert (PpCanvas        *self,
             cairo_t         *cr,
             const PpPalette *palette,
             const PpOutline *insert)
{
  pp_canvas_add_outline (self, cr, insert, (PpPoint) { 0, 0 });
  cairo_set_dash (cr, (double[]) { 4, 3 }, 2, 0);
  pp_ink_stroke (cr, palette, &palette->accent, 1);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
pp_canvas_draw_chosen_fused (PpCanvas        *self,
                             cairo_t         *cr,
                             const PpPalette *palette)
{
  const PpFused *fused = get_chosen (self);
  PpBox box = pp_outline_get_box (fused->outline);
  PpPoint middle = pp_box_middle (box);
  PpPoint below = pp_canvas_to_px (self, middle.x, box.y1);
  PpPoint beside = pp_canvas_to_px (self, box.x0, middle.y);

  pp_canvas_add_outline (self, cr, fused->outline, (PpPoint) { 0, 0 });
  pp_ink_stroke (cr, palette, &palette->accent, 2);
  if (fused->has_pocket)
    draw_insert (self, cr, palette, fused->pocket.insert);
  if (pp_canvas_is_aslant (self))
    return;
  pp_canvas_draw_handle (cr, palette, pp_canvas_to_px (self, box.x1, middle.y));
  pp_canvas_draw_handle (cr, palette, pp_canvas_to_px (self, middle.x, box.y0));
  pp_canvas_draw_handle (cr, palette, pp_canvas_to_px (self, box.x1, box.y0));
  pp_canvas_draw_length (self, cr, palette, pp_box_width (box),
                         (PpPoint) { below.x, below.y + BELOW });
  pp_canvas_draw_length (self, cr, palette, pp_box_height (box),
                         (PpPoint) { beside.x - BESIDE, beside.y });
}

void
pp_canvas_move_fused (PpCanvas *self)
{
  const PpFused *fused = pp_panel_find_fused (self->drag.panel, self->drag.pressed, NULL);
  g_autofree char *label = g_strdup_printf (_("Move %s"), pp_fuse_acts_name (fused));
  GError *error = NULL;
  PpPanel *next = pp_edit_move_fused (self->drag.panel, fused->id,
                                      self->drag.now.x - self->drag.start.x,
                                      self->drag.now.y - self->drag.start.y, &error);

  pp_canvas_drag_take (self, next, error, label);
}

void
pp_canvas_reshape_vase (PpCanvas *self)
{
  const PpFused *chosen = get_chosen (self);
  const PpFused *fused = pp_panel_find_fused (self->drag.panel, chosen->id, NULL);
  PpBox box = pp_outline_get_box (fused->outline);
  PpVase vase = pp_vase_read (fused->outline);
  g_autofree char *label = g_strdup_printf (_("Size of %s"), pp_fuse_acts_name (fused));
  GError *error = NULL;
  PpPanel *next;

  if (self->drag.top)
    vase.height = fmax (round (vase.height - self->drag.now.y + self->drag.start.y), PP_VASE_LEAST);
  if (self->drag.right)
    {
      double width = pp_box_width (box);
      double grown = fmax (round (width + 2 * (self->drag.now.x - self->drag.start.x)),
                           PP_VASE_LEAST) / width;

      vase.mouth *= grown;
      vase.widest *= grown;
      vase.foot *= grown;
    }
  next = pp_edit_set_vase (self->drag.panel, fused->id, &vase, &error);
  pp_canvas_drag_take (self, next, error, label);
}
