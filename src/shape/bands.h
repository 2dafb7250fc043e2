/* bands.h: the sides of an outline by the height at which they lie.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether a point lies inside is asked of every side that a line across through it may meet; the
 * box of the outline is cut into level bands, each with the sides that reach into it.
 */
#pragma once

#include "shape/polygon.h"
#include "shape/range.h"

G_BEGIN_DECLS

/* Immutable, counted. */
typedef struct
{
  double          start;   /* mm, y of the first band */
  double          step;    /* mm */
  double          per_mm;  /* bands */
  guint           n;
  guint          *first;   /* of each band: its first side; n + 1 long */
  const PpPoint **sides;   /* of each its start, its end being the next point; band after band, in
                              the order of the rings */
  PpRange        *across;  /* mm, of each band: the x of its sides; NULL unless told to find them */
  PpOutline      *outline; /* which has the points */
} PpBands;

/* Any of the sides, by its number among those of all bands. */
static inline PpSide
pp_bands_get_side (const PpBands *self,
                   guint          i)
{
  return (PpSide) { self->sides[i][0], self->sides[i][1] };
}

/* A side counts as in a band that it comes within `reach` mm of. (transfer full) */
PpBands *pp_bands_new      (const PpOutline *outline,
                            double           reach);
/* For an outline that much is asked of from far away: bands whose sides are too far across are
 * passed over then. (transfer full) */
PpBands *pp_bands_new_far  (const PpOutline *outline,
                            double           reach);
PpBands *pp_bands_ref      (PpBands         *self);
void     pp_bands_unref    (PpBands         *self);

/* mm, from `p` to the nearest side, from within or without; `far` where it is no less. */
double   pp_bands_distance (const PpBands *self,
                            PpPoint        p,
                            double         far);
/* The same, or to some side that is no farther than `enough`, 0 for the nearest; `which` (nullable)
 * gets that side, unless none is nearer than `far`. */
double   pp_bands_nearest  (const PpBands *self,
                            PpPoint        p,
                            double         far,
                            double         enough,
                            PpSide        *which);

/* The band at a height, the first or the last beyond the outline. */
static inline guint
pp_bands_at (const PpBands *self,
             double         y)
{
  double band = (y - self->start) * self->per_mm;

  return band < 1 ? 0 : band >= self->n ? self->n - 1 : (guint) band;
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBands, pp_bands_unref)

G_END_DECLS
