/* last-act.h: the last act at the bench that may have been a stray press.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* By the log, which is gone through from its beginning: the id of a job placed, "" for a mixing,
 * NULL for none; so what was taken back leaves the act before it. (transfer full) (nullable) */
char *pp_last_act_find (const PpPanel *panel);

G_END_DECLS
