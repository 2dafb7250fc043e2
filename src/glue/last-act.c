/* last-act.c: the last act at the bench that may have been a stray press.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/last-act.h"

/* The last of that id. */
static void
drop (GPtrArray  *acts,
      const char *id)
{
  for (guint i = acts->len; i-- > 0;)
    if (g_str_equal (g_ptr_array_index (acts, i), id))
      {
        g_ptr_array_remove_index (acts, i);
        return;
      }
}

static void
walk (GPtrArray        *acts,
      const PpLogEntry *entry)
{
  if (entry->what == PP_LOG_MIXED)
    g_ptr_array_add (acts, g_strdup (""));
  else if (entry->what == PP_LOG_PAUSED)
    g_ptr_array_set_size (acts, 0);
  else if (entry->what == PP_LOG_TAKEN_BACK && entry->about[0] == NULL)
    drop (acts, "");
  for (guint i = 0; entry->about[i] != NULL; i++)
    if (entry->what == PP_LOG_PLACED)
      g_ptr_array_add (acts, g_strdup (entry->about[i]));
    else if (entry->what != PP_LOG_MOVED)
      drop (acts, entry->about[i]);
}

char *
pp_last_act_find (const PpPanel *panel)
{
  g_autoptr (GPtrArray) acts = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (panel != NULL, NULL);

  for (guint i = 0; i < panel->log->len; i++)
    walk (acts, g_ptr_array_index (panel->log, i));
  return acts->len > 0 ? g_strdup (g_ptr_array_index (acts, acts->len - 1)) : NULL;
}
