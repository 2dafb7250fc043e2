/* hanging-map.h: how the panel hangs, and where that is drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain values. Degrees clockwise; mm in the panel frame, px of the widget.
 */
#pragma once

#include "check/hang.h"

G_BEGIN_DECLS

/* Where the hook is thought of. */
typedef enum
{
  PP_HUNG_LEVEL,   /* where the panel hangs level */
  PP_HUNG_MIDDLE,  /* in the middle of the wire */
  PP_HUNG_SLIPPED, /* where it comes to rest if the wire slips, the more tilted of two */
} PpHungHow;

typedef struct
{
  PpPoint hook; /* mm */
  double  tilt; /* of the panel */
} PpHung;

/* FALSE where it cannot hang so: not level, taut, or not slipping to any place. */
gboolean pp_hung_of          (const PpScene *scene,
                              const PpMass  *mass,
                              const PpHang  *hang,
                              PpHungHow      how,
                              PpHung        *hung);
/* The length of a wire whose hook is at `hook`; nearer to the line of the holes than 2 mm, or
 * below it, it counts as 2 mm above. The scene must have a wire. */
double   pp_hung_wire_length (const PpScene *scene,
                              const PpMass  *mass,
                              PpPoint        hook);
/* Up from the line of the holes, a unit vector; in `middle` the point between them. */
PpPoint  pp_hung_find_up     (const PpScene *scene,
                              const PpMass  *mass,
                              PpPoint       *middle);

typedef struct
{
  PpPoint about; /* mm, what it is turned about */
  PpPoint at;    /* px, where that is */
  double  scale; /* px a mm */
  double  tilt;
} PpHangingMap;

/* `box` turned by `tilt`, with `hook` (nullable), as large as it goes in `area`, and in its middle;
 * `beside` mm of the same scale stay free at its right. */
PpHangingMap pp_hanging_map_fit   (PpBox               box,
                                   const PpPoint      *hook,
                                   double              tilt,
                                   PpBox               area,
                                   double              beside);
PpPoint      pp_hanging_map_to_px (const PpHangingMap *self,
                                   PpPoint             mm);
/* From px moved to mm moved. */
PpPoint      pp_hanging_map_turn_back (const PpHangingMap *self,
                                       PpPoint             moved);
/* px, the box around `box` turned. */
PpBox        pp_hanging_map_get_box (const PpHangingMap *self,
                                     PpBox               box);

G_END_DECLS
