/* hanging-map.c: how the panel hangs, and where that is drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/hanging-map.h"

#include "check/slack.h"

#include <math.h>

#define LEAST_SAG 2.0      /* mm */
#define SCALE_MAX 12.0     /* px a mm: more says nothing */

static PpSlack
get_slack (const PpScene *scene,
           const PpMass  *mass)
{
  double length = scene->panel->wire->length;

  return pp_slack_of (pp_scene_knot_place (scene, 0), pp_scene_knot_place (scene, 1),
                      isnan (length) ? 0 : length,
                      (PpPoint) { mass->x, mass->y });
}

/* By which the panel turns to bring its mass under `p`. */
static double
get_tilt (const PpMass *mass,
          PpPoint       p)
{
  return atan2 (mass->x - p.x, mass->y - p.y) * 180 / G_PI;
}

static gboolean
find_slipped (const PpSlack *slack,
              const PpMass  *mass,
              PpHung        *hung)
{
  PpPoint far[2];
  guint n = pp_slack_find_far (slack, (PpPoint) { mass->x, mass->y }, far);
  gboolean found = FALSE;

  for (guint i = 0; i < n; i++)
    {
      double tilt = get_tilt (mass, far[i]);

      if (fabs (tilt) < 90 && (!found || fabs (tilt) > fabs (hung->tilt)))
        {
          *hung = (PpHung) { far[i], tilt };
          found = TRUE;
        }
    }
  return found;
}

gboolean
pp_hung_of (const PpScene *scene,
            const PpMass  *mass,
            const PpHang  *hang,
            PpHungHow      how,
            PpHung        *hung)
{
  PpSlack slack;

  g_return_val_if_fail (scene != NULL && scene->n_knots == 2, FALSE);

  slack = get_slack (scene, mass);
  if (hang->is_taut)
    return FALSE;
  switch (how)
    {
    case PP_HUNG_LEVEL:
      *hung = (PpHung) { hang->level_hook, 0 };
      return hang->has_level;
    case PP_HUNG_MIDDLE:
      *hung = (PpHung) { pp_slack_top (&slack), hang->middle_tilt };
      return TRUE;
    case PP_HUNG_SLIPPED:
      return find_slipped (&slack, mass, hung);
    }
  g_return_val_if_reached (FALSE);
}

PpPoint
pp_hung_find_up (const PpScene *scene,
                 const PpMass  *mass,
                 PpPoint       *middle)
{
  PpSlack slack;

  g_return_val_if_fail (scene != NULL && scene->n_knots == 2, ((PpPoint) { 0, -1 }));

  slack = get_slack (scene, mass);
  *middle = slack.middle;
  return slack.up;
}

double
pp_hung_wire_length (const PpScene *scene,
                     const PpMass  *mass,
                     PpPoint        hook)
{
  PpPoint middle, up = pp_hung_find_up (scene, mass, &middle);
  double above = (hook.x - middle.x) * up.x + (hook.y - middle.y) * up.y;
  double short_of = fmax (LEAST_SAG - above, 0);

  hook.x += short_of * up.x;
  hook.y += short_of * up.y;
  return pp_point_distance (pp_scene_knot_place (scene, 0), hook)
         + pp_point_distance (pp_scene_knot_place (scene, 1), hook);
}

static PpPoint
turn (PpPoint p,
      double  degrees)
{
  double s = sin (degrees * G_PI / 180), c = cos (degrees * G_PI / 180);

  return (PpPoint) { c * p.x - s * p.y, s * p.x + c * p.y };
}

PpHangingMap
pp_hanging_map_fit (PpBox          box,
                    const PpPoint *hook,
                    double         tilt,
                    PpBox          area,
                    double         beside)
{
  PpHangingMap self = { .about = pp_box_middle (box), .tilt = tilt };
  const PpPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 },
                              { box.x0, box.y1 }, hook != NULL ? *hook : self.about };
  PpBox turned = pp_box_empty ();

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    turned = pp_box_add_point (turned, turn ((PpPoint) { corners[i].x - self.about.x,
                                                         corners[i].y - self.about.y }, tilt));
  self.scale = fmin (pp_box_width (area) / (pp_box_width (turned) + beside),
                     pp_box_height (area) / pp_box_height (turned));
  self.scale = CLAMP (self.scale, 0.01, SCALE_MAX);
  self.at.x = pp_box_middle (area).x
              - (pp_box_middle (turned).x + beside / 2) * self.scale;
  self.at.y = pp_box_middle (area).y - pp_box_middle (turned).y * self.scale;
  return self;
}

PpPoint
pp_hanging_map_to_px (const PpHangingMap *self,
                      PpPoint             mm)
{
  PpPoint p = turn ((PpPoint) { mm.x - self->about.x, mm.y - self->about.y }, self->tilt);

  return (PpPoint) { self->at.x + p.x * self->scale, self->at.y + p.y * self->scale };
}

PpPoint
pp_hanging_map_turn_back (const PpHangingMap *self,
                          PpPoint             moved)
{
  return turn ((PpPoint) { moved.x / self->scale, moved.y / self->scale }, -self->tilt);
}

PpBox
pp_hanging_map_get_box (const PpHangingMap *self,
                        PpBox               box)
{
  const PpPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 },
                              { box.x0, box.y1 } };
  PpBox turned = pp_box_empty ();

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    turned = pp_box_add_point (turned, pp_hanging_map_to_px (self, corners[i]));
  return turned;
}
