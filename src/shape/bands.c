/* bands.c: the sides of an outline by the height at which they lie.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/bands.h"

#define MOST 256 /* bands */

/* Calls it for every side; a band's own count or list is in the hands of `visit`. */
static void
visit_sides (PpBands         *self,
             const PpOutline *outline,
             double           reach,
             void           (*visit) (PpBands *self, guint band, PpSide side, guint *at),
             guint           *at)
{
  for (guint ring = 0; ring < pp_outline_get_n_rings (outline); ring++)
    {
      guint n;
      const PpPoint *points = pp_outline_get_ring (outline, ring, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          PpSide side = { points[i], points[i + 1] };
          guint from = pp_bands_at (self, fmin (side.a.y, side.b.y) - reach);
          guint to = pp_bands_at (self, fmax (side.a.y, side.b.y) + reach);

          for (guint band = from; band <= to; band++)
            visit (self, band, side, at);
        }
    }
}

static void
count_side (PpBands *self,
            guint    band,
            PpSide   side,
            guint   *at)
{
  self->first[band + 1]++;
}

static void
keep_side (PpBands *self,
           guint    band,
           PpSide   side,
           guint   *at)
{
  self->sides[at[band]++] = side;
}

static guint
count_positions (const PpOutline *outline)
{
  guint sum = 0, n;

  for (guint ring = 0; ring < pp_outline_get_n_rings (outline); ring++)
    {
      pp_outline_get_ring (outline, ring, &n);
      sum += n;
    }
  return sum;
}

PpBands *
pp_bands_new (const PpOutline *outline,
              double           reach)
{
  PpBands *self = g_new0 (PpBands, 1);
  PpBox box = pp_outline_get_box (outline);
  g_autofree guint *at = NULL;

  self->n = CLAMP (count_positions (outline) / 2, 1, MOST);
  self->start = box.y0;
  self->step = fmax (pp_box_height (box), reach) / self->n;
  self->first = g_new0 (guint, self->n + 1);
  visit_sides (self, outline, reach, count_side, NULL);
  for (guint band = 0; band < self->n; band++)
    self->first[band + 1] += self->first[band];
  self->sides = g_new (PpSide, self->first[self->n]);
  at = g_memdup2 (self->first, self->n * sizeof (guint));
  visit_sides (self, outline, reach, keep_side, at);
  return self;
}

void
pp_bands_free (PpBands *self)
{
  if (self == NULL)
    return;
  g_free (self->first);
  g_free (self->sides);
  g_free (self);
}
