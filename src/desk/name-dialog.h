/* name-dialog.h: asks for a name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: named (char *name) -> gboolean, TRUE: the name was taken, and the dialog goes. Else it
 * stays, with what pp_name_dialog_refuse() said.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_NAME_DIALOG (pp_name_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpNameDialog, pp_name_dialog, PP, NAME_DIALOG, GtkWindow)

/* `sentence` says what is named, `name` is proposed, `act` stands on the button.
 * (transfer none) */
PpNameDialog *pp_name_dialog_new    (GtkWindow    *parent,
                                     const char   *title,
                                     const char   *sentence,
                                     const char   *name,
                                     const char   *act);
void          pp_name_dialog_refuse (PpNameDialog *self,
                                     const char   *sentence);

G_END_DECLS
