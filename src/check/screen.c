/* screen.c: what may stand between a viewer and the wire, with its rim.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/screen.h"

#include "panel/tolerance.h"

#define LOOSE 0.03  /* mm, sides are parted until they are straight but for this */
#define MOST_CUTS 64 /* of a side */

/* A side of so many mm is parted into so many. */
static guint
count_cuts (double length,
            double steepest,
            double bend)
{
  double square = bend * length * length / 8; /* of a surface that bends by `bend` a mm */
  double slope = steepest * length / 2;       /* of one that may have a crease */
  double n = square <= slope ? sqrt (square / LOOSE) : slope / LOOSE;

  return (guint) CLAMP (ceil (n), 1, MOST_CUTS);
}

static double
find_loose (double length,
            double steepest,
            double bend)
{
  return MIN (bend * length * length / 8, steepest * length / 2);
}

/* The rim in the making. */
typedef struct
{
  PpScreen *screen;
  GArray   *points; /* PpPoint */
  double    steepest;
  double    bend;
} Rim;

static void
add_side (Rim    *self,
          PpPoint a,
          PpPoint b)
{
  double length = pp_rough_length (b.x - a.x, b.y - a.y);
  guint n = count_cuts (length, self->steepest, self->bend);

  for (guint k = 1; k <= n; k++)
    {
      double share = (double) k / n;
      PpPoint p = k == n ? b : (PpPoint) { a.x + share * (b.x - a.x), a.y + share * (b.y - a.y) };

      g_array_append_val (self->points, p);
    }
  self->screen->loose = MAX (self->screen->loose,
                             find_loose (length / n, self->steepest, self->bend));
}

static void
find_corners (Rim *self)
{
  PpScreen *screen = self->screen;
  const PpOutline *outline = screen->cover.outline;

  screen->n_rings = pp_outline_get_n_rings (outline);
  screen->ends = g_new (guint, screen->n_rings);
  for (guint r = 0; r < screen->n_rings; r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      g_array_append_val (self->points, p[0]);
      for (guint i = 0; i + 1 < n; i++)
        add_side (self, p[i], p[i + 1]);
      screen->ends[r] = self->points->len;
    }
}

static void
make_rim (PpScreen *self,
          double    steepest,
          double    bend)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  Rim rim = { self, points, steepest, bend };

  find_corners (&rim);
  self->x = g_new (double, 3 * (gsize) points->len); /* all in one, which `x` owns */
  self->y = self->x + points->len;
  self->z = self->y + points->len;
  for (guint i = 0; i < points->len; i++)
    {
      PpPoint p = g_array_index (points, PpPoint, i);

      self->x[i] = p.x;
      self->y[i] = p.y;
      self->z[i] = self->is_piece ? pp_midsurface_height (&self->piece, p) : 0;
    }
}

PpScreen *
pp_screen_new_glass (PpCover cover)
{
  PpScreen *self = g_atomic_rc_box_new0 (PpScreen);

  self->cover = cover;
  make_rim (self, 0, 0);
  return self;
}

PpScreen *
pp_screen_new_piece (const PpMidsurface *piece)
{
  const PpHeights *heights = &piece->body->heights;
  PpScreen *self = g_atomic_rc_box_new0 (PpScreen);

  self->cover = pp_cover_of_body (piece->body);
  self->is_piece = TRUE;
  self->piece = *piece;
  make_rim (self, pp_heights_get_steepest (heights), pp_heights_get_bend (heights));
  return self;
}

PpScreen *
pp_screen_ref (PpScreen *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
screen_clear (gpointer data)
{
  PpScreen *self = data;

  g_free (self->ends);
  g_free (self->x);
}

void
pp_screen_unref (PpScreen *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, screen_clear);
}

PpBox
pp_screen_get_shadow (const PpScreen *self,
                      PpPoint         slant)
{
  return self->is_piece ? pp_midsurface_get_shadow (&self->piece, slant)
                        : pp_box_grow (self->cover.box, PP_TIE);
}

gboolean
pp_screen_hides (const PpScreen *self,
                 PpPoint         start,
                 PpPoint         slant)
{
  return self->is_piece ? pp_midsurface_meets (&self->piece, start, slant)
                        : pp_cover_contains (&self->cover, start);
}
