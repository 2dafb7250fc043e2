/* drill.c: the safest places for the wire's holes that a layout hides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A mask says of each small square of the glass how well it is hidden with all pieces drawn in.
 * With it many pairs are judged roughly, on a grid that lies evenly about the centre of mass, and
 * the best few by the check itself. Pairs that lie unevenly are looked at only where no even one
 * will do.
 */
#include "advise/drill-private.h"
#include "advise/move.h"
#include "panel/hole-rules.h"
#include "panel/tolerance.h"

#include <string.h>

#define MOST_SQUARES 300 /* along the longer side of the glass */
#define MOST_KEPT 4096   /* pairs at once; there may be a million */
#define MOST_CHECKED 30  /* pairs that are checked */
#define APART 5.0        /* mm by which two of those differ at least */
#define LEAST_SPAN 40.0  /* mm between centres: a wire from nearly one point levels nothing */
#define SHORTFALL_STEPS 10 /* a mm */

typedef struct
{
  PpDrillPlace places[2];
  double       shortfall;
  double       uneven; /* mm */
  double       spare;
  double       way;
} Pair;

static Pair
pair_of (const PpDrill *self,
         PpDrillPlace   a,
         PpDrillPlace   b)
{
  const PpMass *mass = &self->check->mass;
  double rims = (pp_drill_hole (self, 0)->diameter + pp_drill_hole (self, 1)->diameter) / 2;
  double between = pp_point_distance (a.at, b.at) - rims;
  Pair pair = { .places = { a, b } };

  pair.shortfall = round (pp_drill_wire_shown (self, a.at, b.at)
                          + (a.shown + b.shown) / self->check->panel->wire->knot_diameter);
  pair.uneven = round (fabs (a.at.y - b.at.y) + fabs ((a.at.x + b.at.x) / 2 - mass->x));
  pair.spare = fmin (fmin (a.spare, b.spare),
                     between - pp_hole_least_between (a.thickness, b.thickness));
  for (guint k = 0; k < 2; k++)
    pair.way += hypot (pair.places[k].at.x - pp_drill_hole (self, k)->x,
                       pair.places[k].at.y - pp_drill_hole (self, k)->y);
  return pair;
}

static int
compare_pairs (gconstpointer a,
               gconstpointer b)
{
  const Pair *p = a, *q = b;
  const double keys[][2] = { { p->spare < 0, q->spare < 0 }, { p->shortfall, q->shortfall },
                             { p->uneven, q->uneven }, { -p->spare, -q->spare },
                             { p->way, q->way } };

  for (guint k = 0; k < G_N_ELEMENTS (keys); k++)
    if (fabs (keys[k][0] - keys[k][1]) > PP_TIE)
      return keys[k][0] < keys[k][1] ? -1 : 1;
  return 0;
}

/* `from` keeps to the left as it did. */
static gboolean
is_in_order (const PpDrill *self,
             PpPoint        a,
             PpPoint        b)
{
  return (a.x < b.x) == (pp_drill_hole (self, 0)->x < pp_drill_hole (self, 1)->x);
}

/* Pairs a little apart from each other, the best first. */
typedef struct
{
  Pair  pairs[MOST_CHECKED];
  guint n;
} Judged;

static gboolean
is_near (const PpDrillPlace *a,
         const PpDrillPlace *b,
         const Judged       *judged)
{
  for (guint k = 0; k < judged->n; k++)
    if (pp_point_distance (a->at, judged->pairs[k].places[0].at) < APART
        && pp_point_distance (b->at, judged->pairs[k].places[1].at) < APART)
      return TRUE;
  return FALSE;
}

static gboolean
may_pair (const PpDrill      *self,
          const PpDrillPlace *a,
          const PpDrillPlace *b,
          gboolean            even)
{
  double off = fabs (a->at.y - b->at.y) + fabs ((a->at.x + b->at.x) / 2 - self->check->mass.x);

  return (!even || off <= PP_TIE) && is_in_order (self, a->at, b->at)
         && pp_point_distance (a->at, b->at) >= LEAST_SPAN;
}

/* The sort leaves equals in their order, so what is cut off is never missed. */
static void
keep_best (GArray *pairs)
{
  g_array_sort (pairs, compare_pairs);
  if (pairs->len > MOST_KEPT)
    g_array_set_size (pairs, MOST_KEPT);
}

