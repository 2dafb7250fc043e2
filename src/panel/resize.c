/* resize.c: another size of glass under the same arrangement.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "panel/resize.h"

#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

/* A place along one side of the glass, when the side grows from `before` to `after`. A place in the
 * very middle stays there. */
static double
carry (double at,
       double before,
       double after)
{
  if (2 * at == before)
    return after / 2;
  if (2 * at < before)
    return fmin (at, after / 2);
  return fmax (after - (before - at), after / 2);
}

static PpPanel *
set_size (const PpPanel *panel,
          double         width,
          double         height,
          GError       **error)
{
  PpBackground draft = *panel->background;
  g_autoptr (PpBackground) background = NULL;

  if (draft.shape == PP_SHAPE_FREE)
    {
      g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                           _("Glass of a shape of its own keeps its size."));
      return NULL;
    }
  draft.width = width;
  draft.height = height;
  draft.corner_radius = fmin (draft.corner_radius, fmin (width, height) / 2);
  background = pp_background_new (&draft, error);
  return background != NULL ? pp_edit_set_background (panel, background, error) : NULL;
}

static PpPanel *
carry_hole (const PpPanel *panel,
            guint          index,
            double         from_width,
            double         from_height,
            GError       **error)
{
  PpHole draft = *pp_panel_hole (panel, index);
  g_autoptr (PpHole) hole = NULL;

  draft.x = carry (draft.x, from_width, panel->background->width);
  draft.y = carry (draft.y, from_height, panel->background->height);
  hole = pp_hole_new (&draft, error);
  return hole != NULL ? pp_edit_move_hole (panel, hole, error) : NULL;
}

PpPanel *
pp_edit_resize (const PpPanel *panel,
                double         width,
                double         height,
                GError       **error)
{
  g_autoptr (PpPanel) next = NULL;

  g_return_val_if_fail (panel != NULL, NULL);

  next = set_size (panel, width, height, error);
  for (guint i = 0; next != NULL && i < panel->holes->len; i++)
    {
      PpPanel *carried = carry_hole (next, i, panel->background->width, panel->background->height,
                                     error);

      pp_panel_unref (next);
      next = carried;
    }
  return g_steal_pointer (&next);
}
