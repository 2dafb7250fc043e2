/* conceal-aslant.c: how much of the hung wire is hidden from each of 21 sides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each leg is cut into equal parts of about PART. A line of sight from a part's middle leaves the
 * front face shifted by the thickness of glass and wire, bent by Snell's law; the pieces it then
 * meets are those of midsurface.h.
 *
 * Whatever is moved on the panel moves its centre of mass, and with it the hook and all of the hung
 * wire, but by little. So each part has a room (sight-row.h), and is looked at again only when it
 * has moved farther, or when what was changed casts its shadow there, or did.
 */
#include "check/conceal-private.h"

#include "check/finding.h"
#include "check/refraction.h"
#include "check/sight-row.h"

#include <string.h>

#define PART 0.5 /* mm */
#define RADIANS (G_PI / 180)

/* mm: more than rounding takes from a room. */
#define ROOM_SPARE 1e-6f

#define N_ASIDES 3 /* the wire's centre line and its edges */

/* A view's parts, one after another: of each leg the middle line, then its two edges. The views'
 * follow one another. */
struct _PpSights
{
  PpRun   run;
  guint   n; /* a view */
  PpSeen  seen;
};

/* A line of the wire before it is shifted, its first part's place among the view's, and of each part
 * the one of the check before that it was, by its place there, and how far it has moved, mm. */
typedef struct
{
  PpSightRow row;
  guint      first;
  PpSightRow old_row;
  guint      old_first;
  guint     *was;
  float     *moved;
} Strand;

typedef struct
{
  PpAslant        aslant;
  PpSights       *now;
  const PpSights *before;    /* NULL: all is looked at */
  guint           n_strands; /* 3 a leg */
  Strand          strands[2 * N_ASIDES];
  PpBox           reach;     /* of the wire */
  GArray         *gone;      /* PpMidsurface: what lies elsewhere now */
  GArray         *come;      /* PpMidsurface: as it lies now */
  guint8         *stale;     /* of a view's parts */
} Looking;

void
pp_sights_free (PpSights *self)
{
  if (self == NULL)
    return;
  g_free (self->seen.hidden);
  g_free (self->seen.room);
  g_free (self->seen.by);
  g_free (self);
}

static guint
count_parts (const PpLeg *leg)
{
  return (guint) fmax (1, round (leg->length / PART));
}

static PpSights *
sights_new (PpRun run)
{
  PpSights *self = g_new0 (PpSights, 1);

  self->run = run;
  for (guint i = 0; i < run.n_legs; i++)
    {
      PpLeg leg = pp_run_get_leg (&run, i);

      self->n += N_ASIDES * count_parts (&leg);
    }
  self->seen.hidden = g_new (guint8, (gsize) self->n * PP_N_VIEWS);
  self->seen.room = g_new (float, (gsize) self->n * PP_N_VIEWS);
  self->seen.by = g_new (guint16, (gsize) self->n * PP_N_VIEWS);
  return self;
}

static PpSightRow
row_of (const PpRun *run,
        guint        leg_index,
        double       aside)
{
  PpLeg leg = pp_run_get_leg (run, leg_index);
  guint n = count_parts (&leg);
  double spacing = leg.length / n;

  return (PpSightRow) {
    .from = pp_leg_point (&leg, spacing / 2, aside),
    .step = { spacing * leg.direction.x, spacing * leg.direction.y },
    .spacing = spacing,
    .n = n,
  };
}

static PpPoint
part_at (const PpSightRow *row,
         guint             i)
{
  return (PpPoint) { row->from.x + i * row->step.x, row->from.y + i * row->step.y };
}

/* Each part was the one as far along its leg. */
static void
strand_follow (Strand *self)
{
  self->was = g_new (guint, self->row.n);
  self->moved = g_new (float, self->row.n);
  for (guint i = 0; i < self->row.n; i++)
    {
      guint k = MIN ((guint) ((i + 0.5) / self->row.n * self->old_row.n), self->old_row.n - 1);
      PpPoint p = part_at (&self->row, i), q = part_at (&self->old_row, k);

      self->was[i] = k;
      self->moved[i] = (float) pp_point_distance (p, q) + ROOM_SPARE;
    }
}

