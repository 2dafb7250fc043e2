/* making.h: a piece being made at the piece bench: all that the maker has told of it so far.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value, copied for each step of undo. What belongs to one way of making alone stands together
 * and is kept while another way is looked at.
 */
#pragma once

#include "desk/picking.h"
#include "panel/panel.h"
#include "piece/answers.h"
#include "piece/measures.h"
#include "piece/readings.h"

G_BEGIN_DECLS

#define PP_MAKING_RUNGS 30

typedef struct
{
  guint          way;      /* its number in making-ways.h */
  PpAnswers      answers;  /* but for the name */
  char          *name;     /* "": as made */
  guint          offcuts;  /* how many stood under the high part; 0: gap was not told so */
  double         offcut;   /* mm, the thickness of each; NAN: not told */

  /* like another */
  const PpPiece *like;     /* NULL: none chosen */
  double         size;     /* mm, its longer side; NAN: as it is */

  /* from measures */
  PpRecipe       recipe;
  double         measures[PP_N_MEASURES]; /* NAN: not measured */
  char          *colour;   /* #rrggbb; NULL: the recipe's own */
  guint          seed;

  /* from the ring sheet and the ladder */
  double         spokes[PP_SHEET_SPOKES];  /* mm from the middle, from 12 on; NAN: not read */
  double         widths[PP_MAKING_RUNGS];  /* mm, at each rung from the foot up; NAN: not read */
  double         ladder;                   /* mm from the foot to the tip; NAN: not read */

  /* from a drawing */
  GBytes        *drawing;  /* SVG; NULL: none chosen */
  char          *drawing_name; /* of its file, without ending; NULL */
  char          *element;  /* id of what is the outline; NULL: all of it */

  /* from a picture: answers and name above are those of the piece that is chosen in it */
  PpPicking      picking;
} PpMaking;

/* Nothing told; ends with pp_making_clear(). */
PpMaking  pp_making_new   (guint            way);
/* Of a piece that is there already: like it, with its count and name. */
PpMaking  pp_making_of    (const PpPiece   *piece);
/* The next one after it: made in the same way of the same glass, all else to be told. */
PpMaking  pp_making_next  (const PpMaking  *self);
PpMaking  pp_making_copy  (const PpMaking  *self);
void      pp_making_clear (PpMaking        *self);
/* The owned strings and parts, for those who change a copy: the old one goes, the new one is
 * copied or referenced; NULL for none. */
void      pp_making_set_text  (char           **text,
                               const char      *other);
void      pp_making_set_like  (PpMaking        *self,
                               const PpPiece   *piece);
/* Of the pieces found in the picture this one is asked about from now on. */
void      pp_making_choose    (PpMaking        *self,
                               guint            piece);
/* All from measures, blanks and all, for the recipe. */
PpMeasures pp_making_get_measures (const PpMaking *self);
/* The piece; (transfer full). `units` are the maker's, by which the ladder has its rungs. Errors:
 * one plain sentence, also about what is still to be told. */
PpPiece  *pp_making_make  (const PpMaking  *self,
                           PpUnits          units,
                           GError         **error);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpMaking, pp_making_clear)

G_END_DECLS
