/* joint-load.c: what each joint carries once the panel hangs, and the dabs that asks for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The downward pass. A load acts at its own x and height, and only its mass and first moments
 * enter the stresses, which are linear in them: so what a piece was handed is kept as three sums.
 */
#include "check/finding.h"
#include "check/mass.h"

#include <string.h>

/* What the strength formulas need of a joint's dabs. */
typedef struct
{
  double area;   /* mm² */
  double x;      /* centroid */
  double y;
  double z;      /* mean underside at the dabs' centres, by area */
  double second; /* mm⁴, second moment of area about the level line through the centroid */
  double polar;  /* mm⁴ */
  double edge;   /* mm, farthest glue above or below the centroid */
  double reach;  /* mm, farthest glue from it */
} Section;

static double
dab_area (const PpDab *dab)
{
  return G_PI * dab->diameter * dab->diameter / 4;
}

static void
find_centroid (Section     *self,
               const PpDab *dabs,
               guint        n)
{
  for (guint i = 0; i < n; i++)
    {
      double area = dab_area (&dabs[i]);

      self->area += area;
      self->x += area * dabs[i].at.x;
      self->y += area * dabs[i].at.y;
      self->z += area * dabs[i].underside;
    }
  self->x /= self->area;
  self->y /= self->area;
  self->z /= self->area;
}

static Section
section_of (const PpDab *dabs,
            guint        n)
{
  Section self = { 0 };

  find_centroid (&self, dabs, n);
  for (guint i = 0; i < n; i++)
    {
      double area = dab_area (&dabs[i]);
      double dx = dabs[i].at.x - self.x, dy = dabs[i].at.y - self.y;
      double squared = dabs[i].diameter * dabs[i].diameter, fourth = G_PI * squared * squared;

      self.second += fourth / 64 + area * dy * dy;
      self.polar += fourth / 32 + area * (dx * dx + dy * dy);
      self.edge = fmax (self.edge, fabs (dy) + dabs[i].diameter / 2);
      self.reach = fmax (self.reach, hypot (dx, dy) + dabs[i].diameter / 2);
    }
  return self;
}

static double
utilisation_of (const PpDab  *dabs,
                guint         n,
                const PpLoad *load,
                double        working_stress)
{
  const double newtons = PP_GRAVITY / 1000; /* a gram */
  Section section = section_of (dabs, n);
  double overturning = newtons * (load->mass_z - load->mass * section.z); /* N·mm */
  double twist = newtons * (load->mass_x - load->mass * section.x);
  double sigma = fabs (overturning) * section.edge / section.second; /* MPa */
  double tau = newtons * load->mass / section.area + fabs (twist) * section.reach / section.polar;

  return sqrt (sigma * sigma + 3 * tau * tau) / working_stress;
}

/* The underside at the centres of its dabs, by their areas. */
static double
get_dabs_height (const PpJoint *joint)
{
  double area = 0, moment = 0;

  for (guint d = 0; d < joint->n_dabs; d++)
    {
      const PpDab *dab = &joint->places[d];

      area += dab->diameter * dab->diameter;
      moment += dab->diameter * dab->diameter * dab->underside;
    }
  return area > 0 ? moment / area : 0;
}

static guint
dabs_for_length (double length,
                 double every)
{
  return (guint) CLAMP (ceil ((length - PP_TIE) / every), 1, PP_MAX_DABS);
}

static void
take_dabs (PpJoint       *joint,
           const PpPanel *panel,
           double         length)
{
  double strain = pp_panel_get_limit (panel, PP_LIMIT_STRAIN);
  guint least = dabs_for_length (length, pp_panel_get_limit (panel, PP_LIMIT_DAB_EVERY));

  joint->n_dabs = MIN (least, joint->n_places);
  joint->utilisation = NAN;
  joint->volume = 0;
  joint->height = 0;
  if (joint->n_dabs == 0)
    return;
  for (;; joint->n_dabs++)
    {
      joint->utilisation = utilisation_of (joint->places, joint->n_dabs, &joint->load,
                                           panel->adhesive->working_stress);
      if (joint->n_dabs == joint->n_places || !pp_is_over (joint->utilisation, strain))
        break;
    }
  for (guint d = 0; d < joint->n_dabs; d++)
    joint->volume += joint->places[d].volume;
  joint->height = get_dabs_height (joint);
}

/* Takes the joint. (transfer full) */
static PpJoint *
take_load (PpJoint       *joint,
           const PpPanel *panel,
           double         length,
           const PpLoad  *load)
{
  PpJoint *other;

  if (memcmp (&joint->load, load, sizeof *load) == 0)
    return joint;
  if (!isnan (joint->load.mass)) /* of a check before */
    {
      other = g_atomic_rc_box_dup (sizeof *joint, joint);
      pp_joint_unref (joint);
      joint = other;
    }
  joint->load = *load;
  take_dabs (joint, panel, length);
  return joint;
}

static void
add_load (PpLoad       *self,
          const PpLoad *other,
          double        share)
{
  self->mass += share * other->mass;
  self->mass_x += share * other->mass_x;
  self->mass_z += share * other->mass_z;
}

/* Glue carries, not touch: what lies under a dab's centre gets the share of its area. */
static void
hand_on (const PpJoint *joint,
         const PpLoad  *load,
         PpLoad        *loads)
{
  double area = 0;

  for (guint d = 0; d < joint->n_dabs; d++)
    area += dab_area (&joint->places[d]);
  for (guint d = 0; d < joint->n_dabs; d++)
    {
      const PpDab *dab = &joint->places[d];

      if (pp_owner_kind (dab->owner) == PP_OWNER_PLACEMENT)
        add_load (&loads[pp_owner_index (dab->owner)], load, dab_area (dab) / area);
    }
}

void
pp_joints_take_loads (PpJoint      **joints,
                      PpRest       **rests,
                      const PpScene *scene)
{
  g_autofree PpLoad *loads = g_new0 (PpLoad, scene->n_bodies);

  for (guint i = scene->n_bodies; i-- > 0;)
    {
      const PpBody *body = scene->bodies[i];
      PpLoad own;

      if (rests[i]->state == PP_STATE_FLOATS)
        continue;
      own = (PpLoad) { body->mass, body->mass * body->centroid.x,
                     body->mass * rests[i]->middle };
      add_load (&loads[i], &own, 1);
      joints[i] = take_load (joints[i], scene->panel, body->length, &loads[i]);
      hand_on (joints[i], &loads[i], loads);
    }
}
