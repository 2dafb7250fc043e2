/* midsurface.h: where a slanting line of sight meets a settled piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/settle.h"

G_BEGIN_DECLS

/* A settled piece as the surface halfway through its thickness: base plane + underside +
 * thickness/2. Borrows from rest and body. */
typedef struct
{
  const PpRest *rest;
  const PpBody *body;
  PpPlane       plane;  /* of a flat one's middle: z = c + a·x + b·y in the panel frame */
  double        steepest; /* mm a mm, no slope of it within the reach of the piece is more */
  double        lowest; /* mm, nowhere inside its outline does the surface leave these heights */
  double        highest;
} PpMidsurface;

PpMidsurface pp_midsurface_make       (const PpRest       *rest,
                                       const PpBody       *body);
/* Where a line of sight that slants by `slant` (mm in plan a mm of height) may start on the front
 * face if it is to meet the piece. */
PpBox        pp_midsurface_get_shadow (const PpMidsurface *self,
                                       PpPoint             slant);
/* mm: of the surface over a point of the panel frame. */
double       pp_midsurface_height     (const PpMidsurface *self,
                                       PpPoint             p);
/* Whether the line `start` + z·`slant` meets the surface somewhere inside the outline. */
gboolean     pp_midsurface_meets      (const PpMidsurface *self,
                                       PpPoint             start,
                                       PpPoint             slant);
/* mm: where its rim is thrown onto the front face along `slant`, lines that meet the surface an
 * even number of times start no farther from that than so; 0 where there are none. Thrown, a
 * surface moves along the slant alone, and runs back on itself by no more than its slope times
 * slant is over 1. */
double       pp_midsurface_get_fold   (const PpMidsurface *self,
                                       PpPoint             slant);

G_END_DECLS
