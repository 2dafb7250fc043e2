/* bench-words.c: what stands on the screen at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/bench-words.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bead.h"
#include "sheet/words.h"

#include <math.h>

#define HAIR 0.01 /* s, by which a whole second may be missed in reckoning */

/* What is asked for on the way. */
typedef struct
{
  const PpBench *bench;
  const PpPlan  *plan;
  const PpPanel *panel;
  GDateTime     *now;
  PpSheetJob     job;
} Saying;

static char *
name_of_job (const PpPlan *plan,
             guint         job)
{
  PpSheetJob sheet_job = pp_words_get_job (plan);
  g_autoptr (PpJobWords) words = pp_job_words_new (&sheet_job, job);

  return g_strdup (words->name);
}

void
pp_bench_words_append (GString    *list,
                       const char *part)
{
  g_return_if_fail (list != NULL && part != NULL);

  if (list->len > 0)
    g_string_append (list, C_("between parts of a list", ", "));
  g_string_append (list, part);
}

char *
pp_bench_words_name (const PpPlan *plan,
                     const char   *job)
{
  g_return_val_if_fail (plan != NULL && job != NULL, NULL);

  for (guint i = 0; i < plan->order->n_jobs; i++)
    {
      g_autofree char *id = pp_job_dup_id (plan->check->panel, plan->order->n_knots, i);

      if (g_str_equal (id, job))
        return name_of_job (plan, i);
    }
  return g_strdup (job);
}

/* With its number on the sheets, as three poppies look alike: "3 Poppy". */
static char *
numbered_name (const PpPlan *plan,
               guint         job)
{
  g_autofree char *name = name_of_job (plan, job);

  for (guint i = 0; i < plan->n_steps; i++)
    if (plan->steps[i].job == job)
      return g_strdup_printf ("%u %s", i + 1, name);
  return g_steal_pointer (&name);
}

/* Rounded up: what is told to wait for is never short. */
static char *
format_left (double minutes)
{
  return pp_clock_format (ceil (fmax (minutes, 0) * 60 - HAIR) / 60);
}

static void
add_line (GString    *text,
          const char *line)
{
  if (text->len > 0)
    g_string_append_c (text, '\n');
  g_string_append (text, line);
}

static void
add_supports (GString      *text,
              const PpPlan *plan)
{
  PpSheetJob job = pp_words_get_job (plan);
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < plan->n_steps; i++)
    {
      g_autoptr (PpStepWords) step = pp_step_words_new (&job, i);
      g_autofree char *name = numbered_name (plan, plan->steps[i].job);

      if (*step->support != '\0')
        {
          g_autofree char *line = g_strdup_printf (_("%s (%s)"), name, step->support);

          pp_bench_words_append (list, line);
        }
    }
  if (list->len > 0)
    {
      g_autofree char *line = g_strdup_printf (_("Have ready: %s."), list->str);

      add_line (text, line);
    }
}

char *
pp_bench_words_before (const PpPlan  *plan,
                       const PpPanel *panel)
{
  GString *text = g_string_new (NULL);

  g_return_val_if_fail (plan != NULL && panel != NULL, g_string_free (text, FALSE));

  add_line (text, _("Clean the front of the glass and the back of each piece; let them dry."));
  add_line (text, _("Lay the pieces out in the order of their numbers."));
  add_supports (text, plan);
  add_line (text, _("Gloves on, window open. No epoxy on the skin: wash it off with soap and water "
                    "at once. A large mix runs hot: mix what is asked for, no more. Where the data "
                    "sheet says otherwise, it is right."));
  return g_string_free (text, FALSE);
}

