/* change.h: what one panel has that another has not, and what that costs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Costs are mm moved and a fifth of the degrees turned, and what else is as much work: the table
 * heads change.c. Only such moves are looked for; both panels must have the same tray, glass and
 * fused parts.
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

typedef enum
{
  PP_CHANGE_MOVE,
  PP_CHANGE_RESTACK,
  PP_CHANGE_ADD,
  PP_CHANGE_REMOVE,
  PP_CHANGE_GROUP,
  PP_CHANGE_HOLE,
  PP_CHANGE_WIRE,
} PpChangeKind;

typedef struct
{
  PpChangeKind kind;
  char        *about; /* id of a placement or hole, or "wire" */
  PpPoint      by;    /* mm: of a move or a hole; x of a wire: how much longer; else 0 */
  double       turn;  /* degrees clockwise, above -180 to 180 */
  char        *text;  /* one sentence without its end, in the maker's unit */
} PpChange;

/* "move", "restack", "add", "remove", "group", "hole", "wire". (transfer none) */
const char *pp_change_kind_get_name (PpChangeKind kind);
void        pp_change_free          (PpChange    *self);

/* Degrees clockwise from one rotation to another, the shorter way. */
double      pp_turn_between         (double             from,
                                     double             to);
/* Of moving and turning one placement. */
double      pp_pose_cost            (const PpPlacement *before,
                                     const PpPlacement *after);
/* Of the whole change. */
double      pp_change_cost          (const PpPanel     *before,
                                     const PpPanel     *after);

/* All changes (PpChange, transfer full): holes and wire, then placements in the order of the panel
 * before, then what was added. Of the longest common orders of the stack one that holds most of
 * those for which `holds` (nullable, by index in `before`) is set is kept. The scenes are for
 * names; for the thread that owns them. */
GPtrArray  *pp_changes_between      (const PpScene     *before,
                                     const PpScene     *after,
                                     const gboolean    *holds);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpChange, pp_change_free)

G_END_DECLS
