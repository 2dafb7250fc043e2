/* joint.h: what glue holds a placement: where it can be filled, dabs, volumes, strength.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In two passes. Upwards, while the stack settles, each bed gives the joint's area, capacity and
 * the dabs it would take one after another. Downwards, from the last placement to the first,
 * loads are handed down, and each joint takes as many of its dabs as length and strength ask for.
 */
#pragma once

#include "check/settle.h"

G_BEGIN_DECLS

#define PP_MAX_DABS 12

typedef struct
{
  PpPoint at;        /* panel frame */
  double  diameter;  /* mm */
  double  volume;    /* ml, waste included */
  double  underside; /* mm, height of the piece's underside there */
  PpOwner owner;     /* whose cell lies at its centre */
} PpDab;

/* What hangs on a joint: only its mass and first moments enter the stresses. */
typedef struct
{
  double mass;   /* g; NAN: not known yet */
  double mass_x; /* g·mm, mass times its x */
  double mass_z;
} PpLoad;

/* Counted atomically, and once its load is known immutable. */
typedef struct
{
  double   area;        /* mm², fillable */
  double   capacity;    /* ml that the fillable gap holds */
  guint    n_places;    /* dabs there is room for, at most PP_MAX_DABS */
  PpDab    places[PP_MAX_DABS];
  PpLoad   load;        /* with the piece itself */
  guint    n_dabs;      /* of places, those it takes */
  double   volume;      /* ml, of those */
  double   height;      /* mm, mean underside at their centres, by their areas; 0 without one */
  double   utilisation; /* share of the working stress; NAN without a dab */
} PpJoint;

/* The upward pass: finds area, capacity and places; n_dabs and volume are 0, load and utilisation
 * NAN. Of a piece that rests on nothing all else is 0. (transfer full) */
PpJoint *pp_joint_new         (const PpScene *scene,
                               const PpBed   *bed,
                               const PpRest  *rest);
PpJoint *pp_joint_ref         (PpJoint       *self);
void     pp_joint_unref       (PpJoint       *self);
/* The downward pass over all placements of the scene, bottom first in both arrays. A joint whose
 * load is known is one of a check of a panel on the same ground: it stays if it carries as much,
 * or else another is put in its place. */
void     pp_joints_take_loads (PpJoint      **joints,
                               PpRest       **rests,
                               const PpScene *scene);

G_END_DECLS
