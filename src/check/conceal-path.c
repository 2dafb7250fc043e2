/* conceal-path.c: how much of the wire along one path is hidden, straight on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact: each outline cuts the wire's centre line and its two edges where it meets them. Between
 * two of its own cuts an outline covers a line all along or nowhere, so one look at the middle
 * settles it, and is taken only where the walk along the wire asks for it.
 */
#include "check/conceal-private.h"

#include "check/cover.h"
#include "check/finding.h"
#include "check/path-kept.h"

#include <stdlib.h>

/* The wire's centre line and its edges. */
#define N_LINES 3
#define FEW 64 /* cuts of one line that are put in order by hand */
#define ROOM 32 /* at first, for screens */

/* Where a line lies between two cuts of the same outline. */
typedef struct
{
  guint    first;   /* cut of this line */
  guint    next;    /* cut beyond the place in hand */
  guint    last;    /* not included */
  gboolean known;   /* whether the outline covers it from the cut before to the next */
  gboolean covered;
} Stretch;

/* Something before the wire. */
typedef struct
{
  PpCover  cover;
  gboolean is_opaque;
  PpKnown *known;          /* along the leg in hand; NULL where it lies beside that */
  Stretch  lines[N_LINES];
} Screen;

typedef struct
{
  Screen   background; /* once more, to tell what is beyond it */
  GArray  *screens;    /* Screen, the darkest first: they are soonest enough */
  double   opaque;
  double   asides[N_LINES]; /* mm */
  PpLeg    leg;             /* in hand */
  guint    n_begun;         /* legs */
  PpPathKept *kept;
  const PpPathKept *previous; /* nullable */
  GArray  *cuts;            /* PpCut, of the leg */
  GArray  *live[N_LINES];   /* guint: the screens that cover it somewhere, in their order */
  double   known_to[N_LINES]; /* mm along it */
  gboolean hidden[N_LINES];   /* up to there */
  guint    hider[N_LINES];    /* the opaque screen asked last */
} Walk;

static void
add_screen (Walk   *self,
            PpCover cover,
            PpBox   reach)
{
  Screen screen = { .cover = cover, .is_opaque = !pp_is_over (cover.transmittance, self->opaque) };

  if (pp_box_meets (cover.box, reach))
    g_array_append_val (self->screens, screen);
}

static int
compare_darkest (gconstpointer a,
                 gconstpointer b)
{
  const Screen *p = a, *q = b;

  return p->cover.transmittance < q->cover.transmittance
             ? -1 : p->cover.transmittance > q->cover.transmittance;
}

static void
walk_init (Walk          *self,
           const PpScene *scene,
           PpRest       **rests,
           const PpRun   *run,
           double         drawn_in)
{
  double radius = scene->panel->wire->diameter / 2;
  PpBox reach = pp_run_get_box (run, radius);

  *self = (Walk) {
    .background = { .cover = pp_cover_of_background (scene) },
    .screens = g_array_sized_new (FALSE, FALSE, sizeof (Screen), ROOM),
    .opaque = pp_panel_get_limit (scene->panel, PP_LIMIT_OPAQUE),
    .asides = { 0, -radius, radius },
    .cuts = g_array_sized_new (FALSE, FALSE, sizeof (PpCut), FEW), /* a place also for none */
  };
  for (guint k = 0; k < N_LINES; k++)
    self->live[k] = g_array_sized_new (FALSE, FALSE, sizeof (guint), ROOM);
  add_screen (self, self->background.cover, reach);
  for (guint i = 0; i < scene->n_parts; i++)
    add_screen (self, pp_cover_of_part (&scene->parts[i]), reach);
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      PpCover cover;

      if (!pp_conceal_counts (rests, i) || !pp_box_meets (scene->bodies[i]->box, reach))
        continue;
      cover = pp_cover_of_body (scene->bodies[i]);
      cover.drawn_in = drawn_in;
      add_screen (self, cover, reach);
    }
  g_array_sort (self->screens, compare_darkest); /* which leaves equals in their order */
}

static void
walk_clear (Walk *self)
{
  g_array_unref (self->screens);
  g_array_unref (self->cuts);
  for (guint k = 0; k < N_LINES; k++)
    g_array_unref (self->live[k]);
}

static int
compare_cuts (gconstpointer a,
              gconstpointer b)
{
  const PpCut *p = a, *q = b;

  return p->along < q->along ? -1 : p->along > q->along;
}

