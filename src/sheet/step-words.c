/* step-words.c: what is done in a step of the glue plan, in the maker's words and unit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"
#include "sheet/words.h"

#include <math.h>

#define NO_BREAK_SPACE "\302\240"

static const PpMix *
mix_of (const PpPlan *plan,
        const PpStep *step)
{
  return &plan->mixes[step->mix - 1];
}

double
pp_sitting_start (const PpPlan *plan,
                  guint         sitting)
{
  for (guint i = 0; i < plan->n_steps; i++)
    if (plan->steps[i].sitting == sitting)
      return mix_of (plan, &plan->steps[i])->start;
  return 0;
}

/* When the hands are free for this step: the mix is mixed and the step before it is done. */
static double
get_free_from (const PpPlan *plan,
               guint         index)
{
  const PpStep *step = &plan->steps[index];
  double mixed = mix_of (plan, step)->start + plan->check->panel->adhesive->mixing;

  if (index == 0)
    return mixed;
  return fmax (mixed, plan->steps[index - 1].start + plan->steps[index - 1].minutes);
}

/* Whether nothing is placed or mixed from the end of this step until its piece has grabbed, so
 * that it can be held by hand. */
static gboolean
hands_stay_free (const PpPlan *plan,
                 guint         index)
{
  const PpStep *step = &plan->steps[index];
  double end = step->start + step->minutes;
  double grabbed = end + plan->check->panel->adhesive->grab;

  if (index + 1 < plan->n_steps && plan->steps[index + 1].start < grabbed - PP_TIE)
    return FALSE;
  for (guint m = 0; m < plan->n_mixes; m++)
    if (plan->mixes[m].start > end - PP_TIE && plan->mixes[m].start < grabbed - PP_TIE)
      return FALSE;
  return TRUE;
}

/* "hold to 13:15", or "leave it to 13:15" where the hands have other work. */
static char *
until_grabbed (const PpPlan *plan,
               guint         index)
{
  const PpStep *step = &plan->steps[index];
  double zero = pp_sitting_start (plan, step->sitting);
  g_autofree char *end = pp_clock_format (step->start + step->minutes - zero
                                          + plan->check->panel->adhesive->grab);

  if (hands_stay_free (plan, index))
    return g_strdup_printf (_("hold to %s"), end);
  return g_strdup_printf (_("leave it to %s"), end);
}

static char *
clock_of (const PpPlan *plan,
          guint         index)
{
  const PpStep *step = &plan->steps[index];
  double zero = pp_sitting_start (plan, step->sitting);
  g_autofree char *start = pp_clock_format (step->start - zero);
  g_autofree char *until = step->hold ? until_grabbed (plan, index) : NULL;
  gboolean waits = step->start > get_free_from (plan, index) + PP_TIE;

  if (waits && step->hold)
    return g_strdup_printf (_("wait for %s\n%s"), start, until);
  if (waits)
    return g_strdup_printf (_("wait for %s"), start);
  if (step->hold)
    return g_strdup_printf ("%s\n%s", start, until);
  return g_steal_pointer (&start);
}

/* A figure is not parted from its unit at the end of a line. */
static char *
unbroken_length (double  mm,
                 PpUnits units)
{
  g_autofree char *length = pp_length_format (mm, units);
  g_auto (GStrv) words = g_strsplit (length, " ", -1);

  return g_strjoinv (NO_BREAK_SPACE, words);
}

static char *
support_of (const PpSheetJob *job,
            guint             step,
            const PpRest     *rest)
{
  gboolean by_hand = hands_stay_free (job->plan, step);
  g_autofree char *height = NULL;

  if (rest->state == PP_STATE_FLOATS)
    return g_strdup (_("nothing under it"));
  if (!rest->hold)
    return g_strdup ("");
  if (!rest->has_prop || rest->prop_height < PP_LEAST_PROP)
    return g_strdup (by_hand ? _("hold or weight") : _("weight or tape"));
  height = unbroken_length (rest->prop_height, job->units);
  if (rest->state == PP_STATE_TIPS || !by_hand)
    return g_strdup_printf (_("prop %s"), height);
  return g_strdup_printf (_("hold, or prop %s"), height);
}

