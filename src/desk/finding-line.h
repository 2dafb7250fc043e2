/* finding-line.h: a folded finding: its pin and its first words; pressed, it opens.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: open.
 */
#pragma once

#include "check/finding.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_FINDING_LINE (pp_finding_line_get_type ())
G_DECLARE_FINAL_TYPE (PpFindingLine, pp_finding_line, PP, FINDING_LINE, GtkWidget)

GtkWidget *pp_finding_line_new (void);
void       pp_finding_line_set (PpFindingLine   *self,
                                const PpFinding *finding,
                                guint            number);

G_END_DECLS
