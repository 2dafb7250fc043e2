/* sheet-answers.c: what sheets and pictures of a panel are drawn from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/sheet-answers.h"

#define SHARE_OF_CHECK 0.3
#define SHARE_OF_ALL 0.6

PpSheetAnswers *
pp_sheet_answers_new (const PpPanel *panel,
                gboolean       with_plan,
                PpWork        *work,
                GError       **error)
{
  g_autoptr (PpSheetAnswers) self = g_new0 (PpSheetAnswers, 1);
  GCancellable *cancellable = pp_work_get_cancellable (work);

  pp_work_set_part (work, 0, with_plan ? SHARE_OF_CHECK : SHARE_OF_ALL);
  self->check = pp_check_new (panel, NULL, cancellable, pp_work_report, work, error);
  if (self->check == NULL)
    return NULL;
  if (with_plan)
    {
      pp_work_set_part (work, SHARE_OF_CHECK, SHARE_OF_ALL);
      self->plan = pp_plan_new (self->check, 0, cancellable, pp_work_report, work, error);
      if (self->plan == NULL)
        return NULL;
    }
  self->gallery = pp_gallery_new (panel, NULL);
  return g_steal_pointer (&self);
}

void
pp_sheet_answers_free (PpSheetAnswers *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  g_clear_pointer (&self->plan, pp_plan_unref);
  g_clear_pointer (&self->check, pp_check_unref);
  g_free (self);
}