static void
make_strands (Looking *self,
              double   radius)
{
  const double asides[N_ASIDES] = { 0, -radius, radius };
  guint first = 0, old_first = 0;

  for (guint leg = 0; leg < self->now->run.n_legs; leg++)
    for (guint k = 0; k < N_ASIDES; k++)
      {
        Strand *strand = &self->strands[self->n_strands++];

        *strand = (Strand) { .row = row_of (&self->now->run, leg, asides[k]), .first = first };
        first += strand->row.n;
        if (self->before == NULL)
          continue;
        strand->old_row = row_of (&self->before->run, leg, asides[k]);
        strand->old_first = old_first;
        old_first += strand->old_row.n;
        strand_follow (strand);
      }
}

static void
add_midsurface (GArray          *pieces,
                const PpSettled *settled,
                guint            i)
{
  PpMidsurface piece;

  if (i >= settled->scene->n_bodies || !pp_conceal_counts (settled->rests, i))
    return;
  piece = pp_midsurface_make (settled->rests[i], settled->scene->bodies[i], i);
  g_array_append_val (pieces, piece);
}

static gboolean
lies_alike (const PpSettled *a,
            const PpSettled *b,
            guint            i)
{
  return i < a->scene->n_bodies && i < b->scene->n_bodies
         && a->scene->bodies[i] == b->scene->bodies[i]
         && pp_rest_lies_alike (a->rests[i], b->rests[i]);
}

static void
find_moved (Looking         *self,
            const PpSettled *now,
            const PpSettled *before)
{
  for (guint i = 0; i < MAX (now->scene->n_bodies, before->scene->n_bodies); i++)
    if (!lies_alike (now, before, i))
      {
        add_midsurface (self->gone, before, i);
        add_midsurface (self->come, now, i);
      }
}

static int
compare_steepest (gconstpointer a,
                  gconstpointer b)
{
  const PpMidsurface *p = a, *q = b;

  return p->steepest < q->steepest ? -1 : p->steepest > q->steepest;
}

static void
aslant_init (PpAslant        *self,
             const PpSettled *settled)
{
  const PpScene *scene = settled->scene;
  const PpPanel *panel = scene->panel;

  *self = (PpAslant) {
    .panel = panel,
    .background = pp_cover_of_background (scene),
    .parts = g_array_new (FALSE, FALSE, sizeof (PpCover)),
    .pieces = g_array_sized_new (FALSE, FALSE, sizeof (PpMidsurface), scene->n_bodies),
    .opaque = pp_panel_get_limit (panel, PP_LIMIT_OPAQUE),
    .shadows = g_array_new (FALSE, FALSE, sizeof (PpShadow)),
    .shadow_of = g_new (guint16, scene->n_bodies + 1),
    .n_bodies = scene->n_bodies,
  };
  for (guint i = 0; i < scene->n_parts; i++)
    {
      PpCover part = pp_cover_of_part (&scene->parts[i]);

      g_array_append_val (self->parts, part);
    }
  for (guint i = 0; i < scene->n_bodies; i++)
    add_midsurface (self->pieces, settled, i);
  g_array_sort (self->pieces, compare_steepest); /* which leaves equals in their order */
}

static void
looking_init (Looking         *self,
              PpSights        *now,
              const PpSettled *settled,
              const PpSights  *before,
              const PpSettled *settled_before)
{
  double radius = settled->scene->panel->wire->diameter / 2;

  *self = (Looking) {
    .now = now,
    .before = before != NULL && before->run.n_legs == now->run.n_legs ? before : NULL,
    .reach = pp_run_get_box (&now->run, radius),
    .gone = g_array_new (FALSE, FALSE, sizeof (PpMidsurface)),
    .come = g_array_new (FALSE, FALSE, sizeof (PpMidsurface)),
    .stale = g_new (guint8, now->n),
  };
  aslant_init (&self->aslant, settled);
  make_strands (self, radius);
  if (self->before != NULL)
    find_moved (self, settled, settled_before);
}