static void
say_mix (PpBenchWords *self,
         const Saying *saying)
{
  const PpBench *bench = saying->bench;
  g_autofree char *a = pp_volume_format (bench->mix.a);
  g_autofree char *b = pp_volume_format (bench->mix.b);
  g_autofree char *bore = pp_length_format (PP_BEAD_BORE, saying->panel->units);
  g_autofree char *bead = pp_bead_format (bench->mix.a, bench->mix.b, saying->panel->units);
  g_autofree char *next = name_of_job (saying->plan, bench->step->job);
  g_autofree char *left = format_left (bench->wait);
  g_autofree char *wait = g_strdup_printf (_("Wait %s: what the next piece lies on is still being "
                                             "held."), left);
  GString *text = g_string_new (NULL);
  g_autofree char *first = g_strdup_printf (_("Without a syringe: beads of %s from a hole of %s."),
                                            bead, bore);
  g_autofree char *then = g_strdup_printf (_("Then comes: %s."), next);

  self->title = g_strdup_printf (_("Mix part A %s with part B %s"), a, b);
  if (bench->wait > 0)
    add_line (text, wait);
  add_line (text, first);
  add_line (text, then);
  if (bench->wait <= 0)
    add_line (text, _("Press when the two parts touch: that starts the clock."));
  self->lines = g_string_free (text, FALSE);
  self->waits = bench->wait > 0;
  self->action = g_strdup (_("They touch"));
  self->wait = g_strdup_printf (_("Wait %s"), left);
}

/* "2 dabs, prop 4.5 mm" */
static char *
say_needs (const Saying *saying)
{
  guint step = (guint) (saying->bench->step - saying->plan->steps);
  g_autoptr (PpStepWords) words = pp_step_words_new (&saying->job, step);

  return pp_step_needs_format (words);
}

static void
say_place (PpBenchWords *self,
           const Saying *saying)
{
  const PpBench *bench = saying->bench;
  g_autoptr (PpJobWords) words = pp_job_words_new (&saying->job, bench->step->job);
  g_autofree char *left = format_left (bench->wait);
  gboolean stirs = bench->age + bench->wait <= saying->panel->adhesive->mixing + HAIR / 60;

  self->title = g_strdup (words->act);
  self->needs = say_needs (saying);
  self->waits = bench->wait > 0;
  self->wait = stirs ? g_strdup_printf (_("Stir %s"), left) : g_strdup_printf (_("Wait %s"), left);
  self->action = g_strdup (bench->step->job < saying->plan->order->n_knots ? _("Tied")
                                                                           : _("Placed"));
}

static void
say_end (PpBenchWords *self,
         const Saying *saying)
{
  const PpBench *bench = saying->bench;
  GString *text = g_string_new (NULL);
  g_autofree char *still = format_left (bench->wait);
  g_autofree char *cured = pp_time_format (ceil (bench->cured));
  g_autofree char *flat = g_strdup_printf (_("Leave it flat and still for %s more."), still);
  g_autofree char *hang = g_strdup_printf (_("Hang it no sooner than in %s: until then the glue "
                                             "cures."), cured);

  self->title = g_strdup (_("All of it is glued"));
  if (bench->wait > 0)
    {
      add_line (text, flat);
      add_line (text, _("Take the props away and trim the rims before the glue is fully hard."));
    }
  else
    add_line (text, _("It may be moved now, with care."));
  if (bench->cured > 0)
    add_line (text, hang);
  else
    add_line (text, _("It may hang."));
  self->lines = g_string_free (text, FALSE);
  self->action = g_strdup (_("Leave the bench"));
}

static void
say_none (PpBenchWords *self,
          const Saying *saying)
{
  self->title = g_strdup (_("Working out what is left …"));
  self->lines = g_strdup ("");
  self->waits = TRUE;
  self->wait = g_strdup (_("One moment"));
}

static void
say_clock (PpBenchWords *self,
           const Saying *saying)
{
  const PpBench *bench = saying->bench;
  double life = saying->panel->adhesive->working_life;
  g_autofree char *whole = pp_clock_format (life);
  g_autofree char *left = NULL;

  if (!bench->is_open)
    {
      self->age = g_strdup ("");
      self->life = bench->next == PP_NEXT_NONE ? g_strdup ("") : g_strdup (_("no glue is mixed"));
      return;
    }
  left = format_left (bench->left);
  self->age = pp_clock_format (floor (bench->age * 60 + HAIR) / 60);
  self->share = CLAMP (bench->age / life, 0, 1);
  self->is_late = bench->left <= PP_BENCH_BELL;
  self->life = self->is_late ? g_strdup_printf (_("only %s left"), left)
                             : g_strdup_printf (_("of %s"), whole);
}

