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

typedef struct
{
  PpCheck       *check;
  const PpCheck *previous; /* NULL: nothing of it holds */
  guint          n_both;   /* places in the stack that there are in both */
  GPtrArray     *touched;  /* PpBody: something may have changed under and over it */
  guint          n_raised; /* so often a placement was raised for one over it */
  PpField       *field;    /* of the stack so far, once that is less work; NULL before */
} Stack;

static void
stack_init (Stack         *self,
            PpCheck       *check,
            const PpCheck *previous)
{
  *self = (Stack) { .check = check, .touched = g_ptr_array_new () };
  if (previous == NULL || !pp_panel_has_same_ground (check->panel, previous->panel))
    return;
  self->previous = previous;
  self->n_both = MIN (check->n, previous->n);
}

/* `body` as it rested before. */
static gboolean
is_touched (const Stack  *self,
            const PpBody *body,
            const PpRest *rest)
{
  for (guint i = 0; i < self->touched->len; i++)
    {
      const PpBody *other = g_ptr_array_index (self->touched, i);

      if (pp_box_meets (other->box, pp_box_grow (body->box, PP_CELL))
          && pp_cells_meet (other->cells, body->cells))
        return TRUE;
      if (rest->has_prop
          && pp_cells_contain (other->cells, pp_cell_at (rest->prop.x), pp_cell_at (rest->prop.y)))
        return TRUE;
    }
  return FALSE;
}

static void
settle_one (PpCheck       *check,
            guint          index,
            const PpField *field)
{
  g_autoptr (PpBed) bed = pp_bed_new (check->scene, index, field);

  check->rests[index] = pp_rest_new (check->scene, index, bed, field);
  check->joints[index] = g_new0 (PpJoint, 1);
  pp_joint_find_places (check->joints[index], check->scene, bed, check->rests[index]);
}

/* On the field as those below raise it, as far as it matters to this one. */
static void
settle_on_part (Stack *self,
                guint  index)
{
  PpCheck *check = self->check;
  const PpScene *scene = check->scene;
  PpBox box = pp_box_grow (scene->bodies[index]->box, 2 * PP_CELL);
  PpCellBox part = { pp_cell_at (box.x0), pp_cell_at (box.y0), pp_cell_at (box.x1) + 1,
                     pp_cell_at (box.y1) + 1 };
  g_autoptr (PpField) field = pp_field_new_part (scene, part);

  for (guint i = 0; i < index; i++)
    if (pp_box_meets (pp_box_grow (scene->bodies[i]->box, PP_CELL), box))
      {
        pp_rest_raise (check->rests[i], scene, i, field);
        self->n_raised++;
      }
  settle_one (check, index, field);
}

/* So many parts of placements are raised in less time than all of each. */
#define PARTS 4

/* In a heap that moves all the way up, the parts are more work than the whole. */
static void
settle_again (Stack *self,
              guint  index)
{
  PpCheck *check = self->check;

  if (self->field == NULL && self->n_raised <= PARTS * check->n)
    {
      settle_on_part (self, index);
      return;
    }
  if (self->field == NULL)
    {
      self->field = pp_field_new (check->scene);
      for (guint i = 0; i < index; i++)
        pp_rest_raise (check->rests[i], check->scene, i, self->field);
    }
  settle_one (check, index, self->field);
}

static void
take_over (PpCheck       *check,
           const PpCheck *previous,
           guint          index)
{
  check->rests[index] = pp_rest_ref (previous->rests[index]);
  check->joints[index] = g_memdup2 (previous->joints[index], sizeof (PpJoint));
}

static void
settle_or_take_over (Stack *self,
                     guint  index)
{
  const PpBody *now = self->check->scene->bodies[index], *before;

  if (index >= self->n_both)
    {
      settle_again (self, index);
      return;
    }
  before = self->previous->scene->bodies[index];
  if (now == before && !is_touched (self, now, self->previous->rests[index]))
    {
      take_over (self->check, self->previous, index);
      return;
    }
  settle_again (self, index);
  if (now != before)
    {
      g_ptr_array_add (self->touched, (gpointer) before);
      g_ptr_array_add (self->touched, (gpointer) now);
    }
  else if (!pp_rest_lies_alike (self->check->rests[index], self->previous->rests[index]))
    g_ptr_array_add (self->touched, (gpointer) now);
}

static gboolean
settle_from_previous (Stack           *self,
                      GCancellable    *cancellable,
                      GError         **error)
{
  for (guint i = 0; i < self->check->n; i++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      settle_or_take_over (self, i);
      if (self->field != NULL)
        pp_rest_raise (self->check->rests[i], self->check->scene, i, self->field);
    }
  self->check->bare_depth = self->previous->bare_depth;
  return TRUE;
}

/* Share of a check that settling is, for progress. */
#define SETTLING 0.8

static gboolean
settle_anew (PpCheck         *check,
             GCancellable    *cancellable,
             PpProgressFunc   progress,
             gpointer         data,
             GError         **error)
{
  g_autoptr (PpField) field = pp_field_new (check->scene);

  check->bare_depth = field->depth;
  for (guint i = 0; i < check->n; i++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      settle_one (check, i, field);
      pp_rest_raise (check->rests[i], check->scene, i, field);
      if (progress != NULL)
        progress (SETTLING * (i + 1) / check->n, data);
    }
  return TRUE;
}

/* Settling anew raises one field once; from the previous one it is raised for each placement. */
static gboolean
is_worth_it (const Stack *self)
{
  guint again = self->check->n - self->n_both;

  for (guint i = 0; i < self->n_both; i++)
    again += self->check->scene->bodies[i] != self->previous->scene->bodies[i];
  return again <= self->check->n / 2;
}

gboolean
pp_settle_stack (PpCheck         *self,
                 const PpCheck   *previous,
                 GCancellable    *cancellable,
                 PpProgressFunc   progress,
                 gpointer         data,
                 GError         **error)
{
  Stack stack;
  gboolean done;

  stack_init (&stack, self, previous);
  if (stack.previous != NULL && is_worth_it (&stack))
    done = settle_from_previous (&stack, cancellable, error);
  else
    done = settle_anew (self, cancellable, progress, data, error);
  g_ptr_array_unref (stack.touched);
  pp_field_free (stack.field);
  if (!done)
    return FALSE;
  self->depth = self->bare_depth;
  for (guint i = 0; i < self->n; i++)
    if (self->rests[i]->state != PP_STATE_FLOATS)
      self->depth = MAX (self->depth, self->rests[i]->raised);
  return TRUE;
}
