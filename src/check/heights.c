/* heights.c: how high each placement of a checked panel lies.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/heights.h"

#include <math.h>

void
pp_heights_of (const PpCheck  *check,
               double        **bases,
               double        **tops)
{
  g_return_if_fail (check != NULL && bases != NULL && tops != NULL);

  *bases = g_new (double, check->n + 1);
  *tops = g_new (double, check->n + 1);
  for (guint i = 0; i < check->n; i++)
    {
      const PpRest *rest = check->rests[i];
      gboolean floats = rest->state == PP_STATE_FLOATS;

      (*bases)[i] = floats ? (double) NAN : rest->base;
      (*tops)[i] = floats ? (double) NAN : rest->top;
    }
}
