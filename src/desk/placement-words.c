/* placement-words.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/placement-words.h"

char *
pp_placement_words_name (const PpPanel *panel,
                         guint          index)
{
  return g_strdup (pp_panel_placement (panel, index)->id);
}

char *
pp_placement_words_state (PpDocument *document,
                          const char *placement)
{
  return g_strdup ("");
}
