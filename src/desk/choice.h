/* choice.h: one of several, to press: a picture with its words, or words alone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A check button of a group without its mark: the one chosen has a thick border and bold words.
 * In a group the arrow keys choose, Tab passes over the others.
 * Properties: "sketch" (PpSketchKind), "words", and "hint" (nullable), a few words more under
 * them, which are also its description for those who hear it.
 * Signals: "pointed" after a press with the pointer, once what follows from it is shown, also where
 * it was chosen already: the keys may then go where the next is told, as Tab would bring them.
 */
#pragma once

#include "desk/sketch.h"

G_BEGIN_DECLS

#define PP_TYPE_CHOICE (pp_choice_get_type ())
G_DECLARE_FINAL_TYPE (PpChoice, pp_choice, PP, CHOICE, GtkCheckButton)

/* `spoken` (nullable): said in their place where what is beside the words is not heard. */
void pp_choice_set_words (PpChoice   *self,
                          const char *words,
                          const char *spoken);

/* In place of a sketch; `picture` is (transfer floating). */
void pp_choice_set_picture (PpChoice  *self,
                            GtkWidget *picture);

G_END_DECLS
