/* picture-dialog.h: asks how large a picture of the panel is wanted, and from which side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: accepted (int width in px, gboolean from_behind); the dialog goes away by itself.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_PICTURE_DIALOG (pp_picture_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpPictureDialog, pp_picture_dialog, PP, PICTURE_DIALOG, GtkWindow)

/* from_behind: what is chosen at first. (transfer none) */
PpPictureDialog *pp_picture_dialog_new (GtkWindow *parent,
                                        gboolean   from_behind);

G_END_DECLS
