/* hang.h: how the panel hangs: hook, tilt, tensions, lean.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Statics in the plane of the glass; N, mm, degrees clockwise. What there is none of (with a taut
 * wire, or legs that would push) is NAN, or FALSE in its `has_`.
 */
#pragma once

#include "check/mass.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean is_taut;           /* no length, or not longer than the holes' distance: only drop,
                               * lean, wall_push and allowed_tension are given */
  double   hole_distance;     /* mm */
  double   sag;               /* mm, b */
  double   drop;              /* mm, D */
  double   middle_tilt;
  double   middle_tension[2]; /* from, to */
  gboolean has_level;
  PpPoint  level_hook;
  double   level_tension[2];
  double   friction_needed;   /* at the level hook; NAN unless both legs pull */
  gboolean holds;
  PpPoint  hook;              /* level hook, else the middle of the wire; not if taut */
  guint    n_slips_to;        /* at most 2 */
  double   slips_to[2];       /* rising */
  gboolean self_levelling;
  double   greatest_tension;
  double   allowed_tension;
  double   wire_use;
  double   wire_angle;
  double   hook_above_edge;   /* mm, at least 0 */
  double   lean;              /* NAN if it turns over */
  double   wall_push;         /* N; NAN if the lower edge is not below the holes */
} PpHang;

/* The scene must have a wire. */
void pp_hang_init (PpHang        *self,
                   const PpScene *scene,
                   const PpMass  *mass);

G_END_DECLS
