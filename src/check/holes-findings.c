/* holes-findings.c: where holes may be drilled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All distances are from the rim. A hole whose centre lies beyond the edge has a negative distance:
 * that of its centre, and its radius more.
 */
#include "check/questions.h"

#include "panel/hole-name.h"
#include "panel/hole-rules.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/polygon.h"

#define WIRE_PLAY 0.5         /* mm a hole is wider than its wire */
#define SHARP_TURN 30.0       /* degrees at a vertex that make it a corner */

typedef struct
{
  PpFindings    *findings;
  const PpScene *scene;
  const PpHole  *hole;
  PpPoint        centre;
  double         radius;
  double         thickness; /* of the glass there, mm */
} Drilling;

static void
say (const Drilling *self,
     const char     *code,
     PpLevel         level,
     PpOrigin        origin,
     double          value,
     double          limit,
     const char     *other,
     char           *text)
{
  const char * const about[] = { self->hole->id, other, NULL };

  pp_findings_add (self->findings,
                   (PpFinding) { .code = code,
                                 .level = level,
                                 .origin = origin,
                                 .at = self->centre,
                                 .about = about,
                                 .value = value,
                                 .limit = limit },
                   text);
}

static char *
length (const Drilling *self,
        double          mm)
{
  return pp_length_format (mm, self->scene->panel->units);
}

static const char *
name_of (const Drilling *self)
{
  return pp_hole_name (self->hole->id);
}

static void
ask_edge (const Drilling *self)
{
  double least = pp_hole_least_edge (self->thickness);
  double wanted = pp_hole_wanted_edge (self->thickness);
  double enough = fmax (least, wanted) + self->radius;
  gboolean inside = pp_region_contains (self->scene->background, self->centre);
  double border = pp_bands_distance (self->scene->background_bands, self->centre,
                                     inside ? enough : (double) INFINITY);
  double distance = (inside ? border : -border) - self->radius;
  g_autofree char *is = NULL;
  g_autofree char *fault = NULL;
  g_autofree char *caution = NULL;

  if (inside && border >= enough)
    return;
  is = length (self, fmax (distance, 0));
  fault = length (self, least);
  caution = length (self, wanted);
  if (pp_is_under (distance, 0))
    say (self, "hole-edge", PP_LEVEL_FAULT, PP_ORIGIN_OWN, distance, least, NULL,
         g_strdup_printf (_("The %s hole lies across the edge of the glass. Move it inward, at "
                            "least %s from the edge."), name_of (self), fault));
  else if (pp_is_under (distance, least))
    say (self, "hole-edge", PP_LEVEL_FAULT, PP_ORIGIN_OWN, distance, least, NULL,
         g_strdup_printf (_("The %s hole is %s from the edge and the glass may crack. Keep it at "
                            "least %s away."), name_of (self), is, fault));
  else if (pp_is_under (distance, wanted) && !self->hole->drilled)
    say (self, "hole-edge", PP_LEVEL_CAUTION, PP_ORIGIN_STANDARD, distance, wanted, NULL,
         g_strdup_printf (_("The %s hole is only %s from the edge; %s is safer. Move it inward."),
                          name_of (self), is, caution));
}

static void
ask_wire (const Drilling *self)
{
  const PpWire *wire = self->scene->panel->wire;
  double diameter = self->hole->diameter;
  double needed = wire != NULL ? wire->diameter + WIRE_PLAY : 0;

  if (!pp_wire_ends_in (wire, self->hole->id))
    return;
  if (pp_is_under (diameter, needed))
    {
      g_autofree char *wide = length (self, needed);

      say (self, "hole-wire", PP_LEVEL_FAULT, PP_ORIGIN_OWN, diameter, needed, NULL,
           g_strdup_printf (_("The wire does not go through the %s hole. Drill it at least %s "
                              "wide."), name_of (self), wide));
    }
  if (pp_is_under (wire->knot_diameter, diameter + PP_KNOT_GRIP))
    say (self, "knot-small", PP_LEVEL_CAUTION, PP_ORIGIN_OWN, wire->knot_diameter,
         diameter + PP_KNOT_GRIP, NULL,
         g_strdup_printf (_("The knot may pull through the %s hole. Make it thicker, or drill "
                            "smaller."), name_of (self)));
}

static void
ask_part (const Drilling *self,
          const PpPart   *part)
{
  const char *name = pp_fused_get_title (part->fused);

  if (pp_is_under (pp_bands_distance (part->bands, self->centre, INFINITY), self->radius))
    say (self, "hole-border", PP_LEVEL_FAULT, PP_ORIGIN_OWN, NAN, NAN, part->fused->id,
         g_strdup_printf (_("The %s hole cuts the border of %s, where glass cracks first. Move it "
                            "inside or outside."), name_of (self), name));
  if (part->insert != NULL
      && (pp_region_contains (part->insert, self->centre)
          || pp_is_under (pp_region_point_to_border (part->insert, self->centre), self->radius)))
    say (self, "hole-pocket", PP_LEVEL_FAULT, PP_ORIGIN_OWN, NAN, NAN, part->fused->id,
         g_strdup_printf (_("The %s hole opens into the pocket of %s. Move it away."),
                          name_of (self), name));
}

