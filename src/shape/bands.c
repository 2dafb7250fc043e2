/* bands.c: the sides of an outline by the height at which they lie.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/bands.h"

#define MOST 4096 /* bands */

/* The bands that a point or a side comes within reach of. */
typedef struct
{
  guint from;
  guint to;
} Within;

static Within
find_within (const PpBands *self,
             PpPoint        p,
             double         reach)
{
  return (Within) { pp_bands_at (self, p.y - reach), pp_bands_at (self, p.y + reach) };
}

/* Those of all sides, ring by ring, each side counted in each of its bands. (transfer full) */
static Within *
count_sides (PpBands         *self,
             const PpOutline *outline,
             double           reach,
             guint            n_sides)
{
  Within *within = g_new (Within, n_sides), *next = within;

  for (guint ring = 0; ring < pp_outline_get_n_rings (outline); ring++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, ring, &n);
      Within start = find_within (self, p[0], reach);

      for (guint i = 1; i < n; i++)
        {
          Within end = find_within (self, p[i], reach);

          *next = (Within) { MIN (start.from, end.from), MAX (start.to, end.to) };
          for (guint band = next->from; band <= next->to; band++)
            self->first[band]++;
          next++;
          start = end;
        }
    }
  return within;
}

/* From counts to where each band ends, and from there back to where it begins, with one side after
 * the other from the last on. */
static void
keep_sides (PpBands         *self,
            const PpOutline *outline,
            const Within    *within,
            guint            n_sides)
{
  for (guint band = 1; band <= self->n; band++)
    self->first[band] += self->first[band - 1];
  self->sides = g_new (const PpPoint *, self->first[self->n]);
  for (guint ring = pp_outline_get_n_rings (outline); ring-- > 0;)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, ring, &n);

      for (guint i = n - 1; i-- > 0;)
        {
          Within side = within[--n_sides];

          for (guint band = side.from; band <= side.to; band++)
            self->sides[--self->first[band]] = &p[i];
        }
    }
}

/* In how many bands a side may lie on the average. */
#define CROWDED 8.0

/* One for two positions, but fewer where many sides run from top to bottom. */
static guint
count_bands (const PpOutline *outline,
             guint           *n_sides)
{
  double height = pp_box_height (pp_outline_get_box (outline)), sum = 0;
  guint positions = 0, n;

  for (guint ring = 0; ring < pp_outline_get_n_rings (outline); ring++)
    {
      const PpPoint *p = pp_outline_get_ring (outline, ring, &n);

      positions += n;
      for (guint i = 0; i + 1 < n; i++)
        sum += fabs (p[i + 1].y - p[i].y);
    }
  *n_sides = positions - pp_outline_get_n_rings (outline);
  return (guint) CLAMP (fmin (positions / 2, CROWDED * positions * height / sum), 1, MOST);
}

PpBands *
pp_bands_new (const PpOutline *outline,
              double           reach)
{
  PpBands *self = g_atomic_rc_box_new0 (PpBands);
  PpBox box = pp_outline_get_box (outline);
  guint n_sides;
  g_autofree Within *within = NULL;

  self->outline = pp_outline_ref (outline);
  self->n = count_bands (outline, &n_sides);
  self->start = box.y0;
  self->step = fmax (pp_box_height (box), reach) / self->n;
  self->per_mm = 1 / self->step;
  self->first = g_new0 (guint, self->n + 1);
  within = count_sides (self, outline, reach, n_sides);
  keep_sides (self, outline, within, n_sides);
  return self;
}

static PpRange
find_across (const PpBands *self,
             guint          band)
{
  PpRange across = { INFINITY, -INFINITY };

  for (guint i = self->first[band]; i < self->first[band + 1]; i++)
    {
      PpSide side = pp_bands_get_side (self, i);

      across = pp_range_widen (across, (PpRange) { MIN (side.a.x, side.b.x),
                                                   MAX (side.a.x, side.b.x) });
    }
  return across;
}

PpBands *
pp_bands_new_far (const PpOutline *outline,
                  double           reach)
{
  PpBands *self = pp_bands_new (outline, reach);

  self->across = g_new (PpRange, self->n);
  for (guint band = 0; band < self->n; band++)
    self->across[band] = find_across (self, band);
  return self;
}

PpBands *
pp_bands_ref (PpBands *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
bands_clear (gpointer data)
{
  PpBands *self = data;

  g_free (self->first);
  g_free (self->sides);
  g_free (self->across);
  pp_outline_unref (self->outline);
}

void
pp_bands_unref (PpBands *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, bands_clear);
}

/* The nearest so far, mm² and mm, and the side that it is on. */
typedef struct
{
  double         least;
  double         far;
  const PpPoint *side;
} Nearest;

static inline gboolean
is_beside (const PpSide *side,
           double        x,
           double        far)
{
  return (side->a.x > x + far && side->b.x > x + far)
         || (side->a.x < x - far && side->b.x < x - far);
}

static void
look_in (const PpBands *self,
         guint          band,
         PpPoint        p,
         Nearest       *nearest)
{
  for (guint i = self->first[band]; i < self->first[band + 1]; i++)
    {
      PpSide side = pp_bands_get_side (self, i);
      double squared;

      if (is_beside (&side, p.x, nearest->far))
        continue;
      squared = pp_side_squared_distance (side, p);
      if (squared < nearest->least)
        *nearest = (Nearest) { squared, sqrt (squared), self->sides[i] };
    }
}

/* mm in height to the near edge of a band, 0 in it. A first or last band has all that is beyond. */
static inline double
gap_to (const PpBands *self,
        guint          band,
        double         y)
{
  double start = self->start + band * self->step;

  return MAX (MAX (start - y, y - start - self->step), 0);
}

/* mm to the nearest of its sides across. */
static inline double
gap_across (const PpBands *self,
            guint          band,
            double         x)
{
  if (self->across == NULL)
    return 0;
  return MAX (MAX (self->across[band].least - x, x - self->across[band].greatest), 0);
}

/* FALSE if neither the band nor one farther away can have a side that matters. */
static inline gboolean
look_at (const PpBands *self,
         guint          band,
         PpPoint        p,
         double         enough,
         Nearest       *nearest)
{
  double dy = gap_to (self, band, p.y), dx;

  if (nearest->least <= enough * enough || dy * dy >= nearest->least)
    return FALSE;
  dx = gap_across (self, band, p.x);
  if (dx * dx + dy * dy < nearest->least)
    look_in (self, band, p, nearest);
  return TRUE;
}

/* From the band of the point up and down. */
double
pp_bands_nearest (const PpBands *self,
                  PpPoint        p,
                  double         far,
                  double         enough,
                  PpSide        *which)
{
  guint middle = pp_bands_at (self, p.y);
  Nearest nearest = { far * far, far, NULL };

  look_in (self, middle, p, &nearest);
  for (guint band = middle; band-- > 0 && look_at (self, band, p, enough, &nearest);)
    ;
  for (guint band = middle + 1; band < self->n && look_at (self, band, p, enough, &nearest); band++)
    ;
  if (which != NULL && nearest.side != NULL)
    *which = (PpSide) { nearest.side[0], nearest.side[1] };
  return sqrt (nearest.least);
}

double
pp_bands_distance (const PpBands *self,
                   PpPoint        p,
                   double         far)
{
  return pp_bands_nearest (self, p, far, 0, NULL);
}
