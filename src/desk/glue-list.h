/* glue-list.h: the steps of a glue plan, under headings for sittings and mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: move (guint from, guint to), the maker wants that step there, both from 0;
 * lit (int), another step is chosen.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_GLUE_LIST (pp_glue_list_get_type ())
G_DECLARE_FINAL_TYPE (PpGlueList, pp_glue_list, PP, GLUE_LIST, GtkWidget)

/* `plan` is nullable. The step `lit` is chosen, or none (-1). */
void pp_glue_list_set_plan (PpGlueList   *self,
                            const PpPlan *plan,
                            int           lit);
/* Chooses a step, and brings it into view; with the focus, if it is in the list already. */
void pp_glue_list_light    (PpGlueList   *self,
                            guint         step);
/* The one chosen, or -1. */
int  pp_glue_list_get_lit  (PpGlueList   *self);

G_END_DECLS
