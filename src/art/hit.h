/* hit.h: what lies under a point of the panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * mm, panel frame. A point within `reach` of something thin counts as on it, but only where
 * nothing lies exactly under the point.
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* Index of the topmost body at `p`; else of the nearest within `reach`, the upper one of equals;
 * else PP_NO_INDEX. */
int      pp_hit_body       (const PpScene *scene,
                            PpPoint        p,
                            double         reach);
/* Index of the hole at `p`, the nearest middle first, or PP_NO_INDEX. */
int      pp_hit_hole       (const PpScene *scene,
                            PpPoint        p,
                            double         reach);
/* Whether `p` lies within `reach` of the wire as it is drawn, from hole to hole. */
gboolean pp_hit_wire       (const PpScene *scene,
                            PpPoint        p,
                            double         reach);
/* Index of the fused part at `p`, the last of several, or PP_NO_INDEX. */
int      pp_hit_part       (const PpScene *scene,
                            PpPoint        p);
/* Whether `p` lies on the background. */
gboolean pp_hit_glass      (const PpScene *scene,
                            PpPoint        p);
/* Whether the whole body lies in the frame. */
gboolean pp_hit_is_framed  (const PpScene *scene,
                            guint          body,
                            PpBox          frame);

G_END_DECLS
