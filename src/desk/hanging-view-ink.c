/* hanging-view-ink.c: measures and words on the panel as it hangs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A hole is measured from the two edges it is nearer to, so that no line crosses the whole glass;
 * the hook from the left and the top of the glass, while the panel hangs level and so as it is put
 * up.
 */
#include "config.h"

#include "desk/hanging-view-private.h"

#include "desk/em.h"
#include "desk/ink.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/letters.h"

#include <math.h>

#define ARROW 6.0       /* px */
#define CLEAR 1.5       /* px beyond the edge where a line is too short for its figure */
#define ASIDE 5       /* places tried off the line: on it, and two to either side */
#define LEG_LEAST_EM 9  /* shorter legs have no words on them */
#define CAPTION_EM 2.0   /* under the picture, and under a figure that stands there */
#define LETTER_EM 0.9   /* from the rim of a hole to its letter */

typedef struct
{
  PpHangingView   *view;
  cairo_t         *cr;
  const PpPalette *palette;
  GArray          *taken; /* PpBox, the slips there are */
} Ink;

static void
draw_text (const Ink  *self,
           const char *text,
           PpPoint     px)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self->view), text);
  PpBox slip = pp_ink_get_slip (layout, px);

  pp_ink_draw_slip (self->cr, self->palette, layout, slip);
  g_array_append_val (self->taken, slip);
}

static void
draw_arrow (cairo_t *cr,
            PpPoint  tip,
            PpPoint  along)
{
  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, tip.x - along.x * ARROW - along.y * ARROW / 2.5,
                 tip.y - along.y * ARROW + along.x * ARROW / 2.5);
  cairo_line_to (cr, tip.x - along.x * ARROW + along.y * ARROW / 2.5,
                 tip.y - along.y * ARROW - along.x * ARROW / 2.5);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static gboolean
is_free (const Ink *self,
         PpBox      slip)
{
  for (guint i = 0; i < self->taken->len; i++)
    if (pp_box_meets (g_array_index (self->taken, PpBox, i), slip))
      return FALSE;
  return TRUE;
}

static PpPoint
keep_inside (const Ink *self,
             PpBox      slip,
             PpPoint    at)
{
  double across = pp_box_width (slip) / 2, down = pp_box_height (slip) / 2;

  return (PpPoint) { CLAMP (at.x, across,
                            MAX (across, gtk_widget_get_width (GTK_WIDGET (self->view)) - across)),
                     CLAMP (at.y, down,
                            MAX (down, gtk_widget_get_height (GTK_WIDGET (self->view)) - down)) };
}

/* As near to `at` as is free, off the line to either side. */
static PpPoint
find_aside (const Ink *self,
            PpBox      slip,
            PpPoint    at,
            PpPoint    along)
{
  double step = fabs (along.x) * pp_box_height (slip) + fabs (along.y) * pp_box_width (slip);
  PpPoint first = keep_inside (self, slip, at);

  for (int i = 0; i < ASIDE; i++)
    {
      double off = (i % 2 == 0 ? i / 2 : -(i + 1) / 2) * (step + 1);
      PpPoint place = keep_inside (self, slip, (PpPoint) { at.x - off * along.y,
                                                           at.y + off * along.x });
      PpBox box = { place.x - pp_box_width (slip) / 2, place.y - pp_box_height (slip) / 2,
                    place.x + pp_box_width (slip) / 2, place.y + pp_box_height (slip) / 2 };

      if (is_free (self, box))
        return place;
    }
  return first;
}

/* Where the figure of a line stands: on it, where no other stands, or beyond `from`, the edge, if
 * it is short. */
static PpPoint
find_place (const Ink  *self,
            const char *text,
            PpPoint     from,
            PpPoint     to,
            PpPoint     along)
{
  static const double shares[] = { 0.5, 0.3, 0.7, 0.4, 0.6 };
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self->view), text);
  PpBox slip = pp_ink_get_slip (layout, (PpPoint) { 0, 0 });
  double half = (fabs (along.x) * pp_box_width (slip) + fabs (along.y) * pp_box_height (slip)) / 2;
  double length = pp_point_distance (from, to);

  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      PpPoint at = { from.x + shares[i] * length * along.x, from.y + shares[i] * length * along.y };

      if (fmin (shares[i], 1 - shares[i]) * length >= half + 1.5 * ARROW
          && is_free (self, pp_ink_get_slip (layout, at)))
        return at;
    }
  return find_aside (self, slip, (PpPoint) { from.x - along.x * (half + CLEAR),
                                             from.y - along.y * (half + CLEAR) }, along);
}

