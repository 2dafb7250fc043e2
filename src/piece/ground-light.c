/* ground-light.c: the light on the ground of a squared photo as a smooth surface.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It begins at the colour that most dots have and fits a surface of more and more terms, each time
 * with weights that fall to nothing away from the surface before (Beaton and Tukey, Technometrics
 * 16, 1974), so that pieces and shadows do not count.
 */
#include "piece/ground-light.h"

#include <string.h>

#define LEAST_LIGHT 0.0015f  /* under this, noise is all there is */
#define MOST_SAMPLES 60000
#define BINS 12              /* a channel, over cube roots of light */
#define N_ROUNDS 14
#define FIRST_REACH 0.7      /* of logarithms: what may be the ground in another light */
#define LAST_REACH 0.03
#define SPREADS 3.5          /* of the median difference */
#define RIDGE 1e-6           /* keeps terms that nothing speaks for at 0 */

typedef struct
{
  double x, y;
  double light[3];
  double weight;
} Sample;

static void
list_terms (double  x,
            double  y,
            double *terms)
{
  const double all[PP_LIGHT_TERMS] = { 1, x, y, x * x, x * y, y * y, x * x * x, x * x * y,
                                       x * y * y, y * y * y };

  memcpy (terms, all, sizeof all);
}

static double
evaluate (const double *terms,
          const double *by)
{
  double sum = 0;

  for (guint i = 0; i < PP_LIGHT_TERMS; i++)
    sum += terms[i] * by[i];
  return sum;
}

static GArray *
take_samples (const PpSquared *squared)
{
  GArray *samples = g_array_new (FALSE, FALSE, sizeof (Sample));
  gsize n = (gsize) squared->width * squared->height;
  guint step = (guint) ceil (sqrt ((double) n / MOST_SAMPLES));

  for (guint y = step / 2; y < squared->height; y += step)
    for (guint x = step / 2; x < squared->width; x += step)
      {
        const float *rgb = squared->rgb + 3 * ((gsize) y * squared->width + x);
        Sample sample = { 2.0 * x / squared->width - 1, 2.0 * y / squared->height - 1, { 0 }, 1 };

        if (rgb[0] < 0)
          continue;
        for (guint c = 0; c < 3; c++)
          sample.light[c] = log ((double) fmaxf (rgb[c], LEAST_LIGHT));
        g_array_append_val (samples, sample);
      }
  return samples;
}

static guint
get_bin (double light)
{
  return (guint) CLAMP (cbrt (exp (light)) * BINS, 0, BINS - 1);
}

/* The mean of the bin with most samples, its neighbours counted with it. */
static void
find_most (const Sample *samples,
           guint         n,
           double       *light)
{
  guint counts[BINS][BINS][BINS] = { { { 0 } } };
  guint best[3] = { 0, 0, 0 }, most = 0, n_in = 0;

  for (guint i = 0; i < n; i++)
    counts[get_bin (samples[i].light[0])][get_bin (samples[i].light[1])]
          [get_bin (samples[i].light[2])]++;
  for (guint a = 0; a < BINS - 1; a++)
    for (guint b = 0; b < BINS - 1; b++)
      for (guint c = 0; c < BINS - 1; c++)
        {
          guint sum = 0;

          for (guint k = 0; k < 8; k++)
            sum += counts[a + (k & 1)][b + (k >> 1 & 1)][c + (k >> 2)];
          if (sum > most)
            {
              most = sum;
              best[0] = a;
              best[1] = b;
              best[2] = c;
            }
        }
  light[0] = light[1] = light[2] = 0;
  for (guint i = 0; i < n; i++)
    {
      gboolean is_in = TRUE;

      for (guint c = 0; c < 3; c++)
        is_in = is_in && get_bin (samples[i].light[c]) - best[c] <= 1;
      for (guint c = 0; is_in && c < 3; c++)
        light[c] += samples[i].light[c];
      n_in += is_in;
    }
  for (guint c = 0; c < 3; c++)
    light[c] /= MAX (n_in, 1);
}

static int
compare_doubles (gconstpointer a,
                 gconstpointer b)
{
  double p = *(const double *) a, q = *(const double *) b;

  return p < q ? -1 : p > q;
}

