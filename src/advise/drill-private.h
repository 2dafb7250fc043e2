/* drill-private.h: what the two halves of where to drill share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/drill.h"
#include "advise/guard.h"

G_BEGIN_DECLS

typedef struct
{
  PpPoint at;
  double  shown;     /* mm²: of the knot, drawn in */
  double  thickness; /* mm, of the glass there */
  double  spare;     /* mm from the rim to the nearest limit; less than 0 breaks one */
} PpDrillPlace;

typedef struct
{
  const PpCheck *check;
  PpGuard       *guard;
  gboolean       stays[2];
  double         step;   /* mm, side of a square */
  PpBox          box;    /* of the glass */
  int            columns;
  int            rows;
  guint8        *mask;
} PpDrill;

/* The hole of knot `k`. (transfer none) */
const PpHole *pp_drill_hole        (const PpDrill *self,
                                    guint          k);
/* Fills the mask. */
void          pp_drill_look        (PpDrill       *self);
/* mm² of a knot there that would show if pieces landed a little off. */
double        pp_drill_knot_shown  (const PpDrill *self,
                                    PpPoint        at);
/* mm of the wire between holes there, likewise, about. */
double        pp_drill_wire_shown  (const PpDrill *self,
                                    PpPoint        a,
                                    PpPoint        b);
/* The wire's length with the holes so far apart; NAN for a taut one. */
double        pp_drill_length_at   (const PpDrill *self,
                                    double         distance);
/* Finds thickness and spare of a place for hole `k`. */
void          pp_drill_measure     (const PpDrill *self,
                                    guint          k,
                                    PpDrillPlace  *place);
/* Where hole `k` may be (PpDrillPlace), rows from above, each evenly about the centre of mass.
 * (transfer full) */
GArray       *pp_drill_find_places (const PpDrill *self,
                                    guint          k);

G_END_DECLS
