/* height.c: how high the underside and top of a piece stand over its own base.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/height.h"

#include "shape/polygon.h"
#include "shape/wide.h"

static double
square (double x)
{
  return x * x;
}

/* Asked for every cell of every piece: without a root where none is needed. */
static double
reach_squared (PpPoint own)
{
  return own.x * own.x + own.y * own.y;
}

/* mm from its start over which a lifted piece lies even. */
static double
get_flat (const PpHeights *self)
{
  return isnan (self->form->flat) ? (self->end - self->start) / 2 : self->form->flat;
}

/* What the way over which a form rises is to be multiplied by, so that it runs from 0 to 1, or -1
 * to 1: a division for every cell of every piece would cost as much as all else there. 0 where a
 * form has no room to rise. */
static double
get_rate (const PpHeights *self)
{
  double length = self->end - self->start, over = 0;

  switch (self->form->kind)
    {
    case PP_FORM_FLAT:
    case PP_FORM_MEASURED:
      break;
    case PP_FORM_CUPPED:
      over = self->reach - self->form->foot;
      break;
    case PP_FORM_DOMED:
      over = square (self->reach);
      break;
    case PP_FORM_ARCHED:
    case PP_FORM_CURLED:
      over = length / 2;
      break;
    case PP_FORM_LIFTED:
      over = length - get_flat (self);
      break;
    }
  return over > 0 ? 1 / over : 0;
}

void
pp_heights_init (PpHeights     *self,
                 const PpPiece *piece)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (piece->outline, 0, &n);
  PpBox box = pp_outline_get_box (piece->outline);
  double squared = 0;

  *self = (PpHeights) {
    .form = &piece->form,
    .thickness = piece->thickness,
    .crown = piece->crown,
    .start = box.y0,
    .end = box.y1,
  };
  for (guint i = 0; i < n; i++)
    squared = fmax (squared, reach_squared (p[i]));
  self->reach = sqrt (squared);
  self->rate = get_rate (self);
  self->crown_rate = self->crown.height > 0 ? 1 / square (self->crown.radius) : 0;
}

static inline double
crown_at (const PpHeights *self,
          PpPoint          own)
{
  return self->crown.height * MAX (0, 1 - reach_squared (own) * self->crown_rate);
}

double
pp_heights_crown (const PpHeights *self,
                  PpPoint          own)
{
  return crown_at (self, own);
}

/* Bilinear in the grid, clamped at its border. */
static double
grid_height (const PpHeightGrid *grid,
             PpPoint             p)
{
  double column = CLAMP ((p.x - grid->x0) / grid->step, 0, grid->n_columns - 1.0);
  double row = CLAMP ((p.y - grid->y0) / grid->step, 0, grid->n_rows - 1.0);
  guint j0 = (guint) column, i0 = (guint) row;
  guint j1 = MIN (j0 + 1, grid->n_columns - 1), i1 = MIN (i0 + 1, grid->n_rows - 1);
  double s = column - j0, t = row - i0;
  const double *upper = grid->heights + i0 * grid->n_columns;
  const double *lower = grid->heights + i1 * grid->n_columns;

  return (1 - t) * ((1 - s) * upper[j0] + s * upper[j1])
         + t * ((1 - s) * lower[j0] + s * lower[j1]);
}

/* Written out for each kind where it is called with one that is known. */
static inline __attribute__ ((always_inline)) double
underside_of (const PpHeights *self,
              PpFormKind       kind,
              PpPoint          own)
{
  const PpForm *form = self->form;
  double from_middle = own.y - (self->start + self->end) / 2;

  switch (kind)
    {
    case PP_FORM_FLAT:
      return 0;
    case PP_FORM_CUPPED:
      return form->rise * square (MAX (sqrt (reach_squared (own)) - form->foot, 0) * self->rate);
    case PP_FORM_DOMED:
      return form->rise * (1 - reach_squared (own) * self->rate);
    case PP_FORM_ARCHED:
      return form->rise * (1 - square (from_middle * self->rate));
    case PP_FORM_CURLED:
      return form->rise * square (from_middle * self->rate);
    case PP_FORM_LIFTED:
      return form->rise * square (MAX (own.y - self->start - get_flat (self), 0) * self->rate);
    case PP_FORM_MEASURED:
      return grid_height (form->grid, own);
    }
  g_return_val_if_reached (0);
}

double
pp_heights_underside (const PpHeights *self,
                      PpPoint          own)
{
  return underside_of (self, self->form->kind, own);
}

/* On a copy of what it goes by, which no store into `underside` can alter. */
static inline __attribute__ ((always_inline)) void
fill_row (const PpHeights *from,
          PpFormKind       kind,
          PpPoint          first,
          PpPoint          step,
          guint            n,
          double          *underside)
{
  PpForm form = *from->form;
  PpHeights self = *from;

  self.form = &form;
  for (int i = 0; i < (int) n; i++)
    underside[i] = underside_of (&self, kind, (PpPoint) { first.x + i * step.x,
                                                          first.y + i * step.y });
}

