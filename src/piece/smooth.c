/* smooth.c: smooth borders of what a raster shows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Potrace knows dots that are set and dots that are not; so it gets a raster of twice the fineness,
 * between whose dots the coverage is straight. Its rows go up.
 */
#include "piece/smooth.h"

#include <potracelib.h>

#define FINER 2
#define ROUNDNESS 1.0   /* potrace's alphamax: corners stay from about 90 degrees */
#define JOIN_OFF 0.2    /* fine dots, by which curves may be joined */
#define N_PARTS 8       /* of a curve, before simplifying */
#define BITS (8 * (int) sizeof (potrace_word))

static double
cover_at (const float *covers,
          guint        width,
          guint        height,
          double       x,
          double       y)
{
  guint column = (guint) CLAMP (x, 0, width - 1), row = (guint) CLAMP (y, 0, height - 1);
  guint right = MIN (column + 1, width - 1), below = MIN (row + 1, height - 1);
  double across = CLAMP (x - column, 0, 1), down = CLAMP (y - row, 0, 1);
  const float *upper = covers + (gsize) row * width, *lower = covers + (gsize) below * width;

  return ((double) upper[column] * (1 - across) + (double) upper[right] * across) * (1 - down)
         + ((double) lower[column] * (1 - across) + (double) lower[right] * across) * down;
}

static potrace_word *
make_bits (const float        *covers,
           guint               width,
           guint               height,
           potrace_bitmap_t   *bitmap)
{
  bitmap->w = (int) (width * FINER);
  bitmap->h = (int) (height * FINER);
  bitmap->dy = (bitmap->w + BITS - 1) / BITS;
  bitmap->map = g_new0 (potrace_word, (gsize) bitmap->dy * (gsize) bitmap->h);
  for (int y = 0; y < bitmap->h; y++)
    for (int x = 0; x < bitmap->w; x++)
      if (cover_at (covers, width, height, (x + 0.5) / FINER - 0.5, (y + 0.5) / FINER - 0.5) > 0.5)
        bitmap->map[(gsize) (bitmap->h - 1 - y) * (gsize) bitmap->dy + (gsize) (x / BITS)]
          |= (potrace_word) 1 << (BITS - 1 - x % BITS);
  return bitmap->map;
}

static void
add_point (GArray           *ring,
           double            x,
           double            y,
           int               height)
{
  PpPoint p = { x / FINER, (height - y) / FINER };

  g_array_append_val (ring, p);
}

static void
add_curve (GArray                 *ring,
           potrace_dpoint_t        from,
           const potrace_dpoint_t *c,
           int                     height)
{
  for (guint i = 1; i <= N_PARTS; i++)
    {
      double t = (double) i / N_PARTS, u = 1 - t;
      double a = u * u * u, b = 3 * u * u * t, d = 3 * u * t * t, e = t * t * t;

      add_point (ring, a * from.x + b * c[0].x + d * c[1].x + e * c[2].x,
                 a * from.y + b * c[0].y + d * c[1].y + e * c[2].y, height);
    }
}

static GArray *
make_ring (const potrace_curve_t *curve,
           int                    height)
{
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  potrace_dpoint_t at = curve->c[curve->n - 1][2];

  for (int i = 0; i < curve->n; i++)
    {
      const potrace_dpoint_t *c = curve->c[i];

      if (curve->tag[i] == POTRACE_CURVETO)
        add_curve (ring, at, c, height);
      else
        {
          add_point (ring, c[1].x, c[1].y, height);
          add_point (ring, c[2].x, c[2].y, height);
        }
      at = c[2];
    }
  return ring;
}

static void
add_rings (GPtrArray            *rings,
           const potrace_path_t *paths,
           int                   height)
{
  const potrace_path_t *largest = NULL;

  for (const potrace_path_t *p = paths; p != NULL; p = p->sibling)
    if (largest == NULL || p->area > largest->area)
      largest = p;
  if (largest == NULL)
    return;
  g_ptr_array_add (rings, make_ring (&largest->curve, height));
  for (const potrace_path_t *p = largest->childlist; p != NULL; p = p->sibling)
    g_ptr_array_add (rings, make_ring (&p->curve, height));
}

GPtrArray *
pp_smooth_rings (const float *covers,
                 guint        width,
                 guint        height)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  potrace_bitmap_t bitmap;
  g_autofree potrace_word *bits = make_bits (covers, width, height, &bitmap);
  potrace_param_t *param = potrace_param_default ();
  potrace_state_t *state;

  param->alphamax = ROUNDNESS;
  param->opttolerance = JOIN_OFF;
  state = potrace_trace (param, &bitmap);
  if (state != NULL && state->status == POTRACE_STATUS_OK)
    add_rings (rings, state->plist, bitmap.h);
  if (state != NULL)
    potrace_state_free (state);
  potrace_param_free (param);
  return rings;
}
