/* bits.h: a raster of bits, row by row, and where another fits into it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  int      width;
  int      height;
  int      n_words; /* of a row, one spare at its end */
  guint64 *words;
} PpBits;

/* All clear. */
PpBits  *pp_bits_new           (int              width,
                                int              height);
/* Set where an A8 surface holds anything at all. */
PpBits  *pp_bits_new_from_mask (cairo_surface_t *mask);
void     pp_bits_free          (PpBits          *self);
/* The first place from the top, then from the left, where no bit of `mask` meets one of `self`. */
gboolean pp_bits_find_room     (const PpBits    *self,
                                const PpBits    *mask,
                                int             *x,
                                int             *y);
void     pp_bits_add           (PpBits          *self,
                                const PpBits    *mask,
                                int              x,
                                int              y);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBits, pp_bits_free)

G_END_DECLS
