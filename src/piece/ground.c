/* ground.c: how far each place of a squared photo is from the ground that the pieces lie on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/ground.h"

#include "piece/edges.h"
#include "piece/ground-light.h"
#include "piece/mask.h"

#include <string.h>

#define LEAST_APART 1e-6  /* which has a logarithm; far under the least level */
#define N_LEVELS 160      /* of the histogram that the level is taken from, */
#define LEAST_EXPONENT -9 /* from 2^-9 */
#define MOST_EXPONENT 1   /* to 2^1 */
#define LEAST_LEVEL 0.018 /* what the eye tells apart in glass on paper */
#define MOST_LEVEL 0.07   /* beyond this all of a pale piece is under the level */
#define NOISES 1.6        /* of one dot: the level is so far over the ground, five of a mean of 9 */
#define TO_SIGMA 1.4826   /* of a median difference from the mean (normal distribution) */
#define N_STEPS 4         /* passes over the raster, for the progress */

/* Ottosson's matrices: linear sRGB to cone responses, and their cube roots to L, a, b. */
static void
to_oklab (const float *rgb,
          float       *lab)
{
  float l = cbrtf (0.4122214708f * rgb[0] + 0.5363325363f * rgb[1] + 0.0514459929f * rgb[2]);
  float m = cbrtf (0.2119034982f * rgb[0] + 0.6806995451f * rgb[1] + 0.1073969566f * rgb[2]);
  float s = cbrtf (0.0883024619f * rgb[0] + 0.2817188376f * rgb[1] + 0.6299787005f * rgb[2]);

  lab[0] = 0.2104542553f * l + 0.7936177850f * m - 0.0040720468f * s;
  lab[1] = 1.9779984951f * l - 2.4285922050f * m + 0.4505937099f * s;
  lab[2] = 0.0259040371f * l + 0.7827717662f * m - 0.8086757660f * s;
}

/* Where nothing is seen the colour is the ground's. */
static void
even_out (PpGround            *self,
          const PpGroundLight *light,
          const float         *usual,
          const float         *ground)
{
  const PpSquared *squared = self->squared;

  for (guint y = 0; y < squared->height; y++)
    for (guint x = 0; x < squared->width; x++)
      {
        gsize at = 3 * ((gsize) y * squared->width + x);
        float *rgb = self->light + at;

        if (squared->rgb[at] < 0)
          {
            memcpy (rgb, usual, 3 * sizeof *usual);
            memcpy (self->colours + at, ground, 3 * sizeof *ground);
            continue;
          }
        pp_ground_light_at (light, squared, x, y, rgb);
        for (guint c = 0; c < 3; c++)
          rgb[c] = squared->rgb[at + c] / rgb[c] * usual[c];
        to_oklab (rgb, self->colours + at);
      }
}

static void
take_apart (PpGround    *self,
            const float *colours,
            const float *ground)
{
  gsize n = (gsize) self->squared->width * self->squared->height;
  float way[3];

  for (guint c = 0; c < 3; c++)
    way[c] = ground[c] / (float) self->bright;
  for (gsize i = 0; i < n; i++)
    {
      float along = 0, square = 0;

      for (guint c = 0; c < 3; c++)
        {
          float off = colours[3 * i + c] - ground[c];

          along += off * way[c];
          square += off * off;
        }
      self->along[i] = along;
      self->beside[i] = sqrtf (fmaxf (square - along * along, 0));
    }
}

static float
change (const float *colours,
        gsize        from,
        gsize        to)
{
  float square = 0;

  for (guint c = 0; c < 3; c++)
    {
      float off = colours[3 * to + c] - colours[3 * from + c];

      square += off * off;
    }
  return square;
}

static void
find_slopes (PpGround    *self,
             const float *colours)
{
  guint width = self->squared->width, height = self->squared->height;
  float to_mm = (float) self->squared->dots / 2;

  for (guint y = 0; y < height; y++)
    for (guint x = 0; x < width; x++)
      {
        gsize at = (gsize) y * width + x;

        self->slope[at] = x == 0 || y == 0 || x == width - 1 || y == height - 1
                            ? 0
                            : to_mm * sqrtf (change (colours, at - 1, at + 1)
                                             + change (colours, at - width, at + width));
      }
}

/* By how neighbours differ, most of which are both ground or both glass. */
static double
find_noise (const PpGround *self)
{
  gsize n = (gsize) self->squared->width * self->squared->height;
  gsize step = MAX (n / 50000, 1);
  g_autofree float *offs = g_new (float, n / step + 1);
  guint n_offs = 0;

  for (gsize i = 0; i + 1 < n; i += step)
    if (self->squared->rgb[3 * i] >= 0)
      offs[n_offs++] = fabsf (self->colours[3 * i + 3] - self->colours[3 * i]);
  return TO_SIGMA * pp_mask_median (offs, n_offs) / G_SQRT2;
}

