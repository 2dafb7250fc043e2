/* round.c: what is dark and round in a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/round.h"

#include "piece/beside.h"

#define MOST_SIDE 1600      /* pixels of the small picture */
#define BLOCKS 24           /* along its longer side, for how bright the surroundings are */
#define BRIGHT_SHARE 0.85   /* of the pixels of a block are darker than its surroundings' light */
#define LEAST_AREA 60.0     /* pixels of the small picture */
#define MOST_SHARE 0.03     /* of its area */
#define ROUND_OFF 0.04
#define SLIM 0.3            /* short axis over long */

/* A picture in grey, and how bright the surroundings of each of its blocks are. */
typedef struct
{
  guchar *luma;
  guint   width;
  guint   height;
  guint   factor; /* pixels of the photo along a side of a pixel */
  guint   block;
  guint   n_across;
  guint   n_down;
  guchar *light;
} Small;

static void
small_clear (Small *self)
{
  g_free (self->luma);
  g_free (self->light);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Small, small_clear)

static guint
sum_luma (const guchar *pixels,
          guint         step,
          guint         stride,
          guint         side)
{
  guint sum = 0;

  for (guint y = 0; y < side; y++)
    for (guint x = 0; x < side; x++)
      {
        const guchar *p = pixels + (gsize) y * stride + (gsize) x * step;

        sum += (guint) (77 * p[0] + 150 * p[1] + 29 * p[2]) >> 8;
      }
  return sum;
}

static guchar
find_light (const Small *self,
            guint        x0,
            guint        y0,
            guint        x1,
            guint        y1)
{
  guint counts[256] = { 0 }, sum = 0, n = (x1 - x0) * (y1 - y0);
  guint level = 0;

  for (guint y = y0; y < y1; y++)
    for (guint x = x0; x < x1; x++)
      counts[self->luma[(gsize) y * self->width + x]]++;
  while (level < 255 && (sum += counts[level]) < BRIGHT_SHARE * n)
    level++;
  return (guchar) level;
}

/* Each block by itself and its neighbours, so that a disc never fills what it is held against. */
static void
measure_light (Small *self)
{
  self->block = MAX (MAX (self->width, self->height) / BLOCKS, 4);
  self->n_across = (self->width + self->block - 1) / self->block;
  self->n_down = (self->height + self->block - 1) / self->block;
  self->light = g_new (guchar, (gsize) self->n_across * self->n_down);
  for (guint j = 0; j < self->n_down; j++)
    for (guint i = 0; i < self->n_across; i++)
      self->light[j * self->n_across + i] = find_light (
        self, i > 0 ? (i - 1) * self->block : 0, j > 0 ? (j - 1) * self->block : 0,
        MIN ((i + 2) * self->block, self->width), MIN ((j + 2) * self->block, self->height));
}

static Small
make_small (const PpPhoto *photo)
{
  guint step, stride;
  const guchar *pixels = pp_photo_get_pixels (photo, &step, &stride);
  guint width = pp_photo_get_width (photo), height = pp_photo_get_height (photo);
  Small self = { .factor = (MAX (width, height) + MOST_SIDE - 1) / MOST_SIDE };

  self.width = MAX (width / self.factor, 1);
  self.height = MAX (height / self.factor, 1);
  self.luma = g_new (guchar, (gsize) self.width * self.height);
  for (guint y = 0; y < self.height; y++)
    for (guint x = 0; x < self.width; x++)
      self.luma[(gsize) y * self.width + x] = (guchar) (
        sum_luma (pixels + (gsize) y * self.factor * stride + (gsize) x * self.factor * step, step,
                  stride, self.factor) / (self.factor * self.factor));
  measure_light (&self);
  return self;
}

/* Pixels darker than this share of their surroundings, as 1. */
static guchar *
find_dark (const Small *self,
           double       share)
{
  guchar *dark = g_new (guchar, (gsize) self->width * self->height);

  for (guint y = 0; y < self->height; y++)
    for (guint x = 0; x < self->width; x++)
      {
        guint block = y / self->block * self->n_across + x / self->block;
        gsize at = (gsize) y * self->width + x;

        dark[at] = self->luma[at] < share * self->light[block] ? 1 : 0;
      }
  return dark;
}

/* Pixels of one patch, each as its row times the width plus its column; marks them as seen. */
static void
follow (const Small *self,
        guchar      *dark,
        guint        start,
        GArray      *patch)
{
  guint n = self->width * self->height;

  g_array_set_size (patch, 0);
  dark[start] = 2;
  g_array_append_val (patch, start);
  for (guint i = 0; i < patch->len; i++)
    {
      guint at = g_array_index (patch, guint, i);
      gsize next[4];

      pp_dots_beside (at, self->width, n, next);
      for (guint k = 0; k < 4; k++)
        if (next[k] < n && dark[next[k]] == 1)
          {
            guint there = (guint) next[k];

            dark[there] = 2;
            g_array_append_val (patch, there);
          }
    }
}

typedef struct
{
  guint x0, y0, x1, y1; /* x1, y1 not in it */
} Extent;

