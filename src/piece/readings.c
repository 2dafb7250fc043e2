/* readings.c: a piece from what was read on a ring sheet or a ladder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A ring is a spline of reach over turn, which keeps it in one turn about its middle. A ladder is a
 * line through the plane, broken at its corners, since near a round tip width over height is steep.
 */
#include "config.h"

#include "piece/readings.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/tolerance.h"
#include "piece/spline.h"
#include "piece/svg.h"
#include "piece/trace.h"
#include "shape/polygon.h"

#include <string.h>

#define FINE 16            /* points between two readings, before simplifying */
#define OFF 0.02           /* mm, by which fewer points may part from the line */
#define MOST_REACH 1500.0  /* mm: half of a panel */
#define MOST_TURN 120.0    /* degrees between two spokes */
#define POINTED 0.75       /* widths that grow with this power of the way from a tip: 1 is a
                            * straight point, 1/2 is round */

static gpointer
refuse (const char *sentence,
        GError    **error)
{
  g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, sentence);
  return NULL;
}

/* The ring as an outline, with the fewest points. */
static PpOutline *
close_ring (GArray  *points,
            GError **error)
{
  g_autoptr (GArray) ring = pp_ring_simplify (points, OFF);
  g_autoptr (PpOutline) outline = NULL;

  if (ring->len < 3)
    return refuse (_("These readings enclose nothing."), error);
  outline = pp_outline_new_ring ((PpPoint *) (gpointer) ring->data, ring->len);
  if (!pp_outline_is_simple (outline, NULL, NULL))
    return refuse (_("The line through these readings crosses itself; look for one misread."),
                   error);
  return g_steal_pointer (&outline);
}

static int
compare_spokes (gconstpointer a,
                gconstpointer b)
{
  const PpSpoke *p = a, *q = b;

  return p->turn < q->turn ? -1 : p->turn > q->turn;
}

/* `spokes` sorted, with the first again behind the last. */
static gboolean
check_spokes (const PpSpoke *spokes,
              guint          n,
              GError       **error)
{
  for (guint i = 0; i < n; i++)
    {
      double apart = spokes[i + 1].turn - spokes[i].turn;

      if (!(spokes[i].reach > 0 && spokes[i].reach <= MOST_REACH))
        return refuse (_("Each reading on a spoke must be more than 0 and at most 1500 mm."), error)
               != NULL;
      if (apart < PP_TIE)
        return refuse (_("A spoke is read twice."), error) != NULL;
      if (apart > MOST_TURN)
        return refuse (_("Read spokes all round: between two of them lie more than four hours."),
                       error) != NULL;
    }
  return TRUE;
}

PpOutline *
pp_readings_ring (const PpSpoke *spokes,
                  guint          n_spokes,
                  GError       **error)
{
  g_autofree PpSpoke *sorted = g_new (PpSpoke, n_spokes + 1);
  g_autofree double *turns = g_new (double, n_spokes + 1);
  g_autofree double *reaches = g_new (double, n_spokes + 1);
  g_autofree double *slopes = g_new (double, n_spokes + 1);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));

  if (n_spokes < PP_LEAST_SPOKES || n_spokes > PP_MOST_READINGS)
    return refuse (_("Read at least 6 spokes, and at most 720."), error);
  memcpy (sorted, spokes, n_spokes * sizeof *spokes);
  qsort (sorted, n_spokes, sizeof *sorted, compare_spokes);
  sorted[n_spokes] = (PpSpoke) { sorted[0].turn + 360, sorted[0].reach };
  if (!check_spokes (sorted, n_spokes, error))
    return NULL;
  for (guint i = 0; i <= n_spokes; i++)
    {
      turns[i] = sorted[i].turn;
      reaches[i] = sorted[i].reach;
    }
  pp_spline_slopes (turns, reaches, n_spokes + 1, TRUE, slopes);
  for (guint i = 0; i < n_spokes; i++)
    for (guint k = 0; k < FINE; k++)
      {
        double share = (double) k / FINE;
        double reach = pp_spline_at (turns, reaches, slopes, i, share);
        double least = fmin (reaches[i], reaches[i + 1]) / 2;
        double sine, cosine;
        PpPoint p;

        pp_sincos_degrees (turns[i] + (turns[i + 1] - turns[i]) * share, &sine, &cosine);
        p = (PpPoint) { fmax (reach, least) * sine, -fmax (reach, least) * cosine };
        g_array_append_val (points, p);
      }
  return close_ring (points, error);
}

/* A point of the border, and whether the line has a corner there. */
typedef struct
{
  PpPoint  at;
  gboolean corner;
} Knot;

static int
compare_rungs (gconstpointer a,
               gconstpointer b)
{
  const PpRung *p = a, *q = b;

  return p->up < q->up ? -1 : p->up > q->up;
}

static double
width_of (const PpRung *rung)
{
  return rung->left + rung->right;
}

static gboolean
check_rungs (const PpRung *rungs,
             guint         n,
             GError      **error)
{
  for (guint i = 0; i < n; i++)
    {
      double most = fmax (fabs (rungs[i].left), fabs (rungs[i].right));

      if (!(most <= MOST_REACH && fabs (rungs[i].up) <= PP_BACKGROUND_MAX_SIDE))
        return refuse (_("The readings of a ladder must be lengths of at most 1500 mm to a side."),
                       error) != NULL;
      if (i > 0 && rungs[i].up - rungs[i - 1].up < PP_TIE)
        return refuse (_("A rung is read twice."), error) != NULL;
      if (i > 0 && i + 1 < n ? width_of (&rungs[i]) < PP_TIE : width_of (&rungs[i]) < 0)
        return refuse (_("Left and right together must be more than nothing at each rung but the "
                         "ends."), error) != NULL;
    }
  return TRUE;
}

