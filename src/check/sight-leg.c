/* sight-leg.c: how much of one leg of the wire is hidden from each of several views.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever is moved on the panel moves its centre of mass, and with it the hook and all of the hung
 * wire, but by a hair. So of each part it is found whether it is hidden, and stays so wherever the
 * leg lies within SLACK; for the few parts for which that depends on where it lies, the screens are
 * asked each time that it depends on (sight-seen.h). What was found of a part holds until the leg
 * has moved farther, or a screen has changed that comes over the part.
 */
#include "check/sight-leg.h"

#include "check/loops.h"
#include "check/sight-seen.h"

/* mm. Were it more, more parts would be asked for each time; were it less, all would be looked at
 * again more often. */
#define SLACK 0.05

#define FEW_DOUBTS 8 /* of a view, mostly */

/* From the first on, up to the end, which is none of them. */
typedef struct
{
  guint first;
  guint end;
} Parts;

/* A view for which not all of before holds. */
typedef struct
{
  guint      view;
  Parts      parts; /* of which it does not */
  PpSightRow row;   /* those alone */
} Look;

struct _PpSightLeg
{
  PpSightRow leg; /* as it lay when it was looked at */
  guint      n_views;
  PpSeen    *seen[];
};

/* The leg where the lines of sight of a view leave the front face. */
static PpSightRow
row_of (const PpSightRow *leg,
        const PpAslant   *view)
{
  PpSightRow row = *leg;

  row.from.x += view->shift.x;
  row.from.y += view->shift.y;
  row.slant = view->slant;
  return row;
}

/* Its lines, and as far about them as they may move. */
static PpBox
box_of (const PpSightRow *row)
{
  PpBox box = pp_box_empty ();

  for (guint k = 0; k < PP_N_LINES; k++)
    box = pp_box_add_point (pp_box_add_point (box, pp_sight_row_point (row, 0, k)),
                            pp_sight_row_point (row, row->n, k));
  return pp_box_grow (box, SLACK + PP_TIE);
}

static gboolean
is_point_near (const PpSightRow *now,
               const PpSightRow *before,
               guint             part,
               guint             line)
{
  PpPoint a = pp_sight_row_point (now, part, line), b = pp_sight_row_point (before, part, line);

  return pp_rough_length (a.x - b.x, a.y - b.y) <= SLACK - PP_TIE;
}

/* Whether no part lies farther than SLACK from where it lay. */
static gboolean
has_hardly_moved (const PpSightRow *now,
                  const PpSightRow *before)
{
  if (now->n != before->n)
    return FALSE;
  for (guint k = 0; k < PP_N_LINES; k++)
    if (!is_point_near (now, before, 0, k) || !is_point_near (now, before, now->n, k))
      return FALSE;
  return TRUE;
}

/* That with so much of the leg before it, the first or the last beyond it. */
static guint
part_at (const PpSightRow *row,
         double            along)
{
  return (guint) CLAMP (floor (along / row->spacing), 0, row->n - 1.0);
}

/* Those whose middles may come into the box. */
static Parts
find_parts_in (const PpSightRow *row,
               PpBox             box)
{
  PpPoint middle = pp_box_middle (box), direction = row->direction;
  double along = (middle.x - row->from.x) * direction.x + (middle.y - row->from.y) * direction.y;
  double half = (pp_box_width (box) * fabs (direction.x)
                 + pp_box_height (box) * fabs (direction.y)) / 2 + SLACK + PP_TIE;

  if (row->spacing <= 0)
    return (Parts) { 0, row->n };
  return (Parts) { part_at (row, along - half), part_at (row, along + half) + 1 };
}

/* Those over which a screen may come or, as it was `seen`, might have, and all between them. */
static Parts
find_parts_under (GPtrArray        *screens,
                  const PpSightRow *row,
                  const PpSeen     *seen)
{
  PpBox box = box_of (row);
  Parts parts = { row->n, 0 };

  for (guint i = 0; i < screens->len; i++)
    {
      PpBox shadow = pp_screen_get_shadow (g_ptr_array_index (screens, i), row->slant);
      Parts under;

      if (!pp_box_meets (shadow, box))
        continue;
      under = find_parts_in (row, shadow);
      parts.first = MIN (parts.first, under.first);
      parts.end = MAX (parts.end, under.end);
    }
  pp_seen_widen (seen, screens, &parts.first, &parts.end);
  return parts;
}

/* Slant and shift that no view has more of, in amount. */
static PpAslant
find_most (const PpSightThrough *through)
{
  PpAslant most = { { 0, 0 }, { 0, 0 } };

  for (guint v = 0; v < through->n_views; v++)
    {
      PpAslant view = through->views[v];

      most.slant.x = MAX (most.slant.x, fabs (view.slant.x));
      most.slant.y = MAX (most.slant.y, fabs (view.slant.y));
      most.shift.x = MAX (most.shift.x, fabs (view.shift.x));
      most.shift.y = MAX (most.shift.y, fabs (view.shift.y));
    }
  return most;
}

