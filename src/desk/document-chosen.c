/* document-chosen.c: what is chosen: ids, so that it outlives any edit that leaves them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No part of undo: after each change of the panel, ids that are gone are dropped.
 */
#include "config.h"

#include "desk/document-private.h"

static gboolean
is_listed (const char * const *ids,
           const char         *id)
{
  return ids != NULL && g_strv_contains (ids, id);
}

/* Those of `ids` that the panel has, placements in stacking order. */
static char **
keep_known (const PpPanel      *panel,
            PpChosen            chosen,
            const char * const *ids)
{
  g_autoptr (GStrvBuilder) kept = g_strv_builder_new ();

  if (chosen == PP_CHOSEN_PLACEMENTS)
    for (guint i = 0; i < panel->placements->len; i++)
      {
        const PpPlacement *placement = pp_panel_placement (panel, i);

        if (is_listed (ids, placement->id))
          g_strv_builder_add (kept, placement->id);
      }
  if (chosen == PP_CHOSEN_HOLE)
    for (guint i = 0; i < panel->holes->len; i++)
      if (is_listed (ids, pp_panel_hole (panel, i)->id))
        g_strv_builder_add (kept, pp_panel_hole (panel, i)->id);
  if (chosen == PP_CHOSEN_FUSED)
    for (guint i = 0; i < panel->fused->len; i++)
      if (is_listed (ids, pp_panel_fused (panel, i)->id))
        g_strv_builder_add (kept, pp_panel_fused (panel, i)->id);
  return g_strv_builder_end (kept);
}

static PpChosen
judge_chosen (const PpPanel *panel,
              PpChosen       chosen,
              char         **ids)
{
  switch (chosen)
    {
    case PP_CHOSEN_PLACEMENTS:
    case PP_CHOSEN_HOLE:
    case PP_CHOSEN_FUSED:
      return ids[0] != NULL ? chosen : PP_CHOSEN_NOTHING;
    case PP_CHOSEN_WIRE:
      return panel->wire != NULL ? chosen : PP_CHOSEN_NOTHING;
    case PP_CHOSEN_GLASS:
    case PP_CHOSEN_NOTHING:
      return chosen;
    }
  g_return_val_if_reached (PP_CHOSEN_NOTHING);
}

/* TRUE if that changes what is chosen. */
static gboolean
set_chosen (PpDocument         *self,
            PpChosen            chosen,
            const char * const *ids)
{
  const PpPanel *panel = pp_document_get_panel (self);
  g_auto (GStrv) kept = keep_known (panel, chosen, ids);
  PpChosen judged = judge_chosen (panel, chosen, kept);

  if (judged == self->chosen
      && g_strv_equal ((const char * const *) kept, (const char * const *) self->chosen_ids))
    return FALSE;
  self->chosen = judged;
  g_strfreev (self->chosen_ids);
  self->chosen_ids = g_steal_pointer (&kept);
  return TRUE;
}

gboolean
pp_document_prune_chosen (PpDocument *self)
{
  return set_chosen (self, self->chosen, (const char * const *) self->chosen_ids);
}

PpChosen
pp_document_get_chosen (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), PP_CHOSEN_NOTHING);
  return self->chosen;
}

const char * const *
pp_document_get_chosen_ids (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return (const char * const *) self->chosen_ids;
}

gboolean
pp_document_is_chosen (PpDocument *self,
                       const char *id)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self) && id != NULL, FALSE);
  return is_listed ((const char * const *) self->chosen_ids, id);
}

void
pp_document_choose (PpDocument         *self,
                    PpChosen            chosen,
                    const char * const *ids)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));

  if (set_chosen (self, chosen, ids))
    g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHOSEN], 0);
}

void
pp_document_choose_groups (PpDocument *self)
{
  g_autoptr (GStrvBuilder) with_mates = g_strv_builder_new ();
  g_autoptr (GHashTable) groups = g_hash_table_new (g_str_hash, g_str_equal);
  g_auto (GStrv) ids = NULL;
  const PpPanel *panel;

  g_return_if_fail (PP_IS_DOCUMENT (self));

  if (self->chosen != PP_CHOSEN_PLACEMENTS)
    return;
  panel = pp_document_get_panel (self);
  for (guint i = 0; self->chosen_ids[i] != NULL; i++)
    {
      const PpPlacement *placement = pp_panel_find_placement (panel, self->chosen_ids[i], NULL);

      g_strv_builder_add (with_mates, placement->id);
      if (placement->group != NULL)
        g_hash_table_add (groups, (char *) placement->group);
    }
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);

      if (placement->group != NULL && g_hash_table_contains (groups, placement->group))
        g_strv_builder_add (with_mates, placement->id);
    }
  ids = g_strv_builder_end (with_mates);
  pp_document_choose (self, PP_CHOSEN_PLACEMENTS, (const char * const *) ids);
}

/* What is chosen as its place in the turn: the glass, the fused parts, the holes, the wire; -1 for
 * anything else. */
static int
find_turn (PpDocument *self)
{
  const PpPanel *panel = pp_document_get_panel (self);
  const char * const *ids = pp_document_get_chosen_ids (self);
  guint index = 0;

  switch (pp_document_get_chosen (self))
    {
    case PP_CHOSEN_GLASS:
      return 0;
    case PP_CHOSEN_FUSED:
      pp_panel_find_fused (panel, ids[0], &index);
      return 1 + (int) index;
    case PP_CHOSEN_HOLE:
      pp_panel_find_hole (panel, ids[0], &index);
      return 1 + (int) (panel->fused->len + index);
    case PP_CHOSEN_WIRE:
      return 1 + (int) (panel->fused->len + panel->holes->len);
    case PP_CHOSEN_NOTHING:
    case PP_CHOSEN_PLACEMENTS:
      return -1;
    }
  g_return_val_if_reached (-1);
}

void
pp_document_choose_next (PpDocument *self)
{
  const PpPanel *panel;
  guint n_fused, n_holes, n, turn;

  g_return_if_fail (PP_IS_DOCUMENT (self));

  panel = pp_document_get_panel (self);
  n_fused = panel->fused->len;
  n_holes = panel->holes->len;
  n = 1 + n_fused + n_holes + (panel->wire != NULL ? 1 : 0);
  turn = (guint) (find_turn (self) + 1) % n;

  if (turn == 0)
    pp_document_choose (self, PP_CHOSEN_GLASS, NULL);
  else if (turn <= n_fused)
    pp_document_choose (self, PP_CHOSEN_FUSED,
                        (const char *[]) { pp_panel_fused (panel, turn - 1)->id, NULL });
  else if (turn <= n_fused + n_holes)
    pp_document_choose (self, PP_CHOSEN_HOLE,
                        (const char *[]) { pp_panel_hole (panel, turn - 1 - n_fused)->id, NULL });
  else
    pp_document_choose (self, PP_CHOSEN_WIRE, NULL);
}
