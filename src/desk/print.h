/* print.h: the sheets on a printer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/sheet-answers.h"
#include "desk/sheet-choice.h"
#include "desk/window.h"

G_BEGIN_DECLS

/* Makes ready in a thread, then the system's own dialog asks how. */
void pp_print_run (PpWindow            *window,
                   const PpSheetChoice *choice);

G_END_DECLS
