/* tray-drag.c: a piece taken out of its compartment by the pointer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/tray-drag.h"

#include "desk/palette.h"
#include "desk/piece-picture.h"
#include "desk/tray.h"

#define LARGEST 800.0 /* px: a picture that follows the pointer is no larger */
#define LIFTED 12.0   /* mm in the hand over the glass, for the shadow */

G_DEFINE_BOXED_TYPE (PpPieceDrag, pp_piece_drag, pp_piece_drag_copy, pp_piece_drag_free)

PpPieceDrag *
pp_piece_drag_copy (const PpPieceDrag *self)
{
  PpPieceDrag *copy = g_new (PpPieceDrag, 1);

  *copy = (PpPieceDrag) { pp_piece_ref (self->piece), self->grip };
  return copy;
}

void
pp_piece_drag_free (PpPieceDrag *self)
{
  pp_piece_unref (self->piece);
  g_free (self);
}

/* Where nothing can be seen through, what is not drawn would be black. */
static void
lay_on_bench (cairo_surface_t *picture,
              GtkWidget       *widget)
{
  PpPalette palette = pp_palette_of (widget);
  cairo_t *cr = cairo_create (picture);

  pp_palette_set (cr, &palette.bench, 1);
  cairo_set_operator (cr, CAIRO_OPERATOR_DEST_OVER);
  cairo_paint (cr);
  cairo_destroy (cr);
}

/* `factor` device pixels a px. (transfer full) */
static GdkPaintable *
make_paintable (cairo_surface_t *picture,
                int              factor)
{
  int width = cairo_image_surface_get_width (picture);
  int height = cairo_image_surface_get_height (picture);
  gsize stride = (gsize) cairo_image_surface_get_stride (picture);
  graphene_size_t size = GRAPHENE_SIZE_INIT ((float) width / factor, (float) height / factor);
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GdkTexture) texture = NULL;

  cairo_surface_flush (picture);
  bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (picture),
                                      (gsize) height * stride,
                                      (GDestroyNotify) cairo_surface_destroy,
                                      cairo_surface_reference (picture));
  texture = gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
  gtk_snapshot_append_texture (snapshot, texture,
                               &GRAPHENE_RECT_INIT (0, 0, size.width, size.height));
  return gtk_snapshot_to_paintable (snapshot, &size);
}

static void
set_icon (GtkDragSource     *source,
          PpTrayCompartment *compartment,
          PpPoint            grip,
          double             scale)
{
  const PpPiece *piece = pp_tray_compartment_get_piece (compartment);
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (compartment));
  PpBox box = pp_outline_get_box (piece->outline);
  PpPoint origin;
  cairo_surface_t *picture;
  g_autoptr (GdkPaintable) icon = NULL;

  scale = fmin (scale, LARGEST / fmax (pp_box_width (box), pp_box_height (box)));
  picture = pp_piece_picture (piece, pp_tray_compartment_get_art (compartment), scale, FALSE,
                              LIFTED, factor, &origin);
  if (!gdk_display_is_composited (gtk_widget_get_display (GTK_WIDGET (compartment))))
    lay_on_bench (picture, GTK_WIDGET (compartment));
  icon = make_paintable (picture, factor);
  cairo_surface_destroy (picture);
  gtk_drag_source_set_icon (source, icon, (int) round (origin.x + grip.x * scale),
                            (int) round (origin.y + grip.y * scale));
}

GdkContentProvider *
pp_tray_drag_prepare (GtkDragSource     *source,
                      PpTrayCompartment *compartment,
                      double             x,
                      double             y,
                      double             scale)
{
  PpPieceDrag drag = { pp_tray_compartment_get_piece (compartment),
                       pp_tray_compartment_get_grip (compartment, x, y) };

  set_icon (source, compartment, drag.grip, scale);
  return gdk_content_provider_new_typed (PP_TYPE_PIECE_DRAG, &drag);
}
