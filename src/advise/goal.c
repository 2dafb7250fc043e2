/* goal.c: when one panel is better than another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/goal.h"

#include "advise/change.h"
#include "advise/curable-private.h"
#include "advise/weight.h"
#include "glue/job.h"
#include "glue/schedule.h"

#define EXPOSED_STEPS 10  /* a mm */
#define WORST_STEPS 100

/* The glue plan's one fault, as it is said: a job that no mix can take. */
static gboolean
is_mix_too_small (const PpCheck *check)
{
  const PpAdhesive *adhesive = check->panel->adhesive;
  const PpProblem mix = { .mixing = adhesive->mixing,
                          .life = adhesive->working_life,
                          .largest = adhesive->largest_mix };
  g_autofree PpJob *jobs = pp_jobs_new (check);

  for (guint i = 0; i < check->scene->n_knots + check->n; i++)
    {
      const PpTask task = { .minutes = jobs[i].minutes, .volume = jobs[i].volume };

      if (!jobs[i].done && !pp_task_fits (&task, &mix))
        return TRUE;
    }
  return FALSE;
}

void
pp_goal_init (PpGoal          *self,
              const PpCheck   *given,
              const PpFinding *one)
{
  *self = (PpGoal) { .given = given->panel, .one = one };
  if (one == NULL)
    return;
  self->known = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < given->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (given->findings, i);

      if (finding->level <= one->level)
        g_hash_table_insert (self->known, pp_finding_dup_name (finding),
                             GUINT_TO_POINTER (finding->level + 1));
    }
  self->was_mix_small = is_mix_too_small (given);
}

void
pp_goal_clear (PpGoal *self)
{
  g_clear_pointer (&self->known, g_hash_table_unref);
}

PpFigures
pp_figures_of (const PpCheck *check)
{
  PpFigures figures = { .faults = pp_check_count (check, PP_LEVEL_FAULT) + is_mix_too_small (check),
                        .cautions = pp_check_count (check, PP_LEVEL_CAUTION) };

  if (check->conceal != NULL && check->conceal->has_wire)
    {
      figures.exposed = pp_path_get_exposed (&check->conceal->hung);
      figures.worst = 1 - check->conceal->worst.share;
    }
  return figures;
}

static gboolean
is_same_finding (const PpFinding *a,
                 const PpFinding *b)
{
  g_autofree char *one = pp_finding_dup_name (a);
  g_autofree char *other = pp_finding_dup_name (b);

  return g_str_equal (one, other);
}

static gboolean
is_new (const PpGoal    *self,
        const PpFinding *finding)
{
  g_autofree char *name = NULL;
  guint known;

  if (finding->level > self->one->level || finding->quiet)
    return FALSE;
  name = pp_finding_dup_name (finding);
  known = GPOINTER_TO_UINT (g_hash_table_lookup (self->known, name));
  return known == 0 || finding->level + 1 < known;
}

gboolean
pp_goal_minds (const PpGoal    *self,
               const PpFinding *finding)
{
  if (self->one != NULL)
    return is_same_finding (finding, self->one) || is_new (self, finding);
  if (finding->quiet)
    return FALSE;
  return finding->level != PP_LEVEL_NOTE || g_str_equal (finding->code, "shows-aslant");
}

/* How far a finding is from its limit, 0 to 1, where it has figures. */
static double
grade (const PpFinding *finding)
{
  double scale = fmax (fabs (finding->limit), 1);

  if (isnan (finding->value) || isnan (finding->limit))
    return 0.5;
  return fmin (fabs (finding->value - finding->limit) / scale, 1);
}

static gboolean
is_of_sight (const PpFinding *finding)
{
  return pp_probes_of (finding->code) != 0;
}

/* What is hidden, summed as the glance estimates it. */
static double
weigh_sight (const PpCheck *check)
{
  const PpConceal *conceal = check->conceal;
  double sum = 0;

  if (conceal == NULL)
    return 0;
  if (conceal->has_wire)
    sum = pp_weigh_wire (check->panel, pp_path_get_exposed (&conceal->hung), conceal->barely,
                         1 - conceal->worst.share);
  for (guint i = 0; i < check->panel->holes->len; i++)
    {
      const char *hole = pp_panel_hole (check->panel, i)->id;
      const PpWire *wire = check->panel->wire;

      if (pp_wire_ends_in (wire, hole))
        {
          guint knot = g_str_equal (hole, wire->from) ? 0 : 1;

          sum += pp_weigh_disc (check->panel, i, conceal->knots[knot].share,
                                conceal->knots[knot].barely);
        }
      else
        sum += pp_weigh_disc (check->panel, i, conceal->holes[i].share, 1);
    }
  return sum;
}

static double
weigh_finding (const PpFinding *finding)
{
  double weight = finding->level == PP_LEVEL_FAULT ? PP_WEIGHT_FAULT : PP_WEIGHT_CAUTION;

  return weight * (1 + grade (finding));
}

/* All that the goal minds; sight by its figures, unless it is about one finding of another kind. */
static double
weigh (const PpGoal  *self,
       const PpCheck *check)
{
  gboolean by_figures = self->one == NULL || is_of_sight (self->one);
  double sum = by_figures ? weigh_sight (check) : 0;

  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (!pp_goal_minds (self, finding))
        continue;
      if (self->one != NULL)
        sum += PP_WEIGHT_FAULT * (1 + grade (finding));
      else if (!is_of_sight (finding))
        sum += weigh_finding (finding);
    }
  return sum;
}

static void
fill_keys_of_one (const PpGoal  *self,
                  const PpCheck *check,
                  double        *keys)
{
  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (is_same_finding (finding, self->one))
        keys[0] = 1;
      else if (is_new (self, finding))
        keys[1]++;
    }
  if (!self->was_mix_small && is_mix_too_small (check))
    keys[1]++;
}

static guint
count_added (const PpPanel *given,
             const PpPanel *panel)
{
  guint n = 0;

  for (guint i = 0; i < panel->placements->len; i++)
    n += pp_panel_find_placement (given, pp_panel_placement (panel, i)->id, NULL) == NULL;
  return n;
}

PpRating
pp_goal_rate (const PpGoal  *self,
              const PpCheck *check)
{
  PpRating rating = { .figures = pp_figures_of (check),
                      .cost = pp_change_cost (self->given, check->panel) };

  if (self->one != NULL)
    fill_keys_of_one (self, check, rating.keys);
  else
    {
      rating.keys[0] = rating.figures.faults;
      rating.keys[1] = round (rating.figures.exposed * EXPOSED_STEPS);
      rating.keys[2] = round (rating.figures.worst * WORST_STEPS);
      rating.keys[3] = rating.figures.cautions;
    }
  rating.keys[PP_N_KEYS - 1] = rating.cost;
  rating.energy = weigh (self, check) + PP_WEIGHT_COST * rating.cost
                  + PP_WEIGHT_ADDED * count_added (self->given, check->panel);
  return rating;
}

gboolean
pp_rating_is_less (const PpRating *a,
                   const PpRating *b)
{
  for (guint k = 0; k < PP_N_KEYS; k++)
    if (fabs (a->keys[k] - b->keys[k]) > PP_TIE)
      return a->keys[k] < b->keys[k];
  return FALSE;
}

gboolean
pp_rating_is_cured (const PpRating *self)
{
  for (guint k = 0; k + 1 < PP_N_KEYS; k++)
    if (self->keys[k] > 0)
      return FALSE;
  return TRUE;
}
