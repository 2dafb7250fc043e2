/* answers.h: what a maker says of a piece however it was made: name, count, height, weight, light.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An answer that is not given leaves what the way of making it found; a height that was not
 * measured is estimated from the size.
 */
#pragma once

#include "piece/lying.h"

G_BEGIN_DECLS

#define PP_AS_MADE (-1) /* of kind, touch and light: no answer */

/* A draft: strings are the caller's. */
typedef struct
{
  const char *name;      /* NULL or "": as made */
  guint       count;     /* 1 at least */
  int         kind;      /* a PpKind */
  int         touch;     /* a PpTouch */
  int         light;     /* a PpLight */
  double      gap;       /* mm under the high part; NAN: not measured */
  double      thickness; /* mm; NAN: as made */
  double      weight;    /* g, of all weighed together; NAN: not weighed */
  guint       weighed;   /* how many were */
} PpAnswers;

/* Nothing said; one of it. */
PpAnswers pp_answers_draft        (void);
/* The piece as the answers have it; a piece of which nothing was said is the same but for its
 * count. Returns (transfer full). Errors: as pp_piece_new(), and PP_PANEL_ERROR_VALUE for a gap
 * that no piece has. */
PpPiece  *pp_answers_apply        (const PpAnswers  *self,
                                   const PpPiece    *piece,
                                   GError          **error);

/* mm of light to expect under the high part of a piece that touches so; 0 if all of it does. */
double    pp_touch_estimate_gap   (PpTouch           touch,
                                   const PpOutline  *outline);
/* What touches, and the gap, mm, as its form has it: the answer that would make it. Of a measured
 * form the gap is its greatest height, and what touches is where that lies. */
PpTouch   pp_touch_of_piece       (const PpPiece    *piece,
                                   double           *gap);
/* The answer nearest to what the piece lets through. */
PpLight   pp_light_of_piece       (const PpPiece    *piece);

G_END_DECLS