double
pp_ground_apart (const PpGround *self,
                 gsize           dot)
{
  return hypot ((double) self->along[dot], PP_GROUND_BESIDE * (double) self->beside[dot]);
}

/* The level that parts the histogram of logarithms into the two most even parts (Otsu, IEEE
 * Transactions on Systems, Man and Cybernetics 9, 1979). Logarithms, so that pale pieces and dark
 * ones are one part. */
static double
find_level (const PpGround *self)
{
  gsize n = (gsize) self->squared->width * self->squared->height;
  double counts[N_LEVELS] = { 0 }, total = 0, sum = 0, below = 0, sum_below = 0, best = -1;
  double per = (double) N_LEVELS / (MOST_EXPONENT - LEAST_EXPONENT);
  guint level = 0;

  for (gsize i = 0; i < n; i++)
    if (self->squared->rgb[3 * i] >= 0)
      {
        double exponent = log2 (fmax (pp_ground_apart (self, i), LEAST_APART)) - LEAST_EXPONENT;
        guint bin = (guint) CLAMP (exponent * per, 0, N_LEVELS - 1);

        counts[bin]++;
        total++;
        sum += bin;
      }
  for (guint i = 0; i + 1 < N_LEVELS; i++)
    {
      double between;

      below += counts[i];
      sum_below += counts[i] * i;
      if (below == 0 || below == total)
        continue;
      between = sum_below / below - (sum - sum_below) / (total - below);
      between *= between * below * (total - below);
      if (between > best)
        {
          best = between;
          level = i;
        }
    }
  return exp2 ((level + 1) / per + LEAST_EXPONENT);
}

static gboolean
go_on (guint             step,
       PpPhotoProgress   progress,
       gpointer          data,
       GCancellable     *cancellable,
       GError          **error)
{
  if (progress != NULL)
    progress ((double) step / N_STEPS, data);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}

/* The ground's light in the middle, and its colour. */
static void
find_usual (const PpGroundLight *light,
            const PpSquared     *squared,
            float               *usual,
            float               *ground)
{
  pp_ground_light_at (light, squared, squared->width / 2, squared->height / 2, usual);
  to_oklab (usual, ground);
}

PpGround *
pp_ground_new (PpSquared        *squared,
               PpPhotoProgress   progress,
               gpointer          data,
               GCancellable     *cancellable,
               GError          **error)
{
  g_autoptr (PpGround) self = g_atomic_rc_box_new0 (PpGround);
  gsize n = (gsize) squared->width * squared->height;
  g_autofree float *smoothed = NULL;
  PpGroundLight light;
  float usual[3], ground[3];

  self->squared = pp_squared_ref (squared);
  self->light = g_new (float, 3 * n);
  self->colours = g_new (float, 3 * n);
  self->along = g_new (float, n);
  self->beside = g_new (float, n);
  self->slope = g_new (float, n);
  self->edge = g_new0 (float, n);
  self->hue_edge = g_new0 (float, n);
  light = pp_ground_light_fit (squared);
  find_usual (&light, squared, usual, ground);
  self->bright = sqrt ((double) (ground[0] * ground[0] + ground[1] * ground[1]
                                 + ground[2] * ground[2]));
  if (!go_on (1, progress, data, cancellable, error))
    return NULL;
  even_out (self, &light, usual, ground);
  if (!go_on (2, progress, data, cancellable, error))
    return NULL;
  smoothed = pp_mask_smooth (self->colours, squared->width, squared->height);
  if (!go_on (3, progress, data, cancellable, error))
    return NULL;
  take_apart (self, smoothed, ground);
  find_slopes (self, smoothed);
  pp_edges_find (squared, smoothed, self->edge, self->hue_edge);
  self->noise = find_noise (self);
  self->edge_noise = pp_edges_noise (squared, self->edge);
  self->hue_edge_noise = pp_edges_noise (squared, self->hue_edge);
  self->level = CLAMP (find_level (self), LEAST_LEVEL, MOST_LEVEL);
  self->level = fmax (self->level, NOISES * self->noise);
  if (!go_on (4, progress, data, cancellable, error))
    return NULL;
  return g_steal_pointer (&self);
}

PpGround *
pp_ground_ref (PpGround *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear (gpointer data)
{
  PpGround *self = data;

  pp_squared_unref (self->squared);
  g_free (self->light);
  g_free (self->colours);
  g_free (self->along);
  g_free (self->beside);
  g_free (self->slope);
  g_free (self->edge);
  g_free (self->hue_edge);
}

void
pp_ground_unref (PpGround *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear);
}
