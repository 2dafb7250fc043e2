/* glass-preview.c: the glass of a panel not begun yet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/glass-preview.h"

#include "art/draw.h"
#include "desk/em.h"
#include "desk/palette.h"
#include "panel/edit.h"
#include "panel/measure.h"

struct _PpGlassPreview
{
  GtkWidget      parent_instance;
  const PpPanel *panel;
  PpScene       *scene;   /* of the panel without its wire, which is drawn here */
  PpGallery     *gallery;
};

G_DEFINE_FINAL_TYPE (PpGlassPreview, pp_glass_preview, GTK_TYPE_WIDGET)

#define SIDE_EMS 20.0  /* the area wished for */
#define LEAST_EMS 14.0
#define MARGIN_EMS 3.2 /* for the measures; above and left of the glass */
#define FAR_EMS 1.4    /* on the other sides */
#define USUAL 300.0    /* mm: smaller glass is drawn as part of this */
#define FRAME_EMS 0.6  /* of the window behind the glass */

#define LEAST_HOLE 3.0 /* px: smaller ones are drawn as large as this */

/* The glass on the widget: panel frame to px. */
typedef struct
{
  double x;
  double y;
  double scale;
  double width; /* px, of the glass */
  double height;
  double em;
} Place;

static Place
place_glass (PpGlassPreview *self)
{
  const PpBackground *glass = self->panel->background;
  double em = pp_em_of (GTK_WIDGET (self));
  double width = gtk_widget_get_width (GTK_WIDGET (self)) - (MARGIN_EMS + FAR_EMS) * em;
  double height = gtk_widget_get_height (GTK_WIDGET (self)) - (MARGIN_EMS + FAR_EMS) * em;
  double scale = fmin (width / fmax (glass->width, USUAL), height / fmax (glass->height, USUAL));
  Place place = { .scale = scale, .width = glass->width * scale, .height = glass->height * scale,
                  .em = em };

  place.x = MARGIN_EMS * em + (width - place.width) / 2;
  place.y = MARGIN_EMS * em + (height - place.height) / 2;
  return place;
}

/* Where the hook holds the wire while the panel hangs level. */
static gboolean
find_hook (const PpPanel *panel,
           PpPoint       *hook)
{
  const PpHole *from, *to;
  double c, half;

  if (panel->wire == NULL || isnan (panel->wire->length))
    return FALSE;
  from = pp_panel_find_hole (panel, panel->wire->from, NULL);
  to = pp_panel_find_hole (panel, panel->wire->to, NULL);
  c = (to->x - from->x) / 2;
  half = panel->wire->length / 2;
  *hook = (PpPoint) { from->x + c, from->y - sqrt (fmax (half * half - c * c, 0)) };
  return TRUE;
}

static void
draw_wire (cairo_t         *cr,
           const PpPanel   *panel,
           const PpPalette *palette,
           double           px)
{
  const PpHole *from, *to;
  PpPoint hook;

  if (!find_hook (panel, &hook))
    return;
  from = pp_panel_find_hole (panel, panel->wire->from, NULL);
  to = pp_panel_find_hole (panel, panel->wire->to, NULL);
  cairo_move_to (cr, from->x, from->y);
  cairo_line_to (cr, hook.x, hook.y);
  cairo_line_to (cr, to->x, to->y);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, fmax (panel->wire->diameter, 1.5 * px));
  pp_palette_set (cr, &palette->ink, 0.8);
  cairo_stroke (cr);
  cairo_arc (cr, hook.x, hook.y, 3.2 * px, 0, 2 * G_PI);
  pp_palette_set (cr, &palette->ink, 1);
  cairo_fill (cr);
}

/* Broken lines: they are still to be drilled. */
static void
draw_holes (cairo_t         *cr,
            const PpPanel   *panel,
            const PpPalette *palette,
            double           px)
{
  const double dash[] = { 2 * px, 1.2 * px };

  cairo_set_line_width (cr, 1.4 * px);
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);

      cairo_arc (cr, hole->x, hole->y, fmax (hole->diameter / 2, LEAST_HOLE * px), 0, 2 * G_PI);
      pp_palette_set (cr, &palette->paper, 0.9);
      cairo_fill_preserve (cr);
      cairo_set_dash (cr, dash, G_N_ELEMENTS (dash), 0);
      pp_palette_set (cr, &palette->ink, 0.9);
      cairo_stroke (cr);
    }
}

