/* search.c: the seeded local search behind put right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In batches: each try has dice of its own, made from the seed and its number, proposes moves from
 * the present panel and checks what comes of them, whichever thread does it; then the batch is read
 * in the order of the numbers. So the answer is the same with one thread and with many, and a
 * search that is stopped after a batch has found what one of so many steps finds.
 *
 * The present panel goes to the least energy of a batch as long as that falls. When it has stood
 * still for a while, each change of the best panel is undone by itself, wholly or in part, and what
 * proves needless stays undone. Then the search begins anew from the best panel with some of its
 * changes undone: what was needed comes back, often in a cheaper way. The best is judged by the
 * order of the page alone, so it is never worse than the given one.
 *
 * Each worker has a check of the present panel of its own, as shapes are for one thread at a time;
 * it makes it from its last one when the present panel has changed.
 */
#include "advise/search.h"

#include "advise/crew.h"
#include "advise/propose.h"

#define BATCH 8
#define STILL 9          /* batches without a lesser energy, before it begins anew */
#define AFRESH 0.15      /* share of new beginnings from the given panel */
#define MOST_WORKERS 8

typedef struct
{
  PpCheck *check;  /* NULL: nothing was tried */
  PpRating rating;
  guint    worker;
} Try;

typedef struct
{
  const PpGoal         *goal;
  const PpSearchLimits *limits;
  PpGuard              *guard;
  PpCrew               *crew;
  PpCheck              *bases[MOST_WORKERS]; /* of each worker */
  PpCheck              *present; /* one of the bases, or what was one */
  PpRating              rating;  /* of the present panel */
  PpProposer           *proposer;
  const PpMoves        *listed; /* to be tried; NULL: what the proposer comes up with */
  Try                   tries[BATCH];
  PpPanel              *best;
  PpRating              best_rating;
  gboolean              is_pared; /* nothing of the best can be undone by itself */
  guint64               steps;
  guint64               last_better;
  gint64                start;
  GCancellable         *cancellable;
} Search;

/* The worker's own check of the present panel. */
static const PpCheck *
base_of (Search *self,
         guint   worker)
{
  PpCheck *base = self->bases[worker];

  if (base == NULL || base->panel != self->present->panel)
    {
      self->bases[worker] = pp_check_new (self->present->panel, base, NULL, NULL, NULL, NULL);
      pp_check_unref (base);
    }
  return self->bases[worker];
}

static void
try_moves (Search        *self,
           const PpMoves *moves,
           guint          worker,
           Try           *result)
{
  g_autoptr (PpPanel) panel = moves->n > 0 ? pp_moves_make (moves, self->present->panel) : NULL;

  *result = (Try) { .worker = worker };
  if (panel == NULL || !pp_guard_allows (self->guard, panel))
    return;
  result->check = pp_check_new (panel, base_of (self, worker), self->cancellable, NULL, NULL, NULL);
  if (result->check != NULL && pp_guard_pushes_over_edge (self->guard, result->check))
    g_clear_pointer (&result->check, pp_check_unref);
  if (result->check != NULL)
    result->rating = pp_goal_rate (self->goal, result->check);
}

static void
try_one (guint    worker,
         guint    number,
         gpointer data)
{
  Search *self = data;
  PpDice dice = pp_dice_make (self->limits->seed, self->steps + number);
  PpMoves moves;

  if (g_cancellable_is_cancelled (self->cancellable))
    return;
  moves = self->listed != NULL ? self->listed[number] : pp_propose (self->proposer, &dice);
  try_moves (self, &moves, worker, &self->tries[number]);
}

static void
look_at_proposals (Search *self)
{
  g_clear_pointer (&self->proposer, pp_proposer_free);
  self->proposer = pp_proposer_new (self->goal, self->guard, self->present);
}

