/* file-actions.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/file-actions.h"

void
pp_file_actions_add (PpWindow *window)
{
}

void
pp_file_actions_set_keys (GtkApplication *application)
{
}

void
pp_file_actions_open (PpWindow *window,
                      GFile    *file,
                      gboolean  as_copy)
{
}
