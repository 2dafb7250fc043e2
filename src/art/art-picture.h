/* art-picture.h: a picture embedded in a drawing, looked at before anything decodes it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to the judge.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Reads the header of a "data:image/png;base64,..." or "data:image/jpeg;base64,..." address.
 * FALSE if it is none, if the data is not what it says, or a JPEG has more than a few passes
 * (each pass decodes the whole picture again). */
gboolean pp_art_picture_measure (const char *address,
                                 double     *pixels);

G_END_DECLS
