/* tally.h: how many there are of each name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* None yet. Names are borrowed. (transfer full) */
static inline GHashTable *
pp_tally_new (void)
{
  return g_hash_table_new (g_str_hash, g_str_equal);
}

static inline guint
pp_tally_get (GHashTable *tally,
              const char *name)
{
  return GPOINTER_TO_UINT (g_hash_table_lookup (tally, name));
}

/* One more of the name. */
static inline void
pp_tally_add (GHashTable *tally,
              const char *name)
{
  g_hash_table_insert (tally, (gpointer) name, GUINT_TO_POINTER (pp_tally_get (tally, name) + 1));
}

G_END_DECLS
