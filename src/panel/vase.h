/* vase.h: vases fused onto the glass, made from a few measures, and the pocket that stems stand in.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A vase is upright and even about its middle; its sides run smoothly through the widths given. The
 * file holds its outline alone: what it was made from is read from the outline again, so that a
 * vase can be made otherwise on another day. A pocket is a slot down from the rim, with rounded
 * lower corners; its insert reaches over the rim, so that the mouth stays open in the kiln.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

typedef enum
{
  PP_VASE_JUG,    /* a neck under the rim, a belly */
  PP_VASE_PAIL,   /* straight sides; no widest place of its own */
  PP_VASE_BOWL,
  PP_VASE_BOTTLE, /* straight neck */
  PP_VASE_OWN,    /* an outline of its own, not made from measures */
} PpVaseKind;

/* mm, each more than 0. */
typedef struct
{
  PpVaseKind kind;
  double     height;
  double     mouth;  /* width of the rim */
  double     widest; /* of the belly; passed over for a pail */
  double     foot;   /* width of the foot */
} PpVase;

#define PP_VASE_LEAST 5.0 /* mm; less than this is no measure of a vase */

/* One that suits the glass and the kind, which is not OWN; rounded in the panel's unit. */
PpVase     pp_vase_wish          (const PpPanel   *panel,
                                  PpVaseKind       kind);
/* Panel frame; `foot` is the middle of the foot. The kind is not OWN. (transfer full) */
PpOutline *pp_vase_outline       (const PpVase    *self,
                                  PpPoint          foot);
/* What an outline was made from. Of any other outline: the kind is OWN, height and widest are
 * those of its box, mouth and foot NAN. */
PpVase     pp_vase_read          (const PpOutline *outline);

/* The insert of a pocket `width` wide and `depth` deep from the top of `vase`, `middle` its x. All
 * mm, panel frame; width and depth more than 0. (transfer full) */
PpOutline *pp_vase_slot          (const PpOutline *vase,
                                  double           middle,
                                  double           width,
                                  double           depth);
/* The largest slot in the middle of `vase` that leaves a seam of `seam` mm beside and under it,
 * down to three quarters of the height; FALSE where there is no room for one. */
gboolean   pp_vase_largest_slot  (const PpOutline *vase,
                                  double           seam,
                                  double          *width,
                                  double          *depth);

G_END_DECLS
