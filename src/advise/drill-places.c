/* drill-places.c: where a hole may be: what is hidden there, and how far the limits are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/drill-private.h"

#include "advise/glance.h"
#include "panel/hole-rules.h"
#include "panel/tolerance.h"

#define GRID 3 /* squares from place to place */

enum
{
  HIDES_KNOT = 1, /* by pieces alone */
  HIDES_WIRE = 2, /* with glass and fused parts */
};

const PpHole *
pp_drill_hole (const PpDrill *self,
               guint          k)
{
  return pp_scene_knot_hole (self->check->scene, k);
}

void
pp_drill_look (PpDrill *self)
{
  g_autoptr (PpGlance) glance = pp_glance_new (self->check);

  self->mask = g_new0 (guint8, (gsize) self->columns * self->rows);
  for (int j = 0; j < self->rows; j++)
    for (int i = 0; i < self->columns; i++)
      {
        PpPoint p = { self->box.x0 + (i + 0.5) * self->step,
                      self->box.y0 + (j + 0.5) * self->step };
        gint32 bare, dark = pp_glance_darkness (glance, p, &bare);

        self->mask[j * self->columns + i] = (dark >= PP_DARK ? HIDES_KNOT : 0)
                                            | (dark + bare >= PP_DARK ? HIDES_WIRE : 0);
      }
}

static gboolean
is_hidden (const PpDrill *self,
           PpPoint        p,
           guint          by)
{
  int i = (int) floor ((p.x - self->box.x0) / self->step);
  int j = (int) floor ((p.y - self->box.y0) / self->step);

  return i >= 0 && j >= 0 && i < self->columns && j < self->rows
         && (self->mask[j * self->columns + i] & by) != 0;
}

double
pp_drill_knot_shown (const PpDrill *self,
                     PpPoint        at)
{
  double radius = self->check->panel->wire->knot_diameter / 2;
  int reach = (int) ceil (radius / self->step);
  guint shown = 0;

  for (int j = -reach; j <= reach; j++)
    for (int i = -reach; i <= reach; i++)
      if (hypot (i, j) * self->step <= radius
          && !is_hidden (self, (PpPoint) { at.x + i * self->step, at.y + j * self->step },
                         HIDES_KNOT))
        shown++;
  return shown * self->step * self->step;
}

static double
leg_shown (const PpDrill *self,
           PpPoint        a,
           PpPoint        b)
{
  double length = pp_point_distance (a, b);
  guint n = (guint) ceil (length / self->step) + 1, shown = 0;

  for (guint k = 0; k < n; k++)
    {
      double share = (k + 0.5) / n;

      shown += !is_hidden (self, (PpPoint) { a.x + share * (b.x - a.x),
                                             a.y + share * (b.y - a.y) }, HIDES_WIRE);
    }
  return shown * length / n;
}

double
pp_drill_length_at (const PpDrill *self,
                    double         distance)
{
  const PpHang *hang = self->check->hang;
  double length = self->check->panel->wire->length;

  if (self->guard->wire || isnan (length) || hang->hole_distance <= 0
      || fabs (distance - hang->hole_distance) <= PP_TIE)
    return length;
  return length * distance / hang->hole_distance;
}

double
pp_drill_wire_shown (const PpDrill *self,
                     PpPoint        a,
                     PpPoint        b)
{
  double distance = pp_point_distance (a, b), length = pp_drill_length_at (self, distance);
  double sag = length > distance ? sqrt (length * length - distance * distance) / 2 : 0;
  PpPoint hook = { (a.x + b.x) / 2, (a.y + b.y) / 2 - sag };

  return leg_shown (self, a, hook) + leg_shown (self, hook, b);
}

void
pp_drill_measure (const PpDrill *self,
                  guint          k,
                  PpDrillPlace  *place)
{
  const PpScene *scene = self->check->scene;
  const PpPoint at = place->at;
  double radius = pp_drill_hole (self, k)->diameter / 2, spare = INFINITY, edge;

  for (guint i = 0; i < scene->n_parts; i++)
    {
      const PpPart *part = &scene->parts[i];

      spare = fmin (spare, pp_region_point_to_border (part->region, at) - radius);
      if (part->insert != NULL)
        spare = fmin (spare, pp_region_contains (part->insert, at)
                               ? -radius : pp_region_point_to_border (part->insert, at) - radius);
    }
  edge = pp_region_point_to_border (scene->background, at);
  if (!pp_region_contains (scene->background, at))
    edge = -edge;
  place->thickness = pp_scene_thickness_at (scene, at);
  place->spare = fmin (spare, edge - radius - pp_hole_wanted_edge (place->thickness));
}

/* FALSE if the hole cannot be there: mostly in view, or too near the edge or a border. */
static gboolean
look_at_place (const PpDrill *self,
               guint          k,
               PpPoint        at,
               PpDrillPlace  *place)
{
  double radius = self->check->panel->wire->knot_diameter / 2;
  double area = G_PI * radius * radius;

  if (!is_hidden (self, at, HIDES_KNOT) && !self->stays[k])
    return FALSE;
  *place = (PpDrillPlace) { .at = at, .shown = pp_drill_knot_shown (self, at) };
  if (place->shown > area / 2 && !self->stays[k])
    return FALSE;
  pp_drill_measure (self, k, place);
  return place->spare > -self->check->panel->background->thickness || self->stays[k];
}

GArray *
pp_drill_find_places (const PpDrill *self,
                      guint          k)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (PpDrillPlace));
  double grid = GRID * self->step, middle = self->check->mass.x;
  int n = (int) ceil (pp_box_width (self->box) / grid);
  PpDrillPlace place;

  if (self->stays[k])
    {
      const PpHole *hole = pp_drill_hole (self, k);

      look_at_place (self, k, (PpPoint) { hole->x, hole->y }, &place);
      g_array_append_val (places, place);
      return places;
    }
  for (double y = self->box.y0 + grid; y < self->box.y1; y += grid)
    for (int i = -n; i <= n; i++)
      if (look_at_place (self, k, (PpPoint) { middle + i * grid, y }, &place))
        g_array_append_val (places, place);
  return places;
}
