/* edit-command.h: edits written as commands, for the tests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "move a,b 3 -4": the name of the edit, then its words in the order of edit.h; ids are one word
 * with commas. What an edit gives beside the panel is asserted where it is run.
 */
#pragma once

#include "panel/panel.h"

/* (transfer full), or NULL with the edit's own error. */
PpPanel *edit_command_run (const PpPanel *panel, const char *command, GError **error);
