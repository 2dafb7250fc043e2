/* glue-map.h: the panel from above with the numbers of its steps, and the piece in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: step (guint), the number of a step or its piece was pressed; from 0.
 */
#pragma once

#include "desk/document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_GLUE_MAP (pp_glue_map_get_type ())
G_DECLARE_FINAL_TYPE (PpGlueMap, pp_glue_map, PP, GLUE_MAP, GtkWidget)

#define PP_NO_STEP (-1)

/* Of the present panel of `document` (nullable). `plan` (nullable) must be of a panel with the same
 * placements. `step` is lit, or PP_NO_STEP. At the bench there is what lies on the glass, faint,
 * and the piece of the step alone, with its distances from the left and the top. */
void pp_glue_map_show (PpGlueMap    *self,
                       PpDocument   *document,
                       const PpPlan *plan,
                       int           step,
                       gboolean      is_bench);

G_END_DECLS
