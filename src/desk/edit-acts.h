/* edit-acts.h: what is done to the chosen things of a document.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is one step of undo, named after what it was done to. Pieces that stay put are not turned
 * or mirrored, which is told by the document's signal "refused". Where nothing is chosen that an
 * act is about, it does nothing. What acts on several keeps them in order among themselves.
 */
#pragma once

#include "desk/document.h"
#include "desk/edit-words.h"

G_BEGIN_DECLS

/* Clockwise, about the middle of their origins, which stays where it is: turned all the way round
 * they lie as before. Turns of the same pieces in a row are one step. */
void     pp_edit_acts_turn       (PpDocument *document,
                                  double      degrees);
/* In the upright line through the middle of their box. */
void     pp_edit_acts_mirror     (PpDocument *document);
/* One of acts.h. */
void     pp_edit_acts_do         (PpDocument      *document,
                                  const PpActKind *act);
void     pp_edit_acts_pin        (PpDocument *document,
                                  gboolean    pinned);
/* The copies are chosen, 10 mm or 1/2 in down and to the right; a group copied whole is a group of
 * its own. */
void     pp_edit_acts_duplicate  (PpDocument *document);
/* Chosen from then on. Nothing where there is one. */
void     pp_edit_acts_put_wire_on (PpDocument *document);
void     pp_edit_acts_remove_hole (PpDocument *document,
                                   const char *id);
void     pp_edit_acts_remove_wire (PpDocument *document);
/* Pieces, under the name of `act`; or the hole or the wire. */
void     pp_edit_acts_remove     (PpDocument *document,
                                  PpEditAct   act);
void     pp_edit_acts_choose_all (PpDocument *document);

/* The chosen pieces that may be moved, after telling by "refused" of those that stay put; NULL if
 * there are none. (transfer full) */
char   **pp_edit_acts_list_movable (PpDocument *document);
/* Likewise of those with these ids (nullable). (transfer full) (nullable) */
char   **pp_edit_acts_filter_movable (PpDocument         *document,
                                      const char * const *ids);
/* How far a copy lies from its original, mm each way. */
double   pp_edit_acts_get_shift  (const PpPanel *panel);
/* As pp_document_take(), of pieces, with a plain sentence for more than a panel holds. */
gboolean pp_edit_acts_take       (PpDocument *document,
                                  PpPanel    *next,
                                  GError     *error,
                                  const char *label,
                                  const char *merge_key);

G_END_DECLS
