/* joint.c: what glue holds a placement: where it can be filled, and the dabs there is room for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The upward pass. Fillable cells stand on a grid of the piece's box, grown by one cell so that
 * its border is never fillable. The distance to the nearest cell that is not says how wide a dab
 * may be; regions are flooded from cell to cell. Then dabs are set one after another: each place
 * has a score, and the greatest wins, ties going to the first by row and column.
 */
#include "check/joint.h"

#include "check/distance.h"
#include "check/finding.h"

#define NOT_FILLABLE G_MAXUINT
#define NO_REGION G_MAXUINT
#define NEVER ((double) -INFINITY)

#define CELL_AREA (PP_CELL * PP_CELL)
#define MM3_PER_ML 1000.0

typedef struct
{
  const PpBed *bed;
  const PpRest *rest;
  double  bond;    /* mm */
  int     i0;      /* column and row of the grid's first cell */
  int     j0;
  int     width;
  int     height;
  guint  *cell;    /* of each square: its cell in the bed, or NOT_FILLABLE */
  int    *squared; /* in cells: distance to the nearest that is not fillable */
  guint  *region;  /* or NO_REGION */
  GArray *diameters; /* double, of each region's dabs; 0: it takes none */
} Ground;

/* Where a dab may be centred. */
typedef struct
{
  gsize  at;       /* in the grid */
  double diameter;
  double score;    /* the greatest is taken next, one that is NEVER not at all */
} Place;

static double
gap_of (const Ground *self,
        guint         k)
{
  return pp_bed_gap (self->bed, &self->rest->plane, k);
}

static double
glue_in_cell (const Ground *self,
              guint         k)
{
  return (gap_of (self, k) + self->bond) * CELL_AREA / MM3_PER_ML;
}

static void
find_fillable (Ground *self,
               double  fill_gap)
{
  const PpBed *bed = self->bed;
  gsize n = (gsize) self->width * (gsize) self->height;
  g_autofree gboolean *full = g_new0 (gboolean, n);

  self->cell = g_new (guint, n);
  for (gsize at = 0; at < n; at++)
    self->cell[at] = NOT_FILLABLE;
  for (guint k = 0; k < bed->n; k++)
    {
      gsize at = (gsize) (bed->j[k] - self->j0) * (gsize) self->width
                 + (gsize) (bed->i[k] - self->i0);

      if (pp_owner_kind (bed->owner[k]) == PP_OWNER_KNOT || pp_is_over (gap_of (self, k), fill_gap))
        continue;
      self->cell[at] = k;
      full[at] = TRUE;
    }
  self->squared = pp_distance_squared (full, self->width, self->height);
}

/* Marks all that hangs together with square `start`, and gives the greatest squared distance. */
static int
flood (Ground *self,
       gsize   start,
       guint   region,
       GArray *waiting)
{
  const gsize width = (gsize) self->width;
  int greatest = 0;

  self->region[start] = region;
  g_array_append_val (waiting, start);
  while (waiting->len > 0)
    {
      gsize at = g_array_index (waiting, gsize, waiting->len - 1);
      const gsize beside[] = { at - width, at - 1, at + 1, at + width };

      g_array_set_size (waiting, waiting->len - 1);
      greatest = MAX (greatest, self->squared[at]);
      for (guint s = 0; s < G_N_ELEMENTS (beside); s++)
        if (self->cell[beside[s]] != NOT_FILLABLE && self->region[beside[s]] == NO_REGION)
          {
            self->region[beside[s]] = region;
            g_array_append_val (waiting, beside[s]);
          }
    }
  return greatest;
}

static void
find_regions (Ground *self,
              double  dab)
{
  gsize n = (gsize) self->width * (gsize) self->height;
  g_autoptr (GArray) waiting = g_array_new (FALSE, FALSE, sizeof (gsize));

  self->region = g_new (guint, n);
  self->diameters = g_array_new (FALSE, FALSE, sizeof (double));
  for (gsize at = 0; at < n; at++)
    self->region[at] = NO_REGION;
  for (gsize at = 0; at < n; at++)
    if (self->cell[at] != NOT_FILLABLE && self->region[at] == NO_REGION)
      {
        int squared = flood (self, at, self->diameters->len, waiting);
        double diameter = fmin (dab, 2 * PP_CELL * sqrt (squared));

        g_array_append_val (self->diameters, diameter);
      }
}

/* Regions too small for a dab take none, unless all are: then the largest do. */
static void
leave_out_small (Ground *self,
                 double  small)
{
  double *diameters = (double *) self->diameters->data;
  double greatest = 0;

  for (guint r = 0; r < self->diameters->len; r++)
    greatest = fmax (greatest, diameters[r]);
  for (guint r = 0; r < self->diameters->len; r++)
    if (pp_is_under (diameters[r], fmin (small, greatest)))
      diameters[r] = 0;
}

/* Row by row from the top, each from the left. */
static GArray *
find_places (const Ground *self)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Place));
  gsize n = (gsize) self->width * (gsize) self->height;

  for (gsize at = 0; at < n; at++)
    {
      Place place = { .at = at };

      if (self->region[at] == NO_REGION)
        continue;
      place.diameter = g_array_index (self->diameters, double, self->region[at]);
      if (place.diameter > 0
          && !pp_is_under (PP_CELL * sqrt (self->squared[at]), place.diameter / 2))
        g_array_append_val (places, place);
    }
  return places;
}

