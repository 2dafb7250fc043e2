/* panel-answers.c: a panel file with all that is asked of it, for the commands.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/panel-answers.h"

#include "check/heights.h"
#include "cli/deadline.h"
#include "file/panel-read.h"
#include "panel/edit.h"
#include "sheet/left-out.h"

static PpPanel *
load_panel (const char    *file,
            const PpUnits *units,
            GError       **error)
{
  g_autoptr (PpPanel) panel = pp_panel_load (file, error);

  if (panel == NULL || units == NULL)
    return g_steal_pointer (&panel);
  return pp_edit_set_units (panel, *units);
}

static PpPlan *
make_plan (const PpCheck  *check,
           const PpEffort *effort,
           GError        **error)
{
  g_autoptr (PpDeadline) deadline = NULL;

  if (effort == NULL)
    return pp_plan_new (check, 0, NULL, NULL, NULL, error);
  deadline = pp_deadline_new (effort->seconds);
  return pp_plan_new_until (check, NULL, effort->steps, pp_deadline_get_enough (deadline), NULL,
                            NULL, NULL, error);
}

gboolean
pp_panel_answers_init_shown (PpPanelAnswers *self,
                             const char     *file,
                             const PpUnits  *units,
                             GError        **error)
{
  *self = (PpPanelAnswers) { .panel = load_panel (file, units, error) };
  if (self->panel == NULL)
    return FALSE;
  self->check = pp_check_new (self->panel, NULL, NULL, NULL, NULL, error);
  if (self->check == NULL)
    return FALSE;
  self->gallery = pp_gallery_new (self->panel, NULL);
  pp_heights_of (self->check, &self->bases, &self->tops);
  return TRUE;
}

gboolean
pp_panel_answers_init (PpPanelAnswers *self,
                       const char     *file,
                       const PpUnits  *units,
                       const PpEffort *effort,
                       GError        **error)
{
  if (!pp_panel_answers_init_shown (self, file, units, error))
    return FALSE;
  self->plan = make_plan (self->check, effort, error);
  if (self->plan == NULL)
    return FALSE;
  self->left_out = pp_left_out_findings (self->panel, self->gallery);
  return TRUE;
}

void
pp_panel_answers_clear (PpPanelAnswers *self)
{
  g_clear_pointer (&self->left_out, g_ptr_array_unref);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  pp_plan_unref (self->plan);
  pp_check_unref (self->check);
  pp_panel_unref (self->panel);
  g_free (self->bases);
  g_free (self->tops);
}
