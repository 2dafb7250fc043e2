/* same-make.c: whether two pieces are made alike.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/same-make.h"

/* As in a file, where NAN is null. */
static gboolean
is_same_number (double a,
                double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static gboolean
is_same_grid (const PpHeightGrid *a,
              const PpHeightGrid *b)
{
  gsize n;

  if (a == b || a == NULL || b == NULL)
    return a == b;
  if (a->x0 != b->x0 || a->y0 != b->y0 || a->step != b->step || a->n_rows != b->n_rows
      || a->n_columns != b->n_columns)
    return FALSE;
  n = (gsize) a->n_rows * a->n_columns;
  for (gsize i = 0; i < n; i++)
    if (!is_same_number (a->heights[i], b->heights[i]))
      return FALSE;
  return TRUE;
}

static gboolean
is_same_form (const PpPiece *a,
              const PpPiece *b)
{
  return a->form.kind == b->form.kind && a->form.rise == b->form.rise
         && a->form.foot == b->form.foot && is_same_number (a->form.flat, b->form.flat)
         && is_same_grid (a->form.grid, b->form.grid)
         && g_strcmp0 (a->form.extra, b->form.extra) == 0
         && a->crown.height == b->crown.height && a->crown.radius == b->crown.radius
         && g_strcmp0 (a->crown.extra, b->crown.extra) == 0;
}

static gboolean
is_same_art (GBytes *a,
             GBytes *b)
{
  return a == b || (a != NULL && b != NULL && g_bytes_equal (a, b));
}

gboolean
pp_piece_is_same_make (const PpPiece *a,
                       const PpPiece *b)
{
  return a == b
         || (g_str_equal (a->name, b->name) && a->kind == b->kind && a->thickness == b->thickness
             && is_same_number (a->mass, b->mass) && a->density == b->density
             && a->transmittance == b->transmittance && g_str_equal (a->colour, b->colour)
             && is_same_form (a, b) && g_strcmp0 (a->extra, b->extra) == 0
             && pp_outline_equal (a->outline, b->outline) && is_same_art (a->art, b->art));
}
