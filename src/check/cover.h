/* cover.h: outlines as things that hide what lies behind them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* Panel frame, mm. Outline and bands are borrowed. */
typedef struct
{
  const PpOutline *outline;
  const PpBands   *bands;         /* nullable: all sides are asked then */
  PpBox            box;
  double           transmittance; /* 0 opaque to 1 clear */
  double           drawn_in;      /* mm; only what is that far from the outline is covered */
} PpCover;

/* Where something may change along one of several lines. */
typedef struct
{
  double along; /* mm */
  guint  line;
} PpCut;

/* From point i - 1 of a ring to point i. */
typedef struct
{
  const PpPoint *ring;
  guint          n;     /* points of the ring */
  guint          i;
  double         inner; /* 1 where the inside is to its left, y up; else -1; of what is drawn in */
} PpCoverSide;

/* Not drawn in, without bands. */
PpCover  pp_cover_make     (const PpOutline *outline,
                            double           transmittance);
PpCover  pp_cover_of_body  (const PpBody    *body);
PpCover  pp_cover_of_part  (const PpPart    *part);
PpCover  pp_cover_of_background (const PpScene *scene);
/* Inside by the even-odd rule, or within PP_TIE of the outline: what lies flush with a border,
 * drawn in or not, is covered. */
gboolean pp_cover_contains (const PpCover   *self,
                            PpPoint          p);
/* mm, from `p` to the nearest side of the outline, from within or without; `far` where it is no
 * less. */
double   pp_cover_distance (const PpCover   *self,
                            PpPoint          p,
                            double           far);
/* Whether it plainly neither covers nor cuts lines `asides` mm beside the one from `start` along
 * the unit vector `direction`, nor those in which no point of them moves farther than `slack` mm:
 * its box is farther away. A line without length or direction is beside nothing. */
gboolean pp_cover_is_beside (const PpCover  *self,
                            PpPoint          start,
                            PpPoint          direction,
                            double           length,
                            const double    *asides,
                            guint            n_lines,
                            double           slack);
/* The sides (PpCoverSide) that may cut lines `asides` mm beside that one, or that in which no point
 * of them moves farther than `slack`. They borrow from the outline. (transfer full) */
GArray  *pp_cover_find_sides (const PpCover *self,
                            PpPoint          start,
                            PpPoint          direction,
                            double           length,
                            const double    *asides,
                            guint            n_lines,
                            double           slack);
/* Adds to `cuts` (of PpCut) wherever one of the lines may pass into or out of what is covered, as
 * mm from `start` within 0 to `length`, in no order. `sides` are those that may cut them. Some are
 * there twice or for nothing, none is missing. */
void     pp_cover_cut      (const PpCover   *self,
                            GArray          *sides,
                            PpPoint          start,
                            PpPoint          direction,
                            double           length,
                            const double    *asides,
                            guint            n_lines,
                            GArray          *cuts);

G_END_DECLS
