/* edges.c: where colours change faster than in a soft shadow.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A border of glass is sharper than the shadow beside it, however pale: what changes as fast all
 * about, and in the same way, does not count. Hue is looked at apart, as a shadow has none.
 */
#include "piece/edges.h"

#include "piece/mask.h"

#include <string.h>

#define ABOUT 1.5         /* mm about a dot that its edge stands out from */
#define SHARP 0.4f        /* of a slope, that must be beyond what is about it */
#define RINGING 2.0       /* mm about an edge, where */
#define RINGING_SHARE 0.2f /* of it is no other */
#define SMOOTHINGS 3      /* before edges are looked for, so that noise makes few */

/* How much faster than all about it some channels change at a dot; 0 where it is hardly faster. */
static float
find_edge (const PpSquared *squared,
           const float     *fine,
           const float     *about,
           gsize            at,
           guint            first,
           guint            last)
{
  const gsize steps[] = { 1, squared->width };
  float square = 0, product = 0;

  for (guint k = 0; k < G_N_ELEMENTS (steps); k++)
    for (guint c = first; c <= last; c++)
      {
        gsize before = 3 * (at - steps[k]) + c, after = 3 * (at + steps[k]) + c;
        float here = fine[after] - fine[before];

        square += here * here;
        product += here * (about[after] - about[before]);
      }
  if (square - product < SHARP * square || square == 0)
    return 0;
  return (float) squared->dots / 2 * (square - product) / sqrtf (square);
}

/* What is weak beside something far stronger is only its ringing, as squeezed files have it. */
static void
clear_ringing (const PpSquared *squared,
               float           *edge)
{
  guint width = squared->width, height = squared->height;
  guint side = pp_squared_to_dots (squared, RINGING);
  guint columns = width / side + 1, rows = height / side + 1;
  g_autofree float *most = g_new0 (float, (gsize) columns * rows);

  for (guint y = 0; y < height; y++)
    for (guint x = 0; x < width; x++)
      {
        float *at = &most[(gsize) (y / side) * columns + x / side];

        *at = fmaxf (*at, edge[(gsize) y * width + x]);
      }
  for (guint y = 0; y < height; y++)
    for (guint x = 0; x < width; x++)
      {
        guint column = x / side, row = y / side;
        float *at = &edge[(gsize) y * width + x];

        for (guint j = row > 0 ? row - 1 : 0; j <= MIN (row + 1, rows - 1); j++)
          for (guint i = column > 0 ? column - 1 : 0; i <= MIN (column + 1, columns - 1); i++)
            if (*at < RINGING_SHARE * most[(gsize) j * columns + i])
              *at = 0;
      }
}

void
pp_edges_find (const PpSquared *squared,
               const float     *smoothed,
               float           *edge,
               float           *hue_edge)
{
  guint width = squared->width, height = squared->height;
  gsize n = (gsize) width * height;
  g_autofree guchar *all = g_malloc (n);
  g_autofree float *about = NULL;
  float *fine = pp_mask_smooth (smoothed, width, height);

  memset (all, 1, n);
  about = pp_mask_mean (smoothed, all, width, height, pp_squared_to_dots (squared, ABOUT));
  for (guint i = 1; i < SMOOTHINGS; i++)
    {
      float *finer = pp_mask_smooth (fine, width, height);

      g_free (fine);
      fine = finer;
    }
  for (guint y = 1; y + 1 < height; y++)
    for (guint x = 1; x + 1 < width; x++)
      {
        gsize at = (gsize) y * width + x;

        edge[at] = find_edge (squared, fine, about, at, 0, 0);
        hue_edge[at] = find_edge (squared, fine, about, at, 1, 2);
      }
  g_free (fine);
  clear_ringing (squared, edge);
  clear_ringing (squared, hue_edge);
}

double
pp_edges_noise (const PpSquared *squared,
                const float     *edge)
{
  gsize n = (gsize) squared->width * squared->height;
  gsize step = MAX (n / 50000, 1);
  g_autofree float *edges = g_new (float, n / step + 1);
  guint n_edges = 0;

  for (gsize i = 0; i < n; i += step)
    if (!pp_squared_is_nowhere (squared, i))
      edges[n_edges++] = edge[i];
  return pp_mask_median (edges, n_edges);
}
