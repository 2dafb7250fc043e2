/* pocket-list.c: the pockets of a panel as a list to choose one from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/pocket-list.h"

#include "panel/i18n.h"

const PpFused *
pp_pocket_list_get_part (GPtrArray *fused,
                         guint      position)
{
  guint count = 0;

  for (guint i = 0; i < fused->len; i++)
    {
      const PpFused *part = g_ptr_array_index (fused, i);

      if (part->has_pocket && ++count == position)
        return part;
    }
  return NULL;
}

GtkStringList *
pp_pocket_list_new (GPtrArray *fused)
{
  GtkStringList *names = gtk_string_list_new (NULL);
  const PpFused *part;

  gtk_string_list_append (names, C_("pocket", "none"));
  for (guint i = 1; (part = pp_pocket_list_get_part (fused, i)) != NULL; i++)
    gtk_string_list_append (names, *part->name != '\0' ? part->name : part->id);
  return names;
}

guint
pp_pocket_list_find (GPtrArray  *fused,
                     const char *id)
{
  const PpFused *part;

  for (guint i = 1; (part = pp_pocket_list_get_part (fused, i)) != NULL; i++)
    if (g_strcmp0 (part->id, id) == 0)
      return i;
  return 0;
}