static char *
sentence_of (const PpStepWords *self,
             const PpJobWords  *words,
             guint              number)
{
  g_autofree char *clock = g_strdelimit (g_strdup (self->clock), "\n", ' ');
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, _("%u. %s: %s."), number, words->act, words->place);
  if (*words->turn != '\0')
    g_string_append_printf (text, _(" It points to %s on a clock face."), words->turn);
  if (*self->dabs != '\0')
    g_string_append_printf (text, _(" Dabs of glue: %s."), self->dabs);
  if (*self->support != '\0')
    g_string_append_printf (text, _(" It needs: %s."), self->support);
  g_string_append_printf (text, _(" Clock: %s."), clock);
  return g_string_free (text, FALSE);
}

PpSheetJob
pp_words_get_job (const PpPlan *plan)
{
  return (PpSheetJob) { .check = plan->check, .plan = plan, .units = plan->check->panel->units };
}

PpStepWords *
pp_step_words_new (const PpSheetJob *job,
                   guint             step)
{
  const PpPlan *plan = job->plan;
  guint n_knots = job->check->scene->n_knots;
  guint index = plan->steps[step].job;
  PpStepWords *self = g_new0 (PpStepWords, 1);
  g_autoptr (PpJobWords) words = pp_job_words_new (job, index);

  self->clock = clock_of (plan, step);
  if (index < n_knots)
    {
      self->dabs = g_strdup ("");
      self->support = g_strdup ("");
    }
  else
    {
      self->n_dabs = job->check->joints[index - n_knots]->n_dabs;
      self->dabs = g_strdup_printf ("%u", self->n_dabs);
      self->support = support_of (job, step, job->check->rests[index - n_knots]);
    }
  self->sentence = sentence_of (self, words, step + 1);
  return self;
}

void
pp_step_words_free (PpStepWords *self)
{
  if (self == NULL)
    return;
  g_free (self->dabs);
  g_free (self->support);
  g_free (self->clock);
  g_free (self->sentence);
  g_free (self);
}

char *
pp_step_needs_format (const PpStepWords *step)
{
  g_autofree char *dabs = NULL;

  if (step->n_dabs == 0)
    return g_strdup (step->support);
  dabs = g_strdup_printf (ngettext ("%u dab", "%u dabs", step->n_dabs), step->n_dabs);
  if (*step->support == '\0')
    return g_steal_pointer (&dabs);
  return g_strconcat (dabs, C_("between parts of a list", ", "), step->support, NULL);
}

char *
pp_step_act_format (const PpJobWords  *words,
                    const PpStepWords *step)
{
  GString *text = g_string_new (words->act);

  if (step->n_dabs > 0)
    g_string_append_printf (text, ngettext ("\n%u dab", "\n%u dabs", step->n_dabs), step->n_dabs);
  if (*step->support != '\0')
    g_string_append_printf (text, "\n%s", step->support);
  g_string_append_printf (text, "\n%s", step->clock);
  return g_string_free (text, FALSE);
}

char *
pp_words_format_plan (const PpPlan *plan)
{
  g_autofree char *time = pp_time_format (plan->placed_by);
  g_autofree char *steps = g_strdup_printf (ngettext ("%u step", "%u steps", plan->n_steps),
                                            plan->n_steps);
  g_autofree char *mixes = g_strdup_printf (ngettext ("%u mix", "%u mixes", plan->n_mixes),
                                            plan->n_mixes);

  /* Translators: steps, mixes and a time: "21 steps, 6 mixes, about 30 min". */
  return g_strdup_printf (_("%s, %s, about %s"), steps, mixes, time);
}

const char *
pp_no_order_words (const PpSheetJob *job)
{
  if (job->check->n == 0)
    return _("Nothing lies on the glass yet. Lay out some pieces, then print their glue order.");
  if (job->plan != NULL && job->plan->exists)
    return _("All that lies on this glass is glued already.");
  if (job->plan != NULL && job->plan->findings->len > 0)
    return ((const PpFinding *) g_ptr_array_index (job->plan->findings, 0))->text;
  return _("There is no glue order yet.");
}
