/* hit.c: what lies under a point of the panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/hit.h"

#include "shape/polygon.h"

int
pp_hit_body (const PpScene *scene,
             PpPoint        p,
             double         reach)
{
  double least = reach;
  int nearest = PP_NO_INDEX;

  g_return_val_if_fail (scene != NULL, PP_NO_INDEX);

  for (guint i = scene->n_bodies; i-- > 0;)
    if (pp_box_contains (scene->bodies[i]->box, p)
        && pp_region_contains (scene->bodies[i]->region, p))
      return (int) i;
  for (guint i = scene->n_bodies; i-- > 0;)
    {
      double distance;

      if (!pp_box_contains (pp_box_grow (scene->bodies[i]->box, reach), p))
        continue;
      distance = pp_region_point_to_border (scene->bodies[i]->region, p);
      if (distance < least || (nearest == PP_NO_INDEX && distance <= least))
        {
          least = distance;
          nearest = (int) i;
        }
    }
  return nearest;
}

int
pp_hit_hole (const PpScene *scene,
             PpPoint        p,
             double         reach)
{
  double least = INFINITY;
  int nearest = PP_NO_INDEX;

  g_return_val_if_fail (scene != NULL, PP_NO_INDEX);

  for (guint i = 0; i < scene->panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (scene->panel, i);
      double distance = hypot (p.x - hole->x, p.y - hole->y);

      if (distance <= hole->diameter / 2 + reach && distance < least)
        {
          least = distance;
          nearest = (int) i;
        }
    }
  return nearest;
}

gboolean
pp_hit_wire (const PpScene *scene,
             PpPoint        p,
             double         reach)
{
  g_return_val_if_fail (scene != NULL, FALSE);

  if (scene->n_knots == 0)
    return FALSE;
  return pp_segment_distance (pp_scene_knot_place (scene, 0), pp_scene_knot_place (scene, 1), p)
         <= scene->panel->wire->diameter / 2 + reach;
}

int
pp_hit_part (const PpScene *scene,
             PpPoint        p)
{
  g_return_val_if_fail (scene != NULL, PP_NO_INDEX);

  for (guint i = scene->n_parts; i-- > 0;)
    if (pp_region_contains (scene->parts[i].region, p))
      return (int) i;
  return PP_NO_INDEX;
}

gboolean
pp_hit_glass (const PpScene *scene,
              PpPoint        p)
{
  g_return_val_if_fail (scene != NULL, FALSE);
  return pp_region_contains (scene->background, p);
}

gboolean
pp_hit_is_framed (const PpScene *scene,
                  guint          body,
                  PpBox          frame)
{
  PpBox box;

  g_return_val_if_fail (scene != NULL && body < scene->n_bodies, FALSE);

  box = scene->bodies[body]->box;
  return box.x0 >= frame.x0 && box.x1 <= frame.x1 && box.y0 >= frame.y0 && box.y1 <= frame.y1;
}
