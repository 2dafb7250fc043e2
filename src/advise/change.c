/* change.c: what one panel has that another has not, and what that costs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ids stand once, so the longest common subsequence of two stacks is the longest rising one among
 * the places that those kept had before.
 */
#include "advise/change.h"

#include "advise/changes-words.h"
#include "panel/tolerance.h"

#define TURN_COST 0.2     /* a degree */
#define RESTACK_COST 10.0 /* a placement */
#define COUNT_COST 40.0   /* a placement added or taken off */
#define GROUP_COST 5.0    /* a placement */
#define HOLE_COST 2.0     /* a mm */
#define WIRE_COST 0.5     /* a mm */

const char *
pp_change_kind_get_name (PpChangeKind kind)
{
  static const char * const names[] = { "move", "restack", "add", "remove", "group", "hole",
                                        "wire" };

  return names[kind];
}

void
pp_change_free (PpChange *self)
{
  if (self == NULL)
    return;
  g_free (self->about);
  g_free (self->text);
  g_free (self);
}

double
pp_turn_between (double from,
                 double to)
{
  double turn = fmod (to - from, 360);

  if (turn > 180)
    return turn - 360;
  return turn <= -180 ? turn + 360 : turn;
}

double
pp_pose_cost (const PpPlacement *before,
              const PpPlacement *after)
{
  return hypot (after->x - before->x, after->y - before->y)
         + TURN_COST * fabs (pp_turn_between (before->rotation, after->rotation));
}

/* mm by which the wire is made longer. One that stays taut runs with its holes, which cost their
 * own. */
static double
wire_change (const PpPanel *before,
             const PpPanel *after)
{
  if (before->wire == after->wire || before->wire == NULL || after->wire == NULL
      || (isnan (before->wire->length) && isnan (after->wire->length)))
    return 0;
  return pp_panel_get_wire_length (after) - pp_panel_get_wire_length (before);
}

/* Places before of those kept, in the order of now; their number. */
static guint
find_places (const PpPanel *before,
             const PpPanel *after,
             guint         *places)
{
  guint n = 0;

  for (guint i = 0; i < after->placements->len; i++)
    if (pp_panel_find_placement (before, pp_panel_placement (after, i)->id, &places[n]) != NULL)
      n++;
  return n;
}

/* Length of the longest rising subsequence, by the least end of each length. */
static guint
count_rising (const guint *places,
              guint        n,
              guint       *ends)
{
  guint length = 0;

  for (guint i = 0; i < n; i++)
    {
      guint low = 0, high = length;

      while (low < high)
        {
          guint middle = (low + high) / 2;

          if (ends[middle] < places[i])
            low = middle + 1;
          else
            high = middle;
        }
      ends[low] = places[i];
      length = MAX (length, low + 1);
    }
  return length;
}

static double
stack_cost (const PpPanel *before,
            const PpPanel *after,
            guint         *n_kept)
{
  g_autofree guint *places = g_new (guint, after->placements->len + 1);
  g_autofree guint *ends = g_new (guint, after->placements->len + 1);

  *n_kept = find_places (before, after, places);
  return RESTACK_COST * (*n_kept - count_rising (places, *n_kept, ends));
}

static double
placements_cost (const PpPanel *before,
                 const PpPanel *after)
{
  double cost = 0;

  for (guint i = 0; i < after->placements->len; i++)
    {
      const PpPlacement *now = pp_panel_placement (after, i);
      const PpPlacement *then = pp_panel_find_placement (before, now->id, NULL);

      if (then == NULL || then == now)
        continue;
      cost += pp_pose_cost (then, now);
      if (g_strcmp0 (then->group, now->group) != 0)
        cost += GROUP_COST;
    }
  return cost;
}

static double
holes_cost (const PpPanel *before,
            const PpPanel *after)
{
  double cost = 0;

  for (guint i = 0; i < after->holes->len; i++)
    {
      const PpHole *now = pp_panel_hole (after, i);
      const PpHole *then = pp_panel_find_hole (before, now->id, NULL);

      if (then != NULL && then != now)
        cost += HOLE_COST * hypot (now->x - then->x, now->y - then->y);
    }
  return cost;
}

double
pp_change_cost (const PpPanel *before,
                const PpPanel *after)
{
  guint n_kept;
  double cost = stack_cost (before, after, &n_kept);

  cost += COUNT_COST * (before->placements->len - n_kept + after->placements->len - n_kept);
  cost += placements_cost (before, after) + holes_cost (before, after);
  return cost + WIRE_COST * fabs (wire_change (before, after));
}

/* Of the longest rising subsequences one with most that hold: which of `places` are in it.
 * (transfer full) */
