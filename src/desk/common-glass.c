/* common-glass.c: the sizes and thicknesses in which glass is commonly had.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/common-glass.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"

/* In the unit itself. */
static const double sizes[][PP_COMMON_SIZES][2] = {
  [PP_UNITS_MM] = { { 200, 250 }, { 250, 350 }, { 300, 400 }, { 400, 500 }, { 300, 600 } },
  [PP_UNITS_INCH] = { { 8, 10 }, { 11, 14 }, { 12, 16 }, { 16, 20 }, { 12, 24 } },
};

static const struct
{
  double      value;
  const char *words;
} thicknesses[][PP_COMMON_THICKNESSES] = {
  [PP_UNITS_MM] = { { 3, N_("3 mm") }, { 4, N_("4 mm") }, { 6, N_("6 mm") } },
  [PP_UNITS_INCH] = { { 1.0 / 8, N_("1/8 in") }, { 5.0 / 32, N_("5/32 in") },
                      { 1.0 / 4, N_("1/4 in") } },
};

static double
mm_of (double  value,
       PpUnits units)
{
  return units == PP_UNITS_INCH ? value * PP_MM_PER_INCH : value;
}

gboolean
pp_common_is_close (double a,
                    double b)
{
  return fabs (a - b) < PP_TIE;
}

char *
pp_common_size_write (PpUnits units,
                      guint   i)
{
  g_return_val_if_fail (i < PP_COMMON_SIZES, NULL);
  return g_strdup_printf ("%g × %g", sizes[units][i][0], sizes[units][i][1]);
}

char *
pp_common_size_speak (PpUnits units,
                      guint   i)
{
  g_return_val_if_fail (i < PP_COMMON_SIZES, NULL);
  return pp_size_format (mm_of (sizes[units][i][0], units), mm_of (sizes[units][i][1], units),
                         units);
}

gboolean
pp_common_size_is (const PpNewPanel *wish,
                   guint             i)
{
  double across = mm_of (sizes[wish->units][i][0], wish->units);
  double down = mm_of (sizes[wish->units][i][1], wish->units);

  return (pp_common_is_close (wish->width, across) && pp_common_is_close (wish->height, down))
         || (pp_common_is_close (wish->width, down) && pp_common_is_close (wish->height, across));
}

void
pp_common_size_take (PpNewPanel *wish,
                     guint       i)
{
  double across = mm_of (sizes[wish->units][i][0], wish->units);
  double down = mm_of (sizes[wish->units][i][1], wish->units);
  gboolean sideways = wish->width > wish->height;

  wish->width = sideways ? down : across;
  wish->height = sideways ? across : down;
}

double
pp_common_thickness_get (PpUnits units,
                         guint   i)
{
  g_return_val_if_fail (i < PP_COMMON_THICKNESSES, 0);
  return mm_of (thicknesses[units][i].value, units);
}

const char *
pp_common_thickness_get_words (PpUnits units,
                               guint   i)
{
  g_return_val_if_fail (i < PP_COMMON_THICKNESSES, NULL);
  return _(thicknesses[units][i].words);
}
