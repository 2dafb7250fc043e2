/* exporting.h: the sheets and the picture of a panel, written to files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each asks where to, works in a thread that can be stopped, and tells in one
 * sentence where the files are.
 */
#pragma once

#include "desk/sheet-choice.h"
#include "desk/window.h"

G_BEGIN_DECLS

/* `format`: one of them. */
void pp_exporting_sheets  (PpWindow            *window,
                           const PpSheetChoice *choice,
                           PpSheetFormats       format);
/* Asks first which picture. */
void pp_exporting_picture (PpWindow            *window);

G_END_DECLS
