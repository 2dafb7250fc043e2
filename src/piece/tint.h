/* tint.h: colours made from a piece's colour.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_TINT_WHITE 0xffffff
#define PP_TINT_BLACK 0x101418

/* 0xrrggbb */
typedef guint32 PpTint;

/* From "#rrggbb"; black for anything else. */
PpTint pp_tint_parse (const char *colour);
/* From `a` at share 0 to `b` at share 1. */
PpTint pp_tint_mix   (PpTint      a,
                      PpTint      b,
                      double      share);

/* As light falls on it or leaves it; share from 0 to 1. */
static inline PpTint
pp_tint_light (PpTint tint,
               double share)
{
  return pp_tint_mix (tint, PP_TINT_WHITE, share);
}

static inline PpTint
pp_tint_dark (PpTint tint,
              double share)
{
  return pp_tint_mix (tint, PP_TINT_BLACK, share);
}

G_END_DECLS
