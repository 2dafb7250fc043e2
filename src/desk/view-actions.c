/* view-actions.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/view-actions.h"

void
pp_view_actions_add (PpWindow *window)
{
}

void
pp_view_actions_set_keys (GtkApplication *application)
{
}
