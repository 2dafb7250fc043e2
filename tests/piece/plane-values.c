/* plane-values.c: maps points by four points and their partners, for another program to look at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads x and y of four points, of their partners, and of any number more; a line for each of
 * those: where it goes, and where that comes from. "none" where there is no such map.
 */
#include "piece/plane.h"

#include <stdio.h>

static gboolean
read_point (PpPoint *p)
{
  return scanf ("%lf %lf", &p->x, &p->y) == 2;
}

int
main (void)
{
  PpPoint from[4], to[4], p;
  PpSheetPlane plane, back;
  gboolean is_whole = TRUE;

  for (guint i = 0; i < 4; i++)
    is_whole = read_point (&from[i]) && is_whole;
  for (guint i = 0; i < 4; i++)
    is_whole = read_point (&to[i]) && is_whole;
  if (!is_whole || !pp_plane_fit (from, to, &plane) || !pp_plane_invert (&plane, &back))
    {
      puts ("none");
      return 0;
    }
  while (read_point (&p))
    {
      PpPoint there = pp_plane_map (&plane, p), again = pp_plane_map (&back, p);

      printf ("%.17g %.17g %.17g %.17g\n", there.x, there.y, again.x, again.y);
    }
  return 0;
}
