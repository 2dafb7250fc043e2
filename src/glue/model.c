/* model.c: a line of jobs in whole numbers and rows of bits.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two jobs that take the same minutes and glue are interchangeable if what must go before the first
 * must go before the second too, and what must follow the second must follow the first: changing
 * places never makes a schedule invalid or longer. The one farther away then always goes first,
 * which no pair regrets either (neither of them tucks). Each change of places brings a schedule
 * nearer to the line's order, so all these rules hold at once, and among many like pieces one order
 * is left to try.
 */
#include "glue/model.h"

#include "panel/tolerance.h"

#include <math.h>

/* min, ml: sums of 2000 jobs with their mixing and waits stay below 2^63 ticks. */
#define MOST 1e6

static guint64 *
get_row (guint64       *rows,
         const PpModel *self,
         guint          job)
{
  return rows + (gsize) job * self->n_words;
}

static gint64
ticks (double value)
{
  return llrint (value * PP_TICKS);
}

static gboolean
can_hold (const PpLine *line)
{
  const PpProblem *problem = line->problem;

  if (problem->mixing > MOST)
    return FALSE;
  for (guint k = 0; k < line->n; k++)
    if (line->tasks[k]->minutes > MOST || line->tasks[k]->volume > MOST)
      return FALSE;
  for (guint i = 0; i < problem->n_links; i++)
    if (problem->links[i].lag > MOST)
      return FALSE;

  return TRUE;
}

/* No mix is under way for longer: every job, each after its longest wait. min */
static double
get_longest_window (const PpLine *line)
{
  double minutes = 0, lag = 0;

  for (guint k = 0; k < line->n; k++)
    minutes += line->tasks[k]->minutes;
  for (guint i = 0; i < line->problem->n_links; i++)
    lag = fmax (lag, line->problem->links[i].lag);

  return minutes + line->n * (line->problem->mixing + lag);
}

/* No mix takes more. ml */
static double
get_all_volumes (const PpLine *line)
{
  double volume = 0;

  for (guint k = 0; k < line->n; k++)
    volume += line->tasks[k]->volume;

  return volume;
}

/* Whether the thirstiest jobs together, for as long as a mix lasts, are too much for it. */
static gboolean
may_run_dry (const PpLine *line)
{
  const double window = line->problem->life - line->problem->mixing + PP_TIE;
  g_autofree gboolean *used = g_new0 (gboolean, line->n);
  double minutes = 0;
  double volume = 0;

  for (;;)
    {
      const PpTask *thirsty = NULL;
      guint which = 0;

      for (guint k = 0; k < line->n; k++)
        if (!used[k] && (thirsty == NULL || line->tasks[k]->volume * thirsty->minutes
                                            > thirsty->volume * line->tasks[k]->minutes))
          thirsty = line->tasks[which = k];
      if (thirsty == NULL || minutes >= window)
        return FALSE;
      used[which] = TRUE;
      minutes += thirsty->minutes;
      volume += thirsty->volume;
      if (volume > line->problem->largest)
        return TRUE;
    }
}

static void
set_jobs (PpModel *self)
{
  const gboolean is_dry = may_run_dry (self->line);

  for (guint k = 0; k < self->n; k++)
    {
      self->minutes[k] = ticks (self->line->tasks[k]->minutes);
      self->volumes[k] = is_dry ? ticks (self->line->tasks[k]->volume) : 0;
      self->tails[k] = ticks (self->bound->tails[k]);
      /* Any numbers far apart; not random, so that every run is the same. */
      self->keys[k] = (guint32) ((k + 1) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) >> 29);
      if (self->bound->waits[k])
        self->critical[self->n_critical++] = k;
      for (guint a = 0; a < k; a++)
        if (pp_line_must_precede (self->line, a, k))
          pp_set_add (get_row (self->before, self, k), a);
    }
}

static guint
take_source (PpModel *self,
             guint    job)
{
  if (self->source_of[job] == G_MAXUINT)
    {
      self->source_of[job] = self->n_sources;
      self->sources[self->n_sources++] = (PpSource) {
        .job = job, .followers = g_new0 (guint64, self->n_words),
      };
    }

  return self->source_of[job];
}

