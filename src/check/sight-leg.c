/* sight-leg.c: how much of one leg of the wire is hidden from each of several views.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever is moved on the panel moves its centre of mass, and with it the hook and all of the hung
 * wire, but by a hair. So of each part it is found whether it is hidden, and stays so wherever the
 * leg lies within SLACK; for the few parts for which that depends on where it lies, the screens are
 * asked each time that it depends on. What was found holds until the leg has moved farther, or a
 * screen has changed that comes over it.
 */
#include "check/sight-leg.h"

#include "check/finding.h"

/* mm. Were it more, more parts would be asked for each time; were it less, all would be looked at
 * again more often. */
#define SLACK 0.05

/* Light: two products of the same factors in different orders differ by less. */
#define ROUNDING (PP_TIE / 2)

/* On what it depends whether a part is hidden on one line: first of each line an entry without a
 * screen, then the screens. In the order of the parts, of each in that of the lines. */
typedef struct
{
  guint     part;
  guint     line;
  double    through; /* the light that comes through all screens that are surely before it */
  PpScreen *screen;  /* counted */
} Open;

/* What a view shows wherever the leg lies. Counted. */
typedef struct
{
  guint   n_hidden; /* parts, surely */
  GArray *open;     /* Open */
} Seen;

struct _PpSightLeg
{
  PpSightRow leg; /* as it lay when it was looked at */
  guint      n_views;
  Seen      *seen[];
};

static void
open_clear (gpointer data)
{
  g_clear_pointer (&((Open *) data)->screen, pp_screen_unref);
}

static void
seen_clear (gpointer data)
{
  g_array_unref (((Seen *) data)->open);
}

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

static PpPoint
point_of (const PpSightRow *row,
          double            part,
          guint             line)
{
  double along = part * row->spacing, aside = row->asides[line];

  return (PpPoint) { row->from.x + along * row->direction.x + aside * row->normal.x,
                     row->from.y + along * row->direction.y + aside * row->normal.y };
}

/* Its lines, and as far about them as they may move. */
static PpBox
box_of (const PpSightRow *row)
{
  PpBox box = pp_box_empty ();

  for (guint k = 0; k < PP_N_LINES; k++)
    box = pp_box_add_point (pp_box_add_point (box, point_of (row, 0, k)),
                            point_of (row, row->n, k));
  return pp_box_grow (box, SLACK + PP_TIE);
}

/* Whether no part lies farther than SLACK from where it lay. */
static gboolean
has_hardly_moved (const PpSightRow *now,
                  const PpSightRow *before)
{
  if (now->n != before->n)
    return FALSE;
  for (guint k = 0; k < PP_N_LINES; k++)
    if (pp_point_distance (point_of (now, 0, k), point_of (before, 0, k)) > SLACK - PP_TIE
        || pp_point_distance (point_of (now, now->n, k), point_of (before, now->n, k))
               > SLACK - PP_TIE)
      return FALSE;
  return TRUE;
}

static gboolean
comes_over (GPtrArray        *screens,
            const PpSightRow *row)
{
  PpBox box = box_of (row);

  for (guint i = 0; i < screens->len; i++)
    if (pp_box_meets (pp_screen_get_shadow (g_ptr_array_index (screens, i), row->slant), box))
      return TRUE;
  return FALSE;
}

static gboolean
is_surely_hidden (const PpSightRow *row,
                  guint             part,
                  guint             line)
{
  return row->most[(gsize) line * row->n + part] <= row->opaque + PP_TIE - ROUNDING;
}

static gboolean
is_surely_shown (const PpSightRow *row,
                 guint             part)
{
  for (guint k = 0; k < PP_N_LINES; k++)
    if (row->least[(gsize) k * row->n + part] > row->opaque + PP_TIE + ROUNDING)
      return TRUE;
  return FALSE;
}

static void
add_open (Seen             *self,
          const PpSightRow *row,
          guint             part,
          guint             line,
          const PpScreen   *screen)
{
  Open open = { part, line, row->most[(gsize) line * row->n + part],
                screen != NULL ? pp_screen_ref ((PpScreen *) screen) : NULL };

  g_array_append_val (self->open, open);
}

static int
compare_open (gconstpointer a,
              gconstpointer b)
{
  const Open *p = a, *q = b;

  if (p->part != q->part)
    return p->part < q->part ? -1 : 1;
  if (p->line != q->line)
    return p->line < q->line ? -1 : 1;
  return (p->screen != NULL) - (q->screen != NULL);
}

/* A part is hidden where all lines are. */
static Seen *
seen_new (const PpSightRow *row)
{
  Seen *self = g_atomic_rc_box_new0 (Seen);

  self->open = g_array_new (FALSE, FALSE, sizeof (Open));
  g_array_set_clear_func (self->open, open_clear);
  for (guint i = 0; i < row->n; i++)
    if (!is_surely_shown (row, i))
      {
        guint n_before = self->open->len;

        for (guint k = 0; k < PP_N_LINES; k++)
          if (!is_surely_hidden (row, i, k))
            add_open (self, row, i, k, NULL);
        self->n_hidden += self->open->len == n_before;
      }
  for (guint d = 0; d < row->doubts->len; d++)
    {
      const PpSightDoubt *doubt = &g_array_index (row->doubts, PpSightDoubt, d);

      if (!is_surely_shown (row, doubt->part) && !is_surely_hidden (row, doubt->part, doubt->line))
        add_open (self, row, doubt->part, doubt->line, doubt->screen);
    }
  g_array_sort (self->open, compare_open);
  return self;
}

