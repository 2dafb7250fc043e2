/* advice-dialog.h: what would put the panel right, to look at before it is done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The better panel as a picture with what lies elsewhere outlined, the changes in words, what they
 * cure and what they leave.
 * Signal: accepted, the maker wants it done; the dialog stays until it is destroyed.
 */
#pragma once

#include "advise/advise.h"
#include "art/gallery.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_ADVICE_DIALOG (pp_advice_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpAdviceDialog, pp_advice_dialog, PP, ADVICE_DIALOG, GtkWindow)

/* Takes `advice` (transfer full); `gallery` (nullable) is for the picture. (transfer none) */
PpAdviceDialog *pp_advice_dialog_new        (GtkWindow      *parent,
                                             PpAdvice       *advice,
                                             PpGallery      *gallery);
/* Another title, and what is said where nothing was amiss. */
void            pp_advice_dialog_set_words  (PpAdviceDialog *self,
                                             const char     *title,
                                             const char     *sum);
/* (transfer none) */
const PpAdvice *pp_advice_dialog_get_advice (PpAdviceDialog *self);

G_END_DECLS
