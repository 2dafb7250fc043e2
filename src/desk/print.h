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
void               pp_print_run           (PpWindow            *window,
                                           const PpSheetChoice *choice);
/* Prints what `answers` are of, on the paper of the choice unless the dialog comes to say another.
 * answers: (transfer full). (transfer full) */
GtkPrintOperation *pp_print_operation_new (PpSheetAnswers      *answers,
                                           const PpSheetChoice *choice);

G_END_DECLS