/* Dims each row by the screens that come over it. */
static void
dim_rows (const PpSightRow     *leg,
          const Look           *looks,
          guint                 n,
          const PpSightThrough *through)
{
  PpAslant most = find_most (through);
  PpSightRoom room = { 0 };
  g_autofree PpBox *boxes = g_new (PpBox, n);

  for (guint l = 0; l < n; l++)
    boxes[l] = box_of (&looks[l].row);
  for (guint i = 0; i < through->screens->len; i++)
    {
      const PpScreen *screen = g_ptr_array_index (through->screens, i);

      for (guint l = 0; l < n; l++)
        {
          if (!pp_box_meets (pp_screen_get_shadow (screen, looks[l].row.slant), boxes[l]))
            continue;
          if (room.screen != screen)
            pp_sight_room_take (&room, screen, leg, most.slant, most.shift);
          pp_sight_row_dim (&looks[l].row, &room);
        }
    }
  pp_sight_room_clear (&room);
}

/* Room for the light of the rows, all of which comes through as yet; they borrow it. (transfer
 * full) */
static double *
light_rows (Look  *looks,
            guint  n)
{
  gsize n_light = 0;
  double *light, *next;

  for (guint l = 0; l < n; l++)
    n_light += 2 * PP_N_LINES * (gsize) looks[l].row.n;
  light = next = g_new (double, n_light);
  pp_loop_fill (1, n_light, light);
  for (guint l = 0; l < n; l++)
    {
      looks[l].row.most = next;
      looks[l].row.least = next + PP_N_LINES * (gsize) looks[l].row.n;
      next = looks[l].row.least + PP_N_LINES * (gsize) looks[l].row.n;
    }
  return light;
}

/* `previous` (nullable): of which all holds that is not looked at. */
static void
look_at (PpSightLeg           *self,
         Look                 *looks,
         guint                 n,
         const PpSightThrough *through,
         const PpSightLeg     *previous)
{
  g_autofree double *light = light_rows (looks, n);

  for (guint l = 0; l < n; l++)
    looks[l].row.doubts = g_array_sized_new (FALSE, FALSE, sizeof (PpSightDoubt), FEW_DOUBTS);
  dim_rows (&self->leg, looks, n, through);
  for (guint l = 0; l < n; l++)
    {
      guint view = looks[l].view;

      self->seen[view] = pp_seen_new (&looks[l].row, looks[l].parts.first, self->leg.n,
                                      previous != NULL ? previous->seen[view] : NULL);
      g_array_unref (looks[l].row.doubts);
    }
}

/* Some parts of it alone. */
static PpSightRow
part_of_row (const PpSightRow *row,
             Parts             parts)
{
  PpSightRow part = *row;

  part.from.x += parts.first * row->spacing * row->direction.x;
  part.from.y += parts.first * row->spacing * row->direction.y;
  part.n = parts.end - parts.first;
  return part;
}

PpSightLeg *
pp_sight_leg_new (const PpSightRow     *leg,
                  const PpSightThrough *through,
                  const PpSightLeg     *previous)
{
  PpSightLeg *self = g_malloc (sizeof *self + through->n_views * sizeof (PpSeen *));
  g_autofree Look *looks = g_new (Look, through->n_views);
  guint n = 0;

  if (previous != NULL && !has_hardly_moved (leg, &previous->leg))
    previous = NULL;
  self->leg = previous != NULL ? previous->leg : *leg;
  self->leg.slack = SLACK;
  self->n_views = through->n_views;
  for (guint v = 0; v < through->n_views; v++)
    {
      PpSightRow row = row_of (&self->leg, &through->views[v]);
      Parts parts = previous != NULL ? find_parts_under (through->changed, &row,
                                                         previous->seen[v])
                                     : (Parts) { 0, row.n };

      if (parts.first < parts.end)
        looks[n++] = (Look) { v, parts, part_of_row (&row, parts) };
      else
        self->seen[v] = pp_seen_ref (previous->seen[v]);
    }
  if (n > 0)
    look_at (self, looks, n, through, previous);
  return self;
}

void
pp_sight_leg_free (PpSightLeg *self)
{
  if (self == NULL)
    return;
  for (guint v = 0; v < self->n_views; v++)
    pp_seen_unref (self->seen[v]);
  g_free (self);
}

void
pp_sight_leg_get_shares (const PpSightLeg     *self,
                         const PpSightRow     *leg,
                         const PpSightThrough *through,
                         double               *shares)
{
  for (guint v = 0; v < self->n_views; v++)
    {
      PpSightRow row = row_of (leg, &through->views[v]);

      shares[v] = (double) pp_seen_count_hidden (self->seen[v], &row, through->screens) / leg->n;
    }
}
