/* export-dialog.h: asks which sheets are wanted, and how.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a printer it asks for neither format nor paper, which the printer's own dialog knows.
 * Signal: accepted (gpointer PpSheetChoice, borrowed); the dialog goes away by itself.
 */
#pragma once

#include "desk/sheet-choice.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_EXPORT_DIALOG (pp_export_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpExportDialog, pp_export_dialog, PP, EXPORT_DIALOG, GtkWindow)

/* (transfer none) */
PpExportDialog *pp_export_dialog_new (GtkWindow *parent,
                                      gboolean   is_for_printer);

G_END_DECLS
