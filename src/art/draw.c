/* draw.c: the panel as a picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Back to front as the viewer sees it. From the front: wire, glass, knots, pieces in stacking
 * order. From behind: pieces from the topmost down, glass, knots, wire.
 */
#include "config.h"

#include "art/draw.h"

#include "art/draw-private.h"
#include "shape/refraction.h"

#define VEIL_FROM_BEHIND 0.55

void
pp_draw_outline_path (cairo_t         *cr,
                      const PpOutline *outline)
{
  for (guint ring = 0; ring < pp_outline_get_n_rings (outline); ring++)
    {
      guint n;
      const PpPoint *points = pp_outline_get_ring (outline, ring, &n);

      cairo_move_to (cr, points[0].x, points[0].y);
      for (guint i = 1; i + 1 < n; i++)
        cairo_line_to (cr, points[i].x, points[i].y);
      cairo_close_path (cr);
    }
}

void
pp_draw_piece (cairo_t       *cr,
               const PpPiece *piece,
               PpArt         *art)
{
  if (art != NULL)
    pp_art_draw (art, cr);
  else
    pp_draw_plain (cr, piece);
}

void
pp_draw_body (cairo_t      *cr,
              const PpBody *body,
              PpArt        *art)
{
  const PpFrame *frame = &body->frame;
  cairo_matrix_t placing;

  cairo_matrix_init (&placing, frame->mirror * frame->cosine, frame->mirror * frame->sine,
                     -frame->sine, frame->cosine, frame->x, frame->y);
  cairo_save (cr);
  cairo_transform (cr, &placing);
  pp_draw_piece (cr, body->piece, art);
  cairo_restore (cr);
}

static double
to_radians (double degrees)
{
  return degrees * G_PI / 180;
}

/* Where a point z mm over the front face is seen on it: the sight line is q + z·d. */
static PpPoint
get_slant (const PpViewFrom *view)
{
  if (view == NULL || view->from_behind)
    return (PpPoint) { 0, 0 };
  return (PpPoint) { tan (to_radians (view->sideways)), -tan (to_radians (view->updown)) };
}

/* The whole piece moves as its middle height does. */
PpPoint
pp_draw_get_shift (const PpViewFrom *view,
                   double            base,
                   double            top)
{
  PpPoint slant = get_slant (view);

  return (PpPoint) { -(base + top) / 2 * slant.x, -(base + top) / 2 * slant.y };
}

/* The wire seen through the glass: its far side comes up at p plus this (Snell). */
static PpPoint
get_wire_shift (const PpScene *scene,
                PpPoint        slant)
{
  const PpBackground *background = scene->panel->background;
  double steep = hypot (slant.x, slant.y);
  double shift;

  if (steep < PP_TIE || scene->panel->wire == NULL)
    return (PpPoint) { 0, 0 };
  shift = scene->panel->wire->diameter / 2 * steep
          + pp_refraction_shift (background->thickness, steep, background->glass.refractive_index);
  return (PpPoint) { shift * slant.x / steep, shift * slant.y / steep };
}

double
pp_draw_guess_top (const PpBody *body)
{
  g_return_val_if_fail (body != NULL, 0);
  return 2 * pp_body_get_relief (body)->mean_underside + body->piece->thickness;
}

static double
get_top (const PpBody *body,
         const double *tops,
         guint         i)
{
  return tops == NULL || isnan (tops[i]) ? pp_draw_guess_top (body) : tops[i];
}

void
pp_draw_bare (cairo_t          *cr,
              const PpScene    *scene,
              const PpViewFrom *view)
{
  PpPoint wire;

  g_return_if_fail (cr != NULL && scene != NULL);

  if (view != NULL && view->from_behind)
    {
      pp_draw_glass (cr, scene, VEIL_FROM_BEHIND);
      pp_draw_knots (cr, scene);
      pp_draw_wire (cr, scene);
      return;
    }
  wire = get_wire_shift (scene, get_slant (view));
  cairo_save (cr);
  cairo_translate (cr, wire.x, wire.y);
  pp_draw_wire (cr, scene);
  cairo_restore (cr);
  pp_draw_glass (cr, scene, 1);
  pp_draw_knots (cr, scene);
}

void
pp_draw_pocket_front (cairo_t       *cr,
                      const PpScene *scene,
                      guint          body,
                      PpPoint        shift)
{
  g_return_if_fail (cr != NULL && scene != NULL && body < scene->n_bodies);

  if (scene->pockets[body] != PP_NO_INDEX)
    pp_draw_pocket_glass (cr, scene->parts[scene->pockets[body]].fused, scene->bodies[body], shift);
}

PpPoint
pp_draw_get_shift_of (const PpScene    *scene,
                      const double     *heights,
                      const double     *tops,
                      const PpViewFrom *view,
                      guint             body)
{
  const double base = heights == NULL || isnan (heights[body]) ? 0 : heights[body];

  return pp_draw_get_shift (view, base, get_top (scene->bodies[body], tops, body));
}

static void
draw_from_front (cairo_t          *cr,
                 const PpScene    *scene,
                 PpGallery        *gallery,
                 const double     *heights,
                 const double     *tops,
                 const PpViewFrom *view)
{
  pp_draw_bare (cr, scene, view);
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      double top = get_top (body, tops, i);
      PpPoint shift = pp_draw_get_shift_of (scene, heights, tops, view, i);

      cairo_save (cr);
      cairo_translate (cr, shift.x, shift.y);
      /* A stem in a pocket stands within the glass: it throws no shadow on it. */
      if (scene->pockets[i] == PP_NO_INDEX)
        pp_draw_shadow (cr, body, top);
      pp_draw_body (cr, body, pp_gallery_get (gallery, body->piece));
      cairo_restore (cr);
      pp_draw_pocket_front (cr, scene, i, shift);
    }
}

static void
draw_from_behind (cairo_t          *cr,
                  const PpScene    *scene,
                  PpGallery        *gallery,
                  const PpViewFrom *view)
{
  PpBox box = pp_outline_get_box (scene->background_outline);

  cairo_save (cr);
  cairo_translate (cr, box.x0 + box.x1, 0);
  cairo_scale (cr, -1, 1);
  for (guint i = scene->n_bodies; i-- > 0;)
    pp_draw_body (cr, scene->bodies[i], pp_gallery_get (gallery, scene->bodies[i]->piece));
  pp_draw_bare (cr, scene, view);
  cairo_restore (cr);
}

void
pp_draw_scene (cairo_t          *cr,
               const PpScene    *scene,
               PpGallery        *gallery,
               const double     *heights,
               const double     *tops,
               const PpViewFrom *view)
{
  g_return_if_fail (cr != NULL && scene != NULL && gallery != NULL);

  if (view != NULL && view->from_behind)
    draw_from_behind (cr, scene, gallery, view);
  else
    draw_from_front (cr, scene, gallery, heights, tops, view);
}
