/* settle-stack.c: every placement settled in turn, anew or as in the check before.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How a placement rests depends on its own body, on glass, fused parts, knots, glue and limits,
 * and on the tops of those below it under its cells and where its prop stands. So going up the
 * stack, a placement is settled again if its body is another one, or if a body at which something
 * may have changed has a cell there: its bodies of before and now are added to these if it moved,
 * its body if it came to rest in another way. The rest of the stack, and whose
 * top lies where, stay as they were.
 *
 * A placement is known by its place in the stack, as owners are: where the stack shifts, the bodies
 * there are others.
 */
#include "check/settle-stack.h"

#include "check/changes.h"
#include "check/under.h"

typedef struct
{
  PpCheck       *check;
  const PpCheck *previous; /* NULL: nothing of it holds */
  guint          n_both;   /* places in the stack that there are in both */
  PpRoom        *room;     /* for the placement in hand */
  GPtrArray     *touched;  /* PpBody: something may have changed under and over it */
} Stack;

static void
stack_init (Stack         *self,
            PpCheck       *check,
            const PpCheck *previous,
            PpRoom        *room,
            GPtrArray     *touched)
{
  *self = (Stack) { .check = check, .room = room, .touched = touched };
  if (previous == NULL || !pp_panel_has_same_ground (check->panel, previous->panel))
    return;
  self->previous = previous;
  self->n_both = MIN (check->n, previous->n);
}

/* A placement that is the same body as before. */
static gboolean
is_touched (const Stack *self,
            guint        index)
{
  const PpScene *scene = self->check->scene;
  const PpRest *rest = self->previous->rests[index];

  for (guint i = 0; i < self->touched->len; i++)
    {
      const PpBody *other = g_ptr_array_index (self->touched, i);

      if (pp_cell_boxes_meet (other->cells->box, scene->reaches[index])
          && pp_cells_meet (other->cells, scene->bodies[index]->cells))
        return TRUE;
      if (rest->has_prop
          && pp_cells_contain (other->cells, pp_cell_at (rest->prop.x), pp_cell_at (rest->prop.y)))
        return TRUE;
    }
  return FALSE;
}

static void
settle (const Stack *self,
        guint        index)
{
  PpCheck *check = self->check;
  g_autoptr (PpBed) bed = pp_under_make_bed (check->scene, check->rests, index, self->room);

  check->rests[index] = pp_rest_new (check->scene, check->rests, index, bed);
  check->joints[index] = pp_joint_new (check->scene, bed, check->rests[index]);
  pp_room_clear (self->room);
}

static void
take_over (PpCheck       *check,
           const PpCheck *previous,
           guint          index)
{
  check->rests[index] = pp_rest_ref (previous->rests[index]);
  check->joints[index] = pp_joint_ref (previous->joints[index]);
}

static void
settle_or_take_over (Stack *self,
                     guint  index)
{
  const PpBody *now = self->check->scene->bodies[index], *before;

  if (index >= self->n_both)
    {
      settle (self, index);
      return;
    }
  before = self->previous->scene->bodies[index];
  if (now == before && !is_touched (self, index))
    {
      take_over (self->check, self->previous, index);
      return;
    }
  settle (self, index);
  if (now != before)
    {
      g_ptr_array_add (self->touched, (gpointer) before);
      g_ptr_array_add (self->touched, (gpointer) now);
    }
  else if (!pp_rest_lies_alike (self->check->rests[index], self->previous->rests[index]))
    g_ptr_array_add (self->touched, (gpointer) now);
}

/* Of the thread, from check to check: in a drag each settles a few placements only. */
static PpRoom *
get_room (void)
{
  static GPrivate kept = G_PRIVATE_INIT ((GDestroyNotify) pp_room_free);
  PpRoom *room = g_private_get (&kept);

  if (room == NULL)
    {
      room = pp_room_new ();
      g_private_set (&kept, room);
    }
  return room;
}

/* Share of a check that settling is, for progress. */
#define SETTLING 0.8

gboolean
pp_settle_stack (PpCheck         *self,
                 const PpCheck   *previous,
                 GCancellable    *cancellable,
                 PpProgressFunc   progress,
                 gpointer         data,
                 GError         **error)
{
  g_autoptr (GPtrArray) touched = g_ptr_array_new ();
  Stack stack;

  stack_init (&stack, self, previous, get_room (), touched);
  for (guint i = 0; i < self->n; i++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      settle_or_take_over (&stack, i);
      if (progress != NULL)
        progress (SETTLING * (i + 1) / self->n, data);
    }
  self->bare_depth = stack.previous != NULL ? previous->bare_depth
                                            : pp_ground_get_depth (self->scene);
  self->depth = self->bare_depth;
  for (guint i = 0; i < self->n; i++)
    if (self->rests[i]->state != PP_STATE_FLOATS)
      self->depth = MAX (self->depth, self->rests[i]->raised);
  return TRUE;
}
