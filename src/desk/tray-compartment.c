/* tray-compartment.c: one compartment of the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tray may have thousands, so a compartment is one widget without children: it writes its two
 * lines by itself and draws its piece only when it comes into sight.
 */
#include "config.h"

#include "desk/tray-compartment.h"

#include "desk/pin.h"
#include "desk/tray-words.h"

#define PICTURE_LENGTH 2.6 /* times its height, at the most */
#define LEAST_LINES 1.6    /* lines of text: what is smaller is not told apart */
#define GAP 3              /* px between picture and words */
#define GONE 0.35          /* how much is seen of a piece of which none is left */

struct _PpTrayCompartment
{
  GtkWidget        parent_instance;
  PpTrayGauge     *gauge;   /* the tray's */
  const PpPiece   *piece;
  PpArt           *art;
  PpPieceSpan      tray;
  guint            placed;
  PpUnits          units;
  char            *words;   /* for those who hear them; NULL: not yet said */
  cairo_surface_t *picture; /* NULL: not drawn yet */
  PpPoint          origin;  /* of the piece in the picture */
  double           scale;   /* of the picture */
  int              factor;
};

G_DEFINE_FINAL_TYPE (PpTrayCompartment, pp_tray_compartment, GTK_TYPE_WIDGET)

static PpPieceLie
get_lie (PpTrayCompartment *self)
{
  int picture = pp_tray_gauge_get_picture (self->gauge);

  return pp_piece_lie (self->piece, self->tray, PICTURE_LENGTH * picture, picture,
                       LEAST_LINES * pp_tray_gauge_get_line (self->gauge));
}

static void
pp_tray_compartment_measure (GtkWidget      *widget,
                             GtkOrientation  orientation,
                             int             for_size,
                             int            *minimum,
                             int            *natural,
                             int            *minimum_baseline,
                             int            *natural_baseline)
{
  PpTrayCompartment *self = PP_TRAY_COMPARTMENT (widget);
  const char *name = pp_tray_words_name (self->piece);
  int size;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    size = MAX (pp_tray_gauge_get_width (self->gauge, name, self->piece->count),
                (int) ceil (pp_box_width (get_lie (self).box)));
  else
    size = pp_tray_gauge_get_picture (self->gauge) + GAP + 2 * pp_tray_gauge_get_line (self->gauge);
  *minimum = *natural = size;
}

static void
drop_picture (PpTrayCompartment *self)
{
  g_clear_pointer (&self->picture, cairo_surface_destroy);
}

static void
keep_picture (PpTrayCompartment *self,
              const PpPieceLie  *lie)
{
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  if (self->picture != NULL && self->scale == lie->scale && self->factor == factor)
    return;
  drop_picture (self);
  self->scale = lie->scale;
  self->factor = factor;
  self->picture = pp_piece_picture (self->piece, self->art, lie->scale, lie->turned,
                                    self->piece->thickness, factor, &self->origin);
  cairo_surface_set_device_scale (self->picture, factor, factor);
}

/* Where the piece's origin is, px: the box round it is in the middle of the room for it. */
static PpPoint
get_origin (PpTrayCompartment *self,
            const PpPieceLie  *lie)
{
  PpPoint middle = pp_box_middle (lie->box);

  return (PpPoint) { round (gtk_widget_get_width (GTK_WIDGET (self)) / 2.0 - middle.x),
                     round (pp_tray_gauge_get_picture (self->gauge) / 2.0 - middle.y) };
}

static void
snapshot_picture (PpTrayCompartment *self,
                  GtkSnapshot       *snapshot)
{
  PpPieceLie lie = get_lie (self);
  PpPoint origin = get_origin (self, &lie);
  graphene_rect_t at;
  cairo_t *cr;

  keep_picture (self, &lie);
  at = GRAPHENE_RECT_INIT ((float) (origin.x - self->origin.x), (float) (origin.y - self->origin.y),
                           (float) cairo_image_surface_get_width (self->picture),
                           (float) cairo_image_surface_get_height (self->picture));
  at.size.width /= (float) self->factor;
  at.size.height /= (float) self->factor;
  cr = gtk_snapshot_append_cairo (snapshot, &at);
  cairo_set_source_surface (cr, self->picture, (double) at.origin.x, (double) at.origin.y);
  cairo_paint_with_alpha (cr, self->placed < self->piece->count ? 1 : GONE);
  cairo_destroy (cr);
}

static void
snapshot_text (PpTrayCompartment *self,
               GtkSnapshot       *snapshot,
               const char        *text,
               PangoWeight        weight,
               int                y)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  PangoAttrList *attributes = pp_tray_gauge_make_face (weight);
  GdkRGBA colour;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &colour);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_width (layout, gtk_widget_get_width (GTK_WIDGET (self)) * PANGO_SCALE);
  pango_layout_set_alignment (layout, PANGO_ALIGN_CENTER);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (0, (float) y));
  gtk_snapshot_append_layout (snapshot, layout, &colour);
  gtk_snapshot_restore (snapshot);
}

