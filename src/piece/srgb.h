/* srgb.h: from linear light to what a file has and back: sRGB, IEC 61966-2-1.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All from 0 to 1.
 */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

static inline float
pp_srgb_encode (float light)
{
  return light <= 0.0031308f ? 12.92f * light : 1.055f * powf (light, 1 / 2.4f) - 0.055f;
}

static inline double
pp_srgb_decode (double encoded)
{
  return encoded <= 0.04045 ? encoded / 12.92 : pow ((encoded + 0.055) / 1.055, 2.4);
}

G_END_DECLS
