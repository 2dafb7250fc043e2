/* hang.c: how the panel hangs: hook, tilt, tensions, lean.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At the hook three forces meet: the pull of each leg and the weight. Where the hook can sit on a
 * slack wire is slack.h's business.
 */
#include "check/hang.h"

#include "check/finding.h"
#include "check/slack.h"

#define DEGREES (180 / G_PI)

/* How the panel is turned, clockwise, when it hangs with `centre` plumb below `hook`; 180 and not
 * -180 where it is upside down but for rounding. */
static double
tilt_below (PpPoint hook,
            PpPoint centre)
{
  double across = centre.x - hook.x;

  return atan2 (fabs (across) <= PP_TIE ? 0 : across, centre.y - hook.y) * DEGREES;
}

static double
cross (PpPoint a,
       PpPoint b)
{
  return a.x * b.y - a.y * b.x;
}

static PpPoint
direction (PpPoint from,
           PpPoint to)
{
  double distance = pp_point_distance (from, to);

  return (PpPoint) { (to.x - from.x) / distance, (to.y - from.y) / distance };
}

/* The pulls of the legs that together hold `weight` newtons along `gravity`, a unit vector; NAN
 * unless both pull. */
static void
find_tensions (const PpSlack *slack,
               PpPoint        hook,
               PpPoint        gravity,
               double         weight,
               double         tensions[2])
{
  PpPoint from = direction (hook, slack->from), to = direction (hook, slack->to);
  double between = cross (from, to);

  if (fabs (between) <= PP_TIE)
    between = 0; /* or rounding would share out what hangs on legs along one line */
  tensions[0] = weight * cross (gravity, to) / between;
  tensions[1] = weight * cross (from, gravity) / between;
  /* Written so that NAN, of a point without direction or legs on one line, does not pass. */
  if (!(isfinite (tensions[0]) && isfinite (tensions[1]) && pp_is_over (tensions[0], 0)
        && pp_is_over (tensions[1], 0)))
    tensions[0] = tensions[1] = NAN;
}

/* Euler-Eytelwein: ln of the ratio of pulls over the angle by which the wire turns at the hook. */
static double
find_friction (const PpSlack *slack,
               PpPoint        hook,
               const double   tensions[2])
{
  PpPoint on = direction (slack->from, hook), off = direction (hook, slack->to);
  double wrap = atan2 (fabs (cross (on, off)), on.x * off.x + on.y * off.y);

  return fabs (log (tensions[0] / tensions[1])) / wrap;
}

/* The lesser angle of a leg from the horizontal. */
static double
find_wire_angle (const PpSlack *slack,
                 PpPoint        hook)
{
  PpPoint from = direction (hook, slack->from), to = direction (hook, slack->to);

  return fmin (atan2 (fabs (from.y), fabs (from.x)), atan2 (fabs (to.y), fabs (to.x))) * DEGREES;
}

static void
hang_by_middle (PpHang        *self,
                const PpSlack *slack,
                PpPoint        centre,
                double         weight)
{
  PpPoint top = pp_slack_top (slack);

  self->middle_tilt = tilt_below (top, centre);
  find_tensions (slack, top, direction (top, centre), weight, self->middle_tension);
  self->hook = top;
  self->wire_angle = atan2 (slack->sag, slack->spread) * DEGREES;
}

static void
hang_level (PpHang        *self,
            const PpSlack *slack,
            PpPoint        centre,
            double         weight,
            double         friction)
{
  self->has_level = pp_slack_above (slack, centre.x, &self->level_hook);
  if (!self->has_level)
    return;
  find_tensions (slack, self->level_hook, (PpPoint) { 0, 1 }, weight, self->level_tension);
  self->friction_needed = find_friction (slack, self->level_hook, self->level_tension);
  self->holds = !isnan (self->friction_needed) && !pp_is_over (self->friction_needed, friction);
  self->hook = self->level_hook;
  self->wire_angle = find_wire_angle (slack, self->level_hook);
}

static void
let_slip (PpHang        *self,
          const PpSlack *slack,
          PpPoint        centre)
{
  PpPoint far[2];
  guint n = pp_slack_find_far (slack, centre, far);

  for (guint i = 0; i < n; i++)
    {
      double tilt = tilt_below (far[i], centre);

      if (pp_is_under (fabs (tilt), 90))
        self->slips_to[self->n_slips_to++] = tilt;
    }
  if (self->n_slips_to == 2 && self->slips_to[0] > self->slips_to[1])
    {
      double greater = self->slips_to[0];

      self->slips_to[0] = self->slips_to[1];
      self->slips_to[1] = greater;
    }
  self->self_levelling = pp_is_over (slack->sag * self->drop, slack->spread * slack->spread);
}

