/* split.c: an exact dynamic programme over the places where a line of jobs is cut.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One line, one way of cutting it: every rule then reads "this moment is no sooner than that one
 * plus so many minutes" (also the life of a mix: its start is no sooner than the end of a job of
 * it less the life). Such rules have one least solution, in which every moment is as soon as in
 * any other, so nothing is ever gained by waiting longer than asked. Within a mix it is found
 * in two passes. First all is done as soon as it can be. If the last end C is then beyond the
 * life, mixing began too soon before a wait, and starts at C - life instead. That keeps C where it
 * was, unless the mix with its own waits is longer than the life, wherever it begins; then no
 * longer mix from the same job fits either. Starting to mix later never delays the first job
 * beyond need: mixing always ends just when the first job starts.
 *
 * Different cuts: what is still to come sees of the past the end of the last mix, the number of
 * mixes and the ends of jobs that something still to come must wait for. A past that is no worse
 * in each of these is no worse in the end (the least solution grows with its bounds), so at each
 * cut only pasts that no other matches are kept: labels.
 */
#include "glue/split.h"

#include "panel/tolerance.h"

#include <math.h>

/* Labels kept at one cut, and when the steps are used up. */
#define MAX_LABELS 64
#define FEW_LABELS 1
#define MAX_STEPS 400000

/* min: the same minutes summed in another order differ by less. */
#define NOISE 1e-9

typedef struct _Label Label;

struct _Label
{
  const Label *parent; /* NULL before the first mix */
  guint        first;  /* the last mix does the jobs from here */
  double       start;  /* min, of the first of them */
  double       end;    /* min, of the last of them */
  guint        n_batches;
  double       ends[]; /* of the jobs that are waited for at this cut; -INFINITY: long enough ago */
};

/* A job before a cut that a job beyond it must wait for. */
typedef struct
{
  guint  job;
  double lag; /* min, the longest */
} Awaited;

typedef struct
{
  const PpLine *line;
  GArray      **awaited; /* Awaited, at each cut 0 to n: the cut stands before that job */
  GPtrArray   **labels;  /* Label, at each cut */
  double       *starts;  /* work sheet, min, of each job */
  double       *ends;
  guint64       steps;
} Search;

/* From the last cut to the first, so that each link is looked at once. */
static GArray **
find_awaited (const PpLine *line)
{
  GArray **awaited = g_new (GArray *, line->n + 1);
  g_autofree double *lags = g_new0 (double, line->n);

  for (guint cut = line->n + 1; cut-- > 0;)
    {
      awaited[cut] = g_array_new (FALSE, FALSE, sizeof (Awaited));
      if (cut < line->n)
        for (guint at = line->offsets[cut]; at < line->offsets[cut + 1]; at++)
          lags[line->before[at]] = fmax (lags[line->before[at]], line->lags[at]);

      for (guint job = 0; job < cut; job++)
        if (lags[job] > 0)
          {
            const Awaited entry = { job, lags[job] };

            g_array_append_val (awaited[cut], entry);
          }
    }

  return awaited;
}

static Label *
label_new (const Search *search,
           const Label  *parent,
           guint         first,
           guint         cut)
{
  const GArray *awaited = search->awaited[cut];
  Label *label = g_malloc (sizeof (Label) + awaited->len * sizeof (double));

  label->parent = parent;
  label->first = first;
  label->start = cut > 0 ? search->starts[first] : 0;
  label->end = cut > 0 ? search->ends[cut - 1] : 0;
  label->n_batches = parent != NULL ? parent->n_batches + 1 : 0;

  const double next = label->end + search->line->problem->mixing;

  for (guint i = 0; i < awaited->len; i++)
    {
      const Awaited *entry = &g_array_index (awaited, Awaited, i);
      const double end = search->ends[entry->job];

      label->ends[i] = end + entry->lag > next ? end : (double) -INFINITY;
    }

  return label;
}

