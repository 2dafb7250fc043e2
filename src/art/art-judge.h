/* art-judge.h: whether a drawing from a stranger may be given to the SVG library, and what of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/art.h"

G_BEGIN_DECLS

/* Returns the drawing written anew from the elements, attributes and text that were judged, so
 * that no reader can see in it what the judge did not; (transfer full). NULL with a
 * PP_ART_ERROR otherwise. */
GBytes *pp_art_judge (GBytes   *svg,
                      GError  **error);

G_END_DECLS