/* From an edge to what is measured, panel frame. */
static void
draw_measure (const Ink *self,
              PpPoint    from_mm,
              PpPoint    to_mm)
{
  const PpPanel *panel = pp_document_get_panel (self->view->document);
  double mm = pp_point_distance (from_mm, to_mm);
  g_autofree char *text = pp_length_format (mm, panel->units);
  PpPoint from = pp_hanging_map_to_px (&self->view->map, from_mm);
  PpPoint to = pp_hanging_map_to_px (&self->view->map, to_mm);
  double length = pp_point_distance (from, to);
  PpPoint along;

  if (length < 1)
    return;
  along = (PpPoint) { (to.x - from.x) / length, (to.y - from.y) / length };
  cairo_new_path (self->cr);
  cairo_move_to (self->cr, from.x, from.y);
  cairo_line_to (self->cr, to.x, to.y);
  pp_ink_stroke (self->cr, self->palette, &self->palette->ink, 1);
  pp_palette_set (self->cr, &self->palette->ink, 1);
  draw_arrow (self->cr, to, along);
  draw_arrow (self->cr, from, (PpPoint) { -along.x, -along.y });
  draw_text (self, text, find_place (self, text, from, to, along));
}

static void
measure_hole (const Ink    *self,
              PpBox         glass,
              const PpHole *hole)
{
  PpPoint at = { hole->x, hole->y };
  PpPoint middle = pp_box_middle (glass);

  draw_measure (self, (PpPoint) { at.x > middle.x ? glass.x1 : glass.x0, at.y }, at);
  draw_measure (self, (PpPoint) { at.x, at.y > middle.y ? glass.y1 : glass.y0 }, at);
}

/* The edge of the glass drawn on up to the hook. */
static void
draw_extension (const Ink *self,
                PpPoint    from_mm,
                PpPoint    to_mm)
{
  PpPoint from = pp_hanging_map_to_px (&self->view->map, from_mm);
  PpPoint to = pp_hanging_map_to_px (&self->view->map, to_mm);

  cairo_move_to (self->cr, from.x, from.y);
  cairo_line_to (self->cr, to.x, to.y);
  pp_palette_set (self->cr, &self->palette->faint, 1);
  cairo_set_line_width (self->cr, 1);
  cairo_stroke (self->cr);
}

static void
measure_hook (const Ink *self,
              PpBox      glass)
{
  PpPoint hook = self->view->hung.hook;

  if (hook.y < glass.y0)
    draw_extension (self, (PpPoint) { glass.x0, glass.y0 }, (PpPoint) { glass.x0, hook.y });
  draw_measure (self, (PpPoint) { glass.x0, hook.y }, hook);
  draw_measure (self, (PpPoint) { hook.x, glass.y0 }, hook);
}

/* To the middle of the glass and from the edge that the hole is measured from, as measures and wire
 * go the other ways. */
static PpPoint
get_letter_place (const Ink    *self,
                  const PpHole *hole)
{
  const PpPanel *panel = pp_document_get_panel (self->view->document);
  PpPoint middle = pp_box_middle (pp_background_get_box (panel->background));
  double away = pp_hanging_view_get_hole_px (self->view, hole)
                + LETTER_EM * pp_em_of (GTK_WIDGET (self->view));
  PpPoint at = pp_hanging_map_to_px (&self->view->map, (PpPoint) { hole->x, hole->y });

  return (PpPoint) { at.x + (hole->x > middle.x ? -away : away),
                     at.y + (hole->y > middle.y ? -away : away) };
}

