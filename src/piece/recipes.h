/* recipes.h: all that tells one recipe from another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "piece/measures.h"

G_BEGIN_DECLS

/* How the ends of a long piece look: the width there, as a share of the next one measured, and how
 * much of the length rounds it off. */
typedef struct
{
  double base;
  double tip;
  double round_base; /* mm of half width: times this much length */
  double round_tip;
} PpRecipeEnds;

typedef struct
{
  const char  *name;
  const char  *title;                /* marked for translation, not translated */
  PpKind       kind;
  const char  *colour;
  guint        asks;                 /* a bit for each PpMeasure */
  /* mm and count; of a flower: notch and middle as a share of the widest across; of a long piece:
   * the widths as a share of its length. */
  double       usual[PP_N_MEASURES];
  PpRecipeEnds ends;                 /* of a long one */
} PpRecipeRow;

const PpRecipeRow *pp_recipe_get_row (PpRecipe recipe);

G_END_DECLS