/* The best of those near none that was judged, the best first. */
static GArray *
find_pairs (const PpDrill *self,
            GArray        *first,
            GArray        *second,
            gboolean       even,
            const Judged  *judged,
            GCancellable  *cancellable)
{
  GArray *pairs = g_array_sized_new (FALSE, FALSE, sizeof (Pair), 2 * MOST_KEPT);

  for (guint i = 0; i < first->len && !g_cancellable_is_cancelled (cancellable); i++)
    for (guint j = 0; j < second->len; j++)
      {
        const PpDrillPlace *a = &g_array_index (first, PpDrillPlace, i);
        const PpDrillPlace *b = &g_array_index (second, PpDrillPlace, j);
        Pair pair;

        if (!may_pair (self, a, b, even) || is_near (a, b, judged))
          continue;
        pair = pair_of (self, *a, *b);
        g_array_append_val (pairs, pair);
        if (pairs->len == 2 * MOST_KEPT)
          keep_best (pairs);
      }
  keep_best (pairs);
  return pairs;
}

/* (transfer full) */
static PpPanel *
make (const PpDrill *self,
      const Pair    *pair)
{
  const PpScene *scene = self->check->scene;
  PpMoves moves = { 0 };
  double distance = pp_point_distance (pair->places[0].at, pair->places[1].at);
  double length = pp_drill_length_at (self, distance);

  for (guint k = 0; k < 2; k++)
    if (!self->stays[k])
      pp_moves_add (&moves, (PpMove) { .kind = PP_MOVE_HOLE, .index = (guint) scene->knots[k],
                                       .pose = { .x = pair->places[k].at.x,
                                                 .y = pair->places[k].at.y } });
  if (!self->guard->wire && !isnan (length))
    pp_moves_add (&moves, (PpMove) { .kind = PP_MOVE_WIRE, .length = length });
  return pp_moves_make (&moves, self->check->panel);
}

/* What a checked pair is judged by, first things first; less is better. */
enum
{
  KEY_FAULTS,    /* of holes and knots */
  KEY_SHORTFALL, /* tenths of a mm that would show if pieces landed a little off */
  KEY_SAID,      /* findings about holes and wire */
  KEY_UNEVEN,
  KEY_SPARE,     /* with its sign turned */
  KEY_WAY,
  N_KEYS,
};

static gboolean
is_of_hole (const PpFinding *finding)
{
  return g_str_has_prefix (finding->code, "hole-") || g_str_has_prefix (finding->code, "knot-");
}

/* What is said of hanging on the wire is said about the wire. */
static gboolean
is_about_wire (const PpPanel   *panel,
               const PpFinding *finding)
{
  const char *id = finding->about[0];

  return id != NULL
         && (g_str_equal (id, "wire") || pp_panel_find_hole (panel, id, NULL) != NULL);
}

static void
count_findings (const PpCheck *check,
                double        *keys)
{
  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (finding->quiet || finding->level == PP_LEVEL_NOTE)
        continue;
      if (finding->level == PP_LEVEL_FAULT && is_of_hole (finding))
        keys[KEY_FAULTS]++;
      else if (is_about_wire (check->panel, finding))
        keys[KEY_SAID]++;
    }
}

static void
fill_keys (const PpDrill *self,
           const PpCheck *check,
           const Pair    *pair,
           double        *keys)
{
  const PpConceal *conceal = check->conceal;
  double limit = pp_panel_get_limit (check->panel, PP_LIMIT_KNOT_SHARE);
  double shortfall = conceal->barely;

  count_findings (check, keys);
  keys[KEY_UNEVEN] = pair->uneven;
  keys[KEY_SPARE] = -pair->spare;
  keys[KEY_WAY] = pair->way;
  for (guint k = 0; k < 2; k++)
    shortfall += check->panel->wire->knot_diameter * fmax (0, limit - conceal->knots[k].barely);
  keys[KEY_SHORTFALL] = round (shortfall * SHORTFALL_STEPS);
}

static gboolean
is_less (const double *a,
         const double *b)
{
  for (guint k = 0; k < N_KEYS; k++)
    if (fabs (a[k] - b[k]) > PP_TIE)
      return a[k] < b[k];
  return FALSE;
}

/* The best panel so far, and its keys. */
typedef struct
{
  PpPanel *panel;
  double   keys[N_KEYS];
} Best;

