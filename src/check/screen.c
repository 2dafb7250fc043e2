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
  return fmin (bend * length * length / 8, steepest * length / 2);
}

static PpRimPoint
rim_point (const PpScreen *self,
           PpPoint         p)
{
  return (PpRimPoint) { p.x, p.y, self->is_piece ? pp_midsurface_height (&self->piece, p) : 0 };
}

static void
add_side (PpScreen *self,
          GArray   *rim,
          PpPoint   a,
          PpPoint   b,
          double    steepest,
          double    bend)
{
  double length = pp_point_distance (a, b);
  guint n = count_cuts (length, steepest, bend);

  for (guint k = 1; k <= n; k++)
    {
      double share = (double) k / n;
      PpPoint p = k == n ? b : (PpPoint) { a.x + share * (b.x - a.x), a.y + share * (b.y - a.y) };
      PpRimPoint point = rim_point (self, p);

      g_array_append_val (rim, point);
    }
  self->loose = fmax (self->loose, find_loose (length / n, steepest, bend));
}

static void
make_rim (PpScreen *self,
          double    steepest,
          double    bend)
{
  const PpOutline *outline = self->cover.outline;
  GArray *rim = g_array_new (FALSE, FALSE, sizeof (PpRimPoint));

  self->n_rings = pp_outline_get_n_rings (outline);
  self->ends = g_new (guint, self->n_rings);
  for (guint r = 0; r < self->n_rings; r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);
      PpRimPoint first = rim_point (self, p[0]);

      g_array_append_val (rim, first);
      for (guint i = 0; i + 1 < n; i++)
        add_side (self, rim, p[i], p[i + 1], steepest, bend);
      self->ends[r] = rim->len;
    }
  self->rim = (PpRimPoint *) (gpointer) g_array_free (rim, FALSE);
}

void
pp_screen_init_glass (PpScreen *self,
                      PpCover   cover)
{
  *self = (PpScreen) { .cover = cover };
  make_rim (self, 0, 0);
}

void
pp_screen_init_piece (PpScreen           *self,
                      const PpMidsurface *piece)
{
  const PpHeights *heights = &piece->body->heights;

  *self = (PpScreen) { .cover = piece->cover, .is_piece = TRUE, .piece = *piece };
  make_rim (self, pp_heights_get_steepest (heights), pp_heights_get_bend (heights));
}

void
pp_screen_clear (PpScreen *self)
{
  g_clear_pointer (&self->ends, g_free);
  g_clear_pointer (&self->rim, g_free);
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