/* Takes the check of `result`, which its worker goes on from. */
static void
go_to (Search *self,
       Try    *result)
{
  pp_check_unref (self->bases[result->worker]);
  self->bases[result->worker] = pp_check_ref (result->check);
  pp_check_unref (self->present);
  self->present = g_steal_pointer (&result->check);
  self->rating = result->rating;
  look_at_proposals (self);
}

static void
note_best (Search    *self,
           const Try *result)
{
  if (!pp_rating_is_less (&result->rating, &self->best_rating))
    return;
  pp_panel_unref (self->best);
  self->best = pp_panel_ref (result->check->panel);
  self->best_rating = result->rating;
  self->is_pared = FALSE;
  self->last_better = self->steps;
}

static void
clear_tries (Search *self)
{
  for (guint i = 0; i < BATCH; i++)
    {
      pp_check_unref (self->tries[i].check);
      self->tries[i] = (Try) { 0 };
    }
}

/* FALSE if it was cancelled: a batch counts whole or not at all. */
static gboolean
run_batch (Search *self,
           guint   n,
           guint  *least)
{
  clear_tries (self);
  pp_crew_run (self->crew, n, try_one, self);
  if (g_cancellable_is_cancelled (self->cancellable))
    return FALSE;
  *least = n;
  self->steps += n;
  for (guint i = 0; i < n; i++)
    {
      if (self->tries[i].check == NULL)
        continue;
      note_best (self, &self->tries[i]);
      if (*least == n || self->tries[i].rating.energy < self->tries[*least].rating.energy)
        *least = i;
    }
  return TRUE;
}