static void
add_held (GString      *text,
          const Saying *saying,
          guint         job)
{
  const PpAdhesive *glue = saying->panel->adhesive;
  double age = pp_bench_age_of (saying->plan, saying->panel, job, saying->now);
  g_autofree char *name = NULL;
  g_autofree char *left = NULL;
  g_autofree char *line = NULL;

  if (isnan (age) || age >= glue->grab || job < saying->plan->order->n_knots
      || !saying->plan->check->rests[job - saying->plan->order->n_knots]->hold)
    return;
  name = numbered_name (saying->plan, job);
  left = format_left (glue->grab - age);
  line = g_strdup_printf (_("%s: held for %s more."), name, left);
  add_line (text, line);
}

/* What came out at a rim can be cut off once the glue has grabbed and is not yet hard. */
static void
add_trims (GString      *text,
           const Saying *saying)
{
  const PpAdhesive *glue = saying->panel->adhesive;
  g_autoptr (GString) names = g_string_new (NULL);
  g_autofree char *line = NULL;
  guint n = 0;

  for (guint job = saying->plan->order->n_knots; job < saying->plan->order->n_jobs; job++)
    {
      double age = pp_bench_age_of (saying->plan, saying->panel, job, saying->now);
      g_autofree char *name = NULL;

      if (isnan (age) || age < glue->grab || age >= glue->hard || ++n > 3)
        continue;
      name = numbered_name (saying->plan, job);
      pp_bench_words_append (names, name);
    }
  if (n == 0)
    return;
  if (n > 3)
    line = g_strdup_printf (_("The rims can be trimmed: %s and %u more."), names->str, n - 3);
  else
    line = g_strdup_printf (_("The rims can be trimmed: %s."), names->str);
  add_line (text, line);
}

static char *
say_meanwhile (const Saying *saying)
{
  GString *text = g_string_new (NULL);

  for (guint job = 0; job < saying->plan->order->n_jobs; job++)
    add_held (text, saying, job);
  add_trims (text, saying);
  return g_string_free (text, FALSE);
}

static char *
say_count (const Saying *saying)
{
  if (saying->bench->step == NULL)
    return g_strdup ("");
  return g_strdup_printf (_("Step %u of %u"),
                          (guint) (saying->bench->step - saying->plan->steps) + 1,
                          saying->plan->n_steps);
}

PpBenchWords *
pp_bench_words_new (const PpBench *bench,
                    const PpPlan  *plan,
                    const PpPanel *panel,
                    GDateTime     *now)
{
  static void (* const says[]) (PpBenchWords *, const Saying *) = {
    [PP_NEXT_PLAN] = say_none,
    [PP_NEXT_MIX] = say_mix,
    [PP_NEXT_PLACE] = say_place,
    [PP_NEXT_NONE] = say_end,
  };
  PpBenchWords *self;

  g_return_val_if_fail (bench != NULL && plan != NULL && panel != NULL && now != NULL, NULL);

  const Saying saying = { bench, plan, panel, now, pp_words_get_job (plan) };

  self = g_new0 (PpBenchWords, 1);
  self->next = bench->next;
  says[bench->next] (self, &saying);
  say_clock (self, &saying);
  self->count = say_count (&saying);
  self->meanwhile = bench->next != PP_NEXT_PLAN ? say_meanwhile (&saying) : g_strdup ("");
  if (self->lines == NULL)
    self->lines = g_strdup ("");
  if (self->needs == NULL)
    self->needs = g_strdup ("");
  return self;
}

void
pp_bench_words_free (PpBenchWords *self)
{
  g_free (self->count);
  g_free (self->title);
  g_free (self->lines);
  g_free (self->needs);
  g_free (self->action);
  g_free (self->wait);
  g_free (self->age);
  g_free (self->life);
  g_free (self->meanwhile);
  g_free (self);
}
