/* changes-words.h: what was changed, as the maker would say it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/change.h"

G_BEGIN_DECLS

/* "Fern frond: 9 mm to the left, turned by 20° clockwise". The scenes are those that the change
 * lies between. (transfer full) */
char *pp_change_say (const PpChange *self,
                     const PpScene  *before,
                     const PpScene  *after);

G_END_DECLS
