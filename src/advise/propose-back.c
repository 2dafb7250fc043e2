/* propose-back.c: changes undone, wholly or in part, and small steps.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/propose-private.h"

#include "advise/change.h"

#define TRIES 8 /* of which the glance keeps one */
#define RUIN_SHARE 0.35
#define MOST_SEEN 20.0 /* that undoing may lay open, by the glance's estimate, to be tried at all */

/* Back toward where it was given; TRUE if it was moved. */
static gboolean
put_back (const PpProposer *self,
          guint             index,
          double            way,
          double            turn,
          PpMoves          *moves)
{
  const PpPlacement *now = pp_proposer_placement (self, index);
  const PpPlacement *given = pp_propose_given (self, index);

  if (given == NULL || pp_pose_cost (given, now) <= 0)
    return FALSE;
  if (way >= 1 && turn >= 1)
    pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_POSE, .index = index,
                                    .pose = pp_pose_of (given) });
  else
    pp_moves_add (moves, pp_propose_pose (self, index,
                                          (PpPoint) { way * (given->x - now->x),
                                                      way * (given->y - now->y) },
                                          turn * pp_turn_between (now->rotation, given->rotation)));
  return TRUE;
}

/* All of one placement's changes but its place in the stack. */
static void
undo_placement (const PpProposer *self,
                guint             index,
                PpDice           *dice,
                PpMoves          *moves)
{
  const PpPlacement *now = pp_proposer_placement (self, index);
  const PpPlacement *given = pp_propose_given (self, index);
  double roll = pp_dice_share (dice);

  if (given == NULL)
    pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_REMOVE, .index = index });
  else if (g_strcmp0 (given->group, now->group) != 0)
    pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_GROUP, .index = index,
                                    .group = given->group });
  else if (roll < 0.3)
    put_back (self, index, 1, 1, moves);
  else if (roll < 0.45)
    put_back (self, index, 0, 1, moves);
  else if (roll < 0.55)
    put_back (self, index, 1, 0, moves);
  else
    put_back (self, index, pp_dice_between (dice, 0, 0.6), pp_dice_between (dice, 0, 0.6), moves);
}

/* Next to the one it lay on in the given stack. */
static gboolean
undo_stack (const PpProposer *self,
            guint             index,
            PpMoves          *moves)
{
  const PpPanel *panel = self->check->panel;
  guint given, under, to = 0;

  if (pp_panel_find_placement (self->given, pp_proposer_placement (self, index)->id, &given)
      == NULL)
    return FALSE;
  while (given > 0)
    if (pp_panel_find_placement (panel, pp_panel_placement (self->given, --given)->id, &under)
        != NULL)
      {
        to = under < index ? under + 1 : under;
        break;
      }
  if (to == index)
    return FALSE;
  pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_STACK, .index = index, .to = to });
  return TRUE;
}

static gboolean
undo_any_stack (const PpProposer *self,
                PpDice           *dice,
                PpMoves          *moves)
{
  for (guint k = 0; k < 4 && self->movable->len > 0; k++)
    if (undo_stack (self, g_array_index (self->movable, guint,
                                         pp_dice_pick (dice, self->movable->len)), moves))
      return TRUE;
  return FALSE;
}

static gboolean
undo_glass (const PpProposer *self,
            double            share,
            PpDice           *dice,
            PpMoves          *moves)
{
  const PpPanel *panel = self->check->panel;

  if (panel->wire != self->given->wire && panel->wire != NULL && pp_dice_chance (dice, 0.5))
    {
      double length = pp_panel_get_wire_length (panel);
      double longer = pp_panel_get_wire_length (self->given) - length;

      pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_WIRE,
                                      .length = share >= 1 ? self->given->wire->length
                                                           : length + share * longer });
      return TRUE;
    }
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *now = pp_panel_hole (panel, i), *then = pp_panel_hole (self->given, i);

      if (now->x != then->x || now->y != then->y)
        pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_HOLE, .index = i,
                                        .pose = { .x = now->x + share * (then->x - now->x),
                                                  .y = now->y + share * (then->y - now->y) } });
    }
  return moves->n > 0;
}

