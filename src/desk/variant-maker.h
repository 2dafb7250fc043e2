/* variant-maker.h: makes arrangements of a panel, one after another, and keeps them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All are of one size, the panel's own or another; number 0 is the panel as it lies. What is wished
 * for is there at once as it was spaced out, and is put right in a thread. For the main thread.
 * Signal: made, what was being put right is there.
 */
#pragma once

#include "advise/advise.h"

#include <glib-object.h>

G_BEGIN_DECLS

#define PP_TYPE_VARIANT_MAKER (pp_variant_maker_get_type ())
G_DECLARE_FINAL_TYPE (PpVariantMaker, pp_variant_maker, PP, VARIANT_MAKER, GObject)

/* is_size: glass of another size is asked for. Begins with number 0. (transfer full) */
PpVariantMaker *pp_variant_maker_new          (const PpPanel  *panel,
                                               gboolean        is_size);
/* mm. Begins with number 0; those of the size before are forgotten. */
void            pp_variant_maker_set_size     (PpVariantMaker *self,
                                               double          width,
                                               double          height);
/* What was being put right is given up. */
void            pp_variant_maker_go_to        (PpVariantMaker *self,
                                               guint           number);
/* What was found so far will do; "made" follows. */
void            pp_variant_maker_stop         (PpVariantMaker *self);
/* Nor does "made" follow. */
void            pp_variant_maker_give_up      (PpVariantMaker *self);

guint           pp_variant_maker_get_number   (PpVariantMaker *self);
/* Glass of another size is asked for, and none was told yet. */
gboolean        pp_variant_maker_needs_size   (PpVariantMaker *self);
/* What is wished for is there, put right where it needed that. */
gboolean        pp_variant_maker_is_made      (PpVariantMaker *self);
gboolean        pp_variant_maker_is_searching (PpVariantMaker *self);
/* How far the search is, 0 to 1. */
double          pp_variant_maker_get_done     (PpVariantMaker *self);
/* As it is by now; NULL where there is none of the size wished for. (transfer none) */
const PpPanel  *pp_variant_maker_get_panel    (PpVariantMaker *self);
/* What was changed to put it right; NULL before that, and where nothing was. (transfer none) */
const PpAdvice *pp_variant_maker_get_advice   (PpVariantMaker *self);
/* What became of the layout, or why there is none, in a sentence or two. (transfer full) */
char           *pp_variant_maker_describe     (PpVariantMaker *self);

G_END_DECLS
