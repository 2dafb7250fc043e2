/* reorder.c: another order of the steps of a plan.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/reorder.h"

static PpBar
ask_pair (const PpOrder  *order,
          guint           first,
          guint           second)
{
  g_autofree gboolean *follows = pp_order_find_followers (order, first);

  if (follows[second])
    return PP_BAR_RESTS;
  return order->stages[first] < order->stages[second] ? PP_BAR_STAGES : PP_BAR_NONE;
}

PpReorder
pp_reorder_ask (const PpPlan *plan,
                guint         from,
                guint         to)
{
  const PpReorder may = { PP_BAR_NONE, 0 };

  g_return_val_if_fail (plan != NULL && from < plan->n_steps && to < plan->n_steps, may);

  const guint job = plan->steps[from].job;

  for (guint at = from; at != to;)
    {
      at = to < from ? at - 1 : at + 1;

      const guint other = plan->steps[at].job;
      const PpBar bar = to < from ? ask_pair (plan->order, other, job)
                                  : ask_pair (plan->order, job, other);

      if (bar != PP_BAR_NONE)
        return (PpReorder) { bar, other };
    }
  return may;
}

static char *
dup_id (const PpPlan *plan,
        guint         step)
{
  return pp_job_dup_id (plan->check->panel, plan->order->n_knots, plan->steps[step].job);
}

/* The ids of its steps, as a set. (transfer full) */
static GHashTable *
list_steps (const PpPlan *plan)
{
  GHashTable *ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < plan->n_steps; i++)
    g_hash_table_add (ids, dup_id (plan, i));
  return ids;
}

char **
pp_reorder_jobs (const PpPlan  *plan,
                 const PpPanel *panel,
                 guint          from,
                 guint          to)
{
  g_return_val_if_fail (plan != NULL && panel != NULL, NULL);
  g_return_val_if_fail (plan->n_steps == 0 || (from < plan->n_steps && to < plan->n_steps), NULL);

  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  g_autoptr (GHashTable) steps = list_steps (plan);

  for (guint i = 0; panel->plan != NULL && panel->plan[i] != NULL; i++)
    if (!g_hash_table_contains (steps, panel->plan[i]))
      g_strv_builder_add (ids, panel->plan[i]);
  for (guint i = 0; i < plan->n_steps; i++)
    {
      guint step = i;

      if (i == to)
        step = from;
      else if (from < to && i >= from && i < to)
        step = i + 1;
      else if (to < from && i > to && i <= from)
        step = i - 1;

      g_autofree char *id = dup_id (plan, step);

      g_strv_builder_add (ids, id);
    }
  return g_strv_builder_end (ids);
}