static void
looking_clear (Looking *self)
{
  g_array_unref (self->aslant.parts);
  g_array_unref (self->aslant.pieces);
  g_array_unref (self->aslant.shadows);
  g_free (self->aslant.shadow_of);
  g_array_unref (self->gone);
  g_array_unref (self->come);
  g_free (self->stale);
  for (guint i = 0; i < self->n_strands; i++)
    {
      g_free (self->strands[i].was);
      g_free (self->strands[i].moved);
    }
}

static void
look_from (Looking *self,
           double   sideways,
           double   updown)
{
  PpAslant *aslant = &self->aslant;
  PpPoint slant = { tan (sideways * RADIANS), -tan (updown * RADIANS) };
  double steep = hypot (slant.x, slant.y);
  const PpBackground *back = aslant->panel->background;
  PpBox reach;

  aslant->slant = slant;
  aslant->shift = (PpPoint) { 0, 0 };
  if (steep > 0)
    {
      double bent = pp_refraction_shift (back->thickness, steep, back->glass.refractive_index);
      double far = (aslant->panel->wire->diameter / 2 * steep + bent) / steep;

      aslant->shift = (PpPoint) { far * slant.x, far * slant.y };
    }
  reach = pp_box_grow (pp_box_move (self->reach, aslant->shift), PP_SIGHT_FAR);
  g_array_set_size (aslant->shadows, 0);
  memset (aslant->shadow_of, 0xff, aslant->n_bodies * sizeof *aslant->shadow_of); /* none */
  for (guint i = 0; i < aslant->pieces->len; i++)
    {
      const PpMidsurface *piece = &g_array_index (aslant->pieces, PpMidsurface, i);
      PpShadow shadow = { piece, pp_midsurface_get_shadow (piece, slant) };

      if (!pp_box_meets (shadow.box, reach))
        continue;
      aslant->shadow_of[piece->index] = (guint16) aslant->shadows->len;
      g_array_append_val (aslant->shadows, shadow);
    }
}

static PpSightRow
shifted (const PpAslant *aslant,
         PpSightRow      row)
{
  row.from.x += aslant->shift.x;
  row.from.y += aslant->shift.y;
  return row;
}

/* From part `first` on. */
static PpSeen
seen_from (const PpSights *sights,
           gsize           first)
{
  return (PpSeen) { sights->seen.hidden + first, sights->seen.room + first,
                    sights->seen.by + first };
}

/* Parts of before that what is gone dimmed have nothing to say. */
static void
mark_gone (const Looking *self,
           const Strand  *strand,
           const PpSeen  *seen,
           guint8        *stale)
{
  PpSightRow row = shifted (&self->aslant, strand->old_row);

  for (guint g = 0; g < self->gone->len; g++)
    {
      const PpMidsurface *piece = &g_array_index (self->gone, PpMidsurface, g);
      PpBox box = pp_midsurface_get_shadow (piece, self->aslant.slant);
      guint first = 0, last = row.n;

      pp_sight_row_range (&row, box, &first, &last);
      for (guint i = 0; first < last && i < strand->row.n; i++)
        stale[i] |= strand->was[i] >= first && strand->was[i] < last
                    && (seen->by[i] == piece->index || seen->by[i] == PP_SIGHT_SEVERAL);
    }
}

static void
mark_come (const Looking *self,
           const Strand  *strand,
           const PpSeen  *seen,
           guint8        *stale)
{
  PpSightRow row = shifted (&self->aslant, strand->row);

  for (guint c = 0; c < self->come->len; c++)
    {
      const PpMidsurface *piece = &g_array_index (self->come, PpMidsurface, c);
      PpShadow shadow = { piece, pp_midsurface_get_shadow (piece, self->aslant.slant) };

      pp_sight_row_add (&self->aslant, &row, &shadow, seen, stale);
    }
}

