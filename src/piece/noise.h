/* noise.h: small differences, so that no two pieces are alike and the same seed gives the same.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Without a state: asked by seed and place, so a measure changed in a preview moves nothing else.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A number from -1 to 1 that belongs to `index`. */
double pp_noise_at     (guint  seed,
                        guint  index);
/* A smooth curve from -1 to 1 with a period of 1 in `t`; 0 on average. */
double pp_noise_smooth (guint  seed,
                        double t);

G_END_DECLS