/* Weights by how far samples are from the surface, at most `reach` or what most are. */
static void
weigh (const PpGroundLight *self,
       Sample              *samples,
       guint                n,
       double               reach)
{
  g_autofree double *offs = g_new (double, n);
  g_autofree double *near = g_new (double, n);
  guint n_near = 0;

  for (guint i = 0; i < n; i++)
    {
      double terms[PP_LIGHT_TERMS];

      offs[i] = 0;
      list_terms (samples[i].x, samples[i].y, terms);
      for (guint c = 0; c < 3; c++)
        offs[i] = fmax (offs[i], fabs (samples[i].light[c] - evaluate (terms, self->terms[c])));
      if (offs[i] < reach)
        near[n_near++] = offs[i];
    }
  qsort (near, n_near, sizeof *near, compare_doubles);
  if (n_near > 0)
    reach = fmin (reach, fmax (SPREADS * near[n_near / 2], LAST_REACH));
  for (guint i = 0; i < n; i++)
    {
      double share = fmin (offs[i] / reach, 1);

      samples[i].weight = (1 - share * share) * (1 - share * share);
    }
}

static void
solve (double rows[PP_LIGHT_TERMS][PP_LIGHT_TERMS + 3],
       guint  n)
{
  for (guint k = 0; k < n; k++)
    for (guint i = 0; i < n; i++)
      for (guint j = PP_LIGHT_TERMS + 3; i != k && j-- > k;)
        rows[i][j] -= rows[i][k] / rows[k][k] * rows[k][j];
}

/* Least squares with the first `n_terms` terms; symmetric and positive, so no pivots. */
static void
fit (PpGroundLight *self,
     const Sample  *samples,
     guint          n,
     guint          n_terms)
{
  double rows[PP_LIGHT_TERMS][PP_LIGHT_TERMS + 3] = { { 0 } };

  for (guint i = 0; i < n; i++)
    {
      double terms[PP_LIGHT_TERMS];

      list_terms (samples[i].x, samples[i].y, terms);
      for (guint a = 0; samples[i].weight > 0 && a < n_terms; a++)
        {
          double weight = samples[i].weight * terms[a];

          for (guint b = 0; b < n_terms; b++)
            rows[a][b] += weight * terms[b];
          for (guint c = 0; c < 3; c++)
            rows[a][PP_LIGHT_TERMS + c] += weight * samples[i].light[c];
        }
    }
  for (guint a = 0; a < n_terms; a++)
    rows[a][a] += RIDGE * (rows[0][0] + 1);
  solve (rows, n_terms);
  memset (self, 0, sizeof *self);
  for (guint c = 0; c < 3; c++)
    for (guint a = 0; a < n_terms; a++)
      self->terms[c][a] = rows[a][PP_LIGHT_TERMS + c] / rows[a][a];
}

PpGroundLight
pp_ground_light_fit (const PpSquared *squared)
{
  g_autoptr (GArray) array = take_samples (squared);
  Sample *samples = (Sample *) (gpointer) array->data;
  PpGroundLight self = { { { 0 } } };
  double most[3];

  find_most (samples, array->len, most);
  for (guint c = 0; c < 3; c++)
    self.terms[c][0] = most[c];
  for (guint round = 0; array->len > 0 && round < N_ROUNDS; round++)
    {
      guint n_terms = round < 3 ? 3 : round < 7 ? 6 : PP_LIGHT_TERMS;
      double share = (double) round / (N_ROUNDS - 1);

      weigh (&self, samples, array->len, FIRST_REACH * pow (LAST_REACH * 3 / FIRST_REACH, share));
      fit (&self, samples, array->len, n_terms);
    }
  return self;
}

void
pp_ground_light_at (const PpGroundLight *self,
                    const PpSquared     *squared,
                    guint                x,
                    guint                y,
                    float               *rgb)
{
  double terms[PP_LIGHT_TERMS];

  list_terms (2.0 * x / squared->width - 1, 2.0 * y / squared->height - 1, terms);
  for (guint c = 0; c < 3; c++)
    rgb[c] = expf ((float) evaluate (terms, self->terms[c]));
}
