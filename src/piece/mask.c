/* mask.c: dots that are glass and dots that are not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/mask.h"

#include "piece/beside.h"

#include <math.h>
#include <stdlib.h>

#define SIDE PP_MASK_UNIT
#define CORNER 4
#define FAR (G_MAXUINT16 - CORNER)

/* The least way to a dot by those before it in a pass; `step` is -1 down and to the right. */
static guint16
pass (const guint16 *d,
      guint          x,
      guint          y,
      guint          width,
      guint          height,
      int            step)
{
  gsize at = (gsize) y * width + x;
  gboolean has_beside = step < 0 ? x > 0 : x + 1 < width;
  gboolean has_other = step < 0 ? x + 1 < width : x > 0;
  gboolean has_row = step < 0 ? y > 0 : y + 1 < height;
  gssize row = step * (gssize) width;
  guint16 least = d[at];

  if (has_beside)
    least = MIN (least, d[at + step] + SIDE);
  if (has_row)
    least = MIN (least, d[(gssize) at + row] + SIDE);
  if (has_row && has_beside)
    least = MIN (least, d[(gssize) at + row + step] + CORNER);
  if (has_row && has_other)
    least = MIN (least, d[(gssize) at + row - step] + CORNER);
  return MIN (least, FAR);
}

guint16 *
pp_mask_distance (const guchar *mask,
                  guint         width,
                  guint         height,
                  guchar        value)
{
  gsize n = (gsize) width * height;
  guint16 *d = g_new (guint16, n);

  for (gsize i = 0; i < n; i++)
    d[i] = mask[i] == value ? FAR : 0;
  for (guint y = 0; y < height; y++)
    for (guint x = 0; x < width; x++)
      d[(gsize) y * width + x] = pass (d, x, y, width, height, -1);
  for (guint y = height; y-- > 0;)
    for (guint x = width; x-- > 0;)
      d[(gsize) y * width + x] = pass (d, x, y, width, height, 1);
  return d;
}

static void
spread (const guchar *mask,
        guint32      *labels,
        guint         width,
        gsize         n,
        guchar        value,
        guint32       label,
        GArray       *open)
{
  while (open->len > 0)
    {
      gsize at = g_array_index (open, gsize, open->len - 1);
      gsize next[4];

      pp_dots_beside (at, width, n, next);
      g_array_set_size (open, open->len - 1);
      for (guint k = 0; k < 4; k++)
        if (next[k] < n && mask[next[k]] == value && labels[next[k]] == 0)
          {
            labels[next[k]] = label;
            g_array_append_val (open, next[k]);
          }
    }
}

guint32 *
pp_mask_label (const guchar *mask,
               guint         width,
               guint         height,
               guchar        value,
               guint        *n_patches)
{
  gsize n = (gsize) width * height;
  guint32 *labels = g_new0 (guint32, n);
  g_autoptr (GArray) open = g_array_new (FALSE, FALSE, sizeof (gsize));

  *n_patches = 0;
  for (gsize i = 0; i < n; i++)
    if (mask[i] == value && labels[i] == 0)
      {
        labels[i] = ++*n_patches;
        g_array_append_val (open, i);
        spread (mask, labels, width, n, value, *n_patches, open);
      }
  return labels;
}

/* Sums over a window along a line of dots, four channels each. */
static void
sum_line (const float *from,
          float       *to,
          guint        n,
          gsize        step,
          guint        reach)
{
  double sum[4] = { 0, 0, 0, 0 };

  for (guint i = 0; i < n + reach; i++)
    for (guint c = 0; c < 4; c++)
      {
        if (i < n)
          sum[c] += (double) from[4 * i * step + c];
        if (i > 2 * reach)
          sum[c] -= (double) from[4 * (i - 2 * reach - 1) * step + c];
        if (i >= reach)
          to[4 * (i - reach) * step + c] = (float) sum[c];
      }
}

float *
pp_mask_mean (const float  *channels,
              const guchar *core,
              guint         width,
              guint         height,
              guint         reach)
{
  gsize n = (gsize) width * height;
  g_autofree float *first = g_new0 (float, 4 * n);
  g_autofree float *second = g_new (float, 4 * n);
  float *means = g_new (float, 3 * n);

  for (gsize i = 0; i < n; i++)
    if (core[i])
      {
        for (guint c = 0; c < 3; c++)
          first[4 * i + c] = channels[3 * i + c];
        first[4 * i + 3] = 1;
      }
  for (guint y = 0; y < height; y++)
    sum_line (first + 4 * (gsize) y * width, second + 4 * (gsize) y * width, width, 1, reach);
  for (guint x = 0; x < width; x++)
    sum_line (second + 4 * (gsize) x, first + 4 * (gsize) x, height, width, reach);
  for (gsize i = 0; i < n; i++)
    for (guint c = 0; c < 3; c++)
      means[3 * i + c] = first[4 * i + 3] > 0.5f ? first[4 * i + c] / first[4 * i + 3] : NAN;
  return means;
}

float *
pp_mask_smooth (const float *channels,
                guint        width,
                guint        height)
{
  float *smoothed = g_new (float, 3 * (gsize) width * height);

  for (guint y = 0; y < height; y++)
    for (guint x = 0; x < width; x++)
      {
        float sum[3] = { 0, 0, 0 };
        guint n = 0;

        for (guint j = y > 0 ? y - 1 : 0; j <= MIN (y + 1, height - 1); j++)
          for (guint i = x > 0 ? x - 1 : 0; i <= MIN (x + 1, width - 1); i++, n++)
            for (guint c = 0; c < 3; c++)
              sum[c] += channels[3 * ((gsize) j * width + i) + c];
        for (guint c = 0; c < 3; c++)
          smoothed[3 * ((gsize) y * width + x) + c] = sum[c] / (float) n;
      }
  return smoothed;
}

static int
compare_floats (gconstpointer a,
                gconstpointer b)
{
  float p = *(const float *) a, q = *(const float *) b;

  return p < q ? -1 : p > q;
}

double
pp_mask_median (float *values,
                guint  n)
{
  qsort (values, n, sizeof *values, compare_floats);
  return n > 0 ? (double) values[n / 2] : 0;
}