/* Their places are taken before they are drawn. */
static void
take_letters (const Ink *self)
{
  for (guint i = 0; i < self->view->holes->len; i++)
    {
      g_autofree char *letter = pp_letters_format (i);
      const PpHole *hole = pp_hanging_view_get_hole (self->view, i);
      g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self->view),
                                                                       letter);
      PpBox slip = pp_ink_get_slip (layout, get_letter_place (self, hole));

      g_array_append_val (self->taken, slip);
    }
}

void
pp_hanging_view_draw_measures (PpHangingView   *self,
                               cairo_t         *cr,
                               const PpPalette *palette)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  PpBox glass = pp_background_get_box (panel->background);
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (PpBox));
  Ink ink = { self, cr, palette, taken };

  take_letters (&ink);
  for (guint i = 0; i < panel->holes->len; i++)
    measure_hole (&ink, glass, pp_panel_hole (panel, i));
  if (self->is_hung && self->map.tilt == 0)
    measure_hook (&ink, glass);
}

static void
draw_letters (const Ink *self)
{
  for (guint i = 0; i < self->view->holes->len; i++)
    {
      g_autofree char *letter = pp_letters_format (i);

      draw_text (self, letter, get_letter_place (self, pp_hanging_view_get_hole (self->view, i)));
    }
}

/* "1.43 kg" on each leg that is long enough. */
static void
draw_pulls (const Ink *self)
{
  const PpHang *hang = &self->view->hang;
  const double *pulls = self->view->map.tilt == 0 ? hang->level_tension : hang->middle_tension;
  PpScene *scene = pp_document_get_scene (self->view->document);
  PpPoint hook = pp_hanging_map_to_px (&self->view->map, self->view->hung.hook);
  double least = LEG_LEAST_EM * pp_em_of (GTK_WIDGET (self->view));

  for (guint k = 0; k < 2; k++)
    {
      PpPoint at = pp_hanging_map_to_px (&self->view->map, pp_scene_knot_place (scene, k));
      g_autofree char *text = NULL;

      if (!isfinite (pulls[k]) || pp_point_distance (at, hook) < least)
        continue;
      text = pp_mass_format (pulls[k] * 1000 / PP_GRAVITY, scene->panel->units);
      draw_text (self, text, (PpPoint) { (at.x + hook.x) / 2, (at.y + hook.y) / 2 });
    }
}

static void
draw_caption (const Ink  *self,
              const char *text,
              double      x,
              double      y)
{
  GtkWidget *widget = GTK_WIDGET (self->view);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, text);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  pango_layout_set_alignment (layout, PANGO_ALIGN_CENTER);
  x = CLAMP (x - width / 2.0, 2, MAX (2, gtk_widget_get_width (widget) - width - 2));
  y = MIN (y, gtk_widget_get_height (widget) - height - 2);
  cairo_move_to (self->cr, round (x), round (y));
  pp_palette_set (self->cr, &self->palette->faint, 1);
  pango_cairo_show_layout (self->cr, layout);
}

static char *
describe_side (PpHangingView *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  double deep = self->depth + panel->background->thickness;
  g_autofree char *depth = pp_length_format (deep, panel->units);
  g_autofree char *lean = NULL;

  if (panel->display->place != PP_PLACE_WINDOW || !self->has_hang || !isfinite (self->hang.lean))
    return g_strdup_printf (_("from the side,\n%s deep"), depth);
  lean = pp_angle_format (fabs (self->hang.lean));
  return g_strdup_printf (self->hang.lean < 0 ? _("%s deep,\nleans back by %s")
                                              : _("%s deep,\nleans forward by %s"), depth, lean);
}

void
pp_hanging_view_draw_words (PpHangingView   *self,
                            cairo_t         *cr,
                            const PpPalette *palette)
{
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (PpBox));
  Ink ink = { self, cr, palette, taken };
  g_autofree char *side = describe_side (self);
  double y = self->low + pp_em_of (GTK_WIDGET (self)) * CAPTION_EM;

  draw_letters (&ink);
  if (self->is_hung && self->how != PP_HUNG_SLIPPED)
    draw_pulls (&ink);
  draw_caption (&ink, _("from the front"), self->map.at.x, y);
  draw_caption (&ink, side, self->side_x, y);
}
