/* search.c: does jobs one by one in every order that may be worth it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pass goes from labels with k jobs done to those with k + 1. Left out is what cannot lead to
 * anything better than the best known, by its bounds, and what another label with the same jobs
 * done makes needless (label.h). If more are left than a pass is wide, it keeps those that look
 * best (layer.h: the labels of one depth); a pass that never had to do so proves that nothing is
 * better than the best known. Passes grow wider until one proves it or the steps are used up. So
 * small problems are solved exactly, large ones well, by the same few rules.
 *
 * Passes take turns. Those for ends leave pairs out of account, which leaves far fewer labels and
 * soon proves end and mixes; those for pairs then know how good these can be.
 *
 * A new mix while the open one reaches is tried only where the job has to wait, or makes the mix
 * begin later: otherwise doing it from the open mix and mixing after it is never worse.
 */
#include "glue/search.h"

#include "glue/layer.h"

#include <math.h>

#define FIRST_WIDTH 16
#define WIDEN 4
/* When the steps are used up, to bring a pass to its end. */
#define DIVE_WIDTH 4
#define DIVE_JOBS 8
/* Jobs tried next after each label, of problems larger than MANY. */
#define MANY 64
#define MOST_JOBS 24
/* A layer may grow to so many widths before it is narrowed in between. */
#define SLACK 4
#define MOST_BYTES (96 * 1024 * 1024)

/* How often to look whether to stop and to report: steps. */
#define REPORT_EVERY 4096

/* The last job of a way and where the way before it stands. */
typedef struct
{
  guint    parent;
  guint    job;
  gboolean is_new;
} Mark;

typedef struct
{
  const PpModel  *model;
  guint64         max_steps;
  GCancellable   *enough;
  GCancellable   *cancellable;
  PpScheduleFunc  progress;
  gpointer        data;
  guint64         steps;
  guint64         next_report;
  gboolean        is_stopped;
  PpLayer        *layers[2];
  PpLabel        *child;     /* work sheet */
  GArray         *marks;     /* Mark, of the pass */
  PpRank          rank;
  guint           width;
  gboolean        narrowed;  /* the pass left out what may be better */
  /* The best known. */
  guint          *sequence;
  gboolean       *is_new;
  gint64          end;
  guint           n_mixes;
  guint           against;
  /* Nothing is better than these. */
  gint64          floor_end;
  guint           floor_mixes;
} Search;

static gboolean
has_time (Search *search)
{
  if (search->steps < search->next_report)
    return !search->is_stopped;

  search->next_report = search->steps + REPORT_EVERY;
  search->is_stopped = g_cancellable_is_cancelled (search->enough)
                       || g_cancellable_is_cancelled (search->cancellable);
  if (search->progress != NULL)
    search->progress (fmin ((double) search->steps / (double) search->max_steps, 1), search->data);

  return !search->is_stopped;
}

/* Whether what these bounds allow is better than the best known. */
static gboolean
may_be_better (const Search *search,
               gint64        end,
               guint         n_mixes,
               guint         against)
{
  const gint64 tie = search->model->tie;

  end = MAX (end, search->floor_end);
  n_mixes = MAX (n_mixes, search->floor_mixes);
  if (end < search->end - tie || end > search->end + tie)
    return end < search->end;
  if (n_mixes != search->n_mixes)
    return n_mixes < search->n_mixes;

  return search->rank == PP_RANK_PAIRS && against < search->against;
}

static void
consider (Search  *search,
          PpLayer *next,
          guint    parent)
{
  PpLabel *child = search->child;

  if (!may_be_better (search, child->bound_end, child->bound_mixes, child->against))
    return;

  child->parent = parent;
  child->stamp = search->steps;
  pp_layer_add (next, child);
  if (pp_layer_count (next) > SLACK * search->width)
    search->narrowed |= pp_layer_narrow (next, search->width);
}

