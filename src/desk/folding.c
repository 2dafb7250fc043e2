/* folding.c: which findings stand open in the margin, and which are folded away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/folding.h"

#include <string.h>

struct _PpFolding
{
  GPtrArray  *asked; /* char *, keys the maker opened, the latest last */
  GHashTable *open;  /* char *, a set of keys */
};

PpFolding *
pp_folding_new (void)
{
  PpFolding *self = g_new0 (PpFolding, 1);

  self->asked = g_ptr_array_new_with_free_func (g_free);
  self->open = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  return self;
}

void
pp_folding_free (PpFolding *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->asked);
  g_hash_table_unref (self->open);
  g_free (self);
}

void
pp_folding_ask (PpFolding  *self,
                const char *key)
{
  guint index;

  g_return_if_fail (self != NULL && key != NULL);

  if (g_ptr_array_find_with_equal_func (self->asked, key, g_str_equal, &index))
    g_ptr_array_remove_index (self->asked, index);
  else if (self->asked->len == PP_FOLDING_OPEN)
    g_ptr_array_remove_index (self->asked, 0);
  g_ptr_array_add (self->asked, g_strdup (key));
}

static void
open_asked (PpFolding  *self,
            GPtrArray  *keys,
            GHashTable *open)
{
  for (guint i = 0; i < keys->len; i++)
    if (g_ptr_array_find_with_equal_func (self->asked, g_ptr_array_index (keys, i), g_str_equal,
                                          NULL))
      g_hash_table_add (open, g_strdup (g_ptr_array_index (keys, i)));
}

static void
open_worst (PpFolding  *self,
            GPtrArray  *findings,
            GPtrArray  *keys,
            GHashTable *open,
            PpLevel     level,
            gboolean    was_open)
{
  for (guint i = 0; i < keys->len && g_hash_table_size (open) < PP_FOLDING_OPEN; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings, i);
      const char *key = g_ptr_array_index (keys, i);

      if (finding->level == level && g_hash_table_contains (self->open, key) == was_open)
        g_hash_table_add (open, g_strdup (key));
    }
}

void
pp_folding_fold (PpFolding *self,
                 GPtrArray *findings,
                 GPtrArray *keys)
{
  GHashTable *open;

  g_return_if_fail (self != NULL && findings != NULL && keys != NULL);
  g_return_if_fail (findings->len == keys->len);

  open = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  open_asked (self, keys, open);
  for (PpLevel level = PP_LEVEL_FAULT; level <= PP_LEVEL_NOTE; level++)
    {
      open_worst (self, findings, keys, open, level, TRUE);
      open_worst (self, findings, keys, open, level, FALSE);
    }
  g_hash_table_unref (self->open);
  self->open = open;
}

gboolean
pp_folding_is_open (PpFolding  *self,
                    const char *key)
{
  g_return_val_if_fail (self != NULL && key != NULL, FALSE);
  return g_hash_table_contains (self->open, key);
}

static int
compare_ids (gconstpointer a,
             gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

static char *
make_key (const PpFinding *finding)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  GString *key = g_string_new (finding->code);

  for (guint i = 0; finding->about[i] != NULL; i++)
    g_ptr_array_add (ids, (char *) finding->about[i]);
  g_ptr_array_sort (ids, compare_ids);
  for (guint i = 0; i < ids->len; i++)
    g_string_append_printf (key, " %s", (const char *) g_ptr_array_index (ids, i));
  return g_string_free (key, FALSE);
}

GPtrArray *
pp_finding_keys (GPtrArray *findings)
{
  GPtrArray *keys;
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  g_return_val_if_fail (findings != NULL, NULL);

  keys = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < findings->len; i++)
    {
      char *key = make_key (g_ptr_array_index (findings, i));

      /* A second of the same kind about the same thing; ids hold no such sign. */
      while (g_hash_table_contains (seen, key))
        {
          char *next = g_strconcat (key, "+", NULL);

          g_free (key);
          key = next;
        }
      g_hash_table_add (seen, key);
      g_ptr_array_add (keys, key);
    }
  return keys;
}
