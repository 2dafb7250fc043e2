/* conceal-discs.c: how much of the knots and holes the pieces hide.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Disc and pieces are panes of a shade. Out of a piece that is drawn in all is taken that lies
 * within the distance of its border, as a strip along each side and a wedge about each reflex
 * corner: a point inside is nearest to the inner part of a side, which its strip covers, or to a
 * reflex corner. Only what comes near the disc is.
 */
#include "check/conceal-private.h"

#include "check/shade.h"
#include "shape/polygon.h"

/* A disc on the front face and how far pieces are drawn in, mm. */
typedef struct
{
  PpPoint centre;
  double  radius;
  double  drawn_in;
} Disc;

/* mm beyond all that can matter, so that rounding does not. */
#define SPARE 0.01

/* A ring of a piece, without repeats, from which strips and wedges are taken. */
typedef struct
{
  const Disc *disc;
  PpShade    *shade;
  PpPoint    *p;
  guint       n;
  double      inner; /* 1 where the inside is to the left with y up, else -1 */
} Border;

/* `p` moved to the inner side of the side a-b, as far as the piece is drawn in. */
static PpPoint
move_inward (const Border *self,
             PpPoint       p,
             PpPoint       a,
             PpPoint       b)
{
  double far = self->inner * self->disc->drawn_in / pp_point_distance (a, b);

  return (PpPoint) { p.x - far * (b.y - a.y), p.y + far * (b.x - a.x) };
}

/* `from` and `to` are the ends of the strips on either side of the corner. */
static void
take_wedge (const Border *self,
            PpPoint       corner,
            PpPoint       from,
            PpPoint       to)
{
  double start = atan2 (from.y - corner.y, from.x - corner.x);
  double turn = atan2 (to.y - corner.y, to.x - corner.x) - start, far = self->disc->drawn_in;
  g_autofree PpPoint *points = NULL;
  guint n;

  if (turn > G_PI)
    turn -= 2 * G_PI;
  else if (turn < -G_PI)
    turn += 2 * G_PI;
  n = MAX (1, (guint) ceil (fabs (turn) / (2 * G_PI) * pp_circle_count_sides (far)));
  points = g_new (PpPoint, n + 3);
  for (guint i = 1; i < n; i++)
    points[i + 1] = (PpPoint) { corner.x + far * cos (start + turn * i / n),
                                corner.y + far * sin (start + turn * i / n) };
  points[0] = points[n + 2] = corner;
  points[1] = from;
  points[n + 1] = to;
  pp_shade_take_out (self->shade, points, n + 3, corner, corner, far);
}

static void
take_along (const Border *self,
            guint         i)
{
  const PpPoint *p = self->p;
  PpPoint a = p[i], b = p[i + 1], c = p[i + 2 < self->n ? i + 2 : 1];
  PpPoint strip[] = { a, b, move_inward (self, b, a, b), move_inward (self, a, a, b), a };

  if (pp_segment_distance (a, b, self->disc->centre)
      > self->disc->radius + self->disc->drawn_in + SPARE)
    return;
  pp_shade_take_out (self->shade, strip, G_N_ELEMENTS (strip), a, b, self->disc->drawn_in);
  if (self->inner * pp_point_cross (a, b, c) < 0)
    take_wedge (self, b, strip[2], move_inward (self, b, b, c));
}

static void
draw_in (const Disc    *disc,
         PpShade       *shade,
         const PpPoint *ring,
         guint          n,
         gboolean       is_outer)
{
  g_autofree PpPoint *p = g_new (PpPoint, n);
  Border border = { disc, shade, p, 0, (pp_ring_area (ring, n) > 0) == is_outer ? 1 : -1 };

  for (guint i = 0; i < n; i++)
    if (i == 0 || p[border.n - 1].x != ring[i].x || p[border.n - 1].y != ring[i].y)
      p[border.n++] = ring[i];
  for (guint i = 0; i + 1 < border.n; i++)
    take_along (&border, i);
}

static void
lay_over (const Disc   *disc,
          PpShade      *shade,
          const PpBody *body)
{
  guint n_rings = pp_outline_get_n_rings (body->outline), n;

  pp_shade_add_pane (shade, body->piece->transmittance);
  for (guint r = 0; r < n_rings; r++)
    {
      const PpPoint *ring = pp_outline_get_ring (body->outline, r, &n);

      pp_shade_add_ring (shade, ring, n);
    }
  for (guint r = 0; r < n_rings && disc->drawn_in > 0; r++)
    {
      const PpPoint *ring = pp_outline_get_ring (body->outline, r, &n);

      draw_in (disc, shade, ring, n, r == 0);
    }
}

static double
share_of (Disc           disc,
          const PpScene *scene,
          PpRest       **rests)
{
  g_autoptr (PpShade) shade = pp_shade_new ();
  PpBox reach = pp_box_grow ((PpBox) { disc.centre.x, disc.centre.y, disc.centre.x, disc.centre.y },
                             disc.radius);
  g_autofree PpPoint *rim = NULL;
  double area, share;
  guint n;

  if (disc.radius <= 0) /* nothing to see */
    return 1;
  rim = pp_circle_make_ring (disc.centre, disc.radius, &n);
  area = fabs (pp_ring_area (rim, n));
  pp_shade_add_pane (shade, 1);
  pp_shade_add_ring (shade, rim, n);
  for (guint i = 0; i < scene->n_bodies; i++)
    if (pp_conceal_counts (rests, i) && pp_box_meets (scene->bodies[i]->box, reach))
      lay_over (&disc, shade, scene->bodies[i]);
  share = 1 - pp_shade_get_shown (shade, pp_panel_get_limit (scene->panel, PP_LIMIT_OPAQUE)) / area;
  return CLAMP (share, 0, 1);
}

/* `previous` (nullable): the shares of the same disc before `changes`. */
static PpDiscShare
look_at_disc (const PpScene     *scene,
              PpRest           **rests,
              const PpHole      *hole,
              double             diameter,
              double             drawn_in,
              const PpDiscShare *previous,
              GArray            *changes)
{
  Disc disc = { { hole->x, hole->y }, diameter / 2, 0 }, barely = disc;
  double reach = diameter / 2 + PP_TIE;
  PpBox box = { hole->x - reach, hole->y - reach, hole->x + reach, hole->y + reach };

  if (previous != NULL && !pp_changes_meet (changes, box))
    return *previous;
  barely.drawn_in = drawn_in;
  return (PpDiscShare) {
    .share = share_of (disc, scene, rests),
    .barely = isnan (drawn_in) ? (double) NAN : share_of (barely, scene, rests),
  };
}

void
pp_conceal_share_discs (PpConceal       *self,
                        const PpScene   *scene,
                        PpRest         **rests,
                        const PpConceal *previous,
                        GArray          *changes)
{
  const PpPanel *panel = scene->panel;
  double place = pp_panel_get_limit (panel, PP_LIMIT_PLACE);

  self->n_holes = panel->holes->len;
  self->holes = g_new0 (PpDiscShare, self->n_holes);
  for (guint i = 0; i < self->n_holes; i++)
    self->holes[i] = look_at_disc (scene, rests, pp_panel_hole (panel, i),
                                   pp_panel_hole (panel, i)->diameter, NAN,
                                   previous != NULL ? &previous->holes[i] : NULL, changes);
  for (guint k = 0; k < scene->n_knots; k++)
    self->knots[k] = look_at_disc (scene, rests, pp_scene_knot_hole (scene, k),
                                   panel->wire->knot_diameter, place,
                                   previous != NULL ? &previous->knots[k] : NULL, changes);
}
