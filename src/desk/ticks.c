/* ticks.c: where a ruler's lines stand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/ticks.h"

#define INCH PP_MM_PER_INCH

static const PpTicks metric[] = {
  { 1, 5, 10 }, { 1, 5, 20 }, { 2, 5, 25 }, { 5, 2, 10 }, { 10, 5, 10 },
  { 20, 5, 10 }, { 50, 2, 10 }, { 100, 5, 10 }, { 500, 2, 10 },
};

static const PpTicks inch[] = {
  { INCH / 16, 4, 16 }, { INCH / 8, 4, 8 }, { INCH / 4, 2, 4 }, { INCH / 4, 4, 8 },
  { INCH / 2, 2, 4 }, { INCH, 2, 4 }, { INCH, 6, 12 }, { 2 * INCH, 3, 6 }, { 6 * INCH, 2, 4 },
  { 12 * INCH, 5, 10 },
};

PpTicks
pp_ticks_choose (double  scale,
                 PpUnits units,
                 double  least,
                 double  figure)
{
  const PpTicks *rows = units == PP_UNITS_INCH ? inch : metric;
  guint n = units == PP_UNITS_INCH ? G_N_ELEMENTS (inch) : G_N_ELEMENTS (metric);
  guint i = 0;

  g_return_val_if_fail (scale > 0, rows[0]);

  while (i + 1 < n && (rows[i].small * scale < least
                       || rows[i].small * rows[i].large * scale < figure))
    i++;
  return rows[i];
}
