/* sight-row.h: how much light comes through along one leg of the wire, seen aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/screen.h"

G_BEGIN_DECLS

#define PP_N_LINES 3 /* the wire's centre line and its edges */

/* A leg of the wire, in equal parts, and the view that it is seen from. */
typedef struct
{
  PpPoint from;      /* panel frame, where the sight from its start leaves the front face */
  PpPoint direction; /* of unit length, or 0 both, as the next, for a leg without length */
  PpPoint normal;
  double  spacing;   /* mm, the length of a part */
  guint   n;         /* parts */
  double  asides[PP_N_LINES]; /* mm along the normal */
  PpPoint slant;     /* mm in plan a mm of height, toward the viewer */
  double  opaque;    /* no more light than this hides */
  double *through;   /* of each part's middle, line after line: the light that comes through */
} PpSightRow;

/* What the marking of parts needs room for; all 0 to begin with. */
typedef struct
{
  guint8 *marks;
  guint   n_marks;
  double *asides;
  guint   n_asides;
} PpSightRoom;

void pp_sight_row_dim   (const PpSightRow *self,
                         const PpScreen   *screen,
                         PpSightRoom      *room);
void pp_sight_room_clear (PpSightRoom     *self);

G_END_DECLS
