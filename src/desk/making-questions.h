/* making-questions.h: what is asked of every piece: name, count, kind, height, weight, light.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is not answered stays empty and shows "about" what is estimated.
 */
#pragma once

#include "desk/piece-bench.h"

G_BEGIN_DECLS

#define PP_TYPE_MAKING_QUESTIONS (pp_making_questions_get_type ())
G_DECLARE_FINAL_TYPE (PpMakingQuestions, pp_making_questions, PP, MAKING_QUESTIONS, GtkWidget)

/* The bench outlives it. Once. */
void pp_making_questions_set_bench (PpMakingQuestions *self,
                                    PpPieceBench      *bench);

G_END_DECLS
