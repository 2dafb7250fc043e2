/* mask.h: dots that are glass and dots that are not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rasters of `width` times `height` dots, row after row.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_MASK_UNIT 3 /* distances are counted in thirds of a dot */

/* From each dot to the nearest that is not `value`, in thirds of a dot: 3 to a side and 4 to a
 * corner (Borgefors, Computer Vision, Graphics and Image Processing 34, 1986). The border of the
 * raster is no border. (transfer full) */
guint16 *pp_mask_distance (const guchar *mask,
                           guint         width,
                           guint         height,
                           guchar        value);
/* Numbers the patches of dots that are `value` and touch by their sides, from 1 on; the others are
 * 0. (transfer full) */
guint32 *pp_mask_label    (const guchar *mask,
                           guint         width,
                           guint         height,
                           guchar        value,
                           guint        *n_patches);
/* The mean of three channels over the dots with `core` set, in a square of 2·reach + 1 dots about
 * each dot; the channels of a dot without any are NAN. (transfer full) */
float   *pp_mask_mean     (const float  *channels,
                           const guchar *core,
                           guint         width,
                           guint         height,
                           guint         reach);
/* The mean of three channels over each dot and its eight neighbours, as far as there are any.
 * (transfer full) */
float   *pp_mask_smooth   (const float  *channels,
                           guint         width,
                           guint         height);
/* The middle one of some values, which it sorts; 0 if there are none. */
double   pp_mask_median   (float        *values,
                           guint         n);

G_END_DECLS
