/* work-dialog.h: shows how far a work is, and stops it where the maker wants that.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/work.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_WORK_DIALOG (pp_work_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpWorkDialog, pp_work_dialog, PP, WORK_DIALOG, GtkWindow)

/* Comes up after a moment, so that what is done at once shows nothing. Destroy it when the work
 * has ended. (transfer none) */
PpWorkDialog *pp_work_dialog_new (GtkWindow  *parent,
                                  const char *sentence,
                                  PpWork     *work);

G_END_DECLS