/* Slant and shift that no view has more of, in amount. */
static PpAslant
find_most (const PpSightThrough *through)
{
  PpAslant most = { { 0, 0 }, { 0, 0 } };

  for (guint v = 0; v < through->n_views; v++)
    {
      PpAslant view = through->views[v];

      most.slant.x = fmax (most.slant.x, fabs (view.slant.x));
      most.slant.y = fmax (most.slant.y, fabs (view.slant.y));
      most.shift.x = fmax (most.shift.x, fabs (view.shift.x));
      most.shift.y = fmax (most.shift.y, fabs (view.shift.y));
    }
  return most;
}

/* Dims each row by the screens that come over it. */
static void
dim_rows (const PpSightRow     *leg,
          const PpSightRow     *rows,
          guint                 n,
          const PpSightThrough *through)
{
  PpAslant most = find_most (through);
  PpSightRoom room = { 0 };

  for (guint i = 0; i < through->screens->len; i++)
    {
      const PpScreen *screen = g_ptr_array_index (through->screens, i);

      pp_sight_room_take (&room, screen, leg, most.slant, most.shift);
      for (guint r = 0; r < n; r++)
        if (pp_box_meets (pp_screen_get_shadow (screen, rows[r].slant), box_of (&rows[r])))
          pp_sight_row_dim (&rows[r], &room);
    }
  pp_sight_room_clear (&room);
}

/* Views for which nothing of before holds: their rows have room for light. */
static void
look (PpSightLeg           *self,
      PpSightRow           *rows,
      const guint          *views,
      guint                 n,
      const PpSightThrough *through)
{
  gsize n_light = PP_N_LINES * (gsize) self->leg.n;
  g_autofree double *light = g_new (double, 2 * n * n_light);

  for (gsize i = 0; i < 2 * n * n_light; i++)
    light[i] = 1;
  for (guint r = 0; r < n; r++)
    {
      rows[r].most = light + 2 * r * n_light;
      rows[r].least = rows[r].most + n_light;
      rows[r].doubts = g_array_new (FALSE, FALSE, sizeof (PpSightDoubt));
    }
  dim_rows (&self->leg, rows, n, through);
  for (guint r = 0; r < n; r++)
    {
      self->seen[views[r]] = seen_new (&rows[r]);
      g_array_unref (rows[r].doubts);
    }
}

PpSightLeg *
pp_sight_leg_new (const PpSightRow     *leg,
                  const PpSightThrough *through,
                  const PpSightLeg     *previous)
{
  gboolean stays = previous != NULL && has_hardly_moved (leg, &previous->leg);
  PpSightLeg *self = g_malloc (sizeof *self + through->n_views * sizeof (Seen *));
  g_autofree PpSightRow *rows = g_new (PpSightRow, through->n_views);
  g_autofree guint *views = g_new (guint, through->n_views);
  guint n = 0;

  self->leg = stays ? previous->leg : *leg;
  self->leg.slack = SLACK;
  self->n_views = through->n_views;
  for (guint v = 0; v < through->n_views; v++)
    {
      rows[n] = row_of (&self->leg, &through->views[v]);
      if (stays && !comes_over (through->changed, &rows[n]))
        self->seen[v] = g_atomic_rc_box_acquire (previous->seen[v]);
      else
        views[n++] = v;
    }
  if (n > 0)
    look (self, rows, views, n, through);
  return self;
}

void
pp_sight_leg_free (PpSightLeg *self)
{
  if (self == NULL)
    return;
  for (guint v = 0; v < self->n_views; v++)
    g_atomic_rc_box_release_full (self->seen[v], seen_clear);
  g_free (self);
}

/* As straight as the page has it: screen after screen, until it is dark enough. */
static gboolean
is_behind (const PpSightRow *row,
           GPtrArray        *screens,
           PpPoint           start)
{
  double through = 1;

  for (guint i = 0; i < screens->len && pp_is_over (through, row->opaque); i++)
    {
      const PpScreen *screen = g_ptr_array_index (screens, i);

      if (pp_screen_hides (screen, start, row->slant))
        through *= screen->cover.transmittance;
    }
  return !pp_is_over (through, row->opaque);
}

/* Of one line's entries, first to last - 1. What is dark enough stays so, whatever else is before
 * it. */
static gboolean
is_line_hidden (GArray           *open,
                const PpSightRow *row,
                GPtrArray        *screens,
                guint             first,
                guint             last)
{
  const Open *line = &g_array_index (open, Open, first);
  PpPoint start = point_of (row, line->part + 0.5, line->line);
  double through = line->through, dark = row->opaque + PP_TIE - ROUNDING;

  for (guint i = first + 1; i < last && through >= dark; i++)
    {
      PpScreen *screen = g_array_index (open, Open, i).screen;

      if (pp_screen_hides (screen, start, row->slant))
        through *= screen->cover.transmittance;
    }
  if (fabs (through - row->opaque - PP_TIE) <= ROUNDING)
    return is_behind (row, screens, start);
  return !pp_is_over (through, row->opaque);
}

/* Where the next line begins. */
static guint
find_line_end (GArray *open,
               guint   i)
{
  for (i++; i < open->len && g_array_index (open, Open, i).screen != NULL; i++)
    ;
  return i;
}

static guint
count_hidden (const Seen       *self,
              const PpSightRow *row,
              GPtrArray        *screens)
{
  guint count = self->n_hidden;

  for (guint i = 0, next; i < self->open->len;)
    {
      guint part = g_array_index (self->open, Open, i).part;
      gboolean hidden = TRUE;

      for (; i < self->open->len && g_array_index (self->open, Open, i).part == part; i = next)
        {
          next = find_line_end (self->open, i);
          hidden = hidden && is_line_hidden (self->open, row, screens, i, next);
        }
      count += hidden;
    }
  return count;
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

      shares[v] = (double) count_hidden (self->seen[v], &row, through->screens) / leg->n;
    }
}
