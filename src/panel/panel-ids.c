/* panel-ids.c: one table of all the ids of a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/panel-ids-private.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"

#include <string.h>

/* Kind and index are packed into one pointer. */
#define ID_SHIFT 16

G_STATIC_ASSERT (PP_PANEL_MAX_PLACEMENTS < 1 << ID_SHIFT);

GHashTable *
pp_panel_ids_new (void)
{
  return g_hash_table_new (g_str_hash, g_str_equal);
}

static gboolean
add_id (GHashTable *ids,
        const char *id,
        PpIdKind    kind,
        guint       index,
        GError    **error)
{
  static const char * const lists[] = {
    [PP_ID_FUSED] = "fused", [PP_ID_HOLE] = "holes", [PP_ID_PIECE] = "tray",
    [PP_ID_PLACEMENT] = "placements",
  };

  if (g_hash_table_insert (ids, (gpointer) id, GUINT_TO_POINTER ((guint) kind << ID_SHIFT | index)))
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_DUPLICATE,
               _("%s[%u].id: the id “%s” stands twice in this panel."), lists[kind], index, id);
  return FALSE;
}

gboolean
pp_panel_ids_add_all (GHashTable    *ids,
                      const PpPanel *panel,
                      GError       **error)
{
  for (guint i = 0; i < panel->fused->len; i++)
    if (!add_id (ids, pp_panel_fused (panel, i)->id, PP_ID_FUSED, i, error))
      return FALSE;
  for (guint i = 0; i < panel->holes->len; i++)
    if (!add_id (ids, pp_panel_hole (panel, i)->id, PP_ID_HOLE, i, error))
      return FALSE;
  for (guint i = 0; i < panel->tray->len; i++)
    if (!add_id (ids, pp_panel_piece (panel, i)->id, PP_ID_PIECE, i, error))
      return FALSE;
  for (guint i = 0; i < panel->placements->len; i++)
    if (!add_id (ids, pp_panel_placement (panel, i)->id, PP_ID_PLACEMENT, i, error))
      return FALSE;
  return TRUE;
}

gboolean
pp_panel_ids_find (GHashTable *ids,
                   const char *id,
                   PpIdKind    kind,
                   guint      *index)
{
  guint packed = GPOINTER_TO_UINT (g_hash_table_lookup (ids, id));

  if (packed >> ID_SHIFT != (guint) kind)
    return FALSE;
  *index = packed & ((1u << ID_SHIFT) - 1);
  return TRUE;
}

/* Larger numbers are nobody's count, and would leave no room for the next. */
#define MAX_ID_NUMBER 1000000000u

/* One above the figures an id ends with, "p12" or "knot-3"; 0 without. */
static guint
number_after (const char *id)
{
  const char *figures = id + strlen (id);
  guint64 number;

  while (figures > id && g_ascii_isdigit (figures[-1]))
    figures--;
  if (*figures == '\0' || figures == id)
    return 0;
  number = g_ascii_strtoull (figures, NULL, 10);
  return number < MAX_ID_NUMBER ? (guint) number + 1 : 0;
}

static guint
number_after_all (const char * const *ids,
                  guint               next)
{
  for (guint i = 0; ids != NULL && ids[i] != NULL; i++)
    next = MAX (next, number_after (ids[i]));
  return next;
}

guint
pp_panel_ids_find_next (GHashTable    *ids,
                        const PpPanel *panel)
{
  guint next = MAX (panel->next_id, 1);
  GHashTableIter iter;
  gpointer id;

  g_hash_table_iter_init (&iter, ids);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    next = MAX (next, number_after (id));
  for (guint i = 0; i < panel->log->len; i++)
    next = number_after_all (((const PpLogEntry *) g_ptr_array_index (panel->log, i))->about, next);
  for (guint i = 0; i < panel->quiet->len; i++)
    next = number_after_all (((const PpQuiet *) g_ptr_array_index (panel->quiet, i))->about, next);
  return number_after_all (panel->plan, next);
}
