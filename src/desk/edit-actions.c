/* edit-actions.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/edit-actions.h"

void
pp_edit_actions_add (PpWindow *window)
{
}

void
pp_edit_actions_set_keys (GtkApplication *application)
{
}
