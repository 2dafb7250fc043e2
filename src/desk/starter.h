/* starter.h: the pieces every maker begins with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

/* PpPiece; (transfer full). */
GPtrArray *pp_starter_pieces (void);

G_END_DECLS
