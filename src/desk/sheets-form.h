/* sheets-form.h: what to print, and on what.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: changed, another choice than before.
 */
#pragma once

#include "desk/sheet-choice.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_SHEETS_FORM (pp_sheets_form_get_type ())
G_DECLARE_FINAL_TYPE (PpSheetsForm, pp_sheets_form, PP, SHEETS_FORM, GtkWidget)

/* What can be chosen for this panel: of one without pieces the blank sheets alone. */
void           pp_sheets_form_set_panel  (PpSheetsForm  *self,
                                          const PpPanel *panel);
/* Pages of each kind, as PpSheetSet has them; NULL: not known. */
void           pp_sheets_form_set_counts (PpSheetsForm  *self,
                                          const guint   *counts);
/* (transfer full) */
PpSheetChoice *pp_sheets_form_dup_choice (PpSheetsForm  *self);

G_END_DECLS
