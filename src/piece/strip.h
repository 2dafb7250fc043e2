/* strip.h: a long piece, in places along it and across it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It stands upright, base at the greatest y. Its widths are as measured at a quarter, a half and
 * three quarters of its length, a smooth curve goes through them, and both ends are rounded or
 * pointed as the recipe has it. Bend and small differences shift it sideways, place by place, so
 * neither length, widths nor area change by them.
 */
#pragma once

#include "piece/measures.h"

G_BEGIN_DECLS

typedef struct
{
  PpRecipe recipe;
  double   length;
  double   width[5];  /* at 0, 1/4, ... of the length, before the ends are rounded */
  double   slope[5];  /* of the curve through them */
  double   bend;
  double   sway;      /* mm */
  guint    seed;
  guint    scallops;  /* along each side; 0: none */
} PpStrip;

void       pp_strip_init        (PpStrip          *self,
                                 const PpMeasures *measures);
/* Full width at a place from 0, the base, to 1, the tip. */
double     pp_strip_get_width   (const PpStrip    *self,
                                 double            along);
/* `across` from -1, the left border, to 1, the right one. */
PpPoint    pp_strip_point       (const PpStrip    *self,
                                 double            along,
                                 double            across);
/* (transfer full) */
PpOutline *pp_strip_get_outline (const PpStrip    *self);

G_END_DECLS
