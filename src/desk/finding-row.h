/* finding-row.h: a finding that stands open: its pin, its sentence and what can be done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One that the maker knows of has no number, and can only be let speak again.
 * Signals: show-me; light (gboolean on), the pointer came or went; put-right; quiet (gboolean
 * quiet), "I know", or "Let it speak".
 */
#pragma once

#include "check/finding.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_FINDING_ROW (pp_finding_row_get_type ())
G_DECLARE_FINAL_TYPE (PpFindingRow, pp_finding_row, PP, FINDING_ROW, GtkWidget)

GtkWidget *pp_finding_row_new         (void);
/* `number` of `n` findings on the glass; number 0: one that is kept quiet. Sets only what has
 * changed, since a wrapped label is dear to lay out. */
void       pp_finding_row_set         (PpFindingRow    *self,
                                       const PpFinding *finding,
                                       guint            number,
                                       guint            n);

G_END_DECLS