static Extent
get_extent (const Small *self,
            GArray      *patch)
{
  Extent e = { self->width, self->height, 0, 0 };

  for (guint i = 0; i < patch->len; i++)
    {
      guint at = g_array_index (patch, guint, i);
      guint x = at % self->width, y = at / self->width;

      e = (Extent) { MIN (e.x0, x), MIN (e.y0, y), MAX (e.x1, x + 1), MAX (e.y1, y + 1) };
    }
  return e;
}

/* Between the outermost pixels of each row, which fills the hole of a round patch. */
static double
measure_round (const Small *self,
               GArray      *patch,
               Extent       e,
               PpPoint     *middle,
               double      *off)
{
  guint n_rows = e.y1 - e.y0;
  g_autofree guint *first = g_new (guint, n_rows);
  g_autofree guint *last = g_new0 (guint, n_rows);
  double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0, syy = 0, determinant, trace, spread;

  for (guint i = 0; i < n_rows; i++)
    first[i] = e.x1;
  for (guint i = 0; i < patch->len; i++)
    {
      guint at = g_array_index (patch, guint, i);
      guint x = at % self->width, row = at / self->width - e.y0;

      first[row] = MIN (first[row], x);
      last[row] = MAX (last[row], x);
    }
  for (guint row = 0; row < n_rows; row++)
    for (guint column = first[row]; column <= last[row]; column++)
      {
        double x = column - e.x0 + 0.5, y = row + 0.5;

        n++;
        sx += x;
        sy += y;
        sxx += x * x;
        sxy += x * y;
        syy += y * y;
      }
  *middle = (PpPoint) { e.x0 + sx / n, e.y0 + sy / n };
  sxx = sxx / n - sx / n * sx / n;
  syy = syy / n - sy / n * sy / n;
  sxy = sxy / n - sx / n * sy / n;
  determinant = fmax (sxx * syy - sxy * sxy, 0);
  trace = sxx + syy;
  spread = sqrt (fmax (trace * trace / 4 - determinant, 0));
  *off = fabs (n / (4 * G_PI * sqrt (determinant)) - 1);
  return trace / 2 - spread > SLIM * SLIM * (trace / 2 + spread) ? n : 0;
}

static double
mean_around (const Small *self,
             PpPoint      middle,
             double       radius)
{
  double sum = 0;

  for (guint i = 0; i < 16; i++)
    {
      double angle = i * G_PI / 8;
      int x = (int) (middle.x + radius * cos (angle)), y = (int) (middle.y + radius * sin (angle));

      x = CLAMP (x, 0, (int) self->width - 1);
      y = CLAMP (y, 0, (int) self->height - 1);
      sum += self->luma[(gsize) y * self->width + (guint) x] / 16.0;
    }
  return sum;
}

static void
add_round (const Small *self,
           GArray      *patch,
           GArray      *rounds)
{
  Extent e = get_extent (self, patch);
  PpRound found = { 0 };
  double radius, dark;

  if (e.x0 == 0 || e.y0 == 0 || e.x1 == self->width || e.y1 == self->height)
    return;
  found.area = measure_round (self, patch, e, &found.middle, &found.off);
  if (found.area < LEAST_AREA || !(found.off < ROUND_OFF) || patch->len < found.area * 0.75)
    return;
  radius = sqrt (found.area / G_PI);
  dark = mean_around (self, found.middle, radius * 0.6);
  found.has_hole = mean_around (self, found.middle, radius * 0.1)
                   > (dark + mean_around (self, found.middle, radius * 1.35)) / 2;
  for (guint i = 0; i < rounds->len; i++)
    {
      PpRound *other = &g_array_index (rounds, PpRound, i);

      if (pp_point_distance (other->middle, found.middle) > radius / 2)
        continue;
      if (other->off > found.off)
        *other = found;
      return;
    }
  g_array_append_val (rounds, found);
}

static int
compare_rounds (gconstpointer a,
                gconstpointer b)
{
  const PpRound *p = a, *q = b;

  return p->off < q->off ? -1 : p->off > q->off;
}

GArray *
pp_rounds_find (const PpPhoto *photo,
                GCancellable  *cancellable)
{
  static const double shares[] = { 0.25, 0.4, 0.55, 0.7 };
  g_auto (Small) small = make_small (photo);
  GArray *rounds = g_array_new (FALSE, FALSE, sizeof (PpRound));
  g_autoptr (GArray) patch = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n = small.width * small.height;

  for (guint i = 0; i < G_N_ELEMENTS (shares) && !g_cancellable_is_cancelled (cancellable); i++)
    {
      g_autofree guchar *dark = find_dark (&small, shares[i]);

      for (guint at = 0; at < n; at++)
        if (dark[at] == 1)
          {
            follow (&small, dark, at, patch);
            if (patch->len >= LEAST_AREA * 0.75 && patch->len < MOST_SHARE * n)
              add_round (&small, patch, rounds);
          }
    }
  for (guint i = 0; i < rounds->len; i++)
    {
      PpRound *found = &g_array_index (rounds, PpRound, i);

      found->middle = (PpPoint) { found->middle.x * small.factor, found->middle.y * small.factor };
      found->area *= (double) small.factor * small.factor;
    }
  g_array_sort (rounds, compare_rounds);
  return rounds;
}
