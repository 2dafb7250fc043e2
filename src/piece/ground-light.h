/* ground-light.h: the light on the ground of a squared photo as a smooth surface.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to ground.
 */
#pragma once

#include "piece/squared.h"

G_BEGIN_DECLS

#define PP_LIGHT_TERMS 10 /* of a cubic in two variables */

/* Natural logarithms of linear light, over -1 to 1 each way. */
typedef struct
{
  double terms[3][PP_LIGHT_TERMS];
} PpGroundLight;

/* Most of what is seen, or the largest part of it of one colour. */
PpGroundLight pp_ground_light_fit (const PpSquared     *squared);
/* The ground's linear light at a dot. */
void          pp_ground_light_at  (const PpGroundLight *self,
                                   const PpSquared     *squared,
                                   guint                x,
                                   guint                y,
                                   float               *rgb);

G_END_DECLS
