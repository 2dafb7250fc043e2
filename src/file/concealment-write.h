/* concealment-write.h: concealment and hanging as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"
#include "file/json-write.h"

G_BEGIN_DECLS

/* Left out without wire and holes. */
void pp_write_concealment (PpJsonWriter  *w,
                           const PpCheck *check);
/* null without a wire. */
void pp_write_hanging     (PpJsonWriter  *w,
                           const PpHang  *hang);

G_END_DECLS
