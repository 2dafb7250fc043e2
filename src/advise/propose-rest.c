/* propose-rest.c: for findings about how pieces rest, holes, the wire's length, groups and stock.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/propose-private.h"

#include "advise/change.h"
#include "advise/weight.h"

#define SLIPS 20           /* of which the glance keeps the nearest that is hidden */
#define TRIES 5            /* of which the glance keeps one that opens nothing to view */
#define MOST_STEP 40.0     /* mm, of a piece */
#define MOST_HOLE_STEP 30.0
#define MOST_LOOSE 0.35    /* of the holes' distance, that the wire is made longer by */

/* Short steps as often as long ones. */
static PpPoint
pick_step (PpDice *dice,
           double  most)
{
  double reach = exp (pp_dice_between (dice, log (0.5), log (most)));
  double angle = pp_dice_between (dice, 0, 2 * G_PI);

  return (PpPoint) { reach * cos (angle), reach * sin (angle) };
}

/* One that may be moved and overlaps the box of `index`; itself where there is none. */
static guint
pick_neighbour (const PpProposer *self,
                guint             index,
                PpDice           *dice)
{
  PpBody **bodies = self->check->scene->bodies;
  guint picked = index, n = 0;

  for (guint i = 0; i < self->movable->len; i++)
    {
      guint other = g_array_index (self->movable, guint, i);

      if (other != index && pp_box_meets (bodies[other]->box, bodies[index]->box)
          && pp_dice_pick (dice, ++n) == 0)
        picked = other;
    }
  return picked;
}

/* Over or under one of those it overlaps. */
static PpMoves
restack (const PpProposer *self,
         guint             index,
         PpDice           *dice)
{
  guint other = pick_neighbour (self, index, dice);
  PpMoves moves = { 0 };

  /* Past it: up where it lies below, down where it lies above. */
  if (other != index)
    pp_moves_add (&moves, (PpMove) { .kind = PP_MOVE_STACK, .index = index, .to = other });
  return moves;
}

/* Toward the middle of the glass for what hangs over its edge, anywhere for others. */
static PpPoint
pick_way (const PpProposer *self,
          const PpFinding  *finding,
          guint             index,
          PpDice           *dice)
{
  gboolean is_off = g_str_equal (finding->code, "floats")
                    || g_str_equal (finding->code, "overhang");
  PpPoint at = self->check->scene->bodies[index]->centroid;
  PpPoint middle = self->check->scene->background_centroid;
  double far = pp_point_distance (at, middle);
  double step = is_off && isfinite (finding->value) ? finding->value : far / 2;
  PpPoint any = pick_step (dice, MOST_STEP);

  if (!is_off || far <= 0 || pp_dice_chance (dice, 0.2))
    return any;
  step *= pp_dice_between (dice, 0.4, 1.3);
  return (PpPoint) { step * (middle.x - at.x) / far + any.x / 8,
                     step * (middle.y - at.y) / far + any.y / 8 };
}

/* A step, a turn or both, of the piece itself or of one that it overlaps. */
static PpMoves
shift (const PpProposer *self,
       const PpFinding  *finding,
       guint             index,
       PpDice           *dice)
{
  PpMoves moves = { 0 };
  guint which = pp_dice_chance (dice, 0.25) ? pick_neighbour (self, index, dice) : index;
  double roll = pp_dice_share (dice);
  PpPoint by = roll < 0.2 ? (PpPoint) { 0, 0 } : pick_way (self, finding, which, dice);
  double turn = roll > 0.7 || roll < 0.2 ? round (pp_dice_between (dice, -60, 60)) : 0;

  if (pp_propose_is_free (self, which))
    pp_moves_add (&moves, pp_propose_pose (self, which, by, turn));
  return moves;
}

static PpMoves
mend_piece (const PpProposer *self,
            const PpFinding  *finding,
            guint             index,
            PpDice           *dice)
{
  double roll = pp_dice_share (dice);
  PpMoves moves = { 0 };

  if (roll < 0.2 && pp_propose_is_free (self, index))
    return restack (self, index, dice);
  if (roll < 0.23 && pp_propose_is_free (self, index))
    {
      pp_moves_add (&moves, (PpMove) { .kind = PP_MOVE_REMOVE, .index = index });
      return moves;
    }
  for (guint k = 0; k < TRIES; k++)
    {
      moves = shift (self, finding, index, dice);
      if (moves.n > 0 && pp_glance_estimate (self->glance, &moves) <= self->seen + PP_WEIGHT_MM)
        return moves;
    }
  return moves;
}

