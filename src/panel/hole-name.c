/* hole-name.c: which hole is meant, in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/hole-name.h"

#include "panel/i18n.h"

const char *
pp_hole_name (const char *id)
{
  /* Translators: these three say which hole is meant and are put for %s in all that is said of
   * one: "The left hole lies across the edge." Choose a form that fits all of these sentences. */
  if (g_str_equal (id, "left"))
    return C_("which hole", "left");
  if (g_str_equal (id, "right"))
    return C_("which hole", "right");
  if (g_str_equal (id, "spare"))
    return C_("which hole", "spare");
  return id;
}
