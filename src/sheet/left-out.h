/* left-out.h: the findings about art that is not drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "art/gallery.h"
#include "check/finding.h"

G_BEGIN_DECLS

/* A note art-left-out for each tray piece whose art may not be drawn. PpFinding, (transfer
 * full). */
GPtrArray *pp_left_out_findings (const PpPanel *panel,
                                 PpGallery     *gallery);

G_END_DECLS
