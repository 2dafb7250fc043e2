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

/* Where dabs may be centred, row by row from the top, each from the left. */
typedef struct
{
  GArray *rows;  /* PpLoopPlaces */
  double *score; /* of all, mm²; PP_LOOP_NEVER: not at all */
  guint   n;     /* of these */
} Places;

/* The `i`-th of a row. */
typedef struct
{
  guint row;
  guint i;
} Place;

static PpLoopPlaces *
get_row (const Places *self,
         guint         r)
{
  return &g_array_index (self->rows, PpLoopPlaces, r);
}

/* mm from the centre of mass. */
static PpPoint
get_point (const Places *self,
           Place         place)
{
  const PpLoopPlaces *row = get_row (self, place.row);

  return (PpPoint) { pp_loop_column (row->x, place.i), row->y };
}

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

/* `n` cells of a run from the `start` on. */
static void
add_row (const PpBed         *bed,
         const PpFillableRun *run,
         guint                start,
         guint                n,
         double               diameter,
         Places              *places)
{
  PpPoint centroid = bed->body->centroid;
  PpLoopPlaces row = {
    .cell = run->first + start,
    .n = n,
    .x = pp_cell_centre (run->span.i0 + (int) start) - centroid.x,
    .y = pp_cell_centre (run->span.j) - centroid.y,
    .diameter = diameter,
  };

  g_array_append_val (places->rows, row);
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
    add_row (self->bed, run, first, end - first, diameter, places);
}

static void
places_init (Places           *self,
             const PpFillable *fillable,
             double            dab,
             double            small)
{
  double least = find_least_diameter (fillable, dab, small), last = 0;
  PpRoom *memory = fillable->bed->room;
  guint8 *has_room = pp_room_take (memory, fillable->bed->n);
  int room = 0; /* for the last diameter */

  *self = (Places) { .rows = g_array_sized_new (FALSE, FALSE, sizeof (PpLoopPlaces),
                                                fillable->runs->len) };
  for (guint r = 0; r < fillable->runs->len; r++)
    {
      const PpFillableRun *run = pp_fillable_run (fillable, r);
      double diameter = diameter_of (run, dab);

      if (diameter <= 0 || pp_is_under (diameter, least))
        continue;
      if (diameter != last)
        room = find_room (diameter);
      last = diameter;
      add_places (fillable, run, diameter, room, has_room, self);
    }
  self->score = pp_room_take (memory, self->n * sizeof *self->score);
  pp_loop_fill (PP_LOOP_FAR, self->n, self->score);
}

static void
places_clear (Places *self)
{
  g_array_unref (self->rows);
}

static double
square_reach (PpPoint p)
{
  return p.x * p.x + p.y * p.y;
}

/* Whether a place of the row may be as near to the centre of mass as that, mm². */
static gboolean
may_reach (const PpLoopPlaces *row,
           double              squared)
{
  double x = CLAMP (0, row->x, pp_loop_column (row->x, row->n - 1));

  return square_reach ((PpPoint) { x, row->y }) <= squared;
}

/* The nearest to the centre of mass; if any place is in contact, of those. FALSE without a
 * place. */
static gboolean
pick_first (const Places *self,
            const double *gap,
            double        contact,
            Place        *which)
{
  double least, least_touching;
  gboolean any;

  pp_loop_nearest ((const PpLoopPlaces *) self->rows->data, self->rows->len, gap,
                   contact + PP_TIE, &least, &least_touching);
  any = least_touching < PP_LOOP_FAR;
  least = sqrt (any ? least_touching : least) + PP_TIE;
  for (guint r = 0; r < self->rows->len; r++)
    {
      const PpLoopPlaces *row = get_row (self, r);

      if (!may_reach (row, least * least))
        continue;
      for (guint i = 0; i < row->n; i++)
        if (square_reach (get_point (self, (Place) { r, i })) <= least * least
            && (!any || !pp_is_over (gap[row->cell + i], contact)))
          {
            *which = (Place) { r, i };
            return TRUE;
          }
    }
  return FALSE;
}

/* The first place with a score of `least` or more, of which there is one. */
static Place
find_score (const Places *self,
            double        least)
{
  const double *score = self->score;
  Place place = { 0, 0 };

  for (; get_row (self, place.row)->best < least; place.row++)
    score += get_row (self, place.row)->n;
  while (score[place.i] < least)
    place.i++;
  return place;
}

/* The place that is farthest from its nearest dab, once one is laid at the place `laid`. FALSE if
 * none is left. */
static gboolean
pick_next (Places *self,
           Place   laid,
           Place  *which)
{
  PpPoint at = get_point (self, laid);
  double best = pp_loop_farthest ((PpLoopPlaces *) self->rows->data, self->rows->len, at.x, at.y,
                                  get_row (self, laid.row)->diameter, self->score);
  double least;

  if (best <= PP_LOOP_NEVER)
    return FALSE;
  least = fmax (0, sqrt (best) - PP_TIE);
  *which = find_score (self, least * least);
  return TRUE;
}

static PpDab
make_dab (const PpFillable *self,
          const PpPanel    *panel,
          const Places     *places,
          Place             place)
{
  const PpLoopPlaces *row = get_row (places, place.row);
  guint k = row->cell + place.i;
  const PpFillableRun *run = pp_fillable_find_run (self, k);
  int i = run->span.i0 + (int) (k - run->first), j = run->span.j;
  double glue = pp_fillable_glue_around (self, i, j, row->diameter / 2);
  double level = run->underside == NULL ? 0 : run->underside[k - run->first];

  return (PpDab) {
    .at = { pp_cell_centre (i), pp_cell_centre (j) },
    .diameter = row->diameter,
    .volume = fmax (pp_panel_get_limit (panel, PP_LIMIT_DAB_LEAST),
                    pp_panel_get_limit (panel, PP_LIMIT_WASTE) * glue),
    .underside = self->bed->gap[k] + self->bed->h[k] + level,
    .owner = run->owner[k - run->first],
  };
}

static void
set_dabs (const PpFillable *self,
          const PpPanel    *panel,
          PpJoint          *joint)
{
  Places places;
  Place place = { 0, 0 };
  gboolean found;

  places_init (&places, self, pp_panel_get_limit (panel, PP_LIMIT_DAB),
               pp_panel_get_limit (panel, PP_LIMIT_DAB_SMALL));
  found = pick_first (&places, self->bed->gap, pp_panel_get_limit (panel, PP_LIMIT_CONTACT),
                      &place);
  while (found)
    {
      joint->places[joint->n_places++] = make_dab (self, panel, &places, place);
      found = joint->n_places < PP_MAX_DABS && pick_next (&places, place, &place);
    }
  places_clear (&places);
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
