/* discs.h: finds the printed frame in a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The frame is four black discs of 12 mm whose middles are the corners of a rectangle; the one at
 * the upper left has a white hole of 4 mm, so the photo may be turned any way.
 */
#pragma once

#include "piece/photo.h"

G_BEGIN_DECLS

/* mm: the discs of the printed frame, of which the top left one has a white hole. */
#define PP_DISCS_ACROSS 12.0
#define PP_DISCS_HOLE 4.0

/* The middles of the discs in pixels: upper left, upper right, lower right, lower left as the
 * sheet has them. `width`, `height`: mm between middles.
 * Errors: PP_PHOTO_ERROR_FRAME if there are no such four; G_IO_ERROR_CANCELLED. */
gboolean pp_discs_find (const PpPhoto  *photo,
                        double          width,
                        double          height,
                        PpPoint         corners[4],
                        GCancellable   *cancellable,
                        GError        **error);

G_END_DECLS
