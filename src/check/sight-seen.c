/* sight-seen.c: which parts of a leg of the wire a view shows, wherever that lies within a slack.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/sight-seen.h"

#include "check/finding.h"
#include "check/loops.h"

#include <string.h>

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

struct _PpSeen
{
  guint8 *hidden;   /* of each part: whether it surely is */
  guint   n_hidden; /* parts that are */
  GArray *open;     /* Open */
};

static void
open_clear (gpointer data)
{
  g_clear_pointer (&((Open *) data)->screen, pp_screen_unref);
}

static gboolean
is_surely_hidden (const PpSightRow *row,
                  guint             part,
                  guint             line)
{
  return row->most[(gsize) line * row->n + part] <= row->opaque + PP_TIE - ROUNDING;
}

/* Of each part whether one of its lines surely is not. (transfer full) */
static guint8 *
find_shown (const PpSightRow *row)
{
  guint8 *shown = g_new0 (guint8, row->n);

  for (guint k = 0; k < PP_N_LINES; k++)
    pp_loop_add_more (row->least + (gsize) k * row->n, row->n, row->opaque + PP_TIE + ROUNDING,
                      shown);
  return shown;
}

/* The row's own number of a part is that of the leg less `first`. */
static void
add_open (PpSeen           *self,
          const PpSightRow *row,
          guint             first,
          guint             part,
          guint             line,
          const PpScreen   *screen)
{
  Open open = { first + part, line, row->most[(gsize) line * row->n + part],
                screen != NULL ? pp_screen_ref ((PpScreen *) screen) : NULL };

  g_array_append_val (self->open, open);
}

/* Of the parts before `first` and from `end` on. */
static void
keep_open (PpSeen       *self,
           const PpSeen *before,
           guint         first,
           guint         end)
{
  for (guint i = 0; i < before->open->len; i++)
    {
      Open open = g_array_index (before->open, Open, i);

      if (open.part >= first && open.part < end)
        continue;
      if (open.screen != NULL)
        pp_screen_ref (open.screen);
      g_array_append_val (self->open, open);
    }
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
static void
judge_parts (PpSeen           *self,
             const PpSightRow *row,
             guint             first)
{
  g_autofree guint8 *shown = find_shown (row);

  for (guint i = 0; i < row->n; i++)
    {
      guint n_before = self->open->len;

      for (guint k = 0; k < PP_N_LINES && !shown[i]; k++)
        if (!is_surely_hidden (row, i, k))
          add_open (self, row, first, i, k, NULL);
      self->hidden[first + i] = !shown[i] && self->open->len == n_before;
    }
  for (guint d = 0; d < row->doubts->len; d++)
    {
      const PpSightDoubt *doubt = &g_array_index (row->doubts, PpSightDoubt, d);

      if (!shown[doubt->part] && !is_surely_hidden (row, doubt->part, doubt->line))
        add_open (self, row, first, doubt->part, doubt->line, doubt->screen);
    }
}

PpSeen *
pp_seen_new (const PpSightRow *row,
             guint             first,
             guint             n,
             const PpSeen     *before)
{
  PpSeen *self = g_atomic_rc_box_new0 (PpSeen);

  self->open = g_array_new (FALSE, FALSE, sizeof (Open));
  g_array_set_clear_func (self->open, open_clear);
  self->hidden = g_new (guint8, n);
  if (before != NULL)
    {
      memcpy (self->hidden, before->hidden, n);
      keep_open (self, before, first, first + row->n);
    }
  judge_parts (self, row, first);
  g_array_sort (self->open, compare_open);
  for (guint i = 0; i < n; i++)
    self->n_hidden += self->hidden[i];
  return self;
}

PpSeen *
pp_seen_ref (PpSeen *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
seen_clear (gpointer data)
{
  PpSeen *self = data;

  g_free (self->hidden);
  g_array_unref (self->open);
}

void
pp_seen_unref (PpSeen *self)
{
  g_atomic_rc_box_release_full (self, seen_clear);
}

void
pp_seen_widen (const PpSeen *self,
               GPtrArray    *screens,
               guint        *first,
               guint        *end)
{
  for (guint i = 0; i < self->open->len; i++)
    {
      const Open *open = &g_array_index (self->open, Open, i);

      if ((open->part >= *first && open->part < *end) || open->screen == NULL
          || !g_ptr_array_find (screens, open->screen, NULL))
        continue;
      *first = MIN (*first, open->part);
      *end = MAX (*end, open->part + 1);
    }
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
  PpPoint start = pp_sight_row_point (row, line->part + 0.5, line->line);
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

guint
pp_seen_count_hidden (const PpSeen     *self,
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
