/* parted.h: which dots of a squared photo are glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to found.
 */
#pragma once

#include "piece/ground.h"

G_BEGIN_DECLS

/* How far each dot is covered by glass, 0 to 1; 1/2 is the border. `more`: from -1 to 1, the more
 * the paler a difference counts as glass. (transfer full) Errors: G_IO_ERROR_CANCELLED. */
float *pp_parted_new (const PpGround   *ground,
                      double            more,
                      PpPhotoProgress   progress,
                      gpointer          data,
                      GCancellable     *cancellable,
                      GError          **error);

G_END_DECLS
