/* lying.c: height and light of a piece by what a maker can see at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/lying.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"

#include <string.h>

#define N_ROWS 33 /* heights along a piece whose tip stands up */

/* As lifted, but with its greater y on the top and its lesser y up: lifted has it the other way
 * round, and a piece grows from the greater y to the lesser. */
static const PpHeightGrid *
tip_up (double    rise,
        double    touching,
        PpBox     box)
{
  double length = pp_box_height (box);
  double step = length / (N_ROWS - 1);
  double heights[N_ROWS];

  for (guint i = 0; i < N_ROWS; i++)
    {
      double from_base = length - i * step;
      double lift = fmax (from_base - touching, 0) / (length - touching);

      heights[i] = rise * lift * lift;
    }
  return pp_height_grid_new (pp_box_middle (box).x, box.y0, step, N_ROWS, 1, heights);
}

static PpForm
one_end (const PpLying   *self,
         const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);
  double length = pp_box_height (box);
  double touching = isnan (self->touching) ? length / 2 : self->touching;

  if (touching >= length)
    return (PpForm) { .kind = PP_FORM_FLAT };
  if (self->touch == PP_TOUCH_TIP)
    return (PpForm) { .kind = PP_FORM_LIFTED, .rise = self->gap, .flat = touching };
  return (PpForm) { .kind = PP_FORM_MEASURED, .grid = tip_up (self->gap, touching, box) };
}

gboolean
pp_lying_check_gap (double   gap,
                    GError **error)
{
  if (gap >= 0 && gap <= PP_LYING_MOST_GAP)
    return TRUE;
  g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                       _("The height of the high part must be from 0 to 300 mm."));
  return FALSE;
}

PpForm
pp_lying_get_form (const PpLying   *self,
                   const PpOutline *outline,
                   gboolean         is_long)
{
  PpForm form = { .kind = PP_FORM_FLAT, .rise = self->gap };

  if (self->touch == PP_TOUCH_ALL || self->gap == 0)
    return (PpForm) { .kind = PP_FORM_FLAT };
  if (self->touch == PP_TOUCH_BASE || self->touch == PP_TOUCH_TIP)
    return one_end (self, outline);
  if (self->touch == PP_TOUCH_RIM)
    form.kind = PP_FORM_DOMED;
  else if (self->touch == PP_TOUCH_ENDS)
    form.kind = PP_FORM_ARCHED;
  else if (is_long)
    form.kind = PP_FORM_CURLED;
  else
    form.kind = PP_FORM_CUPPED;
  form.foot = form.kind != PP_FORM_CUPPED ? 0
              : isnan (self->foot)        ? PP_FOOT_ESTIMATE
                                          : self->foot;
  return form;
}

double
pp_light_get_transmittance (PpLight light)
{
  static const double shares[] = { 0, 0.25, 0.8 };

  return shares[light];
}

static gboolean
find_name (const char         *name,
           const char * const *names,
           guint               n_names,
           guint              *index)
{
  for (guint i = 0; i < n_names; i++)
    if (strcmp (name, names[i]) == 0)
      {
        *index = i;
        return TRUE;
      }
  return FALSE;
}

gboolean
pp_touch_from_name (const char *name,
                    PpTouch    *touch)
{
  static const char *const names[] = { "all", "middle", "rim", "ends", "base", "tip" };
  guint index;

  if (!find_name (name, names, G_N_ELEMENTS (names), &index))
    return FALSE;
  *touch = (PpTouch) index;
  return TRUE;
}

gboolean
pp_light_from_name (const char *name,
                    PpLight    *light)
{
  static const char *const names[] = { "none", "shadow", "clear" };
  guint index;

  if (!find_name (name, names, G_N_ELEMENTS (names), &index))
    return FALSE;
  *light = (PpLight) index;
  return TRUE;
}
