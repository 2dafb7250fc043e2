/* bead.h: volumes of glue as the length of a bead from a nozzle.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Who has no syringe lays two beads side by side. A bead is taken as round, as wide as the bore.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_BEAD_BORE 3.0 /* mm, of the nozzles of small bottles and tubes, about */

/* mm of bead that hold `ml` from a round bore of `bore` mm. */
double pp_bead_length (double  ml,
                       double  bore);
/* "or beads from a hole of 3 mm". (transfer full) */
char  *pp_bead_label_format (PpUnits units);
/* "141 mm", or "141 mm and 70 mm" where the parts differ. (transfer full) */
char  *pp_bead_format (double  a,
                       double  b,
                       PpUnits units);

G_END_DECLS
