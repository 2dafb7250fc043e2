/* height.c: how high the underside and top of a piece stand over its own base.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/height.h"

#include "shape/polygon.h"
#include "shape/wide.h"

void
pp_heights_init (PpHeights     *self,
                 const PpPiece *piece)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (piece->outline, 0, &n);
  PpBox box = pp_outline_get_box (piece->outline);

  *self = (PpHeights) {
    .form = &piece->form,
    .thickness = piece->thickness,
    .crown = piece->crown,
    .start = box.y0,
    .end = box.y1,
  };
  for (guint i = 0; i < n; i++)
    self->reach = fmax (self->reach, hypot (p[i].x, p[i].y));
}

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

static double
crown_at (const PpHeights *self,
          PpPoint          own)
{
  return self->crown.height * MAX (0, 1 - reach_squared (own) / square (self->crown.radius));
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
  double length = self->end - self->start;
  double along = length > 0 ? 2 * (own.y - (self->start + self->end) / 2) / length : 0;
  double flat = isnan (form->flat) ? length / 2 : form->flat;

  switch (kind)
    {
    case PP_FORM_FLAT:
      return 0;
    case PP_FORM_CUPPED:
      if (form->foot >= self->reach)
        return 0;
      return form->rise * square (MAX (sqrt (reach_squared (own)) - form->foot, 0)
                                 / (self->reach - form->foot));
    case PP_FORM_DOMED:
      if (self->reach <= 0)
        return form->rise;
      return form->rise * (1 - reach_squared (own) / square (self->reach));
    case PP_FORM_ARCHED:
      return form->rise * (1 - square (along));
    case PP_FORM_CURLED:
      return form->rise * square (along);
    case PP_FORM_LIFTED:
      if (flat >= length)
        return 0;
      return form->rise * square (MAX (own.y - self->start - flat, 0) / (length - flat));
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
  return hypot (across, down) / grid->step;
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
  const PpForm *form = self->form;
  double length = self->end - self->start, reach = self->reach;
  double flat = isnan (form->flat) ? length / 2 : form->flat;
  double off = fabs (self->start + self->end) / 2;

  switch (form->kind)
    {
    case PP_FORM_FLAT:
      return 0;
    case PP_FORM_CUPPED:
      return form->foot >= reach ? 0 : square_steepest (form->rise, 1, 1 / (reach - form->foot));
    case PP_FORM_DOMED:
      return reach <= 0 ? 0 : square_steepest (form->rise, 1, 1 / reach);
    case PP_FORM_ARCHED:
    case PP_FORM_CURLED:
      return length <= 0 ? 0 : square_steepest (form->rise, 2 * (reach + off) / length, 2 / length);
    case PP_FORM_LIFTED:
      if (flat >= length)
        return 0;
      return square_steepest (form->rise, fmax (reach - self->start - flat, 0) / (length - flat),
                              1 / (length - flat));
    case PP_FORM_MEASURED:
      return grid_steepest (form->grid);
    }
  g_return_val_if_reached (0);
}

/* Of rise · t², t growing by `rate` a mm at most. */
static double
square_bend (double rise,
             double rate)
{
  return 2 * fabs (rise) * square (rate);
}

double
pp_heights_get_bend (const PpHeights *self)
{
  const PpForm *form = self->form;
  double length = self->end - self->start;
  double flat = isnan (form->flat) ? length / 2 : form->flat;

  switch (form->kind)
    {
    case PP_FORM_FLAT:
      return 0;
    case PP_FORM_CUPPED:
      return form->foot >= self->reach ? 0
             : square_bend (form->rise, 1 / (self->reach - form->foot));
    case PP_FORM_DOMED:
      return self->reach <= 0 ? 0 : square_bend (form->rise, 1 / self->reach);
    case PP_FORM_ARCHED:
    case PP_FORM_CURLED:
      return length <= 0 ? 0 : square_bend (form->rise, 2 / length);
    case PP_FORM_LIFTED:
      return flat >= length ? 0 : square_bend (form->rise, 1 / (length - flat));
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