static void
try_job (Search        *search,
         const PpLabel *label,
         guint          job,
         guint          mark,
         PpLayer       *next)
{
  search->steps++;
  if (pp_label_follow (label, search->model, job, FALSE, search->child))
    {
      const gboolean waited = search->child->waited;

      consider (search, next, mark);
      if (!waited)
        return;
    }
  search->steps++;
  pp_label_follow (label, search->model, job, TRUE, search->child);
  consider (search, next, mark);
}

static void
follow (Search        *search,
        const PpLabel *label,
        PpLayer       *next)
{
  const gboolean is_late = search->steps >= search->max_steps;
  const guint most = is_late ? DIVE_JOBS : search->model->n > MANY ? MOST_JOBS : G_MAXUINT;
  const Mark mark = { label->parent, label->job, label->is_new };
  guint n = 0;

  g_array_append_val (search->marks, mark);
  for (guint job = 0; job < search->model->n; job++)
    {
      if (!pp_label_may_follow (label, search->model, job))
        continue;
      if (++n > most)
        {
          search->narrowed = TRUE;
          return;
        }
      try_job (search, label, job, search->marks->len - 1, next);
    }
}

/* A way that has come to its end: it is better than the best known, or it would not be there. */
static void
take (Search        *search,
      const PpLabel *label)
{
  guint k = search->model->n - 1;

  search->end = label->end;
  search->n_mixes = label->n_mixes;
  search->sequence[k] = label->job;
  search->is_new[k] = label->is_new;
  for (guint mark = label->parent; k-- > 0;)
    {
      const Mark *at = &g_array_index (search->marks, Mark, mark);

      search->sequence[k] = at->job;
      search->is_new[k] = at->is_new;
      mark = at->parent;
    }
  search->against = pp_model_count_against (search->model, search->sequence);
}

static gboolean
is_better_label (const Search  *search,
                 const PpLabel *a,
                 const PpLabel *b)
{
  const gint64 tie = search->model->tie;

  if (a->end < b->end - tie || a->end > b->end + tie)
    return a->end < b->end;
  if (a->n_mixes != b->n_mixes)
    return a->n_mixes < b->n_mixes;

  return a->against < b->against;
}

static void
take_best (Search  *search,
           PpLayer *layer)
{
  const PpLabel *best = NULL, *label;

  for (guint slot = 0; (label = pp_layer_next (layer, &slot)) != NULL; slot++)
    if (best == NULL || is_better_label (search, label, best))
      best = label;
  if (best != NULL)
    take (search, best);
}

static void
run_pass (Search *search,
          PpRank  rank,
          guint   width)
{
  PpLayer *layer = search->layers[0], *next = search->layers[1];

  search->rank = rank;
  search->width = width;
  search->narrowed = FALSE;
  g_array_set_size (search->marks, 0);
  pp_layer_clear (layer, rank);
  pp_label_init (search->child, search->model);
  pp_layer_add (layer, search->child);

  for (guint depth = 0; depth < search->model->n && pp_layer_count (layer) > 0; depth++)
    {
      PpLayer *swap = layer;
      const PpLabel *label;

      pp_layer_clear (next, rank);
      for (guint slot = 0; (label = pp_layer_next (layer, &slot)) != NULL; slot++)
        {
          if (!has_time (search))
            {
              search->narrowed = TRUE;
              return;
            }
          follow (search, label, next);
        }
      search->narrowed |= pp_layer_narrow (next, search->steps < search->max_steps ? width
                                                                                   : DIVE_WIDTH);
      layer = next;
      next = swap;
    }
  take_best (search, layer);
}

static gboolean
is_end_proved (const Search *search)
{
  return search->end <= search->floor_end + search->model->tie
         && search->n_mixes <= search->floor_mixes;
}

static gboolean
is_proved (const Search *search)
{
  return is_end_proved (search) && search->against == 0;
}

