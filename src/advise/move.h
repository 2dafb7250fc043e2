/* move.h: the next panel of a search, as a few moves from the present one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/edit.h"

G_BEGIN_DECLS

typedef enum
{
  PP_MOVE_POSE,   /* placement `index` to `pose` */
  PP_MOVE_STACK,  /* placement `index` to stack place `to` */
  PP_MOVE_ADD,    /* tray piece `index` at `pose`, on top */
  PP_MOVE_REMOVE, /* placement `index` */
  PP_MOVE_GROUP,  /* placement `index` into `group` */
  PP_MOVE_HOLE,   /* hole `index` to pose.x, pose.y */
  PP_MOVE_WIRE,   /* `length` of the wire */
} PpMoveKind;

typedef struct
{
  PpMoveKind  kind;
  guint       index;
  PpPose      pose;
  guint       to;
  double      length; /* mm; NAN: taut */
  const char *group;  /* borrowed; NULL: none; "": one of its own */
} PpMove;

#define PP_MAX_MOVES 8

/* At most one of STACK and REMOVE, and that last: they shift the others' places. */
typedef struct
{
  guint  n;
  PpMove moves[PP_MAX_MOVES];
} PpMoves;

/* What is over PP_MAX_MOVES is left to another proposal. */
static inline void
pp_moves_add (PpMoves *self,
              PpMove   move)
{
  if (self->n < PP_MAX_MOVES)
    self->moves[self->n++] = move;
}

static inline PpPose
pp_pose_of (const PpPlacement *placement)
{
  return (PpPose) { placement->x, placement->y, placement->rotation, placement->mirrored };
}

/* All of them in turn; NULL if one cannot be made. (transfer full) */
PpPanel *pp_moves_make (const PpMoves *self,
                        const PpPanel *panel);

G_END_DECLS
