/* frame.h: art in another frame: larger or smaller, and shifted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/art.h"

G_BEGIN_DECLS

/* SVG text whose every point p has gone to scale·p + by, mm. (transfer full)
 * Errors: PP_ART_ERROR for art that may not be drawn. */
GBytes *pp_frame_art (GBytes   *art,
                      double    scale,
                      PpPoint   by,
                      GError  **error);

G_END_DECLS
