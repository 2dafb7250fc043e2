/* margin.h: the margin beside the glass: the findings in words, worst first.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the document. At most three sentences stand open; the rest are folded to one line, and
 * those the maker knows of to another. "I know" is an edit of the document.
 * Signals: show-me (guint index), the maker asked where a finding is; light (int index), the
 * pointer is on a finding's sentence, or on none: -1.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_MARGIN (pp_margin_get_type ())
G_DECLARE_FINAL_TYPE (PpMargin, pp_margin, PP, MARGIN, GtkWidget)

/* `document` is nullable. */
void pp_margin_set_document (PpMargin   *self,
                             PpDocument *document);
/* Opens the sentence of a finding and puts the focus there: its pin was pressed. */
void pp_margin_open         (PpMargin   *self,
                             guint       index);

G_END_DECLS