static gboolean
is_no_worse (const Label *a,
             const Label *b,
             guint        n_awaited)
{
  if (a->end > b->end + NOISE || a->n_batches > b->n_batches)
    return FALSE;
  for (guint i = 0; i < n_awaited; i++)
    if (a->ends[i] > b->ends[i] + NOISE)
      return FALSE;

  return TRUE;
}

static void
add_label (Search      *search,
           const Label *parent,
           guint        first,
           guint        cut)
{
  g_autofree Label *label = label_new (search, parent, first, cut);
  GPtrArray *labels = search->labels[cut];
  const guint n_awaited = search->awaited[cut]->len;

  for (guint i = labels->len; i-- > 0;)
    {
      /* Of equals the shorter last mix stays, so that mixes are used up one by one. */
      if (is_no_worse (label, g_ptr_array_index (labels, i), n_awaited))
        g_ptr_array_remove_index_fast (labels, i);
      else if (is_no_worse (g_ptr_array_index (labels, i), label, n_awaited))
        return;
    }
  g_ptr_array_add (labels, g_steal_pointer (&label));
}

/* As soon as hands and waits allow, and not before `earliest`. */
static void
do_job (Search *search,
        guint   job,
        double  earliest)
{
  const PpLine *line = search->line;
  double start = earliest;

  for (guint at = line->offsets[job]; at < line->offsets[job + 1]; at++)
    if (line->lags[at] > 0)
      start = fmax (start, search->ends[line->before[at]] + line->lags[at]);

  search->starts[job] = start;
  search->ends[job] = start + line->tasks[job]->minutes;
  search->steps++;
}

static gboolean
is_in_life (const Search *search,
            guint         first,
            guint         cut)
{
  const PpProblem *problem = search->line->problem;
  const double begin = search->starts[first] - problem->mixing;

  return search->ends[cut - 1] - begin <= problem->life + PP_TIE;
}

/* Does the last of the jobs from `first` to before `cut`, the others being done; FALSE if they
 * fit no mix. */
static gboolean
lengthen (Search *search,
          guint   first,
          guint   cut,
          double  earliest)
{
  const PpProblem *problem = search->line->problem;

  do_job (search, cut - 1, cut - 1 == first ? earliest : search->ends[cut - 2]);
  if (is_in_life (search, first, cut))
    return TRUE;

  do_job (search, first, search->ends[cut - 1] - problem->life + problem->mixing);
  for (guint job = first + 1; job < cut; job++)
    do_job (search, job, search->ends[job - 1]);

  return is_in_life (search, first, cut);
}

/* All mixes that may follow a label at `first`. */
static void
follow (Search      *search,
        const Label *label,
        guint        first)
{
  const PpLine *line = search->line;
  const GArray *awaited = search->awaited[first];
  double volume = 0;

  for (guint i = 0; i < awaited->len; i++)
    search->ends[g_array_index (awaited, Awaited, i).job] = label->ends[i];

  for (guint cut = first + 1; cut <= line->n; cut++)
    {
      volume += line->tasks[cut - 1]->volume;
      if (volume > line->problem->largest + PP_TIE
          || !lengthen (search, first, cut, label->end + line->problem->mixing))
        break;
      add_label (search, label, first, cut);
    }
}

static int
compare_labels (gconstpointer a,
                gconstpointer b)
{
  const Label *one = *(Label * const *) a;
  const Label *other = *(Label * const *) b;

  if (one->end != other->end)
    return one->end < other->end ? -1 : 1;
  return one->n_batches < other->n_batches ? -1 : one->n_batches > other->n_batches;
}

/* A line with many waits may have more pasts than can be kept. */
static void
narrow (Search *search,
        guint   cut)
{
  const guint most = search->steps < MAX_STEPS ? MAX_LABELS : FEW_LABELS;

  if (search->labels[cut]->len <= most)
    return;

  g_ptr_array_sort (search->labels[cut], compare_labels);
  g_ptr_array_set_size (search->labels[cut], (int) most);
}