/* As it was, where it has room for having moved. */
static void
take_over (const Looking *self,
           const Strand  *strand,
           guint          view,
           const PpSeen  *seen,
           guint8        *stale)
{
  PpSeen old = seen_from (self->before, (gsize) view * self->before->n + strand->old_first);

  for (guint i = 0; i < strand->row.n; i++)
    {
      guint was = strand->was[i];

      seen->room[i] = old.room[was] - strand->moved[i];
      seen->hidden[i] = old.hidden[was];
      seen->by[i] = old.by[was];
      stale[i] = seen->room[i] <= 0;
    }
  mark_gone (self, strand, seen, stale);
  mark_come (self, strand, seen, stale);
}

/* Of those that are stale most have hardly moved. */
static void
look_again (const Looking    *self,
            const PpSightRow *row,
            const PpSeen     *seen,
            guint8           *stale)
{
  for (guint i = 0; i < row->n; i++)
    if (stale[i] && seen->hidden[i]
        && pp_sight_row_is_still_hidden (&self->aslant, row, i, seen))
      stale[i] = FALSE;
}

static void
look_at_strand (const Looking *self,
                const Strand  *strand,
                guint          view)
{
  PpSightRow row = shifted (&self->aslant, strand->row);
  PpSeen seen = seen_from (self->now, (gsize) view * self->now->n + strand->first);
  guint8 *stale = self->stale + strand->first;

  if (self->before != NULL)
    {
      take_over (self, strand, view, &seen, stale);
      look_again (self, &row, &seen, stale);
    }
  else
    memset (stale, TRUE, row.n);
  for (guint i = 0, end; i < row.n; i = end)
    {
      for (end = i; end < row.n && stale[end]; end++)
        ;
      if (end > i)
        pp_sight_row_look (&self->aslant, &row, i, end, &seen);
      for (; end < row.n && !stale[end]; end++)
        ;
    }
}

/* mm; all of a leg to the last figure. */
static double
hidden_of_leg (const Looking *self,
               guint          leg,
               guint          view)
{
  const guint8 *hidden = self->now->seen.hidden + (gsize) view * self->now->n;
  const Strand *strands = &self->strands[leg * N_ASIDES];
  guint n = strands[0].row.n, count = 0;

  for (guint k = 0; k < N_ASIDES; k++)
    look_at_strand (self, &strands[k], view);
  for (guint i = 0; i < n; i++)
    count += hidden[strands[0].first + i] & hidden[strands[1].first + i]
             & hidden[strands[2].first + i];
  return pp_run_get_leg (&self->now->run, leg).length * ((double) count / n);
}

/* A wire without length is hidden, as straight on. */
static double
share_of_view (const Looking *self,
               guint          view)
{
  double length = 0, hidden = 0;

  for (guint i = 0; i < self->now->run.n_legs; i++)
    {
      length += pp_run_get_leg (&self->now->run, i).length;
      hidden += hidden_of_leg (self, i, view);
    }
  return length > 0 ? CLAMP (hidden / length, 0, 1) : 1;
}

/* The first of those within PP_TIE of the least, in the order of the views: sideways rising, in
 * each updown rising. */
static PpView
find_worst (const PpView *views)
{
  double least = INFINITY;
  guint i = 0;

  for (guint k = 0; k < PP_N_VIEWS; k++)
    least = fmin (least, views[k].share);
  while (pp_is_over (views[i].share, least))
    i++;
  return views[i];
}

void
pp_conceal_look_aslant (PpConceal       *self,
                        const PpSettled *settled,
                        const PpHang    *hang,
                        const PpConceal *previous,
                        const PpSettled *before)
{
  const PpDisplay *display = settled->scene->panel->display;
  Looking looking;
  guint view = 0;

  self->sights = sights_new (pp_run_hung (settled->scene, hang));
  looking_init (&looking, self->sights, settled, previous != NULL ? previous->sights : NULL,
                before);
  for (int h = -3; h <= 3; h++)
    for (int v = -1; v <= 1; v++, view++)
      {
        /* + 0.0 makes a plain zero of the negative one. */
        self->views[view].sideways = display->sideways * h / 3 + 0.0;
        self->views[view].updown = display->updown * v + 0.0;
        look_from (&looking, self->views[view].sideways, self->views[view].updown);
        self->views[view].share = share_of_view (&looking, view);
      }
  looking_clear (&looking);
  self->worst = find_worst (self->views);
}