static gboolean
may_move_hole (const PpProposer *self,
               guint             index)
{
  return !pp_guard_holds_hole (self->guard, pp_panel_hole (self->check->panel, index)->id);
}

static void
move_hole (const PpProposer *self,
           guint             index,
           PpPoint           by,
           PpMoves          *moves)
{
  const PpHole *hole = pp_panel_hole (self->check->panel, index);

  if (may_move_hole (self, index))
    pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_HOLE, .index = index,
                                    .pose = { pp_propose_step (hole->x, by.x),
                                              pp_propose_step (hole->y, by.y), 0, FALSE } });
}

static PpMoves
mend_hole (const PpProposer *self,
           const PpFinding  *finding,
           guint             index,
           PpDice           *dice)
{
  const PpHole *hole = pp_panel_hole (self->check->panel, index);
  PpPoint middle = self->check->scene->background_centroid;
  double far = hypot (middle.x - hole->x, middle.y - hole->y);
  double step = isfinite (finding->value) ? fabs (finding->limit - finding->value) : MOST_STEP / 4;
  PpPoint by = pick_step (dice, MOST_HOLE_STEP);
  PpMoves moves = { 0 };

  if (far > 0 && pp_dice_chance (dice, 0.5))
    {
      step = fmin (step, far) * pp_dice_between (dice, 0.8, 1.5);
      by = (PpPoint) { step * (middle.x - hole->x) / far + by.x / 16,
                       step * (middle.y - hole->y) / far + by.y / 16 };
    }
  move_hole (self, index, by, &moves);
  return moves;
}

static void
make_longer (const PpProposer *self,
             PpDice           *dice,
             PpMoves          *moves)
{
  const PpHang *hang = self->check->hang;
  double length = hang->hole_distance * (1 + pp_dice_between (dice, 0.005, MOST_LOOSE));

  if (!hang->is_taut && pp_dice_chance (dice, 0.5))
    length = pp_panel_get_wire_length (self->check->panel) + pick_step (dice, MOST_STEP).x;
  if (!self->guard->wire && length > 0)
    pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_WIRE, .length = ceil (length * 2) / 2 });
}

/* How far both holes are to go so that the panel hangs: up over its middle of mass, or to astride
 * it; FALSE if the finding is about neither. */
static gboolean
aim_holes (const PpProposer *self,
           const PpFinding  *finding,
           PpDice           *dice,
           PpPoint          *by)
{
  const PpHole *from = pp_scene_knot_hole (self->check->scene, 0);
  const PpHole *to = pp_scene_knot_hole (self->check->scene, 1);

  if (g_str_equal (finding->code, "turns-over"))
    *by = (PpPoint) { 0, fmin (finding->value, 0) - pp_dice_between (dice, 0.2, 12) };
  else if (g_str_equal (finding->code, "not-level"))
    *by = (PpPoint) { pp_dice_between (dice, 0.2, 1.1)
                      * (self->check->mass.x - (from->x + to->x) / 2), 0 };
  else
    return FALSE;
  return TRUE;
}

/* Both holes up or down, to one side, or closer together; or the wire's length. */
static PpMoves
mend_hang (const PpProposer *self,
           const PpFinding  *finding,
           PpDice           *dice)
{
  const PpScene *scene = self->check->scene;
  PpPoint by = pick_step (dice, MOST_HOLE_STEP);
  PpMoves moves = { 0 };
  double roll = pp_dice_share (dice);

  if (scene->n_knots == 0)
    return moves;
  if (pp_dice_chance (dice, 0.5) && aim_holes (self, finding, dice, &by))
    {
      move_hole (self, (guint) scene->knots[0], by, &moves);
      move_hole (self, (guint) scene->knots[1], by, &moves);
      return moves;
    }
  if (roll < 0.5)
    make_longer (self, dice, &moves);
  if (roll > 0.4)
    {
      double side = roll > 0.9 ? -1 : 1;

      if (roll < 0.6)
        by.x = 0;
      else if (roll < 0.8)
        by.y = 0;
      move_hole (self, (guint) scene->knots[0], by, &moves);
      move_hole (self, (guint) scene->knots[1], (PpPoint) { side * by.x, by.y }, &moves);
    }
  return moves;
}

/* NULL for none and "" for one of its own, either of which mixes no two groups, or one there is. */
static const char *
pick_group (const PpProposer *self,
            PpDice           *dice)
{
  const PpComposition *composition = self->check->composition;
  double roll = pp_dice_share (dice);

  if (roll < 0.7 || composition->n_groups == 0)
    return roll < 0.35 ? NULL : "";
  return composition->groups[pp_dice_pick (dice, composition->n_groups)].name;
}