/* Nearest to the centre of mass first; if any place is in contact, only those. */
static void
score_first (const Ground *self,
             GArray       *places,
             double        contact)
{
  gboolean any = FALSE;

  for (guint p = 0; p < places->len && !any; p++)
    any = !pp_is_over (gap_of (self, self->cell[g_array_index (places, Place, p).at]), contact);
  for (guint p = 0; p < places->len; p++)
    {
      Place *place = &g_array_index (places, Place, p);
      guint k = self->cell[place->at];

      place->score = any && pp_is_over (gap_of (self, k), contact)
                         ? NEVER
                         : -hypot (self->bed->x[k], self->bed->y[k]);
    }
}

static const Place *
pick (GArray *places)
{
  double best = NEVER;

  for (guint p = 0; p < places->len; p++)
    best = fmax (best, g_array_index (places, Place, p).score);
  for (guint p = 0; best > NEVER && p < places->len; p++)
    if (!pp_is_under (g_array_index (places, Place, p).score, best))
      return &g_array_index (places, Place, p);
  return NULL;
}

/* From the first dab on a place scores by its distance from the nearest one. */
static void
score_next (const Ground *self,
            GArray       *places,
            Place         laid,
            gboolean      is_first)
{
  guint k = self->cell[laid.at];

  for (guint p = 0; p < places->len; p++)
    {
      Place *place = &g_array_index (places, Place, p);
      guint l = self->cell[place->at];
      double distance
          = hypot (self->bed->x[l] - self->bed->x[k], self->bed->y[l] - self->bed->y[k]);

      if (is_first)
        place->score = INFINITY;
      if (pp_is_under (distance, (laid.diameter + place->diameter) / 2))
        place->score = NEVER;
      place->score = fmin (place->score, distance);
    }
}

/* ml that the fillable gap holds within `radius` of a square. */
static double
glue_around (const Ground *self,
             gsize         at,
             double        radius)
{
  int reach = (int) ceil (radius / PP_CELL);
  int column = (int) (at % (gsize) self->width), row = (int) (at / (gsize) self->width);
  double sum = 0;

  for (int j = MAX (row - reach, 0); j <= MIN (row + reach, self->height - 1); j++)
    for (int i = MAX (column - reach, 0); i <= MIN (column + reach, self->width - 1); i++)
      {
        guint k = self->cell[j * self->width + i];

        if (k != NOT_FILLABLE && !pp_is_over (PP_CELL * hypot (i - column, j - row), radius))
          sum += glue_in_cell (self, k);
      }
  return sum;
}

static PpDab
make_dab (const Ground  *self,
          const PpPanel *panel,
          const Place   *place)
{
  guint k = self->cell[place->at];
  double glue = glue_around (self, place->at, place->diameter / 2);

  return (PpDab) {
    .at = { pp_cell_centre (self->bed->i[k]), pp_cell_centre (self->bed->j[k]) },
    .diameter = place->diameter,
    .volume = fmax (pp_panel_get_limit (panel, PP_LIMIT_DAB_LEAST),
                    pp_panel_get_limit (panel, PP_LIMIT_WASTE) * glue),
    .underside = gap_of (self, k) + self->bed->below[k],
    .owner = self->bed->owner[k],
  };
}

static void
set_dabs (const Ground  *self,
          const PpPanel *panel,
          PpJoint       *joint)
{
  g_autoptr (GArray) places = find_places (self);
  const Place *place;

  score_first (self, places, pp_panel_get_limit (panel, PP_LIMIT_CONTACT));
  while (joint->n_places < PP_MAX_DABS && (place = pick (places)) != NULL)
    {
      joint->places[joint->n_places] = make_dab (self, panel, place);
      score_next (self, places, *place, joint->n_places == 0);
      joint->n_places++;
    }
}

static void
sum_up (const Ground *self,
        PpJoint      *joint)
{
  gsize n = (gsize) self->width * (gsize) self->height;

  for (gsize at = 0; at < n; at++)
    if (self->cell[at] != NOT_FILLABLE)
      {
        joint->area += CELL_AREA;
        joint->capacity += glue_in_cell (self, self->cell[at]);
      }
}

void
pp_joint_find_places (PpJoint       *self,
                      const PpScene *scene,
                      const PpBed   *bed,
                      const PpRest  *rest)
{
  const PpPanel *panel = scene->panel;
  PpCellBox box = bed->body->cells->box;
  Ground ground = {
    .bed = bed,
    .rest = rest,
    .bond = pp_panel_get_limit (panel, PP_LIMIT_BOND),
    .i0 = box.i0 - 1,
    .j0 = box.j0 - 1,
    .width = box.i1 - box.i0 + 2,
    .height = box.j1 - box.j0 + 2,
  };

  *self = (PpJoint) { .utilisation = NAN };
  if (rest->state == PP_STATE_FLOATS)
    return;
  find_fillable (&ground, panel->adhesive->fill_gap);
  find_regions (&ground, pp_panel_get_limit (panel, PP_LIMIT_DAB));
  leave_out_small (&ground, pp_panel_get_limit (panel, PP_LIMIT_DAB_SMALL));
  sum_up (&ground, self);
  set_dabs (&ground, panel, self);
  g_free (ground.cell);
  g_free (ground.squared);
  g_free (ground.region);
  g_array_unref (ground.diameters);
}
