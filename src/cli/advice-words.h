/* advice-words.h: what was put right, as text for a terminal and as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/advise.h"

G_BEGIN_DECLS

/* The changes, what they cure and what they leave. (transfer full) */
char    *pp_words_of_advice (const PpAdvice *advice);
/* The document "petalpane-put-right"; of a wire `by` is how much longer it is. (transfer full) */
GString *pp_advice_write    (const PpAdvice *advice);

G_END_DECLS
