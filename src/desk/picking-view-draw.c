/* picking-view-draw.c: the picture, the pieces on it, and what is in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Over a picture of any colours each line is drawn twice, wide in paper and narrow in ink.
 */
#include "config.h"

#include "desk/picking-view-private.h"

#include "desk/em.h"
#include "desk/palette.h"

#define DASH 5.0       /* px */
#define BADGE_EM 0.85  /* radius of a number */
#define MARK_EM 0.9
#define BESIDE_EM 1.7  /* from a mark to its number */
#define LOUPE_EM 5.5
#define LOUPE_TIMES 4.0 /* larger than the photo lies there */
#define HALO 0.8

typedef struct
{
  PpPickingView *view;
  cairo_t       *cr;
  PpPalette      palette;
  double         em;
} Ink;

static void
draw_surface (cairo_t         *cr,
              cairo_surface_t *surface,
              PpPoint          corner,
              double           scale)
{
  cairo_save (cr);
  cairo_translate (cr, corner.x, corner.y);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_GOOD);
  cairo_paint (cr);
  cairo_restore (cr);
}

/* The path in hand, as can be seen on anything. */
static void
stroke_twice (const Ink     *self,
              const GdkRGBA *colour,
              double         width,
              gboolean       is_dashed)
{
  const double dash[] = { DASH, DASH };

  cairo_set_line_join (self->cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (self->cr, width + 2.5);
  pp_palette_set (self->cr, &self->palette.paper, HALO);
  cairo_stroke_preserve (self->cr);
  if (is_dashed)
    cairo_set_dash (self->cr, dash, G_N_ELEMENTS (dash), 0);
  cairo_set_line_width (self->cr, width);
  pp_palette_set (self->cr, colour, 1);
  cairo_stroke (self->cr);
  cairo_set_dash (self->cr, NULL, 0, 0);
}

static void
add_outline (const Ink       *self,
             const PpOutline *outline)
{
  for (guint i = 0; i < pp_outline_get_n_rings (outline); i++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, i, &n);

      cairo_new_sub_path (self->cr);
      for (guint k = 0; k + 1 < n; k++)
        {
          PpPoint px = pp_zoom_to_widget (&self->view->zoom, ring[k]);

          cairo_line_to (self->cr, px.x, px.y);
        }
      cairo_close_path (self->cr);
    }
}

static void
draw_badge (const Ink     *self,
            PpPoint        px,
            guint          number,
            gboolean       is_chosen,
            gboolean       is_faint)
{
  g_autofree char *words = g_strdup_printf ("%u", number);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self->view), words);
  const PpPalette *palette = &self->palette;
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  cairo_new_path (self->cr);
  cairo_arc (self->cr, px.x, px.y, fmax (BADGE_EM * self->em, width / 2.0 + 4), 0, 2 * G_PI);
  pp_palette_set (self->cr, is_chosen ? &palette->accent : &palette->paper, 1);
  cairo_fill_preserve (self->cr);
  cairo_set_line_width (self->cr, 1);
  pp_palette_set (self->cr, is_faint ? &palette->line : &palette->ink, 1);
  cairo_stroke (self->cr);
  cairo_move_to (self->cr, px.x - width / 2.0, px.y - height / 2.0);
  pp_palette_set (self->cr, is_chosen  ? &palette->on_mark
                            : is_faint ? &palette->faint
                                       : &palette->ink, 1);
  pango_cairo_show_layout (self->cr, layout);
}

/* What is left out is pale, as if paper lay over it. */
static void
draw_piece (const Ink *self,
            guint      piece)
{
  const PpPickingView *view = self->view;
  gboolean is_chosen = piece == view->chosen;

  cairo_new_path (self->cr);
  add_outline (self, view->found->outlines[piece]);
  if (view->is_left_out[piece])
    {
      cairo_set_fill_rule (self->cr, CAIRO_FILL_RULE_EVEN_ODD);
      pp_palette_set (self->cr, &self->palette.paper, 0.6);
      cairo_fill_preserve (self->cr);
    }
  stroke_twice (self, is_chosen ? &self->palette.accent : &self->palette.ink, is_chosen ? 3 : 1.5,
                view->is_left_out[piece]);
}

static void
draw_pieces (const Ink *self)
{
  PpPickingView *view = self->view;

  if (view->found == NULL)
    return;
  for (guint i = 0; i < view->found->n_pieces; i++)
    if (i != view->chosen)
      draw_piece (self, i);
  if (view->chosen < view->found->n_pieces)
    draw_piece (self, view->chosen);
  for (guint i = 0; i < view->found->n_pieces; i++)
    draw_badge (self, pp_zoom_to_widget (&view->zoom, view->places[i]), i + 1, i == view->chosen,
                view->is_left_out[i]);
}

static void
draw_line (const Ink *self,
           PpPoint    from,
           PpPoint    to)
{
  PpPoint a = pp_zoom_to_widget (&self->view->zoom, from);
  PpPoint b = pp_zoom_to_widget (&self->view->zoom, to);

  cairo_new_path (self->cr);
  cairo_move_to (self->cr, a.x, a.y);
  cairo_line_to (self->cr, b.x, b.y);
}

