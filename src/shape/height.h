/* height.h: how high the underside and top of a piece stand over its own base.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The forms are those of the trade: slumped into a bowl, over a form, over a wave, and so on;
 * all in the piece's own frame, mm. The piece lies level here; settling tilts it.
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

/* A piece's form with the measures of its outline that it needs. Borrows from the piece. */
typedef struct
{
  const PpForm *form;
  double        thickness;
  PpCrown       crown;
  double        reach;  /* R: greatest distance of its outline from the origin */
  double        start;  /* s0 and s1: least and greatest y of its outline */
  double        end;
  double        rate;   /* 1 / mm, of a dome 1 / mm²: how fast its form runs from 0 to 1 */
  double        crown_rate; /* 1 / mm² */
} PpHeights;

void   pp_heights_init      (PpHeights       *self,
                             const PpPiece   *piece);
double pp_heights_underside (const PpHeights *self,
                             PpPoint          own);
/* No slope of the underside within `reach` of the origin is steeper than this, mm a mm. */
double pp_heights_get_steepest (const PpHeights *self);
/* Nor does its slope change faster along a straight line there than by this a mm, INFINITY where it
 * may have creases, 1/mm. */
double pp_heights_get_bend  (const PpHeights *self);
/* What the crown adds to its thickness. */
double pp_heights_crown     (const PpHeights *self,
                             PpPoint          own);
/* Underside, thickness and crown. */
double pp_heights_top       (const PpHeights *self,
                             PpPoint          own);
/* Underside of `n` points, the first at `first` and each a `step` from the one before. */
void   pp_heights_fill      (const PpHeights *self,
                             PpPoint          first,
                             PpPoint          step,
                             guint            n,
                             double          *underside);
/* Their tops; `underside` (nullable) as filled, NULL where all of it is 0. */
void   pp_heights_fill_top  (const PpHeights *self,
                             PpPoint          first,
                             PpPoint          step,
                             guint            n,
                             const double    *underside,
                             double          *top);
/* g: as weighed, else glass and crown by their volume. */
double pp_piece_get_mass    (const PpPiece   *piece);

G_END_DECLS
