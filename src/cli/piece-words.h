/* piece-words.h: what is written about a piece on the command line, KEY=VALUE.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "piece/answers.h"

G_BEGIN_DECLS

/* "3", from `least` up. */
gboolean pp_word_read_count  (const char *text,
                              guint       least,
                              guint      *count);
/* "32", "32 g", "1 1/2 oz"; more than none */
gboolean pp_word_read_weight (const char *text,
                              double     *g);
/* mm unless a unit is written */
gboolean pp_word_read_length (const char *text,
                              double     *mm);
/* "KEY=VALUE" as its key (transfer full) and where its value begins in `word`; FALSE without a
 * key. */
gboolean pp_word_split       (const char  *word,
                              char       **key,
                              const char **value);

/* name, count, kind, touches, gap, light, thickness, weight, weighed: what may be said of a piece
 * however it is made. A string stays that of the caller. FALSE: no such key or value. */
gboolean pp_word_read_answer (PpAnswers  *answers,
                              const char *key,
                              const char *value);
/* What is wrong with light under a piece of which all touches (transfer none); NULL: nothing. */
const char *pp_word_find_gap_fault (int    touch,
                                    double gap);
/* Whether what stands under the high part was not measured: so it is estimated. */
gboolean pp_word_is_gap_guessed (const PpAnswers *answers);
/* mm, of a piece whose thickness is not said, and the sentence that tells it. (transfer none) */
#define PP_USUAL_THICKNESS 6
const char *pp_word_usual_thickness (void);
/* Those keys, for --help; (transfer none). */
const char *pp_word_list_answers (void);

G_END_DECLS
