/* edit-stack.c: edits of the stacking order, and taking placements off.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

static gboolean
check_known (const PpPanel      *panel,
             const char * const *ids,
             GError            **error)
{
  for (guint i = 0; ids[i] != NULL; i++)
    if (pp_panel_find_placement (panel, ids[i], NULL) == NULL)
      {
        pp_edit_refuse_unknown (ids[i], error);
        return FALSE;
      }
  return TRUE;
}

static gboolean
is_listed (GPtrArray          *list,
           guint               index,
           const char * const *ids)
{
  return g_strv_contains (ids, ((const PpPlacement *) g_ptr_array_index (list, index))->id);
}

static void
exchange (GPtrArray *list,
          guint      a,
          guint      b)
{
  gpointer record = list->pdata[a];

  list->pdata[a] = list->pdata[b];
  list->pdata[b] = record;
}

/* The stack as `list` (transfer full) has it; the same panel where nothing moved. */
static PpPanel *
restacked (const PpPanel *panel,
           GPtrArray     *list,
           gboolean       moved,
           GError       **error)
{
  if (moved)
    return pp_edit_with_placements (panel, list, error);
  g_ptr_array_unref (list);
  return pp_panel_ref (panel);
}

/* From the top down, so that those lifted do not step over one another. */
PpPanel *
pp_edit_lift (const PpPanel      *panel,
              const char * const *placements,
              GError            **error)
{
  GPtrArray *list;
  gboolean moved = FALSE;

  if (!check_known (panel, placements, error))
    return NULL;
  list = pp_edit_copy_placements (panel);
  for (guint i = list->len; i-- > 1;)
    if (is_listed (list, i - 1, placements) && !is_listed (list, i, placements))
      {
        exchange (list, i - 1, i);
        moved = TRUE;
      }
  return restacked (panel, list, moved, error);
}

PpPanel *
pp_edit_lower (const PpPanel      *panel,
               const char * const *placements,
               GError            **error)
{
  GPtrArray *list;
  gboolean moved = FALSE;

  if (!check_known (panel, placements, error))
    return NULL;
  list = pp_edit_copy_placements (panel);
  for (guint i = 0; i + 1 < list->len; i++)
    if (is_listed (list, i + 1, placements) && !is_listed (list, i, placements))
      {
        exchange (list, i, i + 1);
        moved = TRUE;
      }
  return restacked (panel, list, moved, error);
}

PpPanel *
pp_edit_restack (const PpPanel *panel,
                 const char    *placement,
                 guint          index,
                 GError       **error)
{
  GPtrArray *list;
  guint from;

  if (pp_panel_find_placement (panel, placement, &from) == NULL)
    return pp_edit_refuse_unknown (placement, error);
  if (index >= panel->placements->len)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("There is no place %u in a stack of %u."), index + 1, panel->placements->len);
      return NULL;
    }
  list = pp_edit_copy_placements (panel);
  g_ptr_array_insert (list, (int) index, g_ptr_array_steal_index (list, from));
  return restacked (panel, list, index != from, error);
}

/* The jobs of a plan less those of `ids`. (transfer container) */
static const char **
plan_without (const char * const *plan,
              const char * const *ids)
{
  g_autoptr (GPtrArray) jobs = g_ptr_array_new ();

  for (guint i = 0; plan[i] != NULL; i++)
    if (!g_strv_contains (ids, plan[i]))
      g_ptr_array_add (jobs, (gpointer) plan[i]);
  g_ptr_array_add (jobs, NULL);
  return (const char **) g_ptr_array_free (g_steal_pointer (&jobs), FALSE);
}

static gboolean
names_any (const char * const *about,
           const char * const *ids)
{
  for (guint i = 0; about[i] != NULL; i++)
    if (g_strv_contains (ids, about[i]))
      return TRUE;
  return FALSE;
}

/* Quieted findings less those about any of `ids`; the same list where none is. */
static GPtrArray *
quiet_without (const PpPanel      *panel,
               const char * const *ids)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_quiet_unref);

  for (guint i = 0; i < panel->quiet->len; i++)
    {
      const PpQuiet *quiet = g_ptr_array_index (panel->quiet, i);

      if (!names_any (quiet->about, ids))
        g_ptr_array_add (list, pp_quiet_ref (quiet));
    }
  if (list->len == panel->quiet->len)
    {
      g_ptr_array_unref (list);
      return g_ptr_array_ref (panel->quiet);
    }
  return list;
}

PpPanel *
pp_edit_remove (const PpPanel      *panel,
                const char * const *placements,
                GError            **error)
{
  g_autoptr (GPtrArray) list = NULL;
  g_autoptr (GPtrArray) quiet = NULL;
  g_autofree const char **plan = NULL;
  PpPanel draft = *panel;

  if (!check_known (panel, placements, error))
    return NULL;
  list = pp_edit_copy_placements (panel);
  for (guint i = list->len; i-- > 0;)
    if (is_listed (list, i, placements))
      g_ptr_array_remove_index (list, i);
  draft.placements = list;
  draft.quiet = quiet = quiet_without (panel, placements);
  if (panel->plan != NULL)
    draft.plan = plan = plan_without (panel->plan, placements);
  return pp_panel_new (&draft, error);
}
