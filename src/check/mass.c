/* mass.c: how heavy the finished panel is, where its mass is centred, and its extent.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/mass.h"

#define G_PER_MM3 1e-6 /* of 1 kg/m³ */

/* Sums up mass, and mass times place. */
static void
add (PpMass *sum,
     double  grams,
     double  x,
     double  y,
     double  z)
{
  sum->total += grams;
  sum->x += grams * x;
  sum->y += grams * y;
  sum->z += grams * z;
}

/* A hole takes a whole disc out of each layer that holds its centre. */
static void
take_out_hole (PpMass        *sum,
               const PpScene *scene,
               const PpHole  *hole)
{
  const PpBackground *background = scene->panel->background;
  PpPoint centre = { hole->x, hole->y };
  double area = G_PI * hole->diameter * hole->diameter / 4;

  add (sum, -area * background->thickness * background->glass.density * G_PER_MM3, centre.x,
       centre.y, -background->thickness / 2);
  for (guint i = 0; i < scene->n_parts; i++)
    {
      const PpFused *fused = scene->parts[i].fused;

      if (pp_part_contains (&scene->parts[i], centre))
        add (sum,
             -area * fused->thickness * pp_panel_get_fused_density (scene->panel, fused)
               * G_PER_MM3,
             centre.x, centre.y, fused->thickness / 2);
    }
}

static void
add_glass (PpMass        *sum,
           const PpScene *scene)
{
  const PpPanel *panel = scene->panel;
  const PpBackground *background = panel->background;

  add (sum, scene->background_area * background->thickness * background->glass.density * G_PER_MM3,
       scene->background_centroid.x, scene->background_centroid.y, -background->thickness / 2);
  for (guint i = 0; i < scene->n_parts; i++)
    {
      const PpPart *part = &scene->parts[i];

      add (sum,
           part->area * part->fused->thickness * pp_panel_get_fused_density (panel, part->fused)
             * G_PER_MM3,
           part->centroid.x, part->centroid.y, part->fused->thickness / 2);
    }
  for (guint i = 0; i < panel->holes->len; i++)
    take_out_hole (sum, scene, pp_panel_hole (panel, i));
}

static void
add_pieces (PpMass        *sum,
            const PpScene *scene,
            PpRest       **rests,
            PpJoint      **joints)
{
  double density = scene->panel->adhesive->density; /* g/ml */

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      const PpJoint *joint = joints[i];

      if (rests[i]->state == PP_STATE_FLOATS)
        continue;
      add (sum, body->mass, body->centroid.x, body->centroid.y, rests[i]->middle);
      for (guint d = 0; d < joint->n_dabs; d++)
        add (sum, joint->places[d].volume * density, joint->places[d].at.x, joint->places[d].at.y,
             joint->height);
    }
}

static void
add_wire (PpMass        *sum,
          const PpScene *scene)
{
  const PpWire *wire = scene->panel->wire;
  double length;
  PpPoint middle;

  if (wire == NULL)
    return;
  length = pp_panel_get_wire_length (scene->panel);
  middle = pp_panel_get_hole_middle (scene->panel);
  add (sum, wire->mass_per_metre * (length + 2 * wire->tail) / 1000, middle.x, middle.y,
       -scene->panel->background->thickness - wire->diameter / 2);
}

PpMass
pp_mass_of (const PpScene *scene,
            PpRest       **rests,
            PpJoint      **joints)
{
  PpMass sum = { 0 };

  add_glass (&sum, scene);
  add_pieces (&sum, scene, rests, joints);
  add_wire (&sum, scene);
  /* Holes may take out all there is of a background that exists on paper only. */
  if (sum.total <= 0)
    return (PpMass) { 0, scene->background_centroid.x, scene->background_centroid.y, 0 };
  return (PpMass) { sum.total, sum.x / sum.total, sum.y / sum.total, sum.z / sum.total };
}

PpExtent
pp_extent_of (const PpScene *scene,
              double         depth)
{
  PpBox box = pp_background_get_box (scene->panel->background);

  for (guint i = 0; i < scene->n_bodies; i++)
    box = pp_box_union (box, scene->bodies[i]->box);
  return (PpExtent) { pp_box_width (box), pp_box_height (box), depth };
}