static void
judge (const PpDrill *self,
       const Pair    *pair,
       PpPanel       *panel,
       Best          *best)
{
  g_autoptr (PpCheck) check = pp_check_new (panel, self->check, NULL, NULL, NULL, NULL);
  double keys[N_KEYS] = { 0 };

  fill_keys (self, check, pair, keys);
  if (best->panel != NULL && !is_less (keys, best->keys))
    return;
  pp_panel_unref (best->panel);
  best->panel = pp_panel_ref (panel);
  memcpy (best->keys, keys, sizeof keys);
}

static void
judge_pairs (const PpDrill *self,
             GArray        *pairs,
             Judged        *judged,
             GCancellable  *cancellable,
             Best          *best)
{
  for (guint i = 0; i < pairs->len && judged->n < MOST_CHECKED; i++)
    {
      const Pair *pair = &g_array_index (pairs, Pair, i);
      g_autoptr (PpPanel) panel = NULL;

      if (is_near (&pair->places[0], &pair->places[1], judged))
        continue;
      if (g_cancellable_is_cancelled (cancellable))
        return;
      panel = make (self, pair);
      judged->pairs[judged->n++] = *pair;
      if (panel != NULL)
        judge (self, pair, panel, best);
    }
}

/* Some of the best pairs, each a little apart from those before: where all that were kept lie near
 * them, there are others. */
static void
judge_best (const PpDrill *self,
            GArray        *first,
            GArray        *second,
            gboolean       even,
            GCancellable  *cancellable,
            Best          *best)
{
  Judged judged = { .n = 0 };
  gboolean are_more = TRUE;

  while (are_more && judged.n < MOST_CHECKED && !g_cancellable_is_cancelled (cancellable))
    {
      g_autoptr (GArray) pairs = find_pairs (self, first, second, even, &judged, cancellable);

      judge_pairs (self, pairs, &judged, cancellable, best);
      are_more = pairs->len == MOST_KEPT;
    }
}

static void
judge_given (const PpDrill *self,
             Best          *best)
{
  PpDrillPlace places[2];
  Pair pair;

  for (guint k = 0; k < 2; k++)
    {
      const PpHole *hole = pp_drill_hole (self, k);
      PpPoint at = { hole->x, hole->y };

      places[k] = (PpDrillPlace) { .at = at, .shown = pp_drill_knot_shown (self, at) };
      pp_drill_measure (self, k, &places[k]);
    }
  pair = pair_of (self, places[0], places[1]);
  judge (self, &pair, (PpPanel *) self->check->panel, best);
}

static void
search (const PpDrill *self,
        GCancellable  *cancellable,
        Best          *best)
{
  g_autoptr (GArray) first = pp_drill_find_places (self, 0);
  g_autoptr (GArray) second = pp_drill_find_places (self, 1);

  judge_given (self, best);
  judge_best (self, first, second, TRUE, cancellable, best);
  if (best->keys[KEY_FAULTS] > 0 || best->keys[KEY_SHORTFALL] > 0 || best->keys[KEY_SAID] > 0)
    judge_best (self, first, second, FALSE, cancellable, best);
}

PpPanel *
pp_drill_new (const PpCheck *check,
              GCancellable  *cancellable)
{
  PpDrill self = { .check = check };
  Best best = { 0 };

  g_return_val_if_fail (check != NULL, NULL);

  if (check->hang == NULL)
    return NULL;
  self.guard = pp_guard_new (check);
  for (guint k = 0; k < 2; k++)
    self.stays[k] = self.guard->holes[check->scene->knots[k]];
  self.box = pp_background_get_box (check->panel->background);
  self.step = fmax (1, fmax (pp_box_width (self.box), pp_box_height (self.box)) / MOST_SQUARES);
  self.columns = (int) ceil (pp_box_width (self.box) / self.step);
  self.rows = (int) ceil (pp_box_height (self.box) / self.step);
  if (!self.stays[0] || !self.stays[1])
    {
      pp_drill_look (&self);
      search (&self, cancellable, &best);
    }
  g_free (self.mask);
  pp_guard_free (self.guard);
  if (best.panel != NULL && best.keys[KEY_FAULTS] > 0)
    g_clear_pointer (&best.panel, pp_panel_unref);
  return best.panel;
}
