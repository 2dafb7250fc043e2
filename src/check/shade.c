/* shade.c: how much of a shape stays in view under panes of glass, by area.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A window is halved until few sides run through it. What covers all of it is light lost, what
 * covers none of it is forgotten; where no pane that is left can change the answer, none is looked
 * at. What remains is swept (shade-sweep.c). Hundreds of panes whose borders all cross cost about
 * as much as there are crossings.
 *
 * A window knows what is inside right under its upper left corner. From there the way leads down
 * its left edge and then across; each side that it crosses turns over what is inside. Ends of sides
 * that meet are the same numbers, so all turns are counted alike whichever way is taken.
 */
#include "check/shade-private.h"

#include "check/finding.h"
#include "panel/tolerance.h"
#include "shape/polygon.h"

PpShade *
pp_shade_new (void)
{
  PpShade *self = g_new0 (PpShade, 1);

  self->box = pp_box_empty ();
  self->through = 1;
  self->panes = g_array_new (FALSE, FALSE, sizeof (PpShadePane));
  self->patches = g_array_new (FALSE, FALSE, sizeof (PpShadePatch));
  self->sides = g_array_new (FALSE, FALSE, sizeof (PpShadeSide));
  return self;
}

void
pp_shade_free (PpShade *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->panes);
  g_array_unref (self->patches);
  g_array_unref (self->sides);
  g_free (self);
}

void
pp_shade_add_pane (PpShade *self,
                   double   transmittance)
{
  PpShadePane pane = { transmittance, FALSE, 0 };
  PpShadePatch patch = { .pane = self->panes->len };

  g_array_append_val (self->panes, pane);
  g_array_append_val (self->patches, patch);
}

static void
add_sides (PpShade       *self,
           const PpPoint *ring,
           guint          n_positions,
           guint          patch)
{
  for (guint i = 0; i + 1 < n_positions; i++)
    {
      PpPoint a = ring[i], b = ring[i + 1], upper = a.y < b.y ? a : b, lower = a.y < b.y ? b : a;
      PpShadeSide side = { upper.y, upper.x, lower.y, lower.x, (b.x - a.x) / (b.y - a.y), patch };

      if (self->panes->len == 1)
        self->box = pp_box_add_point (self->box, a);
      g_array_append_val (self->sides, side);
    }
}

void
pp_shade_add_ring (PpShade       *self,
                   const PpPoint *ring,
                   guint          n_positions)
{
  guint patch = self->patches->len - 1;

  while (pp_shade_get_patch (self, patch)->taken_out)
    patch--;
  add_sides (self, ring, n_positions, patch);
}

void
pp_shade_take_out (PpShade       *self,
                   const PpPoint *ring,
                   guint          n_positions,
                   PpPoint        from,
                   PpPoint        to,
                   double         reach)
{
  PpShadePatch patch = { .pane = self->panes->len - 1, .taken_out = TRUE, .from = from, .to = to,
                         .reach = reach };

  g_array_append_val (self->patches, patch);
  add_sides (self, ring, n_positions, self->patches->len - 1);
}

/* Whether a side lies across the way from the upper left corner of the window down its left edge
 * and to `p`. */
static gboolean
is_crossed (const PpShade     *self,
            const PpShadeSide *side,
            PpPoint            p)
{
  double x;

  if (side->y0 > p.y)
    return FALSE;
  if (side->y1 <= p.y)
    return (side->x1 <= self->box.x0) != pp_shade_begins_left (self, side);
  x = pp_shade_side_at (side, p.y);
  return ((x <= self->box.x0) != pp_shade_begins_left (self, side))
         != (x > self->box.x0 && x <= p.x);
}

static gboolean
is_through (const PpShade     *self,
            const PpShadeSide *side)
{
  double upper, lower;

  if (side->y1 <= self->box.y0 || side->y0 >= self->box.y1)
    return FALSE;
  upper = pp_shade_side_at (side, self->box.y0);
  lower = side->y1 <= self->box.y1 ? side->x1 : pp_shade_side_at (side, self->box.y1);
  return MAX (upper, lower) > self->box.x0 && MIN (upper, lower) < self->box.x1;
}

