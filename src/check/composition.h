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
} PpGroup;

typedef struct
{
  guint    n_groups; /* in order of their first placement */
  PpGroup *groups;
  double   left;     /* weight for the eye, mm² */
  double   right;
  double   vase_ratio; /* NAN without a vase, or without flowers and buds */
  double  *overhang; /* mm of each placement beyond the background; 0 if none */
} PpComposition;

/* Names are borrowed from the panel of the scene. (transfer full) */
PpComposition *pp_composition_new  (const PpScene *scene);
void           pp_composition_free (PpComposition *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpComposition, pp_composition_free)

G_END_DECLS
