/* shade-sweep.c: how much of a window of a shade is shown, slab by slab.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A window is cut into level slabs at every end and crossing of sides, so that in each the sides
 * stand one beside another and the areas between them are trapezoids. Nothing hangs on exact
 * crossings: in a slab sides are put in order at its middle, so sides that lie on one another, or
 * cross where they ought not, are wrong by no more than what lies between them.
 */
#include "check/shade-private.h"

#include "check/finding.h"

static int
compare_heights (gconstpointer a,
                 gconstpointer b)
{
  const double *p = a, *q = b;

  return *p < *q ? -1 : *p > *q;
}

static void
add_height (const PpShade *self,
            GArray        *heights,
            double         y)
{
  if (y > self->box.y0 && y < self->box.y1)
    g_array_append_val (heights, y);
}

/* Where a side crosses the upright line at `x`. */
static void
add_upright (const PpShade     *self,
             GArray            *heights,
             const PpShadeSide *side,
             double             x)
{
  if ((side->x0 < x) != (side->x1 < x) && side->y0 < side->y1)
    add_height (self, heights, side->y0 + (x - side->x0) / side->slope);
}

static void
add_crossing (const PpShade     *self,
              GArray            *heights,
              const PpShadeSide *a,
              const PpShadeSide *b)
{
  double y0 = MAX (MAX (a->y0, b->y0), self->box.y0), y1 = MIN (MIN (a->y1, b->y1), self->box.y1);
  double before, after;

  if (y0 >= y1)
    return;
  before = pp_shade_side_at (a, y0) - pp_shade_side_at (b, y0);
  after = pp_shade_side_at (a, y1) - pp_shade_side_at (b, y1);
  if ((before < 0 && after > 0) || (before > 0 && after < 0))
    add_height (self, heights, y0 + (y1 - y0) * (before / (before - after)));
}

GArray *
pp_shade_find_heights (const PpShade *self,
                       guint          most)
{
  GArray *heights = g_array_new (FALSE, FALSE, sizeof (double));

  g_array_append_val (heights, self->box.y0);
  g_array_append_val (heights, self->box.y1);
  for (guint i = 0; i < self->sides->len && heights->len <= most; i++)
    {
      const PpShadeSide *side = pp_shade_get_side (self, i);

      add_height (self, heights, side->y0);
      add_height (self, heights, side->y1);
      add_upright (self, heights, side, self->box.x0);
      add_upright (self, heights, side, self->box.x1);
      for (guint k = i + 1; k < self->sides->len && pp_shade_get_side (self, k)->y0 < side->y1; k++)
        add_crossing (self, heights, side, pp_shade_get_side (self, k));
    }
  if (heights->len > most)
    g_clear_pointer (&heights, g_array_unref);
  else
    g_array_sort (heights, compare_heights);
  return heights;
}

/* A side where it passes through the slab in hand. */
typedef struct
{
  const PpShadeSide *side;
  double             x;        /* at the slab's middle */
  gboolean           was_left; /* of the window, where it began */
} Pass;

/* What is inside on the way through a slab from the left. */
typedef struct
{
  gboolean *at_left;  /* of each patch, on the left edge, but for sides that are not passed yet */
  gboolean *inside;   /* of each patch */
  guint    *less;     /* of each pane: 1 outside its rings, 1 for each patch that takes it out */
  guint     n_opaque; /* panes that are enough each by itself */
  double    through;  /* of the others */
} Way;

static void
turn_over (const PpShade *self,
           Way           *way,
           guint          patch)
{
  guint pane = pp_shade_get_patch (self, patch)->pane, before = way->less[pane];
  double through = pp_shade_get_pane (self, pane)->through;
  gboolean takes;

  way->inside[patch] = !way->inside[patch];
  takes = way->inside[patch] == pp_shade_get_patch (self, patch)->taken_out;
  way->less[pane] += takes ? 1 : -1u;
  if (pane == 0 || (before > 0 && way->less[pane] > 0))
    return;
  if (!pp_is_over (through, self->opaque))
    way->n_opaque += takes ? -1u : 1;
  else if (takes)
    way->through /= through;
  else
    way->through *= through;
}

