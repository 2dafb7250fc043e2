/* questions.h: the findings of each question, said once its figures are known.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each adds the findings of its own row of questions.list, no others, from what the check
 * has found so far: all but its names and findings.
 */
#pragma once

#include "check/check.h"

G_BEGIN_DECLS

#define PP_QUESTION(name, ...) void pp_ask_##name (PpFindings *findings, const PpCheck *check);
#include "check/questions.list"
#undef PP_QUESTION

G_END_DECLS
