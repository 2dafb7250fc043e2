/* bench-acts.c: what the maker says has happened at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each becomes the present panel at once and is then written; the screen goes on when it stands in
 * the file, or when it is told that it does not.
 */
#include "config.h"

#include "desk/bench-stock.h"
#include "desk/bench-view-private.h"

#include "glue/last-act.h"
#include "glue/progress.h"
#include "glue/reorder.h"
#include "panel/edit.h"
#include "shape/place.h"
#include "shape/polygon.h"

#define REST_US 500000 /* between two acts: a glove trembles */

/* (transfer full) both. `broke`: jobs, or NULL. */
static void
record_broken (PpBenchView        *self,
               PpPanel            *next,
               GError             *error,
               const char * const *broke)
{
  g_autoptr (PpPanel) before = pp_panel_ref (pp_document_get_panel (self->document));

  self->acted_at = g_get_monotonic_time ();
  self->is_hurried = FALSE;
  if (pp_document_record (self->document, next, error))
    {
      pp_bench_keep_write (self->keep);
      pp_bench_stock_follow (before, pp_document_get_panel (self->document), broke);
    }
  pp_bench_view_refresh (self);
}

/* (transfer full) both. */
static void
record (PpBenchView *self,
        PpPanel     *next,
        GError      *error)
{
  record_broken (self, next, error, NULL);
}

/* From the first act on the order is kept, so that the steps are the same after the file was
 * closed. (transfer full) */
static PpPanel *
get_begun (PpBenchView *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_auto (GStrv) jobs = NULL;

  if (panel->plan != NULL || !self->plan->exists || self->plan->n_steps == 0)
    return pp_panel_ref (panel);
  jobs = pp_reorder_jobs (self->plan, panel, 0, 0);
  return pp_edit_set_order (panel, (const char * const *) jobs, NULL);
}

static void
place (PpBenchView *self,
       GDateTime   *now)
{
  g_autoptr (PpPanel) panel = get_begun (self);
  g_autofree char *job = pp_job_dup_id (panel, self->plan->order->n_knots, self->bench.step->job);
  g_autoptr (GError) error = NULL;
  PpPanel *next = pp_progress_placed (panel, self->plan->order, job, now, &error);

  record (self, next, g_steal_pointer (&error));
}

static void
mix (PpBenchView *self,
     GDateTime   *now)
{
  g_autoptr (PpPanel) panel = get_begun (self);
  g_autoptr (GError) error = NULL;
  PpPanel *next = pp_progress_mixed (panel, now, &error);

  record (self, next, g_steal_pointer (&error));
}

static gboolean
is_too_soon (PpBenchView *self)
{
  return g_get_monotonic_time () - self->acted_at < REST_US
         || pp_bench_keep_is_writing (self->keep);
}

void
pp_bench_acts_go_on (PpBenchView *self)
{
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);

  if (is_too_soon (self) || self->is_choosing)
    return;
  if (!self->is_ready)
    {
      self->is_ready = TRUE;
      self->acted_at = g_get_monotonic_time ();
      pp_bench_view_refresh (self);
      return;
    }
  pp_bench_view_read (self, now);
  if (self->bench.next == PP_NEXT_NONE)
    pp_bench_view_leave (self);
  else if (self->bench.next == PP_NEXT_PLAN || (self->bench.wait > 0 && !self->is_hurried))
    return;
  else if (self->bench.next == PP_NEXT_MIX)
    mix (self, now);
  else
    place (self, now);
}

void
pp_bench_acts_take_back (PpBenchView *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_autofree char *last = pp_last_act_find (panel);
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);
  g_autoptr (GError) error = NULL;
  PpPanel *next;

  if (last == NULL || is_too_soon (self))
    return;
  next = *last == '\0' ? pp_progress_unmixed (panel, now, &error)
                       : pp_progress_taken_back (panel, self->plan->order, last, now, &error);
  record (self, next, g_steal_pointer (&error));
}

void
pp_bench_acts_remix (PpBenchView *self)
{
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);

  if (!is_too_soon (self))
    mix (self, now);
}

void
pp_bench_acts_pause (PpBenchView *self)
{
  g_autoptr (PpPanel) panel = get_begun (self);
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);
  g_autoptr (GError) error = NULL;
  PpPanel *next = pp_progress_paused (panel, now, &error);

  record (self, next, g_steal_pointer (&error));
}

void
pp_bench_acts_come_off (PpBenchView        *self,
                        const char * const *jobs,
                        gboolean            broke)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);
  g_autoptr (GError) error = NULL;
  PpPanel *next;

  if (broke)
    next = pp_progress_broke (panel, self->plan->order, jobs, now, &error);
  else
    next = pp_progress_fell (panel, self->plan->order, jobs, now, &error);
  record_broken (self, next, g_steal_pointer (&error), broke ? jobs : NULL);
}

/* The pose that brings the piece's middle there. */
static PpPose
find_pose (const PpPanel     *panel,
           const PpPlacement *placement,
           PpPoint            middle,
           double             rotation)
{
  const PpPiece *piece = pp_panel_find_piece (panel, placement->piece, NULL);
  PpPlacement draft = *placement;
  PpFrame frame;
  PpPoint from;

  draft.x = 0;
  draft.y = 0;
  draft.rotation = rotation;
  frame = pp_frame_of (&draft);
  from = pp_frame_to_panel (&frame, pp_outline_centroid (piece->outline));
  return (PpPose) { middle.x - from.x, middle.y - from.y, rotation, placement->mirrored };
}

void
pp_bench_acts_move (PpBenchView *self,
                    const char  *placement,
                    PpPoint      middle,
                    double       rotation)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpPlacement *old = pp_panel_find_placement (panel, placement, NULL);
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);
  g_autoptr (GError) error = NULL;
  PpPanel *next;

  if (old == NULL)
    return;
  next = pp_progress_moved (panel, placement, find_pose (panel, old, middle, rotation), now,
                            &error);
  record (self, next, g_steal_pointer (&error));
}