static void
begin_way (const PpShade *self,
           Way           *way,
           const Pass    *passes,
           guint          n)
{
  way->through = self->through;
  way->n_opaque = 0;
  for (guint i = 0; i < self->panes->len; i++)
    way->less[i] = 1;
  for (guint i = 0; i < self->patches->len; i++)
    {
      way->inside[i] = FALSE;
      if (way->at_left[i])
        turn_over (self, way, i);
    }
  for (guint i = 0; i < n; i++)
    if ((passes[i].x <= self->box.x0) != passes[i].was_left)
      turn_over (self, way, passes[i].side->patch);
}

static gboolean
is_shown (const PpShade *self,
          const Way     *way)
{
  return way->less[0] == 0 && way->n_opaque == 0 && pp_is_over (way->through, self->opaque);
}

static void
sort_passes (Pass *passes,
             guint n)
{
  for (guint i = 1; i < n; i++)
    {
      Pass pass = passes[i];
      guint k = i;

      for (; k > 0 && passes[k - 1].x > pass.x; k--)
        passes[k] = passes[k - 1];
      passes[k] = pass;
    }
}

/* mm: what of the slab's middle is shown. */
static double
walk_slab (const PpShade *self,
           Way           *way,
           const Pass    *passes,
           guint          n)
{
  double shown = 0, left = self->box.x0;

  begin_way (self, way, passes, n);
  for (guint i = 0; i < n && left < self->box.x1; i++)
    {
      double x = MIN (passes[i].x, self->box.x1);

      if (x <= self->box.x0)
        continue;
      if (x > left && is_shown (self, way))
        shown += x - left;
      left = x;
      turn_over (self, way, passes[i].side->patch);
    }
  return left < self->box.x1 && is_shown (self, way) ? shown + self->box.x1 - left : shown;
}

static guint
add_pass (const PpShade *self,
          Way           *way,
          Pass          *passes,
          guint          n,
          Pass           pass,
          double         middle)
{
  if (pass.side->y1 <= middle)
    way->at_left[pass.side->patch] ^= (pass.side->x1 <= self->box.x0) != pass.was_left;
  else
    {
      pass.x = pp_shade_side_at (pass.side, middle);
      passes[n++] = pass;
    }
  return n;
}

/* Those that pass the middle of the next slab, in order; `next` is the first side not met yet. */
static guint
pass_on (const PpShade *self,
         Way           *way,
         Pass          *passes,
         guint          n,
         guint         *next,
         double         middle)
{
  guint kept = 0;

  for (guint i = 0; i < n; i++)
    kept = add_pass (self, way, passes, kept, passes[i], middle);
  for (; *next < self->sides->len && pp_shade_get_side (self, *next)->y0 < middle; (*next)++)
    {
      const PpShadeSide *side = pp_shade_get_side (self, *next);
      Pass pass = { side, 0, pp_shade_begins_left (self, side) };

      kept = add_pass (self, way, passes, kept, pass, middle);
    }
  sort_passes (passes, kept);
  return kept;
}

double
pp_shade_sweep (const PpShade *self,
                const GArray  *heights)
{
  g_autofree Pass *passes = g_new (Pass, self->sides->len + 1);
  g_autofree gboolean *at_left = g_new (gboolean, self->patches->len);
  g_autofree gboolean *inside = g_new (gboolean, self->patches->len);
  g_autofree guint *less = g_new (guint, self->panes->len);
  Way way = { at_left, inside, less, 0, 1 };
  guint n = 0, next = 0;
  double area = 0;

  for (guint i = 0; i < self->patches->len; i++)
    at_left[i] = pp_shade_get_patch (self, i)->inside;
  for (guint i = 0; i + 1 < heights->len; i++)
    {
      double y0 = g_array_index (heights, double, i), y1 = g_array_index (heights, double, i + 1);

      if (y0 >= y1)
        continue;
      n = pass_on (self, &way, passes, n, &next, (y0 + y1) / 2);
      area += walk_slab (self, &way, passes, n) * (y1 - y0);
    }
  return area;
}
