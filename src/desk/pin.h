/* pin.h: the mark of a finding: its shape says how grave it is, its number which one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/finding.h"
#include "desk/palette.h"

G_BEGIN_DECLS

/* A fault is a triangle, a caution a diamond, a note a circle, filled in their colour with a thin
 * edge of the bench round them, so that they are seen on glass of any colour. `size` px across;
 * (x, y) is the middle of the figure. `number` is written in the font of `pango`; 0: the shape
 * alone, and `pango` may be NULL. One that `is_lit` is larger and has a ring. */
void pp_pin_draw (cairo_t         *cr,
                  PangoContext    *pango,
                  const PpPalette *palette,
                  PpLevel          level,
                  guint            number,
                  double           x,
                  double           y,
                  double           size,
                  gboolean         is_lit);

/* "Fault 1"; without its number if that is 0. (transfer full) */
char  *pp_pin_dup_name (PpLevel level,
                        guint   number);

/* px across for the font of `pango`. */
double pp_pin_get_size (PangoContext *pango);

/* A widget that shows one pin, for lists. */
#define PP_TYPE_PIN (pp_pin_get_type ())
G_DECLARE_FINAL_TYPE (PpPin, pp_pin, PP, PIN, GtkWidget)

void pp_pin_set (PpPin   *self,
                 PpLevel  level,
                 guint    number);

G_END_DECLS
