/* settle.h: how each placement of the stack comes to rest.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/bed.h"
#include "check/lp.h"

G_BEGIN_DECLS

typedef enum
{
  PP_STATE_STEADY,
  PP_STATE_UNSTEADY,
  PP_STATE_TIPS,
  PP_STATE_FLOATS,
} PpState;

/* A placement at rest, immutable and counted atomically. Its base plane is z = plane.c +
 * plane.a·(x - xc) + plane.b·(y - yc), mm over the front face; one that tips is held level. A
 * floating one has only its state, and is held. */
typedef struct
{
  PpState  state;
  gboolean hold;       /* by hand, prop, weight or tape until the glue grabs */
  PpPlane  plane;
  double   base;       /* mm, least underside over its cells */
  double   top;        /* mm, greatest top */
  double   raised;     /* mm, greatest top outside its pocket: what it adds to the depth */
  double   middle;     /* mm, of its centre of mass: halfway through its thickness */
  double   margin;     /* mm, signed, centre of mass to the border of its feet */
  guint    n_rests_on;
  PpOwner *rests_on;   /* owners of its contact cells, rising, each once */
  guint    n_contacts;
  PpPoint *contacts;   /* corners of the hull of its contact cells' centres, panel frame */
  gboolean has_prop;
  PpPoint  prop;       /* where a prop stands, panel frame */
  double   prop_height;/* mm */
} PpRest;

/* "steady", "unsteady", "tips", "floats". (transfer none) */
const char *pp_state_get_name      (PpState        state);

/* Settles placement `index` on its bed, which gets its gaps; those before it are at rest, of
 * `rests`. (transfer full) */
PpRest     *pp_rest_new            (const PpScene *scene,
                                    PpRest       **rests,
                                    guint          index,
                                    const PpBed   *bed);
PpRest     *pp_rest_ref            (PpRest        *self);
void        pp_rest_unref          (PpRest        *self);

/* atan of the steepest slope, degrees. */
double      pp_rest_get_slope      (const PpRest  *self);
/* The underside of a settled body over a point of the panel, mm. */
double      pp_rest_underside_at   (const PpRest  *self,
                                    const PpBody  *body,
                                    PpPoint        p);
double      pp_rest_top_at         (const PpRest  *self,
                                    const PpBody  *body,
                                    PpPoint        p);
/* Whether two rests of one body put it in the same place, with its top as high. */
gboolean    pp_rest_lies_alike     (const PpRest  *a,
                                    const PpRest  *b);
gboolean    pp_rest_rests_on       (const PpRest  *self,
                                    PpOwner        owner);
/* The top of a settled body on cells of one of its spans, `cell` being its own number of the
 * first. */
void        pp_rest_lay_top        (const PpRest  *self,
                                    const PpBody  *body,
                                    PpSpan         span,
                                    guint          cell,
                                    double        *height);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpRest, pp_rest_unref)

G_END_DECLS