static void
use_wire (PpHang *self)
{
  const double legs[] = { self->middle_tension[0], self->middle_tension[1],
                          self->level_tension[0], self->level_tension[1] };

  for (guint i = 0; i < G_N_ELEMENTS (legs); i++)
    self->greatest_tension = fmax (self->greatest_tension, legs[i]); /* passes over NAN */
  self->wire_use = self->greatest_tension / self->allowed_tension;
}

static double
find_allowed (const PpPanel *panel)
{
  const PpWire *wire = panel->wire;

  if (!isnan (wire->safe_load))
    return wire->safe_load;
  return wire->breaking_load * pp_panel_get_limit (panel, PP_LIMIT_KNOT_EFFICIENCY)
         / pp_panel_get_limit (panel, PP_LIMIT_DESIGN_FACTOR);
}

/* Least y of the background on the upright at `x`, or of its box if that misses it. */
static double
find_edge_above (const PpScene *scene,
                 double         x)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (scene->background_outline, 0, &n);
  double top = INFINITY;

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint left = p[i].x < p[i + 1].x ? p[i] : p[i + 1];
      PpPoint right = p[i].x < p[i + 1].x ? p[i + 1] : p[i];

      if (pp_is_under (x, left.x) || pp_is_over (x, right.x))
        continue;
      if (right.x - left.x <= PP_TIE)
        top = fmin (top, fmin (left.y, right.y));
      else
        top = fmin (top, left.y + CLAMP ((x - left.x) / (right.x - left.x), 0, 1)
                                    * (right.y - left.y));
    }
  return isfinite (top) ? top : pp_background_get_box (scene->panel->background).y0;
}

/* The panel turns about the line of its holes at the back face, where the legs are limp. */
static void
lean_on_wall (PpHang        *self,
              const PpScene *scene,
              PpPoint        middle,
              const PpMass  *mass,
              double         weight)
{
  double forward = mass->z + scene->panel->background->thickness + scene->panel->wire->diameter / 2;
  double below = pp_background_get_box (scene->panel->background).y1 - middle.y;

  if (pp_is_over (self->drop, 0))
    self->lean = atan (forward / self->drop) * DEGREES;
  if (pp_is_over (below, 0))
    self->wall_push = weight * forward / below;
}

static PpHang
nothing_known (void)
{
  return (PpHang) {
    .hole_distance = NAN,
    .sag = NAN,
    .drop = NAN,
    .middle_tilt = NAN,
    .middle_tension = { NAN, NAN },
    .level_hook = { NAN, NAN },
    .level_tension = { NAN, NAN },
    .friction_needed = NAN,
    .hook = { NAN, NAN },
    .slips_to = { NAN, NAN },
    .greatest_tension = NAN,
    .allowed_tension = NAN,
    .wire_use = NAN,
    .wire_angle = NAN,
    .hook_above_edge = NAN,
    .lean = NAN,
    .wall_push = NAN,
  };
}

void
pp_hang_init (PpHang        *self,
              const PpScene *scene,
              const PpMass  *mass)
{
  const PpWire *wire = scene->panel->wire;
  const PpPoint centre = { mass->x, mass->y };
  const double weight = mass->total * PP_GRAVITY / 1000; /* N */
  PpPoint from, to;
  PpSlack slack;

  *self = nothing_known ();
  g_return_if_fail (scene->n_knots == 2);
  from = (PpPoint) { pp_scene_knot_hole (scene, 0)->x, pp_scene_knot_hole (scene, 0)->y };
  to = (PpPoint) { pp_scene_knot_hole (scene, 1)->x, pp_scene_knot_hole (scene, 1)->y };
  slack = pp_slack_of (from, to, isnan (wire->length) ? 0 : wire->length, centre);
  self->hole_distance = 2 * slack.spread;
  self->is_taut = !pp_is_over (2 * slack.half, self->hole_distance);
  self->drop = (slack.middle.x - centre.x) * slack.up.x + (slack.middle.y - centre.y) * slack.up.y;
  self->allowed_tension = find_allowed (scene->panel);
  lean_on_wall (self, scene, slack.middle, mass, weight);
  if (self->is_taut)
    return;
  self->sag = slack.sag;
  hang_by_middle (self, &slack, centre, weight);
  hang_level (self, &slack, centre, weight, wire->friction);
  let_slip (self, &slack, centre);
  use_wire (self);
  self->hook_above_edge = fmax (0, find_edge_above (scene, self->hook.x) - self->hook.y);
}
