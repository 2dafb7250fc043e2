/* placement-words.h: a placed piece in words, for those who hear the window and for the card.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All strings are (transfer full), translated, in the panel's unit.
 */
#pragma once

#include "desk/document.h"

G_BEGIN_DECLS

/* "Cornflower": its piece's name, or the id of one without a name. */
char *pp_placement_words_piece   (const PpPanel *panel,
                                  guint          index);
/* "Cornflower, 3 of 14, 4 3/4 in from the left, 6 in from the top": its stack place from the
 * bottom, and where its origin lies. `index` in panel->placements. */
char *pp_placement_words_name    (const PpPanel *panel,
                                  guint          index);
/* "on Fern, sits firm": what a placement rests on and how. `panel` is that of its check. */
char *pp_placement_words_rest    (const PpPanel *panel,
                                  const PpRest  *rest);
/* The same by the document's last check; "" before a check knows. */
char *pp_placement_words_state   (PpDocument    *document,
                                  const char    *placement);

G_END_DECLS