static void
set_waits (PpModel *self)
{
  const PpLine *line = self->line;

  for (guint k = 0; k < self->n; k++)
    self->source_of[k] = G_MAXUINT;
  for (guint k = 0; k < self->n; k++)
    {
      self->offsets[k + 1] = self->offsets[k];
      for (guint at = line->offsets[k]; at < line->offsets[k + 1]; at++)
        if (line->lags[at] > 0)
          {
            const guint number = take_source (self, line->before[at]);
            const gint64 lag = ticks (line->lags[at]);
            PpSource *source = &self->sources[number];

            self->waits[self->offsets[k + 1]++] = (PpWait) { number, lag };
            source->longest = MAX (source->longest, lag);
            pp_set_add (source->followers, k);
          }
    }
}

/* Pairs that tuck: a set a job of those better done before it. */
static guint64 *
find_tucks (const PpModel *self)
{
  const PpProblem *problem = self->line->problem;
  guint64 *tucks = g_new0 (guint64, (gsize) self->n_words * self->n);
  g_autofree guint *position = g_new (guint, self->n);

  for (guint k = 0; k < self->n; k++)
    position[pp_line_get_task (self->line, k)] = k;
  for (guint i = 0; i < problem->n_tucks; i++)
    pp_set_add (get_row (tucks, self, position[problem->tucks[i].upper]),
                position[problem->tucks[i].lower]);

  return tucks;
}

/* Whether doing `a` before `b` is against far-to-near or a tuck. */
static gboolean
is_against (const PpModel *self,
            guint64       *tucks,
            guint          a,
            guint          b)
{
  const PpTask *one = self->line->tasks[a];
  const PpTask *other = self->line->tasks[b];

  return (one->stage == other->stage && one->depth > other->depth + PP_TIE)
         || pp_set_has (get_row (tucks, self, a), b);
}

/* What is against the wish either way costs the same in any order and is left out. */
static void
set_wishes (PpModel *self,
            guint64 *tucks)
{
  for (guint b = 1; b < self->n; b++)
    for (guint a = 0; a < b; a++)
      if (!pp_set_has (get_row (self->before, self, b), a))
        {
          const gboolean forward = is_against (self, tucks, a, b);
          const gboolean backward = is_against (self, tucks, b, a);

          if (forward && !backward)
            pp_set_add (get_row (self->against, self, a), b);
          else if (backward && !forward)
            pp_set_add (get_row (self->against, self, b), a);
        }
}

/* Links of each job to jobs on one side of it. */
typedef struct
{
  guint  *offsets;
  guint  *others;
  double *lags;
} Links;

static void
links_clear (Links *self)
{
  g_free (self->offsets);
  g_free (self->others);
  g_free (self->lags);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Links, links_clear)

/* The line has those into each job. */
static void
find_links_out (const PpLine *line,
                Links        *out)
{
  const guint n_links = line->offsets[line->n];
  g_autofree guint *filled = g_new0 (guint, line->n + 1);

  out->offsets = g_new0 (guint, line->n + 1);
  out->others = g_new (guint, n_links);
  out->lags = g_new (double, n_links);
  for (guint at = 0; at < n_links; at++)
    out->offsets[line->before[at] + 1]++;
  for (guint k = 0; k < line->n; k++)
    out->offsets[k + 1] += out->offsets[k];
  for (guint k = 0; k < line->n; k++)
    for (guint at = line->offsets[k]; at < line->offsets[k + 1]; at++)
      {
        const guint first = line->before[at];
        const guint to = out->offsets[first] + filled[first]++;

        out->others[to] = k;
        out->lags[to] = line->lags[at];
      }
}

/* Whether job `b` has every link that job `a` has, none of them shorter. */
static gboolean
has_links_of (const Links *links,
              guint        a,
              guint        b)
{
  for (guint i = links->offsets[a]; i < links->offsets[a + 1]; i++)
    {
      gboolean found = FALSE;

      for (guint j = links->offsets[b]; j < links->offsets[b + 1] && !found; j++)
        found = links->others[j] == links->others[i] && links->lags[j] >= links->lags[i];
      if (!found)
        return FALSE;
    }

  return TRUE;
}

