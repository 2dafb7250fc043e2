/* edit-words.h: what was done to pieces, in words, for undo and for the maker.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/acts.h"

G_BEGIN_DECLS

typedef enum
{
  PP_ACT_TURN,
  PP_ACT_MIRROR,
  PP_ACT_PIN,
  PP_ACT_LET_GO,
  PP_ACT_DUPLICATE,
  PP_ACT_REMOVE,
  PP_ACT_CUT,
  PP_ACT_PASTE,
} PpEditAct;

/* "Turn Oxeye", "Turn 3 pieces": `ids` are placements of `panel`, at least one. (transfer full) */
char *pp_edit_words_act      (PpEditAct           act,
                              const PpPanel      *panel,
                              const char * const *ids);
/* The same of an act of acts.h. (transfer full) */
char *pp_edit_words_act_kind (const PpActKind    *act,
                              const PpPanel      *panel,
                              const char * const *ids);
/* What to say of an act that passes over what stays put: `pinned` are left as they are. `others`:
 * whether any piece was not. (transfer full) */
char *pp_edit_words_stay_put (const PpPanel      *panel,
                              const char * const *pinned,
                              gboolean            others);

G_END_DECLS
