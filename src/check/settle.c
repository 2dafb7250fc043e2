/* settle.c: how each placement of the stack comes to rest.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/settle-private.h"

#include "check/loops.h"
#include "check/under.h"

#include "panel/tolerance.h"
#include "shape/polygon.h"

const char *
pp_state_get_name (PpState state)
{
  switch (state)
    {
    case PP_STATE_STEADY:
      return "steady";
    case PP_STATE_UNSTEADY:
      return "unsteady";
    case PP_STATE_TIPS:
      return "tips";
    case PP_STATE_FLOATS:
      return "floats";
    }
  g_return_val_if_reached (NULL);
}

/* The height of the plane that a level piece would rest on. */
static double
level_height (const PpBed *bed)
{
  return pp_loop_greatest (bed->h, bed->n);
}

static gboolean
plane_tips (const PpPlane *plane)
{
  return fmax (fabs (plane->a), fabs (plane->b)) >= PP_LP_MAX_SLOPE - PP_TIE;
}

static int
compare_owners (gconstpointer a,
                gconstpointer b)
{
  const PpOwner *p = a, *q = b;

  return (int) *p - (int) *q;
}

static void
add_owner (GArray *owners,
           PpOwner owner)
{
  for (guint i = owners->len; i > 0; i--)
    if (g_array_index (owners, PpOwner, i - 1) == owner)
      return;
  g_array_append_val (owners, owner);
}

static void
find_gaps (const PpBed   *bed,
           const PpPlane *plane)
{
  for (guint r = 0; r < bed->n_runs; r++)
    {
      PpBedRun *run = &bed->runs[r];
      guint k = run->first;

      pp_loop_gaps (pp_rest_plane_along (bed->body, plane, run->i0, run->j), bed->h + k, run->n,
                    bed->gap + k, &run->least, &run->greatest);
    }
}

/* The first and the last of a run's cells in contact, FALSE without any. */
static gboolean
find_ends (const PpBed    *bed,
           const PpBedRun *run,
           double          contact,
           GArray         *owners,
           guint           ends[2])
{
  const double *gap = bed->gap + run->first;
  PpOwner last = PP_OWNER_NOTHING;
  guint first, end;

  if (run->least > contact + PP_TIE)
    return FALSE;
  for (first = 0; gap[first] > contact + PP_TIE; first++)
    ;
  for (end = run->n; gap[end - 1] > contact + PP_TIE; end--)
    ;
  for (guint k = first; k < end; k++)
    if (run->owner[k] != last && gap[k] <= contact + PP_TIE)
      {
        add_owner (owners, run->owner[k]);
        last = run->owner[k];
      }
  ends[0] = run->first + first;
  ends[1] = run->first + end - 1;
  return TRUE;
}

/* The rows between which a column of cells has contact. */
typedef struct
{
  int first;
  int last;
} Column;

/* Of all columns that the body has. (transfer full) */
static Column *
find_columns (const PpBed *bed,
              double       contact,
              GArray      *owners)
{
  const PpCellBox *box = &bed->body->cells->box;
  Column *columns = g_new (Column, box->i1 - box->i0);
  guint ends[2];

  for (int i = 0; i < box->i1 - box->i0; i++)
    columns[i] = (Column) { G_MAXINT, G_MININT };
  for (guint r = 0; r < bed->n_runs; r++)
    {
      const PpBedRun *run = &bed->runs[r];

      if (!find_ends (bed, run, contact, owners, ends))
        continue;
      for (guint e = 0; e < 2; e++)
        {
          Column *column = &columns[run->i0 - box->i0 + (int) (ends[e] - run->first)];

          column->first = MIN (column->first, run->j);
          column->last = MAX (column->last, run->j);
        }
    }
  return columns;
}

/* Contact cells: whose they are, and the hull of their centres. Those between the ends of a run or
 * of a column are no corners of it, and the columns are in the order that it is found in. */
