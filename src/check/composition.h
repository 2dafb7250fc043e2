/* composition.h: groups of flowers, weight for the eye, height over the vase, overhang.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;    /* NULL for a group found by nearness */
  guint       n_members;
  guint      *members; /* indices of placements, rising */
  guint       flowers;
  gboolean    stays;   /* of the same pieces in the same places as one of the scene before */
} PpGroup;

/* Whether two placements were found within the distance of a group. */
typedef struct
{
  guint    i;
  guint    j; /* earlier */
  gboolean near;
} PpNearness;

/* Of a placement's outline, mm². */
typedef struct
{
  double area;
  double left; /* of the middle */
} PpSpread;

typedef struct
{
  guint    n_groups; /* in order of their first placement */
  PpGroup *groups;
  double   left;     /* weight for the eye, mm² */
  double   right;
  double   vase_ratio; /* NAN without a vase, or without flowers and buds */
  double  *overhang; /* of each placement (overhang.h) */
  PpSpread *spread;  /* of each placement */
  GArray  *asked;    /* PpNearness, those that were asked for, rising by i, then j */
} PpComposition;

/* Names are borrowed from the panel of the scene. `previous` (nullable): of an earlier scene,
 * `before`, with the same limits; what has not moved is taken over from it, and the answer is the
 * same with and without. (transfer full) */
PpComposition *pp_composition_new  (const PpScene       *scene,
                                    const PpComposition *previous,
                                    const PpScene       *before);
void           pp_composition_free (PpComposition *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpComposition, pp_composition_free)

G_END_DECLS
