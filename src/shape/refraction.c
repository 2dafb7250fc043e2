/* refraction.c: how glass bends a line of sight.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/refraction.h"

#include <math.h>

double
pp_refraction_sine (double sine,
                    double index)
{
  return sine / index;
}

double
pp_refraction_shift (double thickness,
                     double tangent,
                     double index)
{
  double inside = pp_refraction_sine (tangent / hypot (1, tangent), index);

  return thickness * inside / sqrt (1 - inside * inside);
}
