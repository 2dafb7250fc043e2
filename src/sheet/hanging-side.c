/* hanging-side.c: the panel cut upright, seen from the side, as a path.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/hanging-side.h"

#include <math.h>

void
pp_hanging_side_lean (cairo_t       *cr,
                      const PpScene *scene,
                      const PpHang  *hang)
{
  double y;

  g_return_if_fail (cr != NULL && scene != NULL);

  if (hang == NULL || scene->panel->display->place != PP_PLACE_WINDOW || !isfinite (hang->lean))
    return;
  y = pp_scene_knot_place (scene, 0).y;
  cairo_translate (cr, 0, y);
  cairo_rotate (cr, hang->lean * G_PI / 180);
  cairo_translate (cr, 0, -y);
}

void
pp_hanging_side_add_pieces (cairo_t       *cr,
                            const PpCheck *check)
{
  g_return_if_fail (cr != NULL && check != NULL);

  for (guint i = 0; i < check->n; i++)
    {
      const PpRest *rest = check->rests[i];
      PpBox box = check->scene->bodies[i]->box;

      if (rest->state != PP_STATE_FLOATS)
        cairo_rectangle (cr, rest->base, box.y0, rest->top - rest->base, pp_box_height (box));
    }
}

void
pp_hanging_side_add_glass (cairo_t       *cr,
                           const PpScene *scene)
{
  PpBox glass;
  double thickness;

  g_return_if_fail (cr != NULL && scene != NULL);

  glass = pp_background_get_box (scene->panel->background);
  thickness = scene->panel->background->thickness;
  cairo_rectangle (cr, -thickness, glass.y0, thickness, pp_box_height (glass));
}
