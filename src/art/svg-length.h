/* svg-length.h: how long a length of an SVG is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/point.h"

#include <librsvg/rsvg.h>

G_BEGIN_DECLS

/* mm, or 0 for a length that has no fixed size. */
static inline double
pp_svg_length_to_mm (RsvgLength length)
{
  if (length.unit == RSVG_UNIT_MM)
    return length.length;
  if (length.unit == RSVG_UNIT_CM)
    return length.length * 10;
  return length.unit == RSVG_UNIT_IN ? length.length * PP_MM_PER_INCH : 0;
}

G_END_DECLS
