/* variant-dialog.h: another panel like this, or this one on glass of another size, to look at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wished is shown at once and put right in a thread; that can be stopped, and what was
 * found by then counts. Every further arrangement is one press away, and so are those before it.
 * Signal: accepted, the maker wants the panel shown; the dialog stays until it is destroyed.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_VARIANT_DIALOG (pp_variant_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PpVariantDialog, pp_variant_dialog, PP, VARIANT_DIALOG, GtkWindow)

/* Of the present panel of the document. is_size: glass of another size is asked for.
 * (transfer none) */
PpVariantDialog *pp_variant_dialog_new       (GtkWindow       *parent,
                                              PpDocument      *document,
                                              gboolean         is_size);
/* What is shown. (transfer none) */
const PpPanel   *pp_variant_dialog_get_panel (PpVariantDialog *self);

G_END_DECLS