/* Whether `b` may always be left until `a` < `b` is done. */
static gboolean
can_wait_for (const PpModel *self,
              const Links   *in,
              const Links   *out,
              guint          a,
              guint          b)
{
  const PpTask *one = self->line->tasks[a];
  const PpTask *other = self->line->tasks[b];

  return one->stage == other->stage && one->rank == PP_NO_RANK && other->rank == PP_NO_RANK
         && self->minutes[a] == self->minutes[b] && self->volumes[a] == self->volumes[b]
         && one->depth <= other->depth && has_links_of (in, a, b) && has_links_of (out, b, a);
}

static void
set_interchangeable (PpModel *self)
{
  const PpLine *line = self->line;
  const PpProblem *problem = line->problem;
  const Links in = { line->offsets, line->before, line->lags };
  g_auto (Links) out = { NULL, NULL, NULL };
  g_autofree gboolean *tucks = g_new0 (gboolean, self->n);

  find_links_out (line, &out);
  for (guint i = 0; i < problem->n_tucks; i++)
    tucks[problem->tucks[i].lower] = tucks[problem->tucks[i].upper] = TRUE;

  for (guint b = 1; b < self->n; b++)
    for (guint a = 0; a < b; a++)
      if (!tucks[pp_line_get_task (line, a)] && !tucks[pp_line_get_task (line, b)]
          && !pp_set_has (get_row (self->before, self, b), a)
          && can_wait_for (self, &in, &out, a, b))
        pp_set_add (get_row (self->before, self, b), a);
}

PpModel *
pp_model_new (const PpLine  *line,
              const PpBound *bound)
{
  if (!can_hold (line))
    return NULL;

  const PpProblem *problem = line->problem;
  PpModel *self = g_new0 (PpModel, 1);

  self->line = line;
  self->bound = bound;
  self->n = line->n;
  self->n_words = pp_set_count_words (line->n);
  self->mixing = ticks (problem->mixing);
  self->window = ticks (fmin (problem->life - problem->mixing, get_longest_window (line)));
  self->tie = ticks (PP_TIE);
  self->largest = ticks (fmin (problem->largest, get_all_volumes (line)));
  self->minutes = g_new (gint64, self->n);
  self->volumes = g_new (gint64, self->n);
  self->tails = g_new (gint64, self->n);
  self->before = g_new0 (guint64, (gsize) self->n * self->n_words);
  self->against = g_new0 (guint64, (gsize) self->n * self->n_words);
  self->offsets = g_new0 (guint, self->n + 1);
  self->waits = g_new (PpWait, problem->n_links);
  self->sources = g_new (PpSource, self->n);
  self->source_of = g_new (guint, self->n);
  self->critical = g_new (guint, self->n);
  self->keys = g_new (guint32, self->n);
  set_jobs (self);
  set_waits (self);

  g_autofree guint64 *tucks = find_tucks (self);

  set_wishes (self, tucks);
  set_interchangeable (self);

  return self;
}

void
pp_model_free (PpModel *self)
{
  if (self == NULL)
    return;

  for (guint i = 0; i < self->n_sources; i++)
    g_free (self->sources[i].followers);
  g_free (self->minutes);
  g_free (self->volumes);
  g_free (self->tails);
  g_free (self->before);
  g_free (self->against);
  g_free (self->offsets);
  g_free (self->waits);
  g_free (self->sources);
  g_free (self->source_of);
  g_free (self->critical);
  g_free (self->keys);
  g_free (self);
}

guint
pp_model_count_against (const PpModel *self,
                        const guint   *sequence)
{
  guint n = 0;

  for (guint b = 1; b < self->n; b++)
    for (guint a = 0; a < b; a++)
      n += pp_set_has (self->against + (gsize) sequence[a] * self->n_words, sequence[b]);

  return n;
}
