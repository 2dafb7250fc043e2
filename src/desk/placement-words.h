/* placement-words.h: a placed piece in words, for those who hear the window and for the card.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All strings are (transfer full), translated, in the panel's unit.
 */
#pragma once

#include "desk/document.h"

G_BEGIN_DECLS

/* "Cornflower, 3 of 14, 4 3/4 in from the left, 6 in from the top": its stack place from the
 * bottom, and where its origin lies. `index` in panel->placements. */
char *pp_placement_words_name    (const PpPanel *panel,
                                  guint          index);
/* "on Fern, sits firm": what it rests on and how; "" before a check knows. */
char *pp_placement_words_state   (PpDocument    *document,
                                  const char    *placement);

G_END_DECLS
