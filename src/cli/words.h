/* words.h: the answers about a panel as text for a terminal.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "cli/panel-answers.h"

G_BEGIN_DECLS

/* The panel in a line or two, its findings by level, the glue-up. (transfer full) */
char *pp_words_of_answers (const PpPanelAnswers *answers);

G_END_DECLS
