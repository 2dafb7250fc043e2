/* discs.c: finds the printed frame in a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever is dark against its surroundings, at several levels, and has the area of the ellipse
 * with its moments, is a candidate. Of all fours of them that turn clockwise from one with a hole
 * the one is taken whose discs have the sizes that its corners demand. What is dark is sought in a
 * small picture; the middles are then measured in the large one.
 */
#include "config.h"

#include "piece/discs.h"

#include "panel/i18n.h"
#include "piece/plane.h"
#include "piece/round.h"

#define RADIUS (PP_DISCS_ACROSS / 2)
#define MOST_FOURS 40    /* candidates that are combined */
#define MOST_GROWTH 3.5  /* areas of two discs of one frame */
#define SIZE_OFF 0.45    /* natural logarithm of measured area over demanded */
#define N_AROUND 16
#define N_RAYS 72
#define ROUNDS 4

static double
get_area (const PpPoint *points,
          guint          n)
{
  double area = 0;

  for (guint i = 0; i < n; i++)
    area += pp_point_cross (points[0], points[i], points[(i + 1) % n]) / 2;
  return fabs (area);
}

/* How far the sizes of four discs are from what their places demand, at most; INFINITY if no camera
 * can see them so. */
static double
judge (const PpRound *const four[4],
       double               width,
       double               height)
{
  const PpPoint sheet[4] = { { 0, 0 }, { width, 0 }, { width, height }, { 0, height } };
  PpPoint at[4];
  PpSheetPlane plane;
  double most = 0;

  for (guint i = 0; i < 4; i++)
    at[i] = four[i]->middle;
  for (guint i = 0; i < 4; i++)
    if (pp_point_cross (at[i], at[(i + 1) % 4], at[(i + 2) % 4]) <= 0)
      return INFINITY;
  if (!pp_plane_fit (sheet, at, &plane))
    return INFINITY;
  for (guint i = 0; i < 4; i++)
    {
      PpPoint around[N_AROUND];

      for (guint k = 0; k < N_AROUND; k++)
        {
          double angle = k * 2 * G_PI / N_AROUND;

          around[k] = pp_plane_map (&plane, (PpPoint) { sheet[i].x + RADIUS * cos (angle),
                                                        sheet[i].y + RADIUS * sin (angle) });
        }
      most = fmax (most, fabs (log (four[i]->area / get_area (around, N_AROUND))));
    }
  return most;
}

static gboolean
is_like (const PpRound *a,
         const PpRound *b)
{
  return a->area < b->area * MOST_GROWTH && b->area < a->area * MOST_GROWTH;
}

/* Takes the three others in each order; those that turn the other way or cross are no frame. */
static void
try_four (const PpRound *first,
          const PpRound *b,
          const PpRound *c,
          const PpRound *d,
          double         width,
          double         height,
          double        *best,
          const PpRound *frame[4])
{
  const PpRound *orders[6][4] = { { first, b, c, d }, { first, b, d, c }, { first, c, b, d },
                                  { first, c, d, b }, { first, d, b, c }, { first, d, c, b } };

  for (guint i = 0; i < 6; i++)
    {
      double off = judge (orders[i], width, height);

      if (off >= *best)
        continue;
      *best = off;
      for (guint k = 0; k < 4; k++)
        frame[k] = orders[i][k];
    }
}

static double
find_best (GArray        *rounds,
           double         width,
           double         height,
           const PpRound *frame[4],
           GCancellable  *cancellable)
{
  const PpRound *all = (const PpRound *) (gpointer) rounds->data;
  guint n = MIN (rounds->len, MOST_FOURS);
  double best = INFINITY;

  for (guint a = 0; a < n && !g_cancellable_is_cancelled (cancellable); a++)
    for (guint b = 0; all[a].has_hole && b < n; b++)
      for (guint c = b + 1; b != a && is_like (&all[a], &all[b]) && c < n; c++)
        for (guint d = c + 1; c != a && is_like (&all[a], &all[c]) && d < n; d++)
          if (d != a && is_like (&all[a], &all[d]))
            try_four (&all[a], &all[b], &all[c], &all[d], width, height, &best, frame);
  return best;
}

static double
luma_at (const PpPhoto *photo,
         PpPoint        at)
{
  double rgb[3];

  pp_photo_sample (photo, at, rgb);
  return 0.299 * rgb[0] + 0.587 * rgb[1] + 0.114 * rgb[2];
}

/* How far out along a ray the middle between dark and bright is crossed; 0 if it is not clear. */
static double
find_edge (const PpPhoto *photo,
           PpPoint        middle,
           double         angle,
           double         radius)
{
  double step = radius / 64;
  PpPoint way = { cos (angle), sin (angle) };
  double dark = 0, bright = 0, before, level;
#define LUMA(r) luma_at (photo, (PpPoint) { middle.x + (r) * way.x, middle.y + (r) * way.y })

  for (guint i = 0; i < 8; i++)
    {
      dark += LUMA (radius * (0.5 + i * 0.02)) / 8;
      bright += LUMA (radius * (1.4 + i * 0.02)) / 8;
    }
  level = (dark + bright) / 2;
  before = LUMA (radius * 0.6);
  if (!(bright > dark * 1.2 + 8) || before > level)
    return 0;
  for (double r = radius * 0.6 + step; r < radius * 1.5; r += step)
    {
      double here = LUMA (r);

      if (here > level)
        return r - step * (here - level) / (here - before);
      before = here;
    }
#undef LUMA
  return 0;
}

static int
compare_doubles (gconstpointer a,
                 gconstpointer b)
{
  double p = *(const double *) a, q = *(const double *) b;

  return p < q ? -1 : p > q;
}

/* The middles of the chords through the middle of an ellipse are that middle; their median does
 * not mind an edge of shadow. */
static PpPoint
refine (const PpPhoto *photo,
        const PpRound *disc)
{
  PpPoint middle = disc->middle;
  double radius = sqrt (disc->area / G_PI);

  for (guint round = 0; round < ROUNDS; round++)
    {
      double x[N_RAYS / 2], y[N_RAYS / 2];
      guint n = 0;

      for (guint i = 0; i < N_RAYS / 2; i++)
        {
          double angle = i * 2 * G_PI / N_RAYS;
          double there = find_edge (photo, middle, angle, radius);
          double back = find_edge (photo, middle, angle + G_PI, radius);

          if (there <= 0 || back <= 0)
            continue;
          x[n] = cos (angle) * (there - back) / 2;
          y[n++] = sin (angle) * (there - back) / 2;
        }
      if (n < N_RAYS / 4)
        return middle;
      qsort (x, n, sizeof *x, compare_doubles);
      qsort (y, n, sizeof *y, compare_doubles);
      middle.x += 2 * x[n / 2];
      middle.y += 2 * y[n / 2];
    }
  return middle;
}

gboolean
pp_discs_find (const PpPhoto *photo,
               double         width,
               double         height,
               PpPoint        corners[4],
               GCancellable  *cancellable,
               GError       **error)
{
  g_autoptr (GArray) rounds = pp_rounds_find (photo, cancellable);
  const PpRound *frame[4] = { NULL };
  double off = find_best (rounds, width, height, frame, cancellable);

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return FALSE;
  if (off > SIZE_OFF)
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FRAME,
                           _("The four black discs of the frame were not found; all of them must "
                             "be in the picture, in even light and not covered."));
      return FALSE;
    }
  for (guint i = 0; i < 4; i++)
    corners[i] = refine (photo, frame[i]);
  return TRUE;
}