/* Which panes have nothing left in the window, being all within reach of what takes it out. */
static void
judge_reaches (PpShade *self)
{
  PpPoint middle = pp_box_middle (self->box);
  double half = hypot (pp_box_width (self->box), pp_box_height (self->box)) / 2;

  for (guint i = 0; i < self->patches->len; i++)
    {
      const PpShadePatch *patch = pp_shade_get_patch (self, i);
      PpShadePane *pane = pp_shade_get_pane (self, patch->pane);

      if (patch->taken_out && !pane->gone
          && pp_segment_distance (patch->from, patch->to, middle) + half <= patch->reach)
        pane->gone = TRUE;
    }
}

static void
take_sides (PpShade       *self,
            const PpShade *of)
{
  const PpPoint corner = { self->box.x0, self->box.y0 };

  for (guint i = 0; i < of->sides->len; i++)
    {
      const PpShadeSide *side = pp_shade_get_side (of, i);
      PpShadePatch *patch = pp_shade_get_patch (self, side->patch);

      if (pp_shade_get_pane (self, patch->pane)->gone)
        continue;
      patch->inside ^= is_crossed (of, side, corner);
      if (is_through (self, side))
        {
          g_array_append_vals (self->sides, side, 1);
          patch->n_sides++;
        }
    }
}

/* Which panes cover nothing of the window; what covers all of it is light lost. */
static void
judge_panes (PpShade *self)
{
  for (guint i = 0; i < self->patches->len; i++)
    {
      const PpShadePatch *patch = pp_shade_get_patch (self, i);
      PpShadePane *pane = pp_shade_get_pane (self, patch->pane);

      if (patch->n_sides > 0)
        pane->n_open++;
      else if (patch->inside == patch->taken_out)
        pane->gone = TRUE;
    }
  self->is_empty = pp_shade_get_pane (self, 0)->gone;
  for (guint i = 1; i < self->panes->len; i++)
    if (!pp_shade_get_pane (self, i)->gone && pp_shade_get_pane (self, i)->n_open == 0)
      self->through *= pp_shade_get_pane (self, i)->through;
}

static gboolean
is_open (const PpShade *self,
         guint          pane)
{
  return pane == 0
         || (!pp_shade_get_pane (self, pane)->gone && pp_shade_get_pane (self, pane)->n_open > 0);
}

/* Forgets panes that are gone or whole, and what is taken out of others beyond the window. */
static void
forget_closed (PpShade *self)
{
  g_autofree guint *panes = g_new (guint, self->panes->len);
  g_autofree guint *patches = g_new (guint, self->patches->len);
  guint n_panes = 0, n_patches = 0, n_sides = 0;

  for (guint i = 0; i < self->panes->len; i++)
    {
      panes[i] = is_open (self, i) ? n_panes++ : G_MAXUINT;
      if (panes[i] != G_MAXUINT)
        *pp_shade_get_pane (self, panes[i]) = *pp_shade_get_pane (self, i);
    }
  for (guint i = 0; i < self->patches->len; i++)
    {
      PpShadePatch patch = *pp_shade_get_patch (self, i);
      gboolean stays = panes[patch.pane] != G_MAXUINT && (patch.n_sides > 0 || !patch.taken_out);

      patch.pane = panes[patch.pane];
      patches[i] = stays ? n_patches++ : G_MAXUINT;
      if (stays)
        *pp_shade_get_patch (self, patches[i]) = patch;
    }
  for (guint i = 0; i < self->sides->len; i++)
    {
      PpShadeSide side = *pp_shade_get_side (self, i);

      side.patch = patches[side.patch];
      if (side.patch != G_MAXUINT)
        g_array_index (self->sides, PpShadeSide, n_sides++) = side;
    }
  g_array_set_size (self->panes, n_panes);
  g_array_set_size (self->patches, n_patches);
  g_array_set_size (self->sides, n_sides);
}