static void
ask_size (const Drilling *self)
{
  const PpBackground *background = self->scene->panel->background;
  double diameter = self->hole->diameter;
  double least = pp_hole_least_diameter (self->thickness);
  double most = fmin (background->width, background->height) / 3;

  if (pp_is_under (diameter, least))
    {
      g_autofree char *fine = length (self, least);

      say (self, "hole-small", PP_LEVEL_NOTE, PP_ORIGIN_STANDARD, diameter, least, NULL,
           g_strdup_printf (_("The %s hole is small for glass this thick; %s or more is drilled "
                              "more safely."), name_of (self), fine));
    }
  if (pp_is_over (diameter, most))
    {
      g_autofree char *wide = length (self, most);

      say (self, "hole-large", PP_LEVEL_NOTE, PP_ORIGIN_STANDARD, diameter, most, NULL,
           g_strdup_printf (_("The %s hole is wide for this glass; at most %s is advised."),
                            name_of (self), wide));
    }
}

static void
add_corner (GArray *corners,
            double  x,
            double  y)
{
  PpPoint p = { x, y };

  g_array_append_val (corners, p);
}

/* Degrees by which the border turns at b, positive where it is convex. */
static double
turn_at (PpPoint a,
         PpPoint b,
         PpPoint c,
         double  sense)
{
  double ux = b.x - a.x, uy = b.y - a.y, vx = c.x - b.x, vy = c.y - b.y;
  double turn = atan2 (ux * vy - uy * vx, ux * vx + uy * vy) * 180 / G_PI;

  return sense > 0 ? turn : -turn;
}

static void
add_free_corners (GArray          *corners,
                  const PpOutline *outline)
{
  guint n, kept = 0;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  g_autofree PpPoint *p = g_new (PpPoint, n);
  double sense = pp_ring_area (ring, n);

  for (guint i = 0; i + 1 < n; i++) /* without repeats and without the closing position */
    if (ring[i].x != ring[i + 1].x || ring[i].y != ring[i + 1].y)
      p[kept++] = ring[i];
  for (guint i = 0; i < kept; i++)
    if (pp_is_over (turn_at (p[(i + kept - 1) % kept], p[i], p[(i + 1) % kept], sense), SHARP_TURN))
      add_corner (corners, p[i].x, p[i].y);
}

/* Corners of the background: taken sharp where they are rounded. */
static GArray *
find_corners (const PpBackground *background)
{
  GArray *corners = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  double w = background->width, h = background->height;

  switch (background->shape)
    {
    case PP_SHAPE_RECTANGLE:
      add_corner (corners, 0, 0);
      add_corner (corners, w, 0);
      G_GNUC_FALLTHROUGH;
    case PP_SHAPE_ARCH:
      add_corner (corners, 0, h);
      add_corner (corners, w, h);
      break;
    case PP_SHAPE_FREE:
      add_free_corners (corners, background->outline);
      break;
    case PP_SHAPE_ELLIPSE:
      break;
    }
  return corners;
}

static void
ask_corner (const Drilling *self,
            GArray         *corners)
{
  double nearest = INFINITY, limit = PP_HOLE_CORNER_FACTOR * self->thickness;
  g_autofree char *is = NULL;
  g_autofree char *wanted = NULL;

  for (guint i = 0; i < corners->len; i++)
    nearest = fmin (nearest, pp_point_distance (g_array_index (corners, PpPoint, i), self->centre));
  nearest -= self->radius;
  if (!pp_is_under (nearest, limit))
    return;
  is = length (self, fmax (nearest, 0));
  wanted = length (self, limit);
  say (self, "hole-corner", PP_LEVEL_NOTE, PP_ORIGIN_STANDARD, nearest, limit, NULL,
       g_strdup_printf (_("The %s hole is %s from a corner; %s or more is safer for drilling."),
                        name_of (self), is, wanted));
}

static void
ask_neighbour (const Drilling *self,
               const Drilling *other)
{
  double distance = pp_point_distance (self->centre, other->centre) - self->radius - other->radius;
  double limit = pp_hole_least_between (self->thickness, other->thickness);
  g_autofree char *is = NULL;
  g_autofree char *wanted = NULL;

  if ((self->hole->drilled && other->hole->drilled) || !pp_is_under (distance, limit))
    return;
  is = length (self, fmax (distance, 0));
  wanted = length (self, limit);
  say (self, "hole-hole", PP_LEVEL_NOTE, PP_ORIGIN_STANDARD, distance, limit, other->hole->id,
       g_strdup_printf (_("The holes %s and %s are %s apart; %s or more is safer."),
                        name_of (self), name_of (other), is, wanted));
}

static Drilling
drilling_of (PpFindings    *findings,
             const PpScene *scene,
             guint          index)
{
  const PpHole *hole = pp_panel_hole (scene->panel, index);
  PpPoint centre = { hole->x, hole->y };

  return (Drilling) { findings, scene, hole, centre, hole->diameter / 2,
                      pp_scene_thickness_at (scene, centre) };
}

void
pp_ask_holes (PpFindings    *findings,
              const PpCheck *check)
{
  const PpScene *scene = check->scene;
  g_autoptr (GArray) corners = find_corners (scene->panel->background);

  for (guint i = 0; i < scene->panel->holes->len; i++)
    {
      const Drilling drilling = drilling_of (findings, scene, i);

      ask_edge (&drilling);
      ask_wire (&drilling);
      for (guint k = 0; k < scene->n_parts; k++)
        ask_part (&drilling, &scene->parts[k]);
      if (!drilling.hole->drilled)
        {
          ask_size (&drilling);
          ask_corner (&drilling, corners);
        }
      for (guint k = 0; k < i; k++)
        {
          const Drilling other = drilling_of (findings, scene, k);

          ask_neighbour (&other, &drilling);
        }
    }
}