/* TRUE once the best known is proved to be the best. */
static gboolean
run (Search *search)
{
  const gsize most = MOST_BYTES / (SLACK * pp_label_get_size (search->model));

  for (gsize width = FIRST_WIDTH; !is_proved (search); width *= WIDEN)
    {
      if (!is_end_proved (search))
        {
          run_pass (search, PP_RANK_ENDS, (guint) MIN (width, most));
          if (!search->narrowed)
            {
              search->floor_end = search->end;
              search->floor_mixes = search->n_mixes;
            }
        }
      if (search->is_stopped || search->steps >= search->max_steps)
        return is_proved (search);
      run_pass (search, PP_RANK_PAIRS, (guint) MIN (width, most));
      if (!search->narrowed)
        return TRUE;
      if (search->is_stopped || search->steps >= search->max_steps || width >= most)
        return is_proved (search);
    }

  return TRUE;
}

static void
start_from (Search        *search,
            const PpSplit *split)
{
  for (guint k = 0; k < search->model->n; k++)
    search->sequence[k] = k;
  for (guint i = 0; i < split->n_batches; i++)
    search->is_new[split->firsts[i]] = TRUE;
  search->end = llrint (split->end * PP_TICKS);
  search->n_mixes = split->n_batches;
  search->against = pp_model_count_against (search->model, search->sequence);
}

static PpBestLine *
read_found (Search  *search,
            gboolean optimal)
{
  PpBestLine *found = g_new (PpBestLine, 1);
  const guint n_jobs = search->model->n;
  guint n = 0;

  found->firsts = g_new (guint, search->n_mixes + 1);
  for (guint k = 0; k < n_jobs; k++)
    if (search->is_new[k])
      found->firsts[n++] = k;
  found->firsts[n] = n_jobs;
  found->n_batches = n;
  found->sequence = g_memdup2 (search->sequence, n_jobs * sizeof (guint));
  found->lower_bound = fmax ((double) search->floor_end / PP_TICKS, search->model->bound->end);
  found->optimal = optimal;

  return found;
}

/* Without a search: what has times beyond all measure. */
static PpBestLine *
found_of_split (const PpLine  *line,
                const PpBound *bound,
                const PpSplit *split)
{
  PpBestLine *found = g_new (PpBestLine, 1);

  found->sequence = g_new (guint, line->n);
  for (guint k = 0; k < line->n; k++)
    found->sequence[k] = k;
  found->firsts = g_memdup2 (split->firsts, (split->n_batches + 1) * sizeof (guint));
  found->n_batches = split->n_batches;
  found->lower_bound = bound->end;
  found->optimal = FALSE;

  return found;
}

PpBestLine *
pp_search_run (const PpLine    *line,
               const PpBound   *bound,
               const PpSplit   *split,
               guint64          max_steps,
               GCancellable    *enough,
               GCancellable    *cancellable,
               PpScheduleFunc   progress,
               gpointer         data,
               GError         **error)
{
  g_autoptr (PpModel) model = pp_model_new (line, bound);

  if (model == NULL)
    return found_of_split (line, bound, split);

  g_autoptr (PpLayer) one = pp_layer_new (model);
  g_autoptr (PpLayer) other = pp_layer_new (model);
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (Mark));
  g_autofree PpLabel *child = g_malloc (pp_label_get_size (model));
  g_autofree gboolean *is_new = g_new0 (gboolean, line->n);
  g_autofree guint *sequence = g_new (guint, line->n);
  Search search = {
    .model = model, .max_steps = max_steps, .enough = enough, .cancellable = cancellable,
    .progress = progress, .data = data, .layers = { one, other }, .child = child, .marks = marks,
    .sequence = sequence, .is_new = is_new,
    .floor_end = llrint (bound->end * PP_TICKS), .floor_mixes = bound->n_batches,
  };

  start_from (&search, split);

  const gboolean optimal = run (&search);

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;

  return read_found (&search, optimal);
}

void
pp_best_line_free (PpBestLine *self)
{
  if (self == NULL)
    return;

  g_free (self->sequence);
  g_free (self->firsts);
  g_free (self);
}