/* More than there are is marked in the corner as its finding is on the glass. */
static void
snapshot_fault (PpTrayCompartment *self,
                GtkSnapshot       *snapshot,
                int                size)
{
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));
  int x = gtk_widget_get_width (GTK_WIDGET (self)) - size;
  graphene_rect_t corner = GRAPHENE_RECT_INIT ((float) x, 0, (float) size, (float) size);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &corner);

  pp_pin_draw (cr, NULL, &palette, PP_LEVEL_FAULT, 0, x + size / 2.0, size / 2.0, 0.9 * size,
               FALSE);
  cairo_destroy (cr);
}

static void
pp_tray_compartment_snapshot (GtkWidget   *widget,
                              GtkSnapshot *snapshot)
{
  PpTrayCompartment *self = PP_TRAY_COMPARTMENT (widget);
  int line = pp_tray_gauge_get_line (self->gauge);
  int y = pp_tray_gauge_get_picture (self->gauge) + GAP;
  gboolean is_over = self->placed > self->piece->count;
  g_autofree char *left = pp_tray_words_left (self->piece->count, self->placed);

  snapshot_picture (self, snapshot);
  snapshot_text (self, snapshot, pp_tray_words_name (self->piece), PANGO_WEIGHT_MEDIUM, y);
  snapshot_text (self, snapshot, left, is_over ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL,
                 y + line);
  if (is_over)
    snapshot_fault (self, snapshot, line);
}

static void
place_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  gtk_widget_activate_action (widget, "tray.place", "s", PP_TRAY_COMPARTMENT (widget)->piece->id);
}

static void
pp_tray_compartment_finalize (GObject *object)
{
  PpTrayCompartment *self = PP_TRAY_COMPARTMENT (object);

  drop_picture (self);
  g_clear_pointer (&self->piece, pp_piece_unref);
  g_clear_pointer (&self->art, pp_art_unref);
  g_free (self->words);
  G_OBJECT_CLASS (pp_tray_compartment_parent_class)->finalize (object);
}

static void
pp_tray_compartment_class_init (PpTrayCompartmentClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  static const guint keys[] = { GDK_KEY_Return, GDK_KEY_KP_Enter, GDK_KEY_ISO_Enter, GDK_KEY_space,
                                GDK_KEY_KP_Space };

  G_OBJECT_CLASS (klass)->finalize = pp_tray_compartment_finalize;
  widget_class->measure = pp_tray_compartment_measure;
  widget_class->snapshot = pp_tray_compartment_snapshot;
  gtk_widget_class_set_css_name (widget_class, "pp-compartment");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
  gtk_widget_class_install_action (widget_class, "compartment.place", NULL, place_action);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding_action (widget_class, keys[i], 0, "compartment.place", NULL);
}

static void
pp_tray_compartment_init (PpTrayCompartment *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grab");
}

GtkWidget *
pp_tray_compartment_new (PpTrayGauge *gauge)
{
  PpTrayCompartment *self = g_object_new (PP_TYPE_TRAY_COMPARTMENT, NULL);

  self->gauge = gauge;
  return GTK_WIDGET (self);
}

void
pp_tray_compartment_set_piece (PpTrayCompartment *self,
                               const PpPiece     *piece,
                               PpArt             *art,
                               PpPieceSpan        tray)
{
  g_return_if_fail (PP_IS_TRAY_COMPARTMENT (self) && piece != NULL);

  if (self->piece == piece && self->art == art && self->tray.across == tray.across
      && self->tray.along == tray.along)
    return;
  if (self->piece != piece || self->art != art)
    drop_picture (self);
  pp_piece_ref (piece);
  g_clear_pointer (&self->piece, pp_piece_unref);
  self->piece = piece;
  if (art != NULL)
    pp_art_ref (art);
  g_clear_pointer (&self->art, pp_art_unref);
  self->art = art;
  self->tray = tray;
  g_clear_pointer (&self->words, g_free);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
pp_tray_compartment_set_placed (PpTrayCompartment *self,
                                guint              placed,
                                PpUnits            units)
{
  g_return_if_fail (PP_IS_TRAY_COMPARTMENT (self) && self->piece != NULL);

  if (self->words != NULL && self->placed == placed && self->units == units)
    return;
  self->placed = placed;
  self->units = units;
  g_free (self->words);
  self->words = pp_tray_words_all (self->piece, placed, units);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, self->words,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const PpPiece *
pp_tray_compartment_get_piece (PpTrayCompartment *self)
{
  g_return_val_if_fail (PP_IS_TRAY_COMPARTMENT (self), NULL);
  return self->piece;
}

PpArt *
pp_tray_compartment_get_art (PpTrayCompartment *self)
{
  g_return_val_if_fail (PP_IS_TRAY_COMPARTMENT (self), NULL);
  return self->art;
}

PpPoint
pp_tray_compartment_get_grip (PpTrayCompartment *self,
                              double             x,
                              double             y)
{
  PpPieceLie lie = get_lie (self);
  PpPoint origin = get_origin (self, &lie);

  return pp_piece_lie_to_piece (&lie, self->piece,
                                (PpPoint) { x - origin.x, y - origin.y });
}
