/* joint.c: what glue holds a placement: the dabs there is room for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The upward pass. Dabs are set one after another where the gap can be filled: each place has a
 * score, and the greatest wins, ties going to the first by row and column.
 */
#include "check/joint.h"

#include "check/fillable.h"
#include "check/finding.h"
#include "check/loops.h"

#include <string.h>

/* Where dabs may be centred, row by row from the top, each from the left. */
typedef struct
{
  guint   n;
  guint  *cell;     /* in the bed */
  double *x;        /* mm from the centre of mass */
  double *y;
  double *gap;
  double *diameter;
  double *score;    /* mm²; PP_LOOP_NEVER: not at all */
} Places;

static double
diameter_of (const PpFillableRun *run,
             double               dab)
{
  return fmin (dab, 2 * PP_CELL * sqrt (run->farthest));
}

/* Regions too small for a dab take none, unless all are: then the largest do. */
static double
find_least_diameter (const PpFillable *self,
                     double            dab,
                     double            small)
{
  double greatest = 0;

  for (guint r = 0; r < self->runs->len; r++)
    greatest = fmax (greatest, diameter_of (pp_fillable_run (self, r), dab));
  return fmin (small, greatest);
}

/* The least squared distance that leaves room for a dab. */
static int
find_room (double diameter)
{
  int least = (int) fmax (0, floor (pow ((diameter / 2 - PP_TIE) / PP_CELL, 2)) - 1);

  while (pp_is_under (PP_CELL * sqrt (least), diameter / 2))
    least++;
  return least;
}

static void
places_init (Places *self,
             guint   n,
             PpRoom *room)
{
  gsize column = n * sizeof (double);

  *self = (Places) {
    .cell = pp_room_take (room, n * sizeof (guint)),
    .x = pp_room_take (room, column),
    .y = pp_room_take (room, column),
    .gap = pp_room_take (room, column),
    .diameter = pp_room_take (room, column),
    .score = pp_room_take (room, column),
  };
}

/* `n` cells of a run from the `start` on. */
static void
add_stretch (const PpBed         *bed,
             const PpFillableRun *run,
             guint                start,
             guint                n,
             double               diameter,
             Places              *places)
{
  PpPoint centroid = bed->body->centroid;
  guint p = places->n, first = run->first + start;

  pp_loop_columns (pp_cell_centre (run->span.i0 + (int) start) - centroid.x, n, places->x + p);
  pp_loop_fill (pp_cell_centre (run->span.j) - centroid.y, n, places->y + p);
  memcpy (places->gap + p, bed->gap + first, n * sizeof (double));
  for (guint i = 0; i < n; i++)
    {
      places->diameter[p + i] = diameter;
      places->score[p + i] = PP_LOOP_FAR;
    }
  for (guint i = 0; i < n; i++)
    places->cell[p + i] = first + i;
  places->n += n;
}

/* `has_room` has room for each cell. */
static void
add_places (const PpFillable    *self,
            const PpFillableRun *run,
            double               diameter,
            int                  least,
            guint8              *has_room,
            Places              *places)
{
  guint n = pp_fillable_count (run), first, end = 0;

  pp_loop_no_nearer (run->squared, n, least, has_room);
  while (pp_loop_find_stretch (has_room, n, &first, &end))
    add_stretch (self->bed, run, first, end - first, diameter, places);
}

static void
find_places (const PpFillable *self,
             double            dab,
             double            small,
             Places           *places)
{
  double least = find_least_diameter (self, dab, small), last = 0;
  guint8 *has_room = pp_room_take (self->bed->room, self->bed->n);
  int room = 0; /* for the last diameter */

  places_init (places, self->bed->n, self->bed->room);
  for (guint r = 0; r < self->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (self, r);
      double diameter = diameter_of (run, dab);

      if (diameter <= 0 || pp_is_under (diameter, least))
        continue;
      if (diameter != last)
        room = find_room (diameter);
      last = diameter;
      add_places (self, run, diameter, room, has_room, places);
    }
}

static double
reach_of (const Places *places,
          guint         p)
{
  return places->x[p] * places->x[p] + places->y[p] * places->y[p];
}

/* The nearest to the centre of mass; if any place is in contact, of those. FALSE without a
 * place. */
