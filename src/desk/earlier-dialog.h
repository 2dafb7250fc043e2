/* earlier-dialog.h: the earlier saves of the panel in the window, to open one as a copy.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

#define PP_TYPE_EARLIER_DIALOG (pp_earlier_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpEarlierDialog, pp_earlier_dialog, PP, EARLIER_DIALOG, GtkWindow)

/* For a window that shows a panel. */
void pp_earlier_dialog_show (PpWindow *window);

G_END_DECLS
