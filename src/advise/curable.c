/* curable.c: which findings moving things about could put right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/curable.h"

gboolean
pp_advise_can_cure (const char *code)
{
  static const char * const codes[] = {
    "hole-edge", "hole-border", "hole-pocket", "hole-corner", "hole-hole",
    "tips", "floats", "unsteady", "slope", "overhang", "no-joint", "strain", "joint-small",
    "squeeze", "flat-on-shaped", "stock", "stem-astray", "stems-wide", "stem-short",
    "wire-shows", "hidden-barely", "hole-shows", "knot-shows", "knot-barely", "shows-aslant",
    "turns-over", "wire-short", "wire-taut", "not-level", "slips", "wire-load", "leans",
    "even-group", NULL,
  };

  g_return_val_if_fail (code != NULL, FALSE);
  return g_strv_contains (codes, code);
}
