/* tint.c: colours made from a piece's colour.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/tint.h"

#include <math.h>
#include <string.h>

PpTint
pp_tint_parse (const char *colour)
{
  if (colour[0] != '#' || strlen (colour) != 7)
    return 0;
  return (PpTint) g_ascii_strtoull (colour + 1, NULL, 16) & 0xffffff;
}

PpTint
pp_tint_mix (PpTint a,
             PpTint b,
             double share)
{
  PpTint mixed = 0;

  for (int shift = 16; shift >= 0; shift -= 8)
    {
      int from = (a >> shift) & 0xff;
      int to = (b >> shift) & 0xff;

      mixed |= (PpTint) lround (from + (to - from) * share) << shift;
    }
  return mixed;
}