/* Those of one line; most often a few. */
static void
sort_cuts (PpCut *cuts,
           guint  n)
{
  if (n > FEW)
    qsort (cuts, n, sizeof *cuts, compare_cuts);
  for (guint i = 1; i < n && n <= FEW; i++)
    {
      PpCut cut = cuts[i];
      guint k = i;

      for (; k > 0 && cuts[k - 1].along > cut.along; k--)
        cuts[k] = cuts[k - 1];
      cuts[k] = cut;
    }
}

/* Puts those of the line first; gives how many they are. */
static guint
part_cuts (PpCut *cuts,
           guint  n,
           guint  line)
{
  guint n_line = 0;

  for (guint i = 0; i < n; i++)
    if (cuts[i].line == line)
      {
        PpCut cut = cuts[i];

        cuts[i] = cuts[n_line];
        cuts[n_line++] = cut;
      }
  return n_line;
}

static const PpCut *
get_cut (const Walk *self,
         guint       i)
{
  return &g_array_index (self->cuts, PpCut, i);
}

static void
cut_by_screen (Walk   *self,
               Screen *screen)
{
  guint at = self->cuts->len;

  screen->known = pp_path_kept_take (self->kept, self->previous, self->n_begun - 1,
                                     &screen->cover, self->asides, N_LINES);
  pp_cover_cut (&screen->cover, screen->known->sides, self->leg.from, self->leg.direction,
                self->leg.length, self->asides, N_LINES, self->cuts);
  for (guint k = 0; k < N_LINES; k++)
    {
      PpCut *cuts = &g_array_index (self->cuts, PpCut, at);
      guint n = part_cuts (cuts, self->cuts->len - at, k);
      Stretch stretch = { .first = at, .next = at, .last = at + n };

      sort_cuts (cuts, n);
      at += n;
      screen->lines[k] = stretch;
    }
}

/* Up to where a screen covers a line, or does not, as it does right behind `along`. What is no
 * longer than a tie is passed over. */
static double
look_at_screen (Walk     *self,
                Screen   *screen,
                guint     line,
                double    along,
                gboolean *covered)
{
  Stretch *stretch = &screen->lines[line];
  double start = 0, end = self->leg.length;

  while (stretch->next < stretch->last && get_cut (self, stretch->next)->along <= along + PP_TIE)
    {
      stretch->next++;
      stretch->known = FALSE;
    }
  if (stretch->next > stretch->first)
    start = get_cut (self, stretch->next - 1)->along;
  if (stretch->next < stretch->last && get_cut (self, stretch->next)->along < end - PP_TIE)
    end = get_cut (self, stretch->next)->along;
  if (!stretch->known)
    stretch->covered = pp_known_contains (screen->known, &screen->cover,
                                          pp_leg_point (&self->leg, (start + end) / 2,
                                                        self->asides[line]));
  stretch->known = TRUE;
  *covered = stretch->covered;
  return end;
}

/* Whether a screen covers the line somewhere. One that does not cut it covers all of it or
 * nothing. */
static gboolean
is_live (Walk   *self,
         Screen *screen,
         guint   line)
{
  gboolean covered = TRUE;

  if (screen->lines[line].first == screen->lines[line].last)
    look_at_screen (self, screen, line, 0, &covered);
  return covered;
}

/* Whether a screen neither covers nor cuts any line of the leg. */
static gboolean
is_beside (const Walk   *self,
           const Screen *screen)
{
  const PpLeg *leg = &self->leg;

  return pp_cover_is_beside (&screen->cover, leg->from, leg->direction, leg->length, self->asides,
                             N_LINES, 0);
}

static void
pass_by (Screen *screen)
{
  screen->known = NULL;
  for (guint k = 0; k < N_LINES; k++)
    screen->lines[k] = (Stretch) { .known = TRUE };
}

static void
begin_leg (Walk *self,
           PpLeg leg)
{
  self->leg = leg;
  pp_path_kept_begin (self->kept, self->previous, self->n_begun++, &leg);
  g_array_set_size (self->cuts, 0);
  cut_by_screen (self, &self->background);
  for (guint k = 0; k < N_LINES; k++)
    {
      self->known_to[k] = 0;
      self->hider[k] = 0;
      g_array_set_size (self->live[k], 0);
    }
  for (guint i = 0; i < self->screens->len; i++)
    {
      Screen *screen = &g_array_index (self->screens, Screen, i);

      if (is_beside (self, screen))
        {
          pass_by (screen);
          continue;
        }
      cut_by_screen (self, screen);
      for (guint k = 0; k < N_LINES; k++)
        if (is_live (self, screen, k))
          g_array_append_val (self->live[k], i);
    }
}

