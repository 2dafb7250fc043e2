/* label.c: one way of having done some of the jobs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Time as in split.c: all is done as soon as it can be, but a mix begins later where that saves
 * its life for a wait inside it. The open mix with its own waits takes `length` at least; while
 * that is no longer than its life, it can begin at (end - life) without making `end` later. Its
 * jobs then end at their place inside it at least, which is why that is kept for those waited for.
 */
#include "glue/label.h"

static PpAwaited *
get_awaited (const PpLabel *self,
             const PpModel *model)
{
  return (PpAwaited *) (gpointer) (self->done + model->n_words);
}

gsize
pp_label_get_size (const PpModel *model)
{
  return sizeof (PpLabel) + model->n_words * sizeof (guint64)
         + model->n_sources * sizeof (PpAwaited);
}

void
pp_label_init (PpLabel       *self,
               const PpModel *model)
{
  PpAwaited *awaited = get_awaited (self, model);

  memset (self, 0, pp_label_get_size (model));
  for (guint k = 0; k < model->n; k++)
    {
      self->rest += model->minutes[k];
      pp_mix_weights_add (&self->weights, &model->bound->weights[k]);
    }
  for (guint i = 0; i < model->n_sources; i++)
    awaited[i] = (PpAwaited) { PP_LONG_AGO, PP_NOT_INSIDE };
}

gboolean
pp_label_may_follow (const PpLabel *self,
                     const PpModel *model,
                     guint          job)
{
  return !pp_set_has (self->done, job)
         && pp_set_within (model->before + (gsize) job * model->n_words, self->done,
                           model->n_words);
}

/* When `job` may start for those it waits for, and in `inside` how far from the start of the open
 * mix's first job, at least, if that is where it is done. */
static gint64
find_release (const PpLabel *self,
              const PpModel *model,
              guint          job,
              gint64        *inside)
{
  const PpAwaited *awaited = get_awaited (self, model);
  gint64 release = PP_LONG_AGO;

  *inside = self->length;
  for (guint at = model->offsets[job]; at < model->offsets[job + 1]; at++)
    {
      const PpAwaited *entry = &awaited[model->waits[at].source];

      if (entry->end != PP_LONG_AGO)
        release = MAX (release, entry->end + model->waits[at].lag);
      if (entry->inside != PP_NOT_INSIDE)
        *inside = MAX (*inside, entry->inside + model->waits[at].lag);
    }

  return release;
}

/* The open mix begins no sooner than its life allows; TRUE if something waited for ends later. */
static gboolean
begin_later (PpLabel       *self,
             const PpModel *model)
{
  PpAwaited *awaited = get_awaited (self, model);
  const gint64 start = self->end - model->window;
  gboolean later = FALSE;

  for (guint i = 0; i < model->n_sources; i++)
    if (awaited[i].inside != PP_NOT_INSIDE && start + awaited[i].inside > awaited[i].end)
      {
        awaited[i].end = start + awaited[i].inside;
        later = TRUE;
      }

  return later;
}

/* So that labels which differ in nothing that matters are equal. */
static void
forget (PpLabel       *self,
        const PpModel *model)
{
  PpAwaited *awaited = get_awaited (self, model);

  for (guint i = 0; i < model->n_sources; i++)
    {
      const PpSource *source = &model->sources[i];

      if (pp_set_within (source->followers, self->done, model->n_words)
          || (awaited[i].inside == PP_NOT_INSIDE
              && awaited[i].end + source->longest <= self->end))
        awaited[i] = (PpAwaited) { PP_LONG_AGO, PP_NOT_INSIDE };
    }
}

/* The mixes begun after the open one, at least, and the bound of the end from jobs that others
 * wait for long. */
static guint
look_at_critical (PpLabel       *self,
                  const PpModel *model)
{
  const gint64 window = model->window + model->tie;
  guint more = 0;

  for (guint i = 0; i < model->n_critical; i++)
    {
      const guint job = model->critical[i];
      gint64 inside, start;

      if (pp_set_has (self->done, job))
        continue;
      start = find_release (self, model, job, &inside);

      const gboolean apart = inside + model->minutes[job] > window;

      start = MAX (start, self->end + (apart ? model->mixing : 0));
      self->bound_end = MAX (self->bound_end, start + model->minutes[job] + model->tails[job]);
      more = MAX (more, (apart ? 1 : 0) + model->bound->mixes_after[job]);
    }

  return more;
}