/* Whether an end of no width is a corner, by how the next two widths grow with the way to it. */
static gboolean
is_pointed (const PpRung *end,
            const PpRung *next,
            const PpRung *after)
{
  double growth = log (width_of (after) / width_of (next));
  double way = log ((after->up - end->up) / (next->up - end->up));

  return growth > POINTED * way;
}

static void
add_knot (GArray  *knots,
          double   x,
          double   y,
          gboolean corner)
{
  Knot knot = { { x, y }, corner };

  g_array_append_val (knots, knot);
}

/* Up the right side and down the left. An end of no width stands once. */
static GArray *
list_knots (const PpRung *rungs,
            guint         n)
{
  GArray *knots = g_array_new (FALSE, FALSE, sizeof (Knot));
  double middle = (rungs[0].up + rungs[n - 1].up) / 2;
  gboolean has_base = width_of (&rungs[0]) >= PP_TIE;
  gboolean has_top = width_of (&rungs[n - 1]) >= PP_TIE;
  gboolean base_corner = has_base || (n > 3 && is_pointed (&rungs[0], &rungs[1], &rungs[2]));
  gboolean top_corner
      = has_top || (n > 3 && is_pointed (&rungs[n - 1], &rungs[n - 2], &rungs[n - 3]));

  for (guint i = 0; i < n; i++)
    add_knot (knots, rungs[i].right, middle - rungs[i].up,
              (i == 0 && base_corner) || (i == n - 1 && top_corner));
  for (guint i = has_top ? n : n - 1; i-- > (has_base ? 0 : 1);)
    add_knot (knots, -rungs[i].left, middle - rungs[i].up,
              (i == 0 && base_corner) || (i == n - 1 && top_corner));
  return knots;
}

/* Adds the points of the smooth line through `n` knots, the last one not. */
static void
add_stretch (GArray        *points,
             const PpPoint *at,
             guint          n,
             gboolean       closed)
{
  g_autofree double *t = g_new0 (double, n);
  g_autofree double *x = g_new (double, n);
  g_autofree double *y = g_new (double, n);
  g_autofree double *dx = g_new (double, n);
  g_autofree double *dy = g_new (double, n);

  for (guint i = 0; i < n; i++)
    {
      x[i] = at[i].x;
      y[i] = at[i].y;
      t[i] = i == 0 ? 0 : t[i - 1] + pp_point_distance (at[i - 1], at[i]);
    }
  pp_spline_slopes (t, x, n, closed, dx);
  pp_spline_slopes (t, y, n, closed, dy);
  for (guint i = 0; i + 1 < n; i++)
    for (guint k = 0; k < FINE; k++)
      {
        double share = (double) k / FINE;
        PpPoint p = { pp_spline_at (t, x, dx, i, share), pp_spline_at (t, y, dy, i, share) };

        g_array_append_val (points, p);
      }
}

/* From corner to corner, once round. */
static GArray *
draw_through (GArray *knots)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  g_autofree PpPoint *at = g_new (PpPoint, knots->len + 1);
  guint first = 0, n = 0;

  while (first < knots->len && !g_array_index (knots, Knot, first).corner)
    first++;
  for (guint i = 0; i <= knots->len; i++)
    {
      const Knot *knot = &g_array_index (knots, Knot, (first + i) % knots->len);

      at[n++] = knot->at;
      if (i == knots->len || (knot->corner && i > 0))
        {
          add_stretch (points, at, n, first == knots->len);
          at[0] = knot->at;
          n = 1;
        }
    }
  return points;
}

PpOutline *
pp_readings_ladder (const PpRung *rungs,
                    guint         n_rungs,
                    GError      **error)
{
  g_autofree PpRung *sorted = g_new (PpRung, n_rungs);
  g_autoptr (GArray) knots = NULL;
  g_autoptr (GArray) points = NULL;

  if (n_rungs < PP_LEAST_RUNGS || n_rungs > PP_MOST_READINGS)
    return refuse (_("Read at least 3 rungs, and at most 720."), error);
  memcpy (sorted, rungs, n_rungs * sizeof *rungs);
  qsort (sorted, n_rungs, sizeof *sorted, compare_rungs);
  if (!check_rungs (sorted, n_rungs, error))
    return NULL;
  knots = list_knots (sorted, n_rungs);
  points = draw_through (knots);
  return close_ring (points, error);
}

static GBytes *
draw_plain (const PpOutline *outline,
            const PpPiece   *draft)
{
  g_autoptr (PpSvg) svg = pp_svg_new (1 - 0.35 * draft->transmittance);
  PpTint tint = pp_tint_parse (draft->colour);
  PpBox box = pp_outline_get_box (outline);
  PpStop stops[] = { { 0, pp_tint_light (tint, 0.25), 1 }, { 0.55, tint, 1 },
                     { 1, pp_tint_dark (tint, 0.2), 1 } };
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  PpPaint body = { .gradient = pp_svg_linear (svg, (PpPoint) { box.x0, box.y0 },
                                              (PpPoint) { box.x1, box.y1 }, stops,
                                              G_N_ELEMENTS (stops)), .opacity = 1 };

  pp_svg_area (svg, body, ring, n);
  return pp_svg_finish (svg, draft->name, box);
}

PpPiece *
pp_readings_make (const PpOutline *outline,
                  const PpPiece   *draft,
                  GError         **error)
{
  PpPiece piece = *draft;
  g_autoptr (GBytes) art = draw_plain (outline, draft);

  piece.outline = outline;
  piece.art = art;
  return pp_piece_new (&piece, error);
}
