/* clip.h: cut, copy and paste as values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A clip is a panel with nothing on it but what was copied, so that it can go from program to
 * program as the text of a panel file, and everything known about reading one holds for it too.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* The placements named (ended by NULL), in stacking order, with the tray pieces they need, on the
 * panel's own background and in its unit; no fused part, hole, wire, log, plan or quiet. Out of
 * any pocket. They keep their ids. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_REFERENCE for an id that is not there. */
PpPanel *pp_clip_new   (const PpPanel      *panel,
                        const char * const *placements,
                        GError            **error);

/* The clip's placements on top of the stack, moved by (dx, dy) mm, with new ids, not pinned, not
 * glued and out of any pocket. Each is of the tray piece that is the same in all but its count:
 * the one with the same id, else the first; where there is none, the clip's is added to the tray
 * (under a new id if its own is taken). A group stays one, under a new name if its own is taken;
 * one of whom the others were not copied is in no group.
 * `ids` (nullable, transfer full): the new placements', in stacking order. Returns (transfer
 * full).
 * Errors: PP_PANEL_ERROR_LIMIT for more pieces than a panel may hold, _VALUE for one too far off
 * to have a place. */
PpPanel *pp_edit_paste (const PpPanel      *panel,
                        const PpPanel      *clip,
                        double              dx,
                        double              dy,
                        char             ***ids,
                        GError            **error);

G_END_DECLS
