/* arrange-acts.h: the chosen pieces in the arrangement: swapped, over and under, spaced evenly,
 * across.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is one step of undo. What stays put is not moved, and what is glued is not swapped; the
 * document's signal "refused" tells of it.
 */
#pragma once

#include "desk/document.h"

G_BEGIN_DECLS

/* The chosen pieces become ones of another tray piece: place, turn, group and stack place stay. */
void pp_arrange_acts_swap         (PpDocument *document,
                                   const char *piece);
/* At least three: the outermost stay, the others stand at equal distances between them. */
void pp_arrange_acts_space_evenly (PpDocument *document);
/* To the other side of the upright line through the middle of the glass, mirrored. */
void pp_arrange_acts_mirror_across (PpDocument *document);

/* The one chosen piece goes over (or under) the next one in the stack that it overlaps. */
void pp_arrange_acts_go_past      (PpDocument *document,
                                   gboolean    over);
/* "Over Fern": what that would do; NULL where there is none. (transfer full) */
char *pp_arrange_acts_name_next   (PpDocument *document,
                                   gboolean    over);

G_END_DECLS
