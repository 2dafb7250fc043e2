/* propose-cover.c: a piece brought over a place that is in view.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A probe that nothing covers is picked, and pieces near by are slid or turned over it by as little
 * as will do, a little more, or are taken from the tray. Of a handful the glance keeps the best.
 */
#include "advise/propose-private.h"

#include "advise/weight.h"

#define TRIES 14          /* of which the glance keeps one */
#define NEARNESS 12.0     /* mm: a piece this much farther off is taken half as often */
#define HALVINGS 6        /* of the way of a slide */
#define MOST_TURN 90      /* degrees */
#define TURN_STEP 3
#define ADD_CHANCE 0.03

/* A probe of these kinds in view, each as likely; NULL if there is none. */
static const PpProbe *
pick_probe (const PpProposer *self,
            PpProbes          kinds,
            int               disc,
            PpDice           *dice)
{
  const PpGlance *glance = self->glance;
  const PpProbe *picked = NULL;
  guint n = 0;

  for (guint k = 0; k < glance->n_probes; k++)
    {
      const PpProbe *probe = &glance->probes[k];

      if ((kinds & (1u << probe->kind)) == 0 || glance->dark[k] >= PP_DARK
          || (disc >= 0 && probe->which != (guint) disc))
        continue;
      if (pp_dice_pick (dice, ++n) == 0)
        picked = probe;
    }
  return picked;
}

static double
distance_to_box (PpBox   box,
                 PpPoint p)
{
  double dx = fmax (0, fmax (box.x0 - p.x, p.x - box.x1));
  double dy = fmax (0, fmax (box.y0 - p.y, p.y - box.y1));

  return hypot (dx, dy);
}

/* How much a placement comes into question for a place. */
static double
suit (const PpProposer *self,
      guint             index,
      PpPoint           at)
{
  const PpGlanceBody *body = &self->glance->bodies[index];
  double distance = distance_to_box (self->check->scene->bodies[index]->box, at) / NEARNESS;
  double dark = (double) self->glance->pieces[body->piece].dark / PP_DARK;

  return body->counts ? dark / (1 + distance * distance * distance) : 0;
}

static gboolean
pick_placement (const PpProposer *self,
                PpPoint           at,
                PpDice           *dice,
                guint            *index)
{
  double sum = 0, roll;

  for (guint i = 0; i < self->movable->len; i++)
    sum += suit (self, g_array_index (self->movable, guint, i), at);
  roll = pp_dice_share (dice) * sum;
  for (guint i = 0; i < self->movable->len; i++)
    {
      double own = suit (self, g_array_index (self->movable, guint, i), at);

      *index = g_array_index (self->movable, guint, i);
      if (own > 0 && roll < own)
        return TRUE;
      roll -= own;
    }
  return FALSE;
}

/* A point inside the piece, its own frame. */
static PpPoint
pick_inside (const PpGlancePiece *piece,
             PpDice              *dice)
{
  PpBox box = piece->cover.box;

  for (guint k = 0; k < 12; k++)
    {
      PpPoint p = { pp_dice_between (dice, box.x0, box.x1),
                    pp_dice_between (dice, box.y0, box.y1) };

      if (pp_cover_contains (&piece->cover, p))
        return p;
    }
  return piece->centroid;
}

/* A piece and the probe it is to cover. */
typedef struct
{
  const PpProposer *proposer;
  const PpProbe    *probe;
  guint             index;
  guint             piece;
  double            base;
  PpPose            pose;
} Cover;

static gboolean
does_cover (const Cover *self,
            PpPoint      by,
            double       turn)
{
  PpPose pose = self->pose;

  pose.x += by.x;
  pose.y += by.y;
  pose.rotation += turn;
  return pp_glance_covers (self->proposer->glance, self->piece, self->base, pose, self->probe);
}

/* Along the way that brings a point of the piece over the place, no farther than needed, and a
 * little over. */