static void
set_bounds (PpLabel       *self,
            const PpModel *model)
{
  const gint64 over = MAX (self->rest - (model->window - self->length), 0);
  PpMixWeights weights = pp_mix_weights ((double) self->length
                                         / (double) (model->window + model->tie),
                                         (double) self->volume
                                         / (double) (model->largest + model->tie));

  pp_mix_weights_add (&weights, &self->weights);

  /* The open mix is one of those that all need together. */
  const guint more = pp_mix_weights_count (&weights) - 1;

  self->bound_end = self->end + self->rest + more * model->mixing;
  self->bound_mixes = self->n_mixes + MAX (more, look_at_critical (self, model));
  self->estimate = self->end + self->rest
                   + (gint64) ((double) model->mixing * (double) over / (double) model->window);
}

static void
do_job (const PpLabel *self,
        const PpModel *model,
        guint          job,
        PpLabel       *child)
{
  const guint64 *against = model->against + (gsize) job * model->n_words;

  memcpy (child, self, pp_label_get_size (model));
  pp_set_add (child->done, job);
  child->hash = self->hash ^ model->keys[job];
  child->job = job;
  for (guint i = 0; i < model->n_words; i++)
    child->against += (guint) __builtin_popcountll (against[i] & ~child->done[i]);
  child->rest -= model->minutes[job];
  pp_mix_weights_less (&child->weights, &model->bound->weights[job]);
}

static void
open_mix (PpLabel       *child,
          const PpModel *model)
{
  PpAwaited *awaited = get_awaited (child, model);

  child->n_mixes++;
  child->length = 0;
  child->volume = 0;
  for (guint i = 0; i < model->n_sources; i++)
    awaited[i].inside = PP_NOT_INSIDE;
}

gboolean
pp_label_follow (const PpLabel *self,
                 const PpModel *model,
                 guint          job,
                 gboolean       is_new,
                 PpLabel       *child)
{
  const gint64 minutes = model->minutes[job];
  gint64 inside;
  const gint64 release = find_release (self, model, job, &inside);
  const gint64 free_at = self->end + (is_new ? model->mixing : 0);

  if (!is_new && (self->n_mixes == 0 || inside + minutes > model->window + model->tie
                  || self->volume + model->volumes[job] > model->largest + model->tie))
    return FALSE;

  do_job (self, model, job, child);
  if (is_new)
    open_mix (child, model);
  child->is_new = is_new;
  child->length = (is_new ? 0 : inside) + minutes;
  child->volume += model->volumes[job];
  child->end = MAX (free_at, release) + minutes;
  child->waited = release > free_at;

  const guint source = model->source_of[job];

  if (source != G_MAXUINT)
    get_awaited (child, model)[source] = (PpAwaited) { child->end, child->length };
  child->waited |= begin_later (child, model);
  forget (child, model);
  set_bounds (child, model);

  return TRUE;
}

static gboolean
is_awaited_no_later (const PpLabel *self,
                     const PpModel *model,
                     const PpLabel *other,
                     gboolean       is_open)
{
  const PpAwaited *mine = get_awaited (self, model);
  const PpAwaited *theirs = get_awaited (other, model);

  for (guint i = 0; i < model->n_sources; i++)
    if (mine[i].end > theirs[i].end || (is_open && mine[i].inside > theirs[i].inside))
      return FALSE;

  return TRUE;
}

gboolean
pp_label_is_no_worse (const PpLabel *self,
                      const PpModel *model,
                      const PpLabel *other,
                      gboolean       pairs)
{
  if (self->end > other->end || self->n_mixes > other->n_mixes
      || (pairs && self->against > other->against))
    return FALSE;
  if (self->length <= other->length && self->volume <= other->volume
      && is_awaited_no_later (self, model, other, TRUE))
    return TRUE;

  /* A new mix could be ready before the other goes on with its own. */
  return self->n_mixes < other->n_mixes && self->end + model->mixing <= other->end
         && is_awaited_no_later (self, model, other, FALSE);
}
