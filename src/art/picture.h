/* picture.h: the arrangement as a PNG file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/draw.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define PP_PICTURE_MIN_WIDTH 16
#define PP_PICTURE_MAX_WIDTH 16384

/* A picture of the whole extent with a small margin, `width` pixels wide; the height follows. PNG
 * in memory (transfer full). Errors: G_IO_ERROR_INVALID_ARGUMENT for a width out of range or a
 * picture over 256 million pixels; G_IO_ERROR_FAILED where cairo fails. */
GBytes *pp_picture_png (const PpScene    *scene,
                        PpGallery        *gallery,
                        const double     *heights,
                        const double     *tops,
                        const PpViewFrom *view,
                        int               width,
                        GError          **error);

G_END_DECLS
