/* beside.h: the dots beside one of a raster.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The four that share a side with `at`, of `n` in rows of `width`; those beyond the raster are
 * `n`. */
static inline void
pp_dots_beside (gsize at,
                gsize width,
                gsize n,
                gsize beside[4])
{
  beside[0] = at % width > 0 ? at - 1 : n;
  beside[1] = (at + 1) % width > 0 ? at + 1 : n;
  beside[2] = at >= width ? at - width : n;
  beside[3] = at + width < n ? at + width : n;
}

G_END_DECLS