static void
find_contacts (PpRest      *self,
               const PpBed *bed,
               double       contact)
{
  const PpCellBox *box = &bed->body->cells->box;
  g_autoptr (GArray) owners = g_array_new (FALSE, FALSE, sizeof (PpOwner));
  g_autofree Column *columns = find_columns (bed, contact, owners);
  g_autofree PpPoint *touching = g_new (PpPoint, 2 * (box->i1 - box->i0));
  guint n = 0;

  for (int i = box->i0; i < box->i1; i++)
    {
      const Column *column = &columns[i - box->i0];

      if (column->first <= column->last)
        touching[n++] = (PpPoint) { pp_cell_centre (i), pp_cell_centre (column->first) };
      if (column->first < column->last)
        touching[n++] = (PpPoint) { pp_cell_centre (i), pp_cell_centre (column->last) };
    }
  g_array_sort (owners, compare_owners);
  self->n_rests_on = owners->len;
  self->rests_on = (PpOwner *) g_array_free (g_steal_pointer (&owners), FALSE);
  self->contacts = g_new (PpPoint, n);
  self->n_contacts = pp_convex_hull (touching, n, self->contacts);
  self->margin = pp_hull_margin (self->contacts, self->n_contacts, bed->body->centroid);
}

/* The mean of the cells in contact when held level. Most rows have none. */
static PpPoint
level_foot (const PpBed *bed,
            double       level,
            double       contact)
{
  PpPoint sum = { 0, 0 };
  guint n = 0;

  for (guint r = 0; r < bed->n_runs; r++)
    {
      const PpBedRun *run = &bed->runs[r];
      const double *h = bed->h + run->first;

      if (level - pp_loop_greatest (h, run->n) > contact + PP_TIE)
        continue;
      for (guint k = 0; k < run->n; k++)
        if (level - h[k] <= contact + PP_TIE)
          {
            sum.x += pp_cell_centre (run->i0 + (int) k);
            sum.y += pp_cell_centre (run->j);
            n++;
          }
    }
  return (PpPoint) { sum.x / n, sum.y / n };
}

/* mm²: how much nearer to opposite the foot a later corner must be to take the prop. */
#define PROP_TIE 0.01

/* The corner of the outline most opposite the foot. */
static PpPoint
find_prop_corner (const PpBody *body,
                  PpPoint       foot)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (body->outline, 0, &n);
  PpPoint c = body->centroid;
  double least = INFINITY;

  for (guint i = 0; i + 1 < n; i++)
    least = fmin (least, (p[i].x - c.x) * (foot.x - c.x) + (p[i].y - c.y) * (foot.y - c.y));
  for (guint i = 0; i + 1 < n; i++)
    if ((p[i].x - c.x) * (foot.x - c.x) + (p[i].y - c.y) * (foot.y - c.y) <= least + PROP_TIE)
      return p[i];
  g_return_val_if_reached (p[0]);
}

/* What lies under a point; the bench, a background's thickness down, where nothing does. */
static double
height_under (const PpScene *scene,
              PpRest       **rests,
              guint          index,
              PpPoint        p)
{
  int i = pp_cell_at (p.x);
  const PpSpan cell = { pp_cell_at (p.y), i, i + 1 };
  double height;
  PpOwner owner;

  pp_under_find (scene, rests, index, (PpStrips) { &cell, 1 }, &height, &owner);
  return owner == PP_OWNER_NOTHING ? -scene->panel->background->thickness : height;
}

static void
find_prop (PpRest        *self,
           const PpScene *scene,
           PpRest       **rests,
           guint          index,
           const PpBed   *bed)
{
  const PpBody *body = bed->body;
  double level = level_height (bed);
  double contact = pp_panel_get_limit (scene->panel, PP_LIMIT_CONTACT);
  PpPoint own;

  self->has_prop = TRUE;
  self->prop = find_prop_corner (body, level_foot (bed, level, contact));
  own = pp_frame_to_piece (&body->frame, self->prop);
  self->prop_height = fmax (level + pp_heights_underside (&body->heights, own)
                                - height_under (scene, rests, index, self->prop), 0);
}

