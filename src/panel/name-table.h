/* name-table.h: the words of a file that stand for the values of an enum.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include <string.h>

/* The index of `name` in a table; FALSE, and `index` untouched, if it is not there. */
static inline gboolean
pp_name_table_find (const char * const *names,
                    guint               n_names,
                    const char         *name,
                    int                *index)
{
  for (guint i = 0; i < n_names; i++)
    if (strcmp (names[i], name) == 0)
      {
        *index = (int) i;
        return TRUE;
      }
  return FALSE;
}
