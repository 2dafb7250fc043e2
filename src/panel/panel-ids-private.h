/* panel-ids-private.h: one table of all the ids of a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For panel.c alone. Ids of fused parts, holes, tray pieces and placements share one space: one
 * that stands twice is refused, whatever the two are.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

typedef enum
{
  PP_ID_FUSED = 1,
  PP_ID_HOLE,
  PP_ID_PIECE,
  PP_ID_PLACEMENT,
} PpIdKind;

/* Empty; (transfer full). Its keys are borrowed from the records of the panel that is added. */
GHashTable *pp_panel_ids_new       (void);
/* Error: PP_PANEL_ERROR_DUPLICATE, beginning with the JSON path of the second. */
gboolean    pp_panel_ids_add_all   (GHashTable *ids, const PpPanel *panel, GError **error);
/* Where in its array the record of that kind stands; FALSE, and `index` untouched, without one. */
gboolean    pp_panel_ids_find      (GHashTable *ids, const char *id, PpIdKind kind, guint *index);
/* One more than the highest number that an id of the panel has had: an id once given is not given
 * again, also where only log, plan or quieted findings name it. */
guint       pp_panel_ids_find_next (GHashTable *ids, const PpPanel *panel);

G_END_DECLS
