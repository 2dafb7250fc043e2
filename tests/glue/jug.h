/* jug.h: a fused jug with a pocket for stems.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "stack.h"

G_BEGIN_DECLS

/* "jug", x 70 to 130, y 130 to 190; its pocket of 6 mm is 20 mm wide and begins at y 110. */
void jug_add        (TestDraft  *draft);
/* The piece "stem" in it. */
void jug_place_stem (TestDraft  *draft,
                     const char *id,
                     double      x,
                     double      y);

G_END_DECLS