static PpMove
slide (const Cover *self,
       double       turn,
       PpDice      *dice)
{
  const PpGlance *glance = self->proposer->glance;
  PpPlacement turned = *pp_proposer_placement (self->proposer, self->index);
  PpPoint inside = pick_inside (&glance->pieces[self->piece], dice);
  PpPoint aim = pp_glance_aim (glance, self->piece, self->base, self->probe);
  PpPoint at, way;
  PpFrame frame;
  double low = 0, high = 1, share, length;

  turned.rotation += turn;
  frame = pp_frame_of (&turned);
  at = pp_frame_to_panel (&frame, inside);
  way = (PpPoint) { aim.x - at.x, aim.y - at.y };
  for (guint k = 0; k < HALVINGS; k++)
    {
      double middle = (low + high) / 2;

      if (does_cover (self, (PpPoint) { middle * way.x, middle * way.y }, turn))
        high = middle;
      else
        low = middle;
    }
  length = hypot (way.x, way.y);
  share = high;
  if (length > 0 && pp_dice_chance (dice, 0.7))
    share += pp_dice_between (dice, 0, 4) / length;
  return pp_propose_pose (self->proposer, self->index,
                          (PpPoint) { share * way.x, share * way.y }, turn);
}

/* About the piece's origin, the lesser turn that covers it, and a little over. */
static gboolean
turn_over (const Cover *self,
           PpDice      *dice,
           PpMove      *move)
{
  for (int turn = TURN_STEP; turn <= MOST_TURN; turn += TURN_STEP)
    for (int side = -1; side <= 1; side += 2)
      if (does_cover (self, (PpPoint) { 0, 0 }, side * turn))
        {
          *move = pp_propose_pose (self->proposer, self->index, (PpPoint) { 0, 0 },
                                   side * (turn + pp_dice_between (dice, 0, 8)));
          return TRUE;
        }
  return FALSE;
}

static PpMove
bring (const Cover *self,
       PpDice      *dice)
{
  PpMove move;
  double roll = pp_dice_share (dice);

  if (roll < 0.3 && turn_over (self, dice, &move))
    return move;
  return slide (self, roll < 0.75 ? 0 : round (pp_dice_between (dice, -40, 40)), dice);
}

/* A piece of which the tray has one left, over the place; FALSE if the one picked has none. */
static gboolean
take_from_tray (const PpProposer *self,
                const PpProbe    *probe,
                PpDice           *dice,
                PpMoves          *moves)
{
  const PpPanel *panel = self->check->panel;
  guint index = pp_dice_pick (dice, panel->tray->len);
  const PpPiece *piece = pp_panel_piece (panel, index);
  PpPlacement draft = pp_placement_draft ();
  PpPoint aim = pp_glance_aim (self->glance, index, 0, probe), at;
  PpMove move = { .kind = PP_MOVE_ADD, .index = index };
  PpFrame frame;

  if (piece->kind == PP_KIND_STEM || pp_panel_count_placed (panel, piece->id) >= piece->count)
    return FALSE;
  draft.rotation = floor (pp_dice_between (dice, 0, 360));
  frame = pp_frame_of (&draft);
  at = pp_frame_to_panel (&frame, pick_inside (&self->glance->pieces[index], dice));
  move.pose = (PpPose) { round (aim.x - at.x), round (aim.y - at.y), draft.rotation, FALSE };
  pp_moves_add (moves, move);
  return TRUE;
}

static PpMoves
cover_probe (const PpProposer *self,
             const PpProbe    *probe,
             PpDice           *dice)
{
  PpMoves moves = { 0 };
  Cover cover = { .proposer = self, .probe = probe };

  if (!pick_placement (self, probe->points[0], dice, &cover.index))
    return moves;
  cover.piece = self->glance->bodies[cover.index].piece;
  cover.base = self->glance->bodies[cover.index].base;
  cover.pose = pp_pose_of (pp_proposer_placement (self, cover.index));
  pp_moves_add (&moves, bring (&cover, dice));
  return moves;
}

PpMoves
pp_propose_cover (const PpProposer *self,
                  PpProbes          kinds,
                  int               disc,
                  PpDice           *dice)
{
  PpMoves best = { 0 };
  double least = INFINITY;

  for (guint k = 0; k < TRIES; k++)
    {
      const PpProbe *probe = pick_probe (self, kinds, disc, dice);
      PpMoves moves;
      double weight;

      if (probe == NULL)
        return pp_propose_nudge (self, dice);
      moves = (PpMoves) { 0 };
      if (k == 0 && self->check->panel->tray->len > 0 && pp_dice_chance (dice, ADD_CHANCE)
          && take_from_tray (self, probe, dice, &moves))
        return moves;
      moves = cover_probe (self, probe, dice);
      if (moves.n == 0)
        continue;
      weight = pp_propose_weigh (self, &moves);
      if (weight < least)
        {
          least = weight;
          best = moves;
        }
    }
  return best;
}