static PpMoves
mend_group (const PpProposer *self,
            const PpFinding  *finding,
            PpDice           *dice)
{
  guint which = pp_dice_pick (dice, g_strv_length ((char **) finding->about)), index;
  PpMoves moves = { 0 };

  if (pp_panel_find_placement (self->check->panel, finding->about[which], &index) == NULL)
    return moves;
  if (pp_dice_chance (dice, 0.7))
    pp_moves_add (&moves, (PpMove) { .kind = PP_MOVE_GROUP, .index = index,
                                     .group = pick_group (self, dice) });
  else if (pp_propose_is_free (self, index))
    pp_moves_add (&moves, pp_propose_pose (self, index, pick_step (dice, MOST_STEP), 0));
  return moves;
}

/* One of those that may be taken off and whose tray piece or pocket is named; each as likely. */
static PpMoves
take_one_off (const PpProposer *self,
              const char       *piece,
              const char       *pocket,
              PpDice           *dice)
{
  PpMoves moves = { 0 };
  guint n = 0, picked = 0;

  for (guint i = 0; i < self->movable->len; i++)
    {
      guint index = g_array_index (self->movable, guint, i);
      const PpPlacement *placement = pp_proposer_placement (self, index);

      if (g_strcmp0 (piece != NULL ? placement->piece : placement->pocket,
                     piece != NULL ? piece : pocket) == 0
          && pp_dice_pick (dice, ++n) == 0)
        picked = index;
    }
  if (n > 0)
    pp_moves_add (&moves, (PpMove) { .kind = PP_MOVE_REMOVE, .index = picked });
  return moves;
}

/* How many of a hole's middle and four points of its rim would be hidden by what lies about. */
static guint
count_hidden (const PpProposer *self,
              const PpHole     *hole,
              PpPoint           by)
{
  double r = hole->diameter / 2;
  const PpPoint spots[] = { { 0, 0 }, { r, 0 }, { -r, 0 }, { 0, r }, { 0, -r } };
  guint n = 0;

  for (guint k = 0; k < G_N_ELEMENTS (spots); k++)
    {
      PpPoint at = { hole->x + by.x + spots[k].x, hole->y + by.y + spots[k].y };
      gint32 bare, dark = pp_glance_darkness (self->glance, at, &bare);

      n += dark + bare >= PP_DARK;
    }
  return n;
}

/* The hole to the nearest of a few places where it is hidden, or most of it. */
static PpMoves
slip_under (const PpProposer *self,
            guint             index,
            PpDice           *dice)
{
  const PpHole *hole = pp_panel_hole (self->check->panel, index);
  PpPoint best = { 0, 0 };
  guint most = 0;
  PpMoves moves = { 0 };

  for (guint k = 0; k < SLIPS && may_move_hole (self, index); k++)
    {
      PpPoint by = pick_step (dice, MOST_HOLE_STEP);
      guint n = count_hidden (self, hole, by);

      if (k == 0 || n > most || (n == most && hypot (by.x, by.y) < hypot (best.x, best.y)))
        {
          most = n;
          best = by;
        }
    }
  move_hole (self, index, best, &moves);
  return moves;
}

PpMoves
pp_propose_mend (const PpProposer *self,
                 const PpFinding  *finding,
                 PpDice           *dice)
{
  const PpPanel *panel = self->check->panel;
  guint index;

  switch (pp_mend_of (finding->code))
    {
    case PP_MEND_WIRE:
      return mend_hang (self, finding, dice);
    case PP_MEND_DISC:
      if (pp_panel_find_hole (panel, finding->about[0], &index) != NULL)
        return slip_under (self, index, dice);
      break;
    case PP_MEND_PIECE:
      for (guint i = 0; finding->about[i] != NULL; i++)
        if (pp_panel_find_placement (panel, finding->about[i], &index) != NULL)
          return mend_piece (self, finding, index, dice);
      break;
    case PP_MEND_HOLE:
      if (pp_panel_find_hole (panel, finding->about[0], &index) != NULL)
        return mend_hole (self, finding, index, dice);
      break;
    case PP_MEND_HANG:
      return mend_hang (self, finding, dice);
    case PP_MEND_GROUP:
      return mend_group (self, finding, dice);
    case PP_MEND_STOCK:
      return take_one_off (self, finding->about[0], NULL, dice);
    case PP_MEND_STEMS:
      return take_one_off (self, NULL, finding->about[0], dice);
    case PP_MEND_NOTHING:
      break;
    }
  return (PpMoves) { 0 };
}