static gboolean *
choose_rising (const guint    *places,
               guint           n,
               const gboolean *holds)
{
  gboolean *chosen = g_new0 (gboolean, n + 1);
  g_autofree guint64 *worth = g_new (guint64, n + 1); /* length, then how many hold */
  g_autofree guint *previous = g_new (guint, n + 1);
  const guint64 one = G_GUINT64_CONSTANT (1) << 32;
  guint last = n;

  for (guint i = 0; i < n; i++)
    {
      guint64 own = one + (holds != NULL && holds[places[i]]);

      worth[i] = own;
      previous[i] = n;
      for (guint j = 0; j < i; j++)
        if (places[j] < places[i] && worth[j] + own > worth[i])
          {
            worth[i] = worth[j] + own;
            previous[i] = j;
          }
      if (last == n || worth[i] > worth[last])
        last = i;
    }
  for (guint i = last; i < n; i = previous[i])
    chosen[i] = TRUE;
  return chosen;
}

/* Both panels as shapes, for names, and the list that grows. */
typedef struct
{
  const PpScene *before;
  const PpScene *after;
  GPtrArray     *list;
} Listing;

static void
add (const Listing *self,
     PpChangeKind   kind,
     const char    *about,
     PpPoint        by,
     double         turn)
{
  PpChange *change = g_new0 (PpChange, 1);

  *change = (PpChange) { .kind = kind, .about = g_strdup (about), .by = by, .turn = turn };
  change->text = pp_change_say (change, self->before, self->after);
  g_ptr_array_add (self->list, change);
}

static void
add_glass (const Listing *self)
{
  const PpPanel *before = self->before->panel, *after = self->after->panel;
  double longer = wire_change (before, after);

  for (guint i = 0; i < before->holes->len; i++)
    {
      const PpHole *then = pp_panel_hole (before, i);
      const PpHole *now = pp_panel_find_hole (after, then->id, NULL);

      if (now != NULL && (now->x != then->x || now->y != then->y))
        add (self, PP_CHANGE_HOLE, then->id, (PpPoint) { now->x - then->x, now->y - then->y }, 0);
    }
  if (fabs (longer) > PP_TIE)
    add (self, PP_CHANGE_WIRE, "wire", (PpPoint) { longer, 0 }, 0);
}

/* `restacked`: it was taken out and put back. */
static void
add_placement (const Listing     *self,
               const PpPlacement *then,
               gboolean           restacked)
{
  const PpPlacement *now = pp_panel_find_placement (self->after->panel, then->id, NULL);

  if (now == NULL)
    {
      add (self, PP_CHANGE_REMOVE, then->id, (PpPoint) { 0, 0 }, 0);
      return;
    }
  if (now->x != then->x || now->y != then->y || now->rotation != then->rotation)
    add (self, PP_CHANGE_MOVE, then->id, (PpPoint) { now->x - then->x, now->y - then->y },
         pp_turn_between (then->rotation, now->rotation));
  if (restacked)
    add (self, PP_CHANGE_RESTACK, then->id, (PpPoint) { 0, 0 }, 0);
  if (g_strcmp0 (then->group, now->group) != 0)
    add (self, PP_CHANGE_GROUP, then->id, (PpPoint) { 0, 0 }, 0);
}

/* By index in the panel before. (transfer full) */
static gboolean *
find_restacked (const PpPanel  *before,
                const PpPanel  *after,
                const gboolean *holds)
{
  g_autofree guint *places = g_new (guint, after->placements->len + 1);
  guint n = find_places (before, after, places);
  g_autofree gboolean *stays = choose_rising (places, n, holds);
  gboolean *restacked = g_new0 (gboolean, before->placements->len + 1);

  for (guint i = 0; i < n; i++)
    restacked[places[i]] = !stays[i];
  return restacked;
}

GPtrArray *
pp_changes_between (const PpScene  *before,
                    const PpScene  *after,
                    const gboolean *holds)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_change_free);
  Listing self = { before, after, list };
  g_autofree gboolean *restacked = find_restacked (before->panel, after->panel, holds);

  add_glass (&self);
  for (guint i = 0; i < before->panel->placements->len; i++)
    add_placement (&self, pp_panel_placement (before->panel, i), restacked[i]);
  for (guint i = 0; i < after->panel->placements->len; i++)
    {
      const char *id = pp_panel_placement (after->panel, i)->id;

      if (pp_panel_find_placement (before->panel, id, NULL) == NULL)
        add (&self, PP_CHANGE_ADD, id, (PpPoint) { 0, 0 }, 0);
    }
  return list;
}