static void
draw_in_hand (const Ink *self)
{
  PpPickingView *view = self->view;

  if (view->has_stroke)
    {
      draw_line (self, view->stroke.from, view->stroke.to);
      stroke_twice (self, &self->palette.accent, view->stroke.joins ? 5 : 2.5, !view->stroke.joins);
    }
  if (view->has_cross && view->tool != PP_TOOL_CHOOSE)
    {
      PpPoint px = pp_zoom_to_widget (&view->zoom, view->cross);

      cairo_new_path (self->cr);
      cairo_move_to (self->cr, px.x - self->em, px.y);
      cairo_line_to (self->cr, px.x + self->em, px.y);
      cairo_move_to (self->cr, px.x, px.y - self->em);
      cairo_line_to (self->cr, px.x, px.y + self->em);
      stroke_twice (self, &self->palette.ink, 1.5, FALSE);
    }
}

static void
draw_mark (const Ink *self,
           guint      mark)
{
  const PpPickingView *view = self->view;
  PpPoint px = pp_zoom_to_widget (&view->zoom, view->marks[mark]);
  gboolean is_in_hand = mark == view->mark;
  const GdkRGBA *colour = is_in_hand ? &self->palette.accent : &self->palette.ink;

  cairo_new_path (self->cr);
  cairo_arc (self->cr, px.x, px.y, MARK_EM * self->em, 0, 2 * G_PI);
  stroke_twice (self, colour, is_in_hand ? 3 : 2, FALSE);
  cairo_new_path (self->cr);
  cairo_move_to (self->cr, px.x - MARK_EM * self->em / 2, px.y);
  cairo_line_to (self->cr, px.x + MARK_EM * self->em / 2, px.y);
  cairo_move_to (self->cr, px.x, px.y - MARK_EM * self->em / 2);
  cairo_line_to (self->cr, px.x, px.y + MARK_EM * self->em / 2);
  stroke_twice (self, colour, 1, FALSE);
  draw_badge (self, (PpPoint) { px.x + BESIDE_EM * self->em, px.y - BESIDE_EM * self->em },
              mark + 1, is_in_hand, FALSE);
}

/* What lies round the mark in hand, larger, away from it. */
static void
draw_loupe (const Ink *self,
            int        width)
{
  const PpPickingView *view = self->view;
  PpPoint at = view->marks[view->mark], px = pp_zoom_to_widget (&view->zoom, at);
  double radius = LOUPE_EM * self->em, scale = view->zoom.scale * LOUPE_TIMES;
  PpPoint middle = { px.x < width / 2.0 ? width - radius - self->em : radius + self->em,
                     radius + self->em };

  cairo_save (self->cr);
  cairo_new_path (self->cr);
  cairo_arc (self->cr, middle.x, middle.y, radius, 0, 2 * G_PI);
  cairo_clip (self->cr);
  pp_palette_set (self->cr, &self->palette.bench, 1);
  cairo_paint (self->cr);
  draw_surface (self->cr, view->shown, (PpPoint) { middle.x - at.x * scale,
                                                   middle.y - at.y * scale }, scale / view->share);
  cairo_move_to (self->cr, middle.x - radius, middle.y);
  cairo_line_to (self->cr, middle.x + radius, middle.y);
  cairo_move_to (self->cr, middle.x, middle.y - radius);
  cairo_line_to (self->cr, middle.x, middle.y + radius);
  stroke_twice (self, &self->palette.accent, 1, FALSE);
  cairo_restore (self->cr);
  cairo_new_path (self->cr);
  cairo_arc (self->cr, middle.x, middle.y, radius, 0, 2 * G_PI);
  stroke_twice (self, &self->palette.ink, 1.5, FALSE);
}

static void
draw_marks (const Ink *self,
            int        width)
{
  const PpPickingView *view = self->view;

  if (view->n_marks == 0)
    return;
  cairo_new_path (self->cr);
  for (guint i = 0; i < view->n_marks; i++)
    {
      PpPoint px = pp_zoom_to_widget (&view->zoom, view->marks[i]);

      cairo_line_to (self->cr, px.x, px.y);
    }
  if (view->n_marks > 2)
    cairo_close_path (self->cr);
  stroke_twice (self, &self->palette.accent, 1, TRUE);
  for (guint i = 0; i < view->n_marks; i++)
    draw_mark (self, i);
  if (view->is_dragging || gtk_widget_has_focus (GTK_WIDGET (view->area)))
    draw_loupe (self, width);
}

static void
draw_focus (const Ink *self,
            int        width,
            int        height)
{
  if (!gtk_widget_has_visible_focus (GTK_WIDGET (self->view->area)))
    return;
  cairo_rectangle (self->cr, 1.5, 1.5, width - 3, height - 3);
  cairo_set_line_width (self->cr, 2);
  pp_palette_set (self->cr, &self->palette.ink, 1);
  cairo_stroke (self->cr);
}

void
pp_picking_view_draw (GtkDrawingArea *area,
                      cairo_t        *cr,
                      int             width,
                      int             height,
                      gpointer        data)
{
  PpPickingView *view = data;
  const PpZoom *zoom = &view->zoom;
  Ink ink = { view, cr, pp_palette_of (GTK_WIDGET (view)), pp_em_of (GTK_WIDGET (view)) };

  if (view->shown == NULL)
    return;
  if (pp_picking_view_is_photo (view))
    {
      draw_surface (cr, view->shown, (PpPoint) { zoom->x, zoom->y }, zoom->scale / view->share);
      draw_marks (&ink, width);
    }
  else
    {
      PpBox box = view->squared->box;

      draw_surface (cr, view->sheet, pp_zoom_to_widget (zoom, (PpPoint) { box.x0, box.y0 }),
                    zoom->scale / view->squared->dots);
      draw_pieces (&ink);
      draw_in_hand (&ink);
    }
  draw_focus (&ink, width, height);
}
