/* bead.c: volumes of glue as the length of a bead from a nozzle.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/bead.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"

#include <math.h>

#define MM3_PER_ML 1000.0

double
pp_bead_length (double ml,
                double bore)
{
  g_return_val_if_fail (ml >= 0 && bore > 0, 0);

  return ml * MM3_PER_ML / (G_PI / 4 * bore * bore);
}

char *
pp_bead_label_format (PpUnits units)
{
  g_autofree char *bore = pp_length_format (PP_BEAD_BORE, units);

  return g_strdup_printf (_("or beads from a hole of %s"), bore);
}

char *
pp_bead_format (double  a,
                double  b,
                PpUnits units)
{
  g_autofree char *length_a = pp_length_format (pp_bead_length (a, PP_BEAD_BORE), units);
  g_autofree char *length_b = pp_length_format (pp_bead_length (b, PP_BEAD_BORE), units);

  if (fabs (a - b) <= PP_TIE)
    return g_steal_pointer (&length_a);
  return g_strdup_printf (_("%s and %s"), length_a, length_b);
}
