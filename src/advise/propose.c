/* propose.c: what a search tries next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/propose-private.h"

#include "advise/change.h"
#include "advise/curable.h"
#include "advise/weight.h"

#include <string.h>

gboolean
pp_propose_is_free (const PpProposer *self,
                    guint             index)
{
  return !pp_guard_holds (self->guard, pp_proposer_placement (self, index)->id);
}

const PpPlacement *
pp_propose_given (const PpProposer *self,
                  guint             index)
{
  return pp_panel_find_placement (self->given, pp_proposer_placement (self, index)->id, NULL);
}

PpMove
pp_propose_pose (const PpProposer *self,
                 guint             index,
                 PpPoint           by,
                 double            turn)
{
  const PpPlacement *now = pp_proposer_placement (self, index);
  const PpPlacement *given = pp_propose_given (self, index);
  PpMove move = { .kind = PP_MOVE_POSE, .index = index, .pose = pp_pose_of (now) };

  if (given == NULL)
    given = now;
  move.pose.x = pp_propose_step (given->x, now->x + by.x - given->x);
  move.pose.y = pp_propose_step (given->y, now->y + by.y - given->y);
  move.pose.rotation = given->rotation
                       + round (pp_turn_between (given->rotation, now->rotation + turn));
  return move;
}

/* What the moves would cost more than now, about. */
static double
get_cost (const PpProposer *self,
          const PpMoves    *moves)
{
  double cost = 0;

  for (guint i = 0; i < moves->n; i++)
    {
      const PpMove *move = &moves->moves[i];
      const PpPlacement *given;
      PpPlacement then;

      if (move->kind != PP_MOVE_POSE)
        continue;
      given = pp_propose_given (self, move->index);
      if (given == NULL)
        continue;
      then = *given;
      then.x = move->pose.x;
      then.y = move->pose.y;
      then.rotation = move->pose.rotation;
      cost += pp_pose_cost (given, &then)
              - pp_pose_cost (given, pp_proposer_placement (self, move->index));
    }
  return cost;
}

double
pp_propose_weigh (const PpProposer *self,
                  const PpMoves    *moves)
{
  return pp_glance_estimate (self->glance, moves)
         + PP_WEIGHT_COST * get_cost (self, moves);
}

static gboolean
is_changed (const PpProposer *self,
            guint             index)
{
  const PpPlacement *now = pp_proposer_placement (self, index);
  const PpPlacement *given = pp_propose_given (self, index);

  return given == NULL || pp_pose_cost (given, now) > 0
         || g_strcmp0 (given->group, now->group) != 0;
}

static void
list_placements (PpProposer *self)
{
  self->movable = g_array_new (FALSE, FALSE, sizeof (guint));
  self->changed = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < self->check->n; i++)
    {
      if (!pp_propose_is_free (self, i))
        continue;
      g_array_append_val (self->movable, i);
      if (is_changed (self, i))
        g_array_append_val (self->changed, i);
    }
}

PpProposer *
pp_proposer_new (const PpGoal  *goal,
                 const PpGuard *guard,
                 const PpCheck *check)
{
  PpProposer *self = g_new0 (PpProposer, 1);

  *self = (PpProposer) { .goal = goal, .guard = guard, .given = goal->given, .check = check };
  self->glance = pp_glance_new (check);
  self->seen = pp_glance_estimate (self->glance, NULL);
  self->troubles = g_ptr_array_new ();
  for (guint i = 0; i < check->findings->len; i++)
    {
      PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (pp_goal_minds (goal, finding) && pp_advise_can_cure (finding->code))
        g_ptr_array_add (self->troubles, finding);
    }
  list_placements (self);
  return self;
}

void
pp_proposer_free (PpProposer *self)
{
  if (self == NULL)
    return;
  pp_glance_free (self->glance);
  g_ptr_array_unref (self->troubles);
  g_array_unref (self->movable);
  g_array_unref (self->changed);
  g_free (self);
}

static int
find_hole (const PpProposer *self,
           const char       *id)
{
  guint index;

  return pp_panel_find_hole (self->check->panel, id, &index) != NULL ? (int) index : -1;
}

/* Aimed at one finding. */
static PpMoves
cure (const PpProposer *self,
      const PpFinding  *finding,
      PpDice           *dice)
{
  PpProbes kinds = pp_probes_of (finding->code);

  /* Now and then the hole or the wire is moved and not a piece; a hole that bears nothing as
   * often. */
  if (kinds == 0 || pp_dice_chance (dice, g_str_equal (finding->code, "hole-shows") ? 0.5 : 0.06))
    return pp_propose_mend (self, finding, dice);
  return pp_propose_cover (self, kinds,
                           strcmp (finding->about[0], "wire") == 0
                             ? -1 : find_hole (self, finding->about[0]), dice);
}

/* One of the troubles, faults more often than others. */
static const PpFinding *
pick_trouble (const PpProposer *self,
              PpDice           *dice)
{
  static const guint weights[] = { 8, 3, 3 };
  guint sum = 0, at;

  for (guint i = 0; i < self->troubles->len; i++)
    sum += weights[((const PpFinding *) g_ptr_array_index (self->troubles, i))->level];
  at = pp_dice_pick (dice, sum);
  for (guint i = 0; i < self->troubles->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (self->troubles, i);

      if (at < weights[finding->level])
        return finding;
      at -= weights[finding->level];
    }
  g_return_val_if_reached (NULL);
}

PpMoves
pp_propose (const PpProposer *self,
            PpDice           *dice)
{
  gboolean in_trouble = self->troubles->len > 0;
  double roll = pp_dice_share (dice);

  if (in_trouble && roll < 0.75)
    return cure (self, pick_trouble (self, dice), dice);
  if (roll < 0.95 || !in_trouble)
    {
      PpMoves back = pp_propose_back (self, dice);

      if (back.n > 0)
        return back;
    }
  return pp_propose_nudge (self, dice);
}
