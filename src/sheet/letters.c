/* letters.c: letters that stand for holes and for edges of tiles.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/letters.h"

#define N_LETTERS 26

char *
pp_letters_format (guint index)
{
  char letter = (char) ('A' + index % N_LETTERS);

  if (index < N_LETTERS)
    return g_strdup_printf ("%c", letter);
  return g_strdup_printf ("%c%u", letter, index / N_LETTERS + 1);
}

guint *
pp_letters_of_holes (const PpPanel *panel)
{
  guint n = panel->holes->len;
  guint *order = g_new (guint, MAX (n, 1));

  for (guint i = 0; i < n; i++)
    {
      guint j = i;

      for (; j > 0 && pp_panel_hole (panel, order[j - 1])->x > pp_panel_hole (panel, i)->x; j--)
        order[j] = order[j - 1];
      order[j] = i;
    }
  return order;
}
