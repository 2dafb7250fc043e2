/* petal.h: the petals of a flower, each a shape in places out along it and across it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two neighbours part where both are half the angle between them wide, which is the notch; inward
 * of it they lie over one another. Beyond it a petal rounds to its tip.
 */
#pragma once

#include "piece/measures.h"

G_BEGIN_DECLS

#define PP_PETAL_MOST_POINTS 52 /* of a petal's border */
#define PP_PETALS_MAX 60

typedef struct
{
  double angle;    /* radians, of its tip, clockwise from the right */
  double spread;   /* radians, half the angle to its neighbours */
  double inner;    /* mm, where it begins */
  double neck;     /* mm from the middle, where it parts from its neighbours */
  double reach;    /* mm, its tip */
  double overlap;  /* share of the spread by which it lies over its neighbours */
  double ruffle;   /* share of the reach by which its border waves */
  double squarish; /* 2 rounds the tip to an ellipse, more makes it fuller */
  guint  n_points; /* of its border: more on a wide petal */
  guint  seed;
} PpPetal;

typedef struct
{
  PpPetal petals[PP_PETALS_MAX];
  guint   n_petals;
  double  middle;   /* radius */
} PpPetals;

/* Petals whose union is as wide across as measured, tip to tip. */
void       pp_petals_init        (PpPetals         *self,
                                  const PpMeasures *measures);
/* Their union with the middle; (transfer full). */
PpOutline *pp_petals_get_outline (const PpPetals   *self);

/* A point of a petal: `out` from 0 where it begins to 1 at its tip, `across` from -1 to 1, the
 * borders; beyond that it lies outside. */
PpPoint    pp_petal_point        (const PpPetal    *self,
                                  double            out,
                                  double            across);
/* Its n_points points round it at a share of its width; not closed. */
void       pp_petal_border       (const PpPetal    *self,
                                  double            share,
                                  PpPoint          *points);

G_END_DECLS