static const Label *
find_best (const GPtrArray *labels)
{
  const Label *best = g_ptr_array_index (labels, 0);

  for (guint i = 1; i < labels->len; i++)
    {
      const Label *label = g_ptr_array_index (labels, i);

      if (label->end < best->end)
        best = label;
    }
  const double soonest = best->end;

  for (guint i = 0; i < labels->len; i++)
    {
      const Label *label = g_ptr_array_index (labels, i);

      if (label->end <= soonest + PP_TIE && label->n_batches < best->n_batches)
        best = label;
    }

  return best;
}

static PpSplit *
read_split (Search *search)
{
  const guint n = search->line->n;
  const Label *best = find_best (search->labels[n]);
  PpSplit *split = g_new (PpSplit, 1);
  g_autofree double *firsts = g_new (double, n + 1);

  split->n_batches = best->n_batches;
  split->firsts = g_new (guint, best->n_batches + 1);
  split->firsts[best->n_batches] = n;
  split->end = best->end;
  for (const Label *label = best; label->parent != NULL; label = label->parent)
    {
      split->firsts[label->n_batches - 1] = label->first;
      firsts[label->n_batches - 1] = label->start;
    }

  for (guint i = 0; i < split->n_batches; i++)
    for (guint job = split->firsts[i]; job < split->firsts[i + 1]; job++)
      do_job (search, job, job == split->firsts[i] ? firsts[i] : search->ends[job - 1]);
  split->starts = g_memdup2 (search->starts, n * sizeof (double));

  return split;
}

static gboolean
run (Search       *search,
     GCancellable *cancellable,
     GError      **error)
{
  const guint n = search->line->n;

  add_label (search, NULL, 0, 0);
  for (guint cut = 0; cut < n; cut++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;

      narrow (search, cut);
      for (guint i = 0; i < search->labels[cut]->len; i++)
        follow (search, g_ptr_array_index (search->labels[cut], i), cut);
    }

  return TRUE;
}

PpSplit *
pp_split_new (const PpLine *line,
              GCancellable *cancellable,
              GError      **error)
{
  g_autofree GArray **awaited = find_awaited (line);
  g_autofree GPtrArray **labels = g_new (GPtrArray *, line->n + 1);
  g_autofree double *starts = g_new (double, line->n);
  g_autofree double *ends = g_new (double, line->n);
  Search search = {
    .line = line,
    .awaited = awaited,
    .labels = labels,
    .starts = starts,
    .ends = ends,
  };
  PpSplit *split = NULL;

  for (guint cut = 0; cut <= line->n; cut++)
    labels[cut] = g_ptr_array_new_with_free_func (g_free);
  if (run (&search, cancellable, error))
    split = read_split (&search);
  for (guint cut = 0; cut <= line->n; cut++)
    {
      g_array_unref (awaited[cut]);
      g_ptr_array_unref (labels[cut]);
    }

  return split;
}

PpSplit *
pp_split_at (const PpLine *line,
             const guint  *firsts,
             guint         n_batches)
{
  PpSplit *split = g_new (PpSplit, 1);
  g_autofree double *ends = g_new (double, line->n);
  Search search = { .line = line, .starts = g_new (double, line->n), .ends = ends };

  split->n_batches = n_batches;
  split->firsts = g_memdup2 (firsts, (n_batches + 1) * sizeof (guint));
  split->starts = search.starts;
  split->end = 0;
  for (guint i = 0; i < n_batches; i++)
    {
      for (guint cut = firsts[i] + 1; cut <= firsts[i + 1]; cut++)
        lengthen (&search, firsts[i], cut, split->end + line->problem->mixing);
      split->end = ends[firsts[i + 1] - 1];
    }

  return split;
}

void
pp_split_free (PpSplit *self)
{
  if (self == NULL)
    return;

  g_free (self->firsts);
  g_free (self->starts);
  g_free (self);
}