static gboolean
pick_first (const Places *places,
            double        contact,
            guint        *which)
{
  double least, least_touching;
  gboolean any;

  pp_loop_nearest (places->x, places->y, places->gap, places->n, contact + PP_TIE, &least,
                   &least_touching);
  any = least_touching < PP_LOOP_FAR;
  least = sqrt (any ? least_touching : least) + PP_TIE;
  for (guint p = 0; p < places->n; p++)
    if (reach_of (places, p) <= least * least
        && (!any || !pp_is_over (places->gap[p], contact)))
      {
        *which = p;
        return TRUE;
      }
  return FALSE;
}

#define BLOCK 64 /* places that are passed over together */

/* The first of those with a score of `least` or more, of which there is one. */
static guint
find_score (const Places *places,
            double        least)
{
  guint p = 0;

  while (p + BLOCK < places->n && pp_loop_greatest (places->score + p, BLOCK) < least)
    p += BLOCK;
  while (places->score[p] < least)
    p++;
  return p;
}

/* The place that is farthest from its nearest dab, once one is laid at the place `laid`. FALSE if
 * none is left. */
static gboolean
pick_next (const Places *places,
           guint         laid,
           guint        *which)
{
  double best = pp_loop_farthest (places->x, places->y, places->diameter, places->n,
                                  places->x[laid], places->y[laid], places->diameter[laid],
                                  places->score);
  double least;

  if (best <= PP_LOOP_NEVER)
    return FALSE;
  least = fmax (0, sqrt (best) - PP_TIE);
  *which = find_score (places, least * least);
  return TRUE;
}

static PpDab
make_dab (const PpFillable *self,
          const PpPanel    *panel,
          const Places     *places,
          guint             place)
{
  const PpBed *bed = self->bed;
  guint k = places->cell[place];
  const PpFillableRun *run = pp_fillable_find_run (self, k);
  int i = run->span.i0 + (int) (k - run->first), j = run->span.j;
  double glue = pp_fillable_glue_around (self, i, j, places->diameter[place] / 2);

  return (PpDab) {
    .at = { pp_cell_centre (i), pp_cell_centre (j) },
    .diameter = places->diameter[place],
    .volume = fmax (pp_panel_get_limit (panel, PP_LIMIT_DAB_LEAST),
                    pp_panel_get_limit (panel, PP_LIMIT_WASTE) * glue),
    .underside = bed->gap[k] + run->below[k - run->first],
    .owner = run->owner[k - run->first],
  };
}

static void
set_dabs (const PpFillable *self,
          const PpPanel    *panel,
          PpJoint          *joint)
{
  Places places;
  guint place = 0;
  gboolean found;

  find_places (self, pp_panel_get_limit (panel, PP_LIMIT_DAB),
               pp_panel_get_limit (panel, PP_LIMIT_DAB_SMALL), &places);
  found = pick_first (&places, pp_panel_get_limit (panel, PP_LIMIT_CONTACT), &place);
  while (found)
    {
      joint->places[joint->n_places++] = make_dab (self, panel, &places, place);
      found = joint->n_places < PP_MAX_DABS && pick_next (&places, place, &place);
    }
}

PpJoint *
pp_joint_new (const PpScene *scene,
              const PpBed   *bed,
              const PpRest  *rest)
{
  const PpPanel *panel = scene->panel;
  PpJoint *self = g_atomic_rc_box_new0 (PpJoint);
  PpFillable fillable;

  self->load = (PpLoad) { NAN, NAN, NAN };
  self->utilisation = NAN;
  if (rest->state == PP_STATE_FLOATS)
    return self;
  pp_fillable_init (&fillable, bed, panel->adhesive->fill_gap,
                    pp_panel_get_limit (panel, PP_LIMIT_BOND),
                    pp_panel_get_limit (panel, PP_LIMIT_DAB));
  pp_fillable_sum_up (&fillable, &self->area, &self->capacity);
  set_dabs (&fillable, panel, self);
  pp_fillable_clear (&fillable);
  return self;
}

PpJoint *
pp_joint_ref (PpJoint *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
pp_joint_unref (PpJoint *self)
{
  if (self != NULL)
    g_atomic_rc_box_release (self);
}