PP_WIDE void
pp_heights_fill (const PpHeights *self,
                 PpPoint          first,
                 PpPoint          step,
                 guint            n,
                 double          *underside)
{
  switch (self->form->kind)
    {
    case PP_FORM_FLAT:
      fill_row (self, PP_FORM_FLAT, first, step, n, underside);
      break;
    case PP_FORM_CUPPED:
      fill_row (self, PP_FORM_CUPPED, first, step, n, underside);
      break;
    case PP_FORM_DOMED:
      fill_row (self, PP_FORM_DOMED, first, step, n, underside);
      break;
    case PP_FORM_ARCHED:
      fill_row (self, PP_FORM_ARCHED, first, step, n, underside);
      break;
    case PP_FORM_CURLED:
      fill_row (self, PP_FORM_CURLED, first, step, n, underside);
      break;
    case PP_FORM_LIFTED:
      fill_row (self, PP_FORM_LIFTED, first, step, n, underside);
      break;
    case PP_FORM_MEASURED:
      fill_row (self, PP_FORM_MEASURED, first, step, n, underside);
      break;
    }
}

PP_WIDE void
pp_heights_fill_top (const PpHeights *from,
                     PpPoint          first,
                     PpPoint          step,
                     guint            n,
                     const double    *underside,
                     double          *top)
{
  PpHeights self = *from;

  for (int i = 0; i < (int) n; i++)
    top[i] = (underside != NULL ? underside[i] : 0) + self.thickness;
  for (int i = 0; i < (int) n && self.crown.height > 0; i++)
    top[i] += crown_at (&self, (PpPoint) { first.x + i * step.x, first.y + i * step.y });
}

static double
grid_steepest (const PpHeightGrid *grid)
{
  double across = 0, down = 0;

  for (guint i = 0; i < grid->n_rows; i++)
    for (guint j = 0; j < grid->n_columns; j++)
      {
        const double *at = grid->heights + i * grid->n_columns + j;

        if (j + 1 < grid->n_columns)
          across = fmax (across, fabs (at[1] - at[0]));
        if (i + 1 < grid->n_rows)
          down = fmax (down, fabs (at[grid->n_columns] - at[0]));
      }
  return pp_rough_length (across, down) / grid->step;
}

/* Of rise · t², t growing from 0 to `greatest` at a rate of `rate` a mm. */
static double
square_steepest (double rise,
                 double greatest,
                 double rate)
{
  return 2 * fabs (rise * greatest * rate);
}

double
pp_heights_get_steepest (const PpHeights *self)
{
  double rise = self->form->rise, rate = self->rate, reach = self->reach;

  switch (self->form->kind)
    {
    case PP_FORM_FLAT:
      return 0;
    case PP_FORM_CUPPED:
      return square_steepest (rise, 1, rate);
    case PP_FORM_DOMED:
      return square_steepest (rise, reach, rate);
    case PP_FORM_ARCHED:
    case PP_FORM_CURLED:
      return square_steepest (rise, (reach + fabs (self->start + self->end) / 2) * rate, rate);
    case PP_FORM_LIFTED:
      return square_steepest (rise, MAX (reach - self->start - get_flat (self), 0) * rate, rate);
    case PP_FORM_MEASURED:
      return grid_steepest (self->form->grid);
    }
  g_return_val_if_reached (0);
}

double
pp_heights_get_bend (const PpHeights *self)
{
  double rise = self->form->rise;

  switch (self->form->kind)
    {
    case PP_FORM_FLAT:
      return 0;
    case PP_FORM_DOMED:
      return 2 * fabs (rise) * self->rate;
    case PP_FORM_CUPPED:
    case PP_FORM_ARCHED:
    case PP_FORM_CURLED:
    case PP_FORM_LIFTED:
      return 2 * fabs (rise) * square (self->rate);
    case PP_FORM_MEASURED:
      return INFINITY;
    }
  g_return_val_if_reached (0);
}

double
pp_heights_top (const PpHeights *self,
                PpPoint          own)
{
  double top = pp_heights_underside (self, own) + self->thickness;

  return self->crown.height > 0 ? top + crown_at (self, own) : top;
}

double
pp_piece_get_mass (const PpPiece *piece)
{
  double volume = pp_outline_area (piece->outline) * piece->thickness; /* mm³ */

  if (!isnan (piece->mass))
    return piece->mass;
  if (piece->crown.height > 0)
    volume += G_PI_2 * square (piece->crown.radius) * piece->crown.height;
  return volume * piece->density * 1e-6; /* kg/m³ is 1e-6 g/mm³ */
}
