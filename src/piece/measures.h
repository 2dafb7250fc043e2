/* measures.h: a piece from measures a maker has at hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A recipe is a picture of a piece with the few measures that make it this piece. What was not
 * measured is estimated from what was, and whoever shows it says "about". Quick enough to be made
 * anew at every key: a few milliseconds.
 */
#pragma once

#include "panel/record.h"
#include "piece/lying.h"

G_BEGIN_DECLS

typedef enum
{
  PP_RECIPE_RAY,
  PP_RECIPE_LOBED,
  PP_RECIPE_CUP,
  PP_RECIPE_SPIKE,
  PP_RECIPE_BUD,
  PP_RECIPE_LEAF,
  PP_RECIPE_BLADE,
  PP_RECIPE_ROD,
  PP_RECIPE_SHARD,
  PP_N_RECIPES
} PpRecipe;

/* All in mm but the petals. Widths are taken straight across a long piece that stands upright, at
 * these shares of its length counted from its base. */
typedef enum
{
  PP_MEASURE_ACROSS, /* the widest across a flower, tip to tip */
  PP_MEASURE_PETALS, /* how many, 3 to 60 */
  PP_MEASURE_NOTCH,  /* how deep the gap between two petals goes in from their tips */
  PP_MEASURE_MIDDLE, /* width of the middle */
  PP_MEASURE_LENGTH,
  PP_MEASURE_QUARTER,
  PP_MEASURE_HALF,
  PP_MEASURE_THREE_QUARTERS,
  PP_MEASURE_BEND,   /* how far the tip stands to the right of the base; less than 0: left */
  PP_MEASURE_THICKNESS,
  PP_N_MEASURES
} PpMeasure;

/* A draft: strings are the caller's. */
typedef struct
{
  PpRecipe    recipe;
  double      measures[PP_N_MEASURES]; /* NAN: not measured */
  PpLying     lying;
  double      weight;                  /* g, of all weighed together; NAN: not weighed */
  guint       weighed;                 /* how many were; 1 */
  PpLight     light;
  const char *id;                      /* its recipe's name unless set */
  const char *name;                    /* its recipe's title unless set */
  const char *colour;                  /* #rrggbb; NULL: the recipe's own */
  PpKind      kind;                    /* its recipe's */
  guint       count;                   /* 1 */
  guint       seed;                    /* of the small differences of things made by hand */
} PpMeasures;

/* Nothing measured; lies flat. */
PpMeasures  pp_measures_draft      (PpRecipe           recipe);
/* Whether the recipe asks for it at all. */
gboolean    pp_recipe_has          (PpRecipe           recipe,
                                    PpMeasure          measure);
/* Two ends, a base and a tip; else round. */
gboolean    pp_recipe_is_long      (PpRecipe           recipe);
/* The measures with every gap filled by an estimate from the others; those that the recipe does
 * not ask for stay NAN. */
PpMeasures  pp_measures_estimate   (const PpMeasures  *self);
/* The piece, with outline and art; its origin is a flower's middle, a long piece's middle between
 * base and tip. The base has the greatest y. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_VALUE in one sentence for measures that cannot be, alone or together;
 * else as pp_piece_new(). */
PpPiece    *pp_measures_make       (const PpMeasures  *self,
                                    GError           **error);

/* "ray", "three-quarters", as on the command line; (transfer none). */
const char *pp_recipe_get_name     (PpRecipe           recipe);
gboolean    pp_recipe_from_name    (const char        *name,
                                    PpRecipe          *recipe);
const char *pp_measure_get_name    (PpMeasure          measure);
gboolean    pp_measure_from_name   (const char        *name,
                                    PpMeasure         *measure);
/* Translated: "Ray flower", "Widest across"; (transfer none). */
const char *pp_recipe_get_title    (PpRecipe           recipe);
const char *pp_measure_get_title   (PpMeasure          measure);

G_END_DECLS
