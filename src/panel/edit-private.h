/* edit-private.h: what the edits have in common; private to panel/.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/edit.h"

G_BEGIN_DECLS

/* Puts `record` (transfer full) in place of the one at `index`, or at the end where there is
 * none. */
void       pp_edit_put           (GPtrArray     *list,
                                  gboolean       is_there,
                                  guint          index,
                                  gpointer       record,
                                  GDestroyNotify unref);
/* Copies of the two lists that edits change most. */
GPtrArray *pp_edit_copy_placements (const PpPanel *panel);
GPtrArray *pp_edit_copy_tray       (const PpPanel *panel);
/* Whether anything in the panel has this id. */
gboolean   pp_edit_is_taken        (const PpPanel *panel, const char *id);
/* The first free id whose number is `*next` or more; leaves in `next` the number after it. A
 * number beyond those that count may be taken (panel-ids.c, MAX_ID_NUMBER). (transfer full) */
char      *pp_edit_take_id         (const PpPanel *panel, const char *prefix, guint *next);
/* The panel with another stack; takes `placements`, NULL after an error. */
PpPanel   *pp_edit_with_placements (const PpPanel *panel, GPtrArray *placements, GError **error);

/* The panel with a fused part as `draft` but with `outline`, and with `insert` (nullable: as it is)
 * in its pocket; both are taken. */
PpPanel   *pp_edit_set_outlines   (const PpPanel *panel, PpFused draft, PpOutline *outline,
                                   PpOutline *insert, GError **error);
/* A new one, whose insert is to be set. */
PpPocket   pp_edit_begin_pocket   (void);
/* The insert of the largest pocket there is room for in `draft`, which has an outline; NULL where
 * there is none. (transfer full) */
PpOutline *pp_edit_cut_largest    (const PpPanel *panel, const PpFused *draft);

G_END_DECLS
