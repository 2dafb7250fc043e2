/* bits.c: a raster of bits, row by row, and where another fits into it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/bits.h"

#define WORD 64

PpBits *
pp_bits_new (int width,
             int height)
{
  PpBits *self = g_new0 (PpBits, 1);

  self->width = MAX (width, 0);
  self->height = MAX (height, 0);
  self->n_words = self->width / WORD + 2;
  self->words = g_new0 (guint64, (gsize) self->n_words * (gsize) MAX (self->height, 1));
  return self;
}

void
pp_bits_free (PpBits *self)
{
  if (self == NULL)
    return;
  g_free (self->words);
  g_free (self);
}

static guint64 *
row_of (const PpBits *self,
        int           y)
{
  return self->words + (gsize) y * (gsize) self->n_words;
}

PpBits *
pp_bits_new_from_mask (cairo_surface_t *mask)
{
  PpBits *self = pp_bits_new (cairo_image_surface_get_width (mask),
                              cairo_image_surface_get_height (mask));
  int stride = cairo_image_surface_get_stride (mask);
  const guint8 *data;

  cairo_surface_flush (mask);
  data = cairo_image_surface_get_data (mask);
  for (int y = 0; y < self->height; y++)
    for (int x = 0; x < self->width; x++)
      if (data[(gsize) y * (gsize) stride + (gsize) x] != 0)
        row_of (self, y)[x / WORD] |= (guint64) 1 << (x % WORD);
  return self;
}

static gboolean
row_is_free (const guint64 *row,
             const guint64 *mask,
             int            n_words,
             int            shift)
{
  for (int i = 0; i < n_words; i++)
    if ((row[i] & mask[i] << shift) != 0
        || (shift > 0 && (row[i + 1] & mask[i] >> (WORD - shift)) != 0))
      return FALSE;
  return TRUE;
}

static gboolean
is_free (const PpBits *self,
         const PpBits *mask,
         int           x,
         int           y)
{
  for (int row = 0; row < mask->height; row++)
    if (!row_is_free (row_of (self, y + row) + x / WORD, row_of (mask, row),
                      (mask->width + WORD - 1) / WORD, x % WORD))
      return FALSE;
  return TRUE;
}

gboolean
pp_bits_find_room (const PpBits *self,
                   const PpBits *mask,
                   int          *x,
                   int          *y)
{
  for (*y = 0; *y + mask->height <= self->height; ++*y)
    for (*x = 0; *x + mask->width <= self->width; ++*x)
      if (is_free (self, mask, *x, *y))
        return TRUE;
  return FALSE;
}

void
pp_bits_add (PpBits       *self,
             const PpBits *mask,
             int           x,
             int           y)
{
  int shift = x % WORD;

  for (int row = 0; row < mask->height; row++)
    {
      guint64 *to = row_of (self, y + row) + x / WORD;
      const guint64 *from = row_of (mask, row);

      for (int i = 0; i < (mask->width + WORD - 1) / WORD; i++)
        {
          to[i] |= from[i] << shift;
          if (shift > 0)
            to[i + 1] |= from[i] >> (WORD - shift);
        }
    }
}
