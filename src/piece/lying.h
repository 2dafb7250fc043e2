/* lying.h: height, weight and light of a piece by what a maker can see and weigh at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The piece is laid on a flat top, and three questions are asked: what touches it, how much light
 * stands under the high part, how thick is the glass. The gap is what a ruler or a stack of
 * offcuts finds under the glass, so it is the rise of a form and not the height of the top.
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

typedef enum
{
  PP_TOUCH_ALL,
  PP_TOUCH_MIDDLE,
  PP_TOUCH_RIM,
  PP_TOUCH_ENDS,
  PP_TOUCH_BASE, /* one end: the base, and the tip stands up */
  PP_TOUCH_TIP,  /* one end: the tip, and the base stands up */
} PpTouch;

/* What is seen of a black line under the piece. */
typedef enum
{
  PP_LIGHT_NONE,   /* can't see it */
  PP_LIGHT_SHADOW,
  PP_LIGHT_CLEAR,
} PpLight;

#define PP_FOOT_ESTIMATE 10.0 /* mm; the file's own value */
#define PP_LYING_MOST_GAP 300.0 /* mm */

/* mm; NAN: not measured. */
typedef struct
{
  PpTouch touch;
  double  gap;       /* under the high part; of no meaning if all of it touches */
  double  foot;      /* PP_TOUCH_MIDDLE of a round piece: radius that touches; NAN: 10 */
  double  touching;  /* PP_TOUCH_BASE, _TIP: length that touches; NAN: half of it */
} PpLying;

/* Errors: PP_PANEL_ERROR_VALUE for a gap that no piece has, or none. */
gboolean pp_lying_check_gap       (double           gap,
                                   GError         **error);
/* The form of a piece with this outline. `is_long`: a piece with two ends, which lies on its
 * middle as curled; a round one as cupped. The form's grid is (transfer full), to be dropped with
 * pp_height_grid_unref() once a piece has been made. */
PpForm pp_lying_get_form          (const PpLying   *self,
                                   const PpOutline *outline,
                                   gboolean         is_long);
/* 0, 0.25, 0.8. */
double pp_light_get_transmittance (PpLight          light);

/* "all", "middle", "rim", "ends", "base", "tip"; "none", "shadow", "clear". FALSE for others. */
gboolean pp_touch_from_name       (const char      *name,
                                   PpTouch         *touch);
gboolean pp_light_from_name       (const char      *name,
                                   PpLight         *light);

G_END_DECLS
