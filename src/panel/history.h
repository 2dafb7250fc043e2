/* history.h: undo and redo over panels.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list of panels with the name of the act that made each. It knows no widget; whoever changes
 * it asks for the present panel again. Not for several threads.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* Steps kept; the oldest are forgotten. Panels share what did not change, so a step is small. */
#define PP_HISTORY_MAX 1000

typedef struct _PpHistory PpHistory;

PpHistory     *pp_history_new          (const PpPanel *panel);
void           pp_history_free         (PpHistory *self);
/* (transfer none), never NULL. */
const PpPanel *pp_history_get_present  (PpHistory *self);

/* Makes `panel` the present and forgets what was undone. `label` names the act, "Move oxeye".
 * With a `merge_key` (nullable) equal to that of the present step, and no pp_history_seal()
 * since, the present panel is replaced: the many moves of one drag are one step. A panel that is
 * the present one itself (same pointer) is no step. */
void           pp_history_push         (PpHistory *self, const PpPanel *panel,
                                        const char *label, const char *merge_key);
/* The next push starts a step of its own: the drag has ended. */
void           pp_history_seal         (PpHistory *self);
/* What happened at the bench: `panel` becomes the present, and nothing before it can be
 * brought back by undo. */
void           pp_history_barrier      (PpHistory *self, const PpPanel *panel);

/* Goes back like undo, but the step is forgotten, as are those that could be redone. */
gboolean       pp_history_drop         (PpHistory *self);
/* FALSE where there is nothing to undo or redo. */
gboolean       pp_history_undo         (PpHistory *self);
gboolean       pp_history_redo         (PpHistory *self);
/* The name of what undo or redo would act on, (transfer none), or NULL. */
const char    *pp_history_get_undo     (PpHistory *self);
const char    *pp_history_get_redo     (PpHistory *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpHistory, pp_history_free)

G_END_DECLS
