/* mass.h: how heavy the finished panel is, where its mass is centred, and its extent.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/joint.h"

G_BEGIN_DECLS

typedef struct
{
  double total; /* g */
  double x;     /* mm, panel frame */
  double y;
  double z;
} PpMass;

typedef struct
{
  double width;  /* mm, box of background and all placements */
  double height;
  double depth;  /* mm, greatest height over the front face */
} PpExtent;

/* Background, fused parts, holes out, settled pieces, dabs, wire. */
PpMass   pp_mass_of        (const PpScene *scene,
                            PpRest       **rests,
                            PpJoint      **joints);
PpExtent pp_extent_of      (const PpScene *scene,
                            double         depth);

G_END_DECLS