static void
draw_glass (PpGlassPreview  *self,
            cairo_t         *cr,
            const PpPalette *palette,
            const Place     *place)
{
  cairo_save (cr);
  cairo_translate (cr, place->x, place->y);
  cairo_scale (cr, place->scale, place->scale);
  draw_wire (cr, self->panel, palette, 1 / place->scale);
  pp_draw_scene (cr, self->scene, self->gallery, NULL, NULL, NULL);
  draw_holes (cr, self->panel, palette, 1 / place->scale);
  cairo_restore (cr);
}

/* What is behind: a plain wall, or the pane of a window. */
static void
draw_place (PpGlassPreview  *self,
            cairo_t         *cr,
            const PpPalette *palette,
            double           em)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  double frame = FRAME_EMS * em;

  if (self->panel->display->place != PP_PLACE_WINDOW)
    return;
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, frame + 0.5, frame + 0.5, width - 2 * frame - 1, height - 2 * frame - 1);
  pp_palette_set (cr, &palette->paper, 1);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette->accent, 0.13);
  cairo_fill_preserve (cr);
  pp_palette_set (cr, &palette->line, 1);
  cairo_stroke (cr);
}

/* A measure of `length` px along the x axis from the origin, its text above. */
static void
draw_measure (PpGlassPreview  *self,
              cairo_t         *cr,
              const PpPalette *palette,
              double           length,
              double           em,
              const char      *text)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  pp_palette_set (cr, &palette->faint, 1);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, 0, -0.35 * em);
  cairo_line_to (cr, 0, 0.35 * em);
  cairo_move_to (cr, length, -0.35 * em);
  cairo_line_to (cr, length, 0.35 * em);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, length, 0);
  cairo_stroke (cr);
  cairo_move_to (cr, (length - width) / 2, -height - 0.1 * em);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_measures (PpGlassPreview  *self,
               cairo_t         *cr,
               const PpPalette *palette,
               const Place     *place)
{
  const PpBackground *glass = self->panel->background;
  g_autofree char *across = pp_length_format (glass->width, self->panel->units);
  g_autofree char *down = pp_length_format (glass->height, self->panel->units);
  double away = 0.8 * place->em;

  cairo_save (cr);
  cairo_translate (cr, place->x, place->y - away);
  draw_measure (self, cr, palette, place->width, place->em, across);
  cairo_restore (cr);
  cairo_save (cr);
  cairo_translate (cr, place->x - away, place->y + place->height);
  cairo_rotate (cr, -G_PI / 2);
  draw_measure (self, cr, palette, place->height, place->em, down);
  cairo_restore (cr);
}

static void
pp_glass_preview_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  PpGlassPreview *self = PP_GLASS_PREVIEW (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  PpPalette palette;
  Place place;
  cairo_t *cr;

  if (self->panel == NULL)
    return;
  palette = pp_palette_of (widget);
  place = place_glass (self);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  draw_place (self, cr, &palette, place.em);
  draw_glass (self, cr, &palette, &place);
  draw_measures (self, cr, &palette, &place);
  cairo_destroy (cr);
}

static void
pp_glass_preview_measure (GtkWidget      *widget,
                          GtkOrientation  orientation,
                          int             for_size,
                          int            *minimum,
                          int            *natural,
                          int            *minimum_baseline,
                          int            *natural_baseline)
{
  double em = pp_em_of (widget);

  *minimum = (int) (LEAST_EMS * em);
  *natural = (int) (SIDE_EMS * em);
}

static void
pp_glass_preview_dispose (GObject *object)
{
  PpGlassPreview *self = PP_GLASS_PREVIEW (object);

  g_clear_pointer (&self->panel, pp_panel_unref);
  g_clear_pointer (&self->scene, pp_scene_unref);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  G_OBJECT_CLASS (pp_glass_preview_parent_class)->dispose (object);
}

static void
pp_glass_preview_class_init (PpGlassPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_glass_preview_dispose;
  widget_class->measure = pp_glass_preview_measure;
  widget_class->snapshot = pp_glass_preview_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "pp-glass-preview");
}

static void
pp_glass_preview_init (PpGlassPreview *self)
{
}

void
pp_glass_preview_set_panel (PpGlassPreview *self,
                            const PpPanel  *panel)
{
  g_autoptr (PpPanel) bare = NULL;

  g_return_if_fail (PP_IS_GLASS_PREVIEW (self));
  g_clear_pointer (&self->panel, pp_panel_unref);
  g_clear_pointer (&self->scene, pp_scene_unref);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  if (panel != NULL)
    {
      bare = pp_edit_set_wire (panel, NULL, NULL);
      self->panel = pp_panel_ref (panel);
      self->scene = pp_scene_new (bare, NULL);
      self->gallery = pp_gallery_new (bare, NULL);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