/* (transfer full) */
static PpShade *
window_new (const PpShade *of,
            PpBox          box)
{
  PpShade *self = pp_shade_new ();

  self->box = box;
  self->opaque = of->opaque;
  self->through = of->through;
  g_array_append_vals (self->panes, of->panes->data, of->panes->len);
  g_array_append_vals (self->patches, of->patches->data, of->patches->len);
  for (guint i = 0; i < self->panes->len; i++)
    pp_shade_get_pane (self, i)->n_open = 0;
  for (guint i = 0; i < self->patches->len; i++)
    pp_shade_get_patch (self, i)->n_sides = 0;
  judge_reaches (self);
  take_sides (self, of);
  judge_panes (self);
  forget_closed (self);
  return self;
}

#define FEW 64     /* sides, that a window is halved for only if they cross often */
#define OFTEN 3    /* ends and crossings a side */
#define STUBBORN 8 /* halvings in which their number hardly falls */

static double find_shown (PpShade *self,
                          guint   stubborn);

static double
find_shown_by_halves (const PpShade *self,
                      guint          stubborn)
{
  PpBox halves[] = { self->box, self->box };
  double shown = 0;

  if (pp_box_width (self->box) > pp_box_height (self->box))
    halves[0].x1 = halves[1].x0 = pp_box_middle (self->box).x;
  else
    halves[0].y1 = halves[1].y0 = pp_box_middle (self->box).y;
  for (guint i = 0; i < G_N_ELEMENTS (halves); i++)
    {
      g_autoptr (PpShade) half = window_new (self, halves[i]);

      shown += find_shown (half, half->sides->len > self->sides->len / 4 * 3 ? stubborn + 1 : 0);
    }
  return shown;
}

/* Light through all panes, those over part of the window too. */
static double
get_least (const PpShade *self)
{
  double through = self->through;

  for (guint i = 1; i < self->panes->len; i++)
    through *= pp_shade_get_pane (self, i)->through;
  return through;
}

static void
forget_panes (PpShade *self)
{
  for (guint i = 1; i < self->panes->len; i++)
    pp_shade_get_pane (self, i)->gone = TRUE;
  forget_closed (self);
}

/* Where sides lie on one another, halving the window parts them no further: then slabs do, unless
 * they cross too often. A window smaller than a tie has no area that counts. */
static double
find_shown (PpShade *self,
            guint    stubborn)
{
  guint n;

  if (self->is_empty || !pp_is_over (self->through, self->opaque)
      || fmax (pp_box_width (self->box), pp_box_height (self->box)) <= PP_TIE)
    return 0;
  if (self->panes->len > 1 && pp_is_over (get_least (self), self->opaque))
    forget_panes (self);
  n = self->sides->len;
  if (n == 0)
    return pp_box_width (self->box) * pp_box_height (self->box);
  if (n <= FEW || stubborn >= STUBBORN)
    {
      g_autoptr (GArray) heights
          = pp_shade_find_heights (self, n <= FEW ? OFTEN * (n + 4) : 2 * OFTEN * n);

      if (heights != NULL)
        return pp_shade_sweep (self, heights);
    }
  return find_shown_by_halves (self, stubborn);
}

static int
compare_sides (gconstpointer a,
               gconstpointer b)
{
  const PpShadeSide *p = a, *q = b;

  return p->y0 < q->y0 ? -1 : p->y0 > q->y0;
}

double
pp_shade_get_shown (PpShade *self,
                    double   opaque)
{
  g_autoptr (PpShade) window = NULL;
  PpBox box;

  g_return_val_if_fail (self != NULL && self->panes->len > 0, 0);

  self->opaque = opaque;
  box = self->box;
  self->box = (PpBox) { -INFINITY, -INFINITY, INFINITY, INFINITY };
  window = window_new (self, box);
  g_array_sort (window->sides, compare_sides);
  return find_shown (window, 0);
}
