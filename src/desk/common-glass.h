/* common-glass.h: the sizes and thicknesses in which glass is commonly had.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By number, in either unit; the two lists stand beside one another, so that a change of unit finds
 * the nearest of the other. Lengths are mm.
 */
#pragma once

#include "panel/new-panel.h"

G_BEGIN_DECLS

#define PP_COMMON_SIZES 5
#define PP_COMMON_THICKNESSES 3

#define PP_LEAST_GLASS 20.0 /* mm, of a side; smaller glass carries no flower */

/* "12 × 16", and with its unit for those who hear it. (transfer full) */
char       *pp_common_size_write          (PpUnits           units,
                                           guint             i);
char       *pp_common_size_speak          (PpUnits           units,
                                           guint             i);
/* Whether the wish has that size of its unit, upright or sideways. */
gboolean    pp_common_size_is             (const PpNewPanel *wish,
                                           guint             i);
/* Sideways if the glass lies so now. */
void        pp_common_size_take           (PpNewPanel       *wish,
                                           guint             i);
double      pp_common_thickness_get       (PpUnits           units,
                                           guint             i);
/* As glass is sold: an odd fraction is not rounded as measures are. (transfer none) */
const char *pp_common_thickness_get_words (PpUnits           units,
                                           guint             i);
/* Whether two lengths are the same one, mm. */
gboolean    pp_common_is_close            (double            a,
                                           double            b);

G_END_DECLS
