/* sight-row.h: how much light comes through along one leg of the wire, seen aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/screen.h"

G_BEGIN_DECLS

#define PP_N_LINES 3 /* the wire's centre line and its edges */

/* Whether a screen is before a part depends on where within the slack that lies. */
typedef struct
{
  guint           part;
  guint           line;
  const PpScreen *screen;
} PpSightDoubt;

/* A leg of the wire, in equal parts, and the view that it is seen from. */
typedef struct
{
  PpPoint from;      /* panel frame, where the sight from its start leaves the front face */
  PpPoint direction; /* of unit length, or 0 both, as the next, for a leg without length */
  PpPoint normal;
  double  spacing;   /* mm, the length of a part */
  double  per_mm;    /* parts; 0 for a leg without length */
  guint   n;         /* parts, 1 at least */
  double  asides[PP_N_LINES]; /* mm along the normal */
  PpPoint slant;     /* mm in plan a mm of height, toward the viewer */
  double  opaque;    /* no more light than this hides */
  double  slack;     /* mm: as far as this a part may move, and what is found of it holds */
  double *most;      /* of each part's middle, line after line: no more light comes through, */
  double *least;     /* and no less */
  GArray *doubts;    /* PpSightDoubt: what lies between */
} PpSightRow;

/* On one of its lines, so many parts from its start. */
static inline PpPoint
pp_sight_row_point (const PpSightRow *self,
                    double            part,
                    guint             line)
{
  double along = part * self->spacing, aside = self->asides[line];

  return (PpPoint) { self->from.x + along * self->direction.x + aside * self->normal.x,
                     self->from.y + along * self->direction.y + aside * self->normal.y };
}

/* The screen in hand, and what the marking of parts needs room for; all 0 to begin with. */
typedef struct
{
  const PpScreen *screen;
  GArray         *stretches; /* of its rim, those that may come over the leg */
  guint8         *marks;     /* all 0 */
  guint           n_marks;
  double         *asides;    /* of each point of the rim */
  guint8         *within;    /* of each side: whether it comes over the leg */
  guint           n_asides;
} PpSightRoom;

/* Takes up a screen for one leg and all views of it that slant and shift by no more than these. */
void pp_sight_room_take (PpSightRoom      *self,
                         const PpScreen   *screen,
                         const PpSightRow *leg,
                         PpPoint           slant,
                         PpPoint           shift);
void pp_sight_room_clear (PpSightRoom     *self);
/* Less light comes through the parts of the leg that the screen is before; at the least also
 * through those that it may be before. */
void pp_sight_row_dim   (const PpSightRow *self,
                         PpSightRoom      *room);

G_END_DECLS
