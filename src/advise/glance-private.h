/* glance-private.h: what the parts of a glance share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/glance.h"

G_BEGIN_DECLS

/* How dark something is through which this share shines, PP_DARK at most. */
gint32   pp_dark_of    (double         transmittance,
                        double         opaque);
/* (transfer full) */
PpProbe *pp_probes_new (const PpCheck *check,
                        guint         *n_probes);
/* Over a point and as far around as pieces may land off. `bare`: how dark it is without pieces. */
PpProbe  pp_probe_over (const PpScene *scene,
                        PpPoint        at,
                        gint32        *bare);

G_END_DECLS
