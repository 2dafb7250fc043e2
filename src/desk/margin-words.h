/* margin-words.h: what the margin says besides the findings.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/document.h"

G_BEGIN_DECLS

/* Whether something of the last check is left unsaid because the panel is just begun. */
gboolean    pp_margin_words_waits   (PpDocument    *document);
/* What that is, and from when on it is said. (transfer full) */
char       *pp_margin_words_waiting (void);
/* "2 faults, 1 caution"; empty for none. (transfer full) */
char       *pp_margin_words_counts  (GPtrArray     *findings);
/* What to say of a panel without findings; `waits` as above. (transfer none) */
const char *pp_margin_words_calm    (const PpPanel *panel,
                                     gboolean       waits);
/* "4 more, folded"; without its last word once they are unfolded. (transfer full) */
char       *pp_margin_words_folded  (guint          n,
                                     gboolean       is_unfolded);
/* "1 kept quiet". (transfer full) */
char       *pp_margin_words_known   (guint          n);

G_END_DECLS
