/* curable.h: which findings moving things about could put right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Whether a move (move.h) could ever end a finding of this code: not where a hole is too small, a
 * stem too thick or a glass of another expansion. Whether one does here, the search says. */
gboolean pp_advise_can_cure (const char *code);

G_END_DECLS
