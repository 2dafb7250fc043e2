/* advise.c: a panel put right: what to move, what that costs, what it cures and what it leaves.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/advise.h"

#include "advise/guard.h"
#include "advise/search.h"

#define ONE_STEPS 600     /* of a search for one finding, where no steps are set */
#define ONE_PATIENCE 250  /* steps without anything cheaper */
#define ALL_STEPS 2000
#define ALL_PATIENCE 4000

static GPtrArray *
find_missing (const PpCheck *before,
              const PpCheck *after)
{
  GPtrArray *missing = g_ptr_array_new ();
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < after->findings->len; i++)
    g_hash_table_add (names, pp_finding_dup_name (g_ptr_array_index (after->findings, i)));
  for (guint i = 0; i < before->findings->len; i++)
    {
      PpFinding *finding = g_ptr_array_index (before->findings, i);
      g_autofree char *name = pp_finding_dup_name (finding);

      if (!finding->quiet && !g_hash_table_contains (names, name))
        g_ptr_array_add (missing, finding);
    }
  return missing;
}

static GPtrArray *
find_speaking (const PpCheck *check)
{
  GPtrArray *speaking = g_ptr_array_new ();

  for (guint i = 0; i < check->findings->len; i++)
    if (!((const PpFinding *) g_ptr_array_index (check->findings, i))->quiet)
      g_ptr_array_add (speaking, g_ptr_array_index (check->findings, i));
  return speaking;
}

PpAdvice *
pp_advice_new (const PpPanel *before,
               const PpPanel *after)
{
  PpAdvice *self = g_new0 (PpAdvice, 1);
  PpCheck *first, *second;
  g_autoptr (PpGuard) guard = NULL;

  g_return_val_if_fail (before != NULL && after != NULL, self);

  first = pp_check_new (before, NULL, NULL, NULL, NULL, NULL);
  second = pp_check_new (after, first, NULL, NULL, NULL, NULL);
  guard = pp_guard_new (first);
  self->panel = pp_panel_ref (after);
  self->changed = after != before;
  self->cost = pp_change_cost (before, after);
  self->before = pp_figures_of (first);
  self->after = pp_figures_of (second);
  self->changes = pp_changes_between (first->scene, second->scene, guard->placements);
  self->cured = find_missing (first, second);
  self->left = find_speaking (second);
  self->check_before = first;
  self->check_after = second;
  return self;
}

void
pp_advice_free (PpAdvice *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->changes, g_ptr_array_unref);
  g_clear_pointer (&self->cured, g_ptr_array_unref);
  g_clear_pointer (&self->left, g_ptr_array_unref);
  pp_check_unref (self->check_before);
  pp_check_unref (self->check_after);
  pp_panel_unref (self->panel);
  g_free (self);
}

static PpSearchLimits
with_steps (const PpSearchLimits *limits,
            guint64               steps)
{
  PpSearchLimits own = *limits;

  if (own.steps == 0 && own.seconds <= 0)
    own.steps = steps;
  return own;
}

/* Takes `found.panel`. */
static PpAdvice *
advice_from (const PpPanel        *given,
             PpBestPanel           found,
             const PpSearchLimits *limits)
{
  PpAdvice *self = pp_advice_new (given, found.panel);

  self->seed = limits->seed;
  self->steps = found.steps;
  pp_panel_unref (found.panel);
  return self;
}

PpAdvice *
pp_advise_all (const PpPanel        *panel,
               const PpSearchLimits *limits,
               GCancellable         *cancellable,
               PpAdviceFunc          progress,
               gpointer              data)
{
  PpSearchLimits own;
  g_autoptr (PpCheck) check = NULL;
  PpGoal goal;
  PpBestPanel found;

  g_return_val_if_fail (panel != NULL && limits != NULL, NULL);

  own = with_steps (limits, ALL_STEPS);
  check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  pp_goal_init (&goal, check, NULL);
  found = pp_search (&goal, check, &own, ALL_PATIENCE, cancellable, progress, data);
  pp_goal_clear (&goal);
  return advice_from (panel, found, limits);
}

static const PpFinding *
find_finding (const PpCheck      *check,
              const char         *code,
              const char * const *about)
{
  PpFinding wanted = { .code = code, .about = about };
  g_autofree char *name = pp_finding_dup_name (&wanted);

  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);
      g_autofree char *own = pp_finding_dup_name (finding);

      if (g_str_equal (own, name))
        return finding;
    }
  return NULL;
}

PpAdvice *
pp_advise_one (const PpPanel        *panel,
               const char           *code,
               const char * const   *about,
               const PpSearchLimits *limits,
               GCancellable         *cancellable,
               PpAdviceFunc          progress,
               gpointer              data)
{
  PpSearchLimits own;
  g_autoptr (PpCheck) check = NULL;
  const PpFinding *one;
  PpBestPanel found = { 0 };

  g_return_val_if_fail (panel != NULL && code != NULL && about != NULL && limits != NULL, NULL);

  own = with_steps (limits, ONE_STEPS);
  check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  one = find_finding (check, code, about);
  if (one != NULL)
    {
      PpGoal goal;

      pp_goal_init (&goal, check, one);
      found = pp_search (&goal, check, &own, ONE_PATIENCE, cancellable, progress, data);
      /* Half cured is not what was asked for. */
      if (!pp_rating_is_cured (&found.rating))
        g_clear_pointer (&found.panel, pp_panel_unref);
      pp_goal_clear (&goal);
    }
  if (found.panel == NULL)
    found.panel = pp_panel_ref (panel);
  return advice_from (panel, found, limits);
}