/* One that is opaque is enough, and most often it is the one that was. */
static gboolean
is_behind_opaque (Walk  *self,
                  guint  line,
                  double along,
                  guint  i)
{
  Screen *screen = &g_array_index (self->screens, Screen, i);
  gboolean covered = FALSE;

  if (!screen->is_opaque)
    return FALSE;
  self->known_to[line] = look_at_screen (self, screen, line, along, &covered);
  self->hider[line] = i;
  return covered;
}

static gboolean
is_hidden_from (Walk  *self,
                guint  line,
                double along)
{
  double through = 1, end = self->leg.length;

  if (self->screens->len > 0 && is_behind_opaque (self, line, along, self->hider[line]))
    return TRUE;
  for (guint n = 0; n < self->live[line]->len && pp_is_over (through, self->opaque); n++)
    {
      guint i = g_array_index (self->live[line], guint, n);
      Screen *screen = &g_array_index (self->screens, Screen, i);
      gboolean covered;

      if (is_behind_opaque (self, line, along, i))
        return TRUE;
      end = fmin (end, look_at_screen (self, screen, line, along, &covered));
      if (covered)
        through *= screen->cover.transmittance;
    }
  self->known_to[line] = end;
  return !pp_is_over (through, self->opaque);
}

/* Adds an exposed stretch, or makes the last one longer where `runs_on` from it. */
static void
expose (GArray      *exposed,
        const PpLeg *leg,
        double       start,
        double       end,
        gboolean     beyond,
        gboolean     runs_on)
{
  PpExposed *last = exposed->len > 0 ? &g_array_index (exposed, PpExposed, exposed->len - 1) : NULL;
  PpExposed stretch = { .from = pp_leg_point (leg, start, 0), .to = pp_leg_point (leg, end, 0),
                        .length = end - start, .beyond = beyond };

  if (runs_on && last != NULL && last->beyond == beyond)
    {
      last->to = stretch.to;
      last->length += stretch.length;
    }
  else
    g_array_append_val (exposed, stretch);
}

/* Up to where all three lines stay as they are right behind `along`. */
static double
look_from (Walk     *self,
           double    along,
           gboolean *hidden)
{
  double end = self->leg.length;

  *hidden = TRUE;
  for (guint k = 0; k < N_LINES; k++)
    {
      if (self->known_to[k] <= along + PP_TIE)
        self->hidden[k] = is_hidden_from (self, k, along);
      *hidden = *hidden && self->hidden[k];
      end = fmin (end, self->known_to[k]);
    }
  return end;
}

/* `runs_on` is TRUE while the wire right before is exposed. */
static void
walk_leg (Walk     *self,
          GArray   *exposed,
          double   *hidden_length,
          gboolean *runs_on)
{
  const PpLeg *leg = &self->leg;

  for (double start = 0, end; start < leg->length; start = end)
    {
      gboolean hidden, within;

      end = look_from (self, start, &hidden);
      if (hidden)
        *hidden_length += end - start;
      else
        {
          end = fmin (end, look_at_screen (self, &self->background, 0, start, &within));
          expose (exposed, leg, start, end, !within, *runs_on);
        }
      *runs_on = !hidden;
    }
}

/* A wire without an exposed stretch is hidden to the last figure, one without length too. */
PpPathKept *
pp_path_look (PpPath           *self,
              const PpScene    *scene,
              PpRest          **rests,
              const PpRun      *run,
              double            drawn_in,
              const PpPathKept *previous)
{
  GArray *exposed = g_array_new (FALSE, FALSE, sizeof (PpExposed));
  gboolean runs_on = FALSE;
  Walk walk;

  *self = (PpPath) { 0 };
  walk_init (&walk, scene, rests, run, drawn_in);
  walk.kept = pp_path_kept_new ();
  walk.previous = previous;
  for (guint i = 0; i < run->n_legs; i++)
    {
      begin_leg (&walk, pp_run_get_leg (run, i));
      self->length += walk.leg.length;
      walk_leg (&walk, exposed, &self->hidden, &runs_on);
    }
  walk_clear (&walk);
  for (guint i = 0; i < exposed->len; i++)
    if (g_array_index (exposed, PpExposed, i).beyond)
      self->beyond += g_array_index (exposed, PpExposed, i).length;
  if (exposed->len == 0)
    self->hidden = self->length;
  self->share = self->length > 0 ? self->hidden / self->length : 1;
  self->n_exposed = exposed->len;
  self->exposed = (PpExposed *) (gpointer) g_array_free (exposed, FALSE);
  return walk.kept;
}
