/* rings.h: outlines for tests, written as a line of text.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/outline.h"

G_BEGIN_DECLS

/* "0 0, 4 0, 4 3; 1 1, 2 1, 2 2": rings apart by ';', positions by ','; rings need not be closed.
 * (transfer full) */
PpOutline *test_outline (const char *text);

G_END_DECLS
