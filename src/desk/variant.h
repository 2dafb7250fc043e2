/* variant.h: a panel made from another: the same again, or spaced out for another size of glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain values without a widget. Nothing on the new one is glued, knotted or drilled, whatever the
 * first one has come to.
 */
#pragma once

#include "advise/advise.h"
#include "desk/work.h"

G_BEGIN_DECLS

typedef struct
{
  double   width;   /* mm, of the glass */
  double   height;
  guint    number;  /* of the arrangement; 0: the panel's own */
  gboolean is_size; /* for the sake of another size: so it is called */
} PpVariantWish;

/* Of the size that the panel has, as it lies. */
PpVariantWish pp_variant_wish      (const PpPanel       *panel);
gboolean      pp_variant_is_resized (const PpPanel       *panel,
                                    const PpVariantWish *wish);

/* Spaced out and called as it will be, not yet put right; dated `created` (nullable: undated).
 * Quick. (transfer full). Errors: as pp_fit_new(). */
PpPanel      *pp_variant_new       (const PpPanel       *panel,
                                    const PpVariantWish *wish,
                                    const char          *created,
                                    GError             **error);
/* Puts it right, as long as that takes; for a thread of its own. Stopped, what was found by then.
 * (transfer full) */
PpAdvice     *pp_variant_put_right (const PpPanel       *variant,
                                    PpWork              *work);

/* What became of the layout, in a sentence or two. `variant` is as pp_variant_new() gave it.
 * (transfer full) */
char         *pp_variant_describe  (const PpPanel       *panel,
                                    const PpVariantWish *wish,
                                    const PpPanel       *variant);
/* "2 × Oxeye", a line each, of what is to be made for another like this; NULL: nothing is.
 * (transfer full) (nullable) */
char         *pp_variant_list_to_make (const PpPanel *panel);

G_END_DECLS
