/* finding-acts.h: what is done with a finding where it stands in a row.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row's widget name is the key of its finding (folding.h).
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The number of the finding in `findings` that has the key, or -1. */
int  pp_finding_acts_find      (GPtrArray  *findings,
                                const char *key);
/* Asks the window to put it right. */
void pp_finding_acts_put_right (GtkWidget  *row,
                                PpDocument *document);
/* "I know", or let it speak again: an edit. */
void pp_finding_acts_quiet     (GtkWidget  *row,
                                PpDocument *document,
                                gboolean    quiet);

G_END_DECLS