static double
seconds_since (gint64 start)
{
  return (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

static gboolean
has_time (const Search *self)
{
  return self->limits->seconds <= 0 || seconds_since (self->start) < self->limits->seconds;
}

static guint
steps_left (const Search *self)
{
  if (self->limits->steps == 0)
    return BATCH;
  return (guint) MIN (BATCH, self->limits->steps - self->steps);
}

static void
go_to_panel (Search        *self,
             const PpPanel *panel)
{
  Try result = { .check = pp_check_new (panel, base_of (self, 0), NULL, NULL, NULL, NULL) };

  result.rating = pp_goal_rate (self->goal, result.check);
  go_to (self, &result);
}

/* From the best panel, or the given one, with changes undone by the dice of its own step. */
static gboolean
begin_anew (Search *self)
{
  PpDice dice = pp_dice_make (~self->limits->seed, self->steps);
  PpMoves moves;
  Try result = { 0 };

  go_to_panel (self, pp_dice_chance (&dice, AFRESH) ? self->goal->given : self->best);
  moves = pp_propose_ruin (self->proposer, &dice);
  try_moves (self, &moves, 0, &result);
  if (g_cancellable_is_cancelled (self->cancellable))
    {
      pp_check_unref (result.check);
      return FALSE;
    }
  self->steps++;
  if (result.check != NULL)
    {
      note_best (self, &result);
      go_to (self, &result);
    }
  return TRUE;
}

static void
tell (const Search *self,
      PpAdviceFunc  progress,
      gpointer      data)
{
  PpAdviceProgress now = { .steps = self->steps, .best = self->best_rating.figures,
                           .cost = self->best_rating.cost };

  if (progress == NULL)
    return;
  if (self->limits->steps > 0)
    now.share = (double) self->steps / (double) self->limits->steps;
  if (self->limits->seconds > 0)
    now.share = fmax (now.share, seconds_since (self->start) / self->limits->seconds);
  now.share = fmin (now.share, 1);
  progress (&now, data);
}

/* The given panel wants nothing: no fault, nothing in view, no caution, and no cost. */
static gboolean
is_perfect (const Search *self)
{
  return pp_rating_is_cured (&self->best_rating) && self->best_rating.cost <= 0;
}

static gboolean
goes_on (const Search *self,
         guint64       patience)
{
  return !is_perfect (self) && has_time (self) && steps_left (self) > 0
         && (patience == 0 || self->steps - self->last_better < patience)
         && !g_cancellable_is_cancelled (self->cancellable);
}

/* To the one of the last batch that is the best; FALSE if none is. */
static gboolean
go_to_best (Search *self)
{
  for (guint i = 0; i < BATCH; i++)
    if (self->tries[i].check != NULL && self->tries[i].check->panel == self->best)
      {
        go_to (self, &self->tries[i]);
        return TRUE;
      }
  return FALSE;
}

/* Undoes what proves needless, until each change was tried in vain; FALSE if it was cancelled. */
static gboolean
pare (Search *self,
      guint64 patience)
{
  g_autoptr (GArray) undos = NULL;
  guint at = 0, vain = 0, least;

  go_to_panel (self, self->best);
  undos = pp_propose_undos (self->proposer);
  while (vain < undos->len && goes_on (self, patience))
    {
      guint n = MIN (steps_left (self), undos->len - at);
      gboolean done;

      self->listed = &g_array_index (undos, PpMoves, at);
      done = run_batch (self, n, &least);
      self->listed = NULL;
      if (!done)
        return FALSE;
      vain += n;
      at += n;
      if (go_to_best (self))
        {
          g_array_unref (undos);
          undos = pp_propose_undos (self->proposer);
          vain = 0;
        }
      if (at >= undos->len)
        at = 0;
    }
  self->is_pared = TRUE;
  return TRUE;
}

static void
search (Search       *self,
        guint64       patience,
        PpAdviceFunc  progress,
        gpointer      data)
{
  guint still = 0, least;

  while (goes_on (self, patience))
    {
      if (still >= STILL)
        {
          gboolean was_pared = self->is_pared;

          if (!(was_pared ? begin_anew (self) : pare (self, patience)))
            return;
          still = was_pared ? 0 : STILL;
          continue;
        }
      if (!run_batch (self, steps_left (self), &least))
        return;
      if (least < BATCH && self->tries[least].check != NULL
          && self->tries[least].rating.energy < self->rating.energy - PP_TIE)
        {
          go_to (self, &self->tries[least]);
          still = 0;
        }
      else
        still++;
      tell (self, progress, data);
    }
}

static void
search_init (Search               *self,
             const PpGoal         *goal,
             const PpCheck        *given,
             const PpSearchLimits *limits,
             GCancellable         *cancellable)
{
  const guint workers = limits->threads > 0 ? limits->threads : g_get_num_processors ();

  *self = (Search) { .goal = goal, .limits = limits, .cancellable = cancellable,
                     .start = g_get_monotonic_time () };
  self->crew = pp_crew_new (CLAMP (workers, 1, MOST_WORKERS));
  self->guard = pp_guard_new (given);
  self->present = pp_check_ref (given);
  self->bases[0] = pp_check_ref (given);
  self->rating = pp_goal_rate (goal, given);
  self->best = pp_panel_ref (given->panel);
  self->best_rating = self->rating;
  look_at_proposals (self);
}

static void
search_clear (Search *self)
{
  clear_tries (self);
  pp_proposer_free (self->proposer);
  for (guint i = 0; i < MOST_WORKERS; i++)
    pp_check_unref (self->bases[i]);
  pp_check_unref (self->present);
  pp_guard_free (self->guard);
  pp_crew_free (self->crew);
}

PpBestPanel
pp_search (const PpGoal         *goal,
           const PpCheck        *given,
           const PpSearchLimits *limits,
           guint64               patience,
           GCancellable         *cancellable,
           PpAdviceFunc          progress,
           gpointer              data)
{
  Search self;
  PpBestPanel found;

  search_init (&self, goal, given, limits, cancellable);
  search (&self, patience, progress, data);
  found = (PpBestPanel) { .panel = self.best, .rating = self.best_rating, .steps = self.steps };
  search_clear (&self);
  return found;
}
