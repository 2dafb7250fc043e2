/* history.c: undo and redo over panels.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list of steps, each a panel with the name of the act that made it; `present` is an index into
 * it. The first step is the panel that undo cannot go behind.
 */
#include "panel/history.h"

typedef struct
{
  PpPanel *panel;
  char    *label;
  char    *merge_key;
} Step;

struct _PpHistory
{
  GPtrArray *steps;
  guint      present;
  gboolean   sealed;
};

static void
step_free (gpointer data)
{
  Step *step = data;

  pp_panel_unref (step->panel);
  g_free (step->label);
  g_free (step->merge_key);
  g_free (step);
}

static Step *
step_new (const PpPanel *panel,
          const char    *label,
          const char    *merge_key)
{
  Step *step = g_new0 (Step, 1);

  step->panel = pp_panel_ref (panel);
  step->label = g_strdup (label);
  step->merge_key = g_strdup (merge_key);
  return step;
}

static Step *
get_step (PpHistory *self,
          guint      index)
{
  return g_ptr_array_index (self->steps, index);
}

PpHistory *
pp_history_new (const PpPanel *panel)
{
  PpHistory *self = g_new0 (PpHistory, 1);

  self->steps = g_ptr_array_new_with_free_func (step_free);
  g_ptr_array_add (self->steps, step_new (panel, NULL, NULL));
  return self;
}

void
pp_history_free (PpHistory *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->steps);
  g_free (self);
}

const PpPanel *
pp_history_get_present (PpHistory *self)
{
  return get_step (self, self->present)->panel;
}

static gboolean
continues (PpHistory  *self,
           const char *merge_key)
{
  return merge_key != NULL && !self->sealed && self->present > 0
         && self->present + 1 == self->steps->len
         && g_strcmp0 (get_step (self, self->present)->merge_key, merge_key) == 0;
}

static void
forget_oldest (PpHistory *self)
{
  /* The first is no step but what undo goes back to. */
  while (self->steps->len > PP_HISTORY_MAX + 1)
    {
      g_ptr_array_remove_index (self->steps, 0);
      self->present--;
    }
}

void
pp_history_push (PpHistory     *self,
                 const PpPanel *panel,
                 const char    *label,
                 const char    *merge_key)
{
  Step *step;

  if (panel == pp_history_get_present (self))
    return;
  /* Before any step goes: one of those may hold the last reference to `panel`. */
  step = step_new (panel, label, merge_key);
  if (continues (self, merge_key))
    g_ptr_array_remove_index (self->steps, self->present--);
  g_ptr_array_set_size (self->steps, (int) self->present + 1);
  g_ptr_array_add (self->steps, step);
  self->present++;
  self->sealed = FALSE;
  forget_oldest (self);
}

void
pp_history_seal (PpHistory *self)
{
  self->sealed = TRUE;
}

void
pp_history_barrier (PpHistory     *self,
                    const PpPanel *panel)
{
  Step *step = step_new (panel, NULL, NULL);

  g_ptr_array_set_size (self->steps, 0);
  g_ptr_array_add (self->steps, step);
  self->present = 0;
  self->sealed = TRUE;
}

gboolean
pp_history_drop (PpHistory *self)
{
  if (!pp_history_undo (self))
    return FALSE;
  g_ptr_array_set_size (self->steps, (int) self->present + 1);
  return TRUE;
}

gboolean
pp_history_undo (PpHistory *self)
{
  if (self->present == 0)
    return FALSE;
  self->present--;
  self->sealed = TRUE;
  return TRUE;
}

gboolean
pp_history_redo (PpHistory *self)
{
  if (self->present + 1 == self->steps->len)
    return FALSE;
  self->present++;
  self->sealed = TRUE;
  return TRUE;
}

const char *
pp_history_get_undo (PpHistory *self)
{
  return self->present > 0 ? get_step (self, self->present)->label : NULL;
}

const char *
pp_history_get_redo (PpHistory *self)
{
  return self->present + 1 < self->steps->len ? get_step (self, self->present + 1)->label : NULL;
}
