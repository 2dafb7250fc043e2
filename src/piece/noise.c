/* noise.c: small differences, by seed and place.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/noise.h"

#include <math.h>

/* The finishing step of a 64-bit mixer: every bit of the place reaches every bit of the answer. */
static guint64
mix (guint64 bits)
{
  bits = (bits ^ (bits >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  bits = (bits ^ (bits >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return bits ^ (bits >> 31);
}

double
pp_noise_at (guint seed,
             guint index)
{
  guint64 bits = mix (((guint64) seed << 32) + index + G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));

  return (double) (bits >> 11) / (double) (G_GUINT64_CONSTANT (1) << 52) - 1;
}

double
pp_noise_smooth (guint  seed,
                 double t)
{
  double sum = 0;

  for (guint k = 1; k <= 3; k++)
    sum += sin (2 * G_PI * (k * t + pp_noise_at (seed, 1000 + k))) / k;
  return sum / (1 + 1.0 / 2 + 1.0 / 3);
}
