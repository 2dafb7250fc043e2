/* document.h: the panel in hand: its history, its file, what is chosen, its last check and plan.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one place of the window where things change. Panels, checks and plans are values; the
 * document says which of them is the present one, and tells when that changes. For the main
 * thread.
 *
 * Signals, all without arguments but for the last:
 *   changed   the present panel is another one: after an edit, undo, redo
 *   chosen    something else is chosen
 *   checked   a check or a plan has come in, and with it the findings
 *   drawn     the art of the pieces has come in, or come anew
 *   refused   (char *sentence) an edit was not possible, and why
 * Properties: "saved" (read only), whether the file has the present panel; "file".
 */
#pragma once

#include "art/gallery.h"
#include "glue/plan.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define PP_TYPE_DOCUMENT (pp_document_get_type ())
G_DECLARE_FINAL_TYPE (PpDocument, pp_document, PP, DOCUMENT, GObject)

/* `file` (nullable): where the panel came from. A panel without one counts as saved until it is
 * edited. The first check begins at once. (transfer full) */
PpDocument         *pp_document_new              (const PpPanel *panel,
                                                  GFile         *file);

const PpPanel      *pp_document_get_panel        (PpDocument    *self);
/* The present panel as shapes, made when first asked for; not the scene of a check, which belongs
 * to another thread. (transfer none), until the next edit. */
PpScene            *pp_document_get_scene        (PpDocument    *self);
/* The art of the pieces, judged in a thread: NULL before the first has come in. (transfer none) */
PpGallery          *pp_document_get_gallery      (PpDocument    *self);
/* Lends the document art that is there already, so that nothing waits for it. */
void                pp_document_set_gallery      (PpDocument    *self,
                                                  PpGallery     *gallery);

/* Makes the panel that an edit gave the present one:
 *
 *     pp_document_take (document, pp_edit_lift (panel, ids, &error), error, _("Lift"), NULL);
 *
 * next: (transfer full) (nullable), what the edit returned; NULL with `error` (transfer full) is
 * told by "refused". label: names the act for undo, "Move oxeye". merge_key as in
 * pp_history_push(). TRUE if there is a next panel. */
gboolean            pp_document_take             (PpDocument    *self,
                                                  PpPanel       *next,
                                                  GError        *error,
                                                  const char    *label,
                                                  const char    *merge_key);
/* Tells by "refused" why an edit is not made. */
void                pp_document_refuse           (PpDocument    *self,
                                                  const char    *sentence);
/* What happened at the bench: `next` (transfer full) (nullable) and `error` as above, but nothing
 * that was before can be brought back by undo. */
gboolean            pp_document_record           (PpDocument    *self,
                                                  PpPanel       *next,
                                                  GError        *error);
/* The drag has ended: the next edit is a step of its own. */
void                pp_document_seal             (PpDocument    *self);
void                pp_document_undo             (PpDocument    *self);
void                pp_document_redo             (PpDocument    *self);
/* Undoes the last act as if it had never been: a drag given up. */
void                pp_document_take_back        (PpDocument    *self);
/* What they would act on, or NULL. (transfer none) */
const char         *pp_document_get_undo         (PpDocument    *self);
const char         *pp_document_get_redo         (PpDocument    *self);

/* Of the last check that came in, which may be of an earlier panel: compare check->panel before
 * an index of one is used in the other; ids hold. NULL before the first. (transfer none) */
const PpCheck      *pp_document_get_check        (PpDocument    *self);
/* NULL until one for the last check is there. (transfer none) */
const PpPlan       *pp_document_get_plan         (PpDocument    *self);
/* How far the plan being made is, 0 to 1; NAN while none is. */
double              pp_document_get_planning     (PpDocument    *self);
/* The best plan found so far will do. */
void                pp_document_stop_planning    (PpDocument    *self);
/* What to tell the maker: PpFinding, worst first, without those kept quiet and without those that
 * would nag at a panel just begun. Pin n is number n - 1. (transfer none), until "checked". */
GPtrArray          *pp_document_get_findings     (PpDocument    *self);
/* Those the maker said "I know" to. (transfer none) */
GPtrArray          *pp_document_get_known        (PpDocument    *self);
/* Height of the placement's top and base over the glass in mm, by the last check; NAN where that
 * does not know. */
double              pp_document_get_top          (PpDocument    *self,
                                                  const char    *placement);
double              pp_document_get_base         (PpDocument    *self,
                                                  const char    *placement);
/* How the placement rests by the last check, or NULL. (transfer none), until "checked". */
const PpRest       *pp_document_get_rest         (PpDocument    *self,
                                                  const char    *placement);
/* TRUE if that check is of the present panel. */
gboolean            pp_document_is_checked       (PpDocument    *self);

/* What is chosen. */
typedef enum
{
  PP_CHOSEN_NOTHING,
  PP_CHOSEN_PLACEMENTS,
  PP_CHOSEN_HOLE,
  PP_CHOSEN_WIRE,
  PP_CHOSEN_GLASS,
  PP_CHOSEN_FUSED, /* a part fused onto the glass */
} PpChosen;

PpChosen            pp_document_get_chosen       (PpDocument    *self);
/* Ids of placements in stacking order, or of the one hole or fused part; empty else. (transfer
 * none), until "chosen" or "changed". */
const char * const *pp_document_get_chosen_ids   (PpDocument    *self);
gboolean            pp_document_is_chosen        (PpDocument    *self,
                                                  const char    *id);
/* `ids` (nullable) as above; unknown ones are passed over. */
void                pp_document_choose           (PpDocument    *self,
                                                  PpChosen       chosen,
                                                  const char * const *ids);
/* With group mates: all placements of the groups that the chosen ones belong to. */
void                pp_document_choose_groups    (PpDocument    *self);
/* Goes on to the next of: the glass, what is fused on, the holes, the wire. */
void                pp_document_choose_next      (PpDocument    *self);

/* (nullable) (transfer none) */
GFile              *pp_document_get_file         (PpDocument    *self);
gboolean            pp_document_is_saved         (PpDocument    *self);
/* `panel` now stands in `file`. */
void                pp_document_set_saved        (PpDocument    *self,
                                                  const PpPanel *panel,
                                                  GFile         *file);
/* The file holds none of our panels any more: it was changed or taken away by somebody else. */
void                pp_document_set_lost         (PpDocument    *self);
/* Title of the panel; the name of the file, or "Untitled panel", where it has none. (transfer
 * full) */
char               *pp_document_dup_title        (PpDocument    *self);

G_END_DECLS