/* One back, and another brought over what that leaves in view; the glance picks. */
static PpMoves
exchange (const PpProposer *self,
          PpDice           *dice)
{
  PpMoves best = { 0 };
  double least = INFINITY;

  for (guint k = 0; k < TRIES; k++)
    {
      guint a = g_array_index (self->changed, guint, pp_dice_pick (dice, self->changed->len));
      guint b = g_array_index (self->movable, guint, pp_dice_pick (dice, self->movable->len));
      PpMoves moves = { 0 };
      double weight, reach = pp_dice_between (dice, 0, 12);
      double angle = pp_dice_between (dice, 0, 2 * G_PI);

      put_back (self, a, 1, pp_dice_chance (dice, 0.7) ? 1 : 0, &moves);
      if (b != a)
        pp_moves_add (&moves, pp_propose_pose (self, b, (PpPoint) { reach * cos (angle),
                                                                    reach * sin (angle) },
                                               round (pp_dice_between (dice, -12, 12))));
      weight = moves.n > 0 ? pp_propose_weigh (self, &moves) : (double) INFINITY;
      if (weight < least)
        {
          least = weight;
          best = moves;
        }
    }
  return best;
}

PpMoves
pp_propose_back (const PpProposer *self,
                 PpDice           *dice)
{
  PpMoves best = { 0 };
  double least = INFINITY;
  double roll = pp_dice_share (dice);

  if (roll < 0.08 && undo_any_stack (self, dice, &best))
    return best;
  if (roll < 0.16 && undo_glass (self, pp_dice_chance (dice, 0.5) ? 1.0 : 0.5, dice, &best))
    return best;
  if (self->changed->len == 0)
    return best;
  if (roll > 0.75)
    return exchange (self, dice);
  for (guint k = 0; k < TRIES; k++)
    {
      PpMoves moves = { 0 };
      double weight;

      undo_placement (self, g_array_index (self->changed, guint,
                                           pp_dice_pick (dice, self->changed->len)), dice, &moves);
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

PpMoves
pp_propose_nudge (const PpProposer *self,
                  PpDice           *dice)
{
  GArray *from = self->changed->len > 0 && pp_dice_chance (dice, 0.6) ? self->changed
                                                                       : self->movable;
  double reach = exp (pp_dice_between (dice, -1, 3)), angle = pp_dice_between (dice, 0, 2 * G_PI);
  PpMoves moves = { 0 };
  guint index;

  if (from->len == 0)
    return moves;
  index = g_array_index (from, guint, pp_dice_pick (dice, from->len));
  pp_moves_add (&moves, pp_propose_pose (self, index, (PpPoint) { reach * cos (angle),
                                                                  reach * sin (angle) },
                                         pp_dice_chance (dice, 0.5)
                                           ? 0 : round (pp_dice_between (dice, -20, 20))));
  return moves;
}

/* What came from the tray goes first: it costs most. */
static void
take_back (const PpProposer *self,
           PpDice           *dice,
           PpMoves          *moves)
{
  for (guint i = 0; i < self->changed->len; i++)
    {
      guint index = g_array_index (self->changed, guint, i);

      if (pp_propose_given (self, index) == NULL && pp_dice_chance (dice, 0.5))
        {
          pp_moves_add (moves, (PpMove) { .kind = PP_MOVE_REMOVE, .index = index });
          return;
        }
    }
}

PpMoves
pp_propose_ruin (const PpProposer *self,
                 PpDice           *dice)
{
  PpMoves moves = { 0 };

  for (guint i = 0; i < self->changed->len && moves.n + 1 < PP_MAX_MOVES; i++)
    if (pp_dice_chance (dice, RUIN_SHARE))
      put_back (self, g_array_index (self->changed, guint, i), 1, 1, &moves);
  take_back (self, dice, &moves);
  if (moves.n == 0)
    return pp_propose_nudge (self, dice);
  return moves;
}

/* Ways to undo a pose: how much of its x, its y and its turn. */
static const double ways[][3] = {
  { 1, 1, 1 }, { 0, 0, 1 }, { 1, 0, 0 }, { 0, 1, 0 }, { 1, 1, 0 }, { 0.5, 0.5, 0.5 },
  { 0.5, 0.5, 0 }, { 0.2, 0.2, 0.2 }, { 0.2, 0.2, 0 },
};

static void
list (const PpProposer *self,
      PpMove            move,
      GArray           *undos)
{
  PpMoves moves = { .n = 1, .moves = { move } };

  if (pp_glance_estimate (self->glance, &moves) <= self->seen + MOST_SEEN)
    g_array_append_val (undos, moves);
}

static void
list_pose (const PpProposer *self,
           guint             index,
           const double     *way,
           GArray           *undos)
{
  const PpPlacement *now = pp_proposer_placement (self, index);
  const PpPlacement *given = pp_propose_given (self, index);
  PpMove move = { .kind = PP_MOVE_POSE, .index = index };

  if (given == NULL)
    return;
  move.pose = pp_propose_pose (self, index, (PpPoint) { way[0] * (given->x - now->x),
                                                        way[1] * (given->y - now->y) },
                               way[2] * pp_turn_between (now->rotation, given->rotation)).pose;
  if (move.pose.x != now->x || move.pose.y != now->y
      || pp_turn_between (now->rotation, move.pose.rotation) != 0)
    list (self, move, undos);
}

/* What else of one placement may be undone, each of it whole: that it is there at all, its group,
 * its place in the stack. */
static void
list_others (const PpProposer *self,
             guint             index,
             GArray           *undos)
{
  const PpPlacement *given = pp_propose_given (self, index);
  PpMoves stack = { 0 };

  if (given == NULL)
    list (self, (PpMove) { .kind = PP_MOVE_REMOVE, .index = index }, undos);
  else if (g_strcmp0 (given->group, pp_proposer_placement (self, index)->group) != 0)
    list (self, (PpMove) { .kind = PP_MOVE_GROUP, .index = index, .group = given->group }, undos);
  if (given != NULL && undo_stack (self, index, &stack))
    list (self, stack.moves[0], undos);
}

static void
list_hole (const PpProposer *self,
           guint             index,
           const double     *way,
           GArray           *undos)
{
  const PpHole *now = pp_panel_hole (self->check->panel, index);
  const PpHole *then = pp_panel_hole (self->given, index);
  double x = way[0] * (then->x - now->x), y = way[1] * (then->y - now->y);

  if (x != 0 || y != 0)
    list (self, (PpMove) { .kind = PP_MOVE_HOLE, .index = index,
                           .pose = { .x = now->x + x, .y = now->y + y } }, undos);
}

static void
list_wire (const PpProposer *self,
           GArray           *undos)
{
  const PpPanel *panel = self->check->panel;

  if (panel->wire != NULL && panel->wire != self->given->wire)
    list (self, (PpMove) { .kind = PP_MOVE_WIRE, .length = self->given->wire->length }, undos);
}

GArray *
pp_propose_undos (const PpProposer *self)
{
  GArray *undos = g_array_new (FALSE, FALSE, sizeof (PpMoves));

  for (guint i = 0; i < self->movable->len; i++)
    list_others (self, g_array_index (self->movable, guint, i), undos);
  list_wire (self, undos);
  for (guint k = 0; k < G_N_ELEMENTS (ways); k++)
    {
      for (guint i = 0; i < self->changed->len; i++)
        list_pose (self, g_array_index (self->changed, guint, i), ways[k], undos);
      for (guint i = 0; i < self->given->holes->len && ways[k][0] + ways[k][1] > 0; i++)
        list_hole (self, i, ways[k], undos);
    }
  return undos;
}
