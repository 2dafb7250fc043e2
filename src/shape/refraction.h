/* refraction.h: how glass bends a line of sight.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Snell's law, angles from the upright on the glass.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* sin of the angle inside a medium `index` times as dense as the one outside, from sin of the
 * angle outside; more than 1 where the light is thrown back whole (only with `index` < 1). */
double pp_refraction_sine  (double sine,
                            double index);
/* mm along the glass between the points where a line of sight leaves it in front and behind:
 * thickness · tan of the angle inside. `tangent`: of the angle outside, at least 0. */
double pp_refraction_shift (double thickness,
                            double tangent,
                            double index);

G_END_DECLS