static PpState
judge (const PpRest  *self,
       const PpScene *scene,
       const PpBed   *bed,
       gboolean       tips,
       gboolean       in_pocket)
{
  double needed = fmin (pp_panel_get_limit (scene->panel, PP_LIMIT_STEADY), bed->body->width / 4);

  if (in_pocket)
    return PP_STATE_STEADY;
  if (tips)
    return PP_STATE_TIPS;
  return self->margin >= needed - PP_TIE ? PP_STATE_STEADY : PP_STATE_UNSTEADY;
}

/* The cells of the fused part in whose pocket it stands, or NULL. */
static const PpCells *
get_pocket (const PpScene *scene,
            guint          index)
{
  int pocket = scene->pockets[index];

  return pocket == PP_NO_INDEX ? NULL : scene->parts[pocket].cells;
}

static PpPlane
find_lowest_plane (const PpBed *bed)
{
  PpPoint centroid = bed->body->centroid;
  g_autofree PpLpRow *rows = g_new (PpLpRow, bed->n_runs);

  for (guint r = 0; r < bed->n_runs; r++)
    {
      const PpBedRun *run = &bed->runs[r];

      rows[r] = (PpLpRow) { pp_cell_centre (run->i0) - centroid.x,
                            pp_cell_centre (run->j) - centroid.y, run->n };
    }
  return pp_lp_lowest_plane (rows, bed->n_runs, bed->h, NULL);
}

PpRest *
pp_rest_new (const PpScene *scene,
             PpRest       **rests,
             guint          index,
             const PpBed   *bed)
{
  PpRest *self = g_atomic_rc_box_new0 (PpRest);
  gboolean in_pocket = bed->body->placement->pocket != NULL;
  double steepest = pp_panel_get_limit (scene->panel, PP_LIMIT_SLOPE);
  gboolean tips;

  if (bed->n == 0)
    {
      self->state = PP_STATE_FLOATS;
      self->hold = TRUE;
      return self;
    }
  self->plane = find_lowest_plane (bed);
  tips = plane_tips (&self->plane);
  if (tips)
    self->plane = (PpPlane) { 0, 0, level_height (bed) };
  find_gaps (bed, &self->plane);
  find_contacts (self, bed, pp_panel_get_limit (scene->panel, PP_LIMIT_CONTACT));
  pp_rest_find_extremes (self, bed->body, get_pocket (scene, index));
  self->state = judge (self, scene, bed, tips, in_pocket);
  self->hold = self->state != PP_STATE_STEADY
               || (!in_pocket && pp_rest_get_slope (self) > steepest + PP_TIE);
  if (self->state != PP_STATE_STEADY)
    find_prop (self, scene, rests, index, bed);
  return self;
}

PpRest *
pp_rest_ref (PpRest *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
rest_clear (gpointer data)
{
  PpRest *self = data;

  g_free (self->rests_on);
  g_free (self->contacts);
}

void
pp_rest_unref (PpRest *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, rest_clear);
}

double
pp_rest_get_slope (const PpRest *self)
{
  return atan (hypot (self->plane.a, self->plane.b)) * 180 / G_PI;
}

gboolean
pp_rest_lies_alike (const PpRest *a,
                    const PpRest *b)
{
  return (a->state == PP_STATE_FLOATS) == (b->state == PP_STATE_FLOATS)
         && a->plane.a == b->plane.a && a->plane.b == b->plane.b && a->plane.c == b->plane.c;
}

gboolean
pp_rest_rests_on (const PpRest *self,
                  PpOwner       owner)
{
  for (guint i = 0; i < self->n_rests_on; i++)
    if (self->rests_on[i] == owner)
      return TRUE;
  return FALSE;
}
