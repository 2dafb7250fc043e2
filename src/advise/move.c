/* move.c: the next panel of a search, as a few moves from the present one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/move.h"

static PpPanel *
move_hole (const PpPanel *panel,
           const PpMove  *move)
{
  PpHole draft = *pp_panel_hole (panel, move->index);
  g_autoptr (PpHole) hole = NULL;

  draft.x = move->pose.x;
  draft.y = move->pose.y;
  hole = pp_hole_new (&draft, NULL);
  return hole != NULL ? pp_edit_set_hole (panel, hole, NULL) : NULL;
}

static PpPanel *
set_length (const PpPanel *panel,
            double         length)
{
  PpWire draft = *panel->wire;
  g_autoptr (PpWire) wire = NULL;

  draft.length = length;
  wire = pp_wire_new (&draft, NULL);
  return wire != NULL ? pp_edit_set_wire (panel, wire, NULL) : NULL;
}

static gboolean
is_group (const PpPanel *panel,
          const char    *name)
{
  for (guint i = 0; i < panel->placements->len; i++)
    if (g_strcmp0 (pp_panel_placement (panel, i)->group, name) == 0)
      return TRUE;
  return FALSE;
}

/* "Oxeye", or "Oxeye 2": it is read by the maker. (transfer full) */
static char *
name_group (const PpPanel *panel,
            const PpPiece *piece)
{
  const char *name = pp_piece_get_title (piece);
  char *own = g_strdup (name);

  for (guint n = 2; is_group (panel, own); n++)
    {
      g_free (own);
      own = g_strdup_printf ("%s %u", name, n);
    }
  return own;
}

static PpPanel *
set_group (const PpPanel *panel,
           const char    *id,
           const char    *group)
{
  const char *ids[] = { id, NULL };
  g_autofree char *own = NULL;

  if (g_strcmp0 (group, "") == 0)
    {
      const PpPlacement *placement = pp_panel_find_placement (panel, id, NULL);

      group = own = name_group (panel, pp_panel_get_piece_of (panel, placement));
    }
  return pp_edit_group (panel, ids, group, NULL);
}

static PpPanel *
make (const PpPanel *panel,
      const PpMove  *move)
{
  gboolean is_of_placement = move->kind != PP_MOVE_HOLE && move->kind != PP_MOVE_WIRE
                             && move->kind != PP_MOVE_ADD;
  const char *id = is_of_placement ? pp_panel_placement (panel, move->index)->id : NULL;
  const char *ids[] = { id, NULL };

  switch (move->kind)
    {
    case PP_MOVE_POSE:
      return pp_edit_set_pose (panel, id, move->pose, NULL);
    case PP_MOVE_STACK:
      return pp_edit_restack (panel, id, move->to, NULL);
    case PP_MOVE_ADD:
      return pp_edit_place (panel, pp_panel_piece (panel, move->index)->id, move->pose, NULL, NULL);
    case PP_MOVE_REMOVE:
      return pp_edit_remove (panel, ids, NULL);
    case PP_MOVE_GROUP:
      return set_group (panel, id, move->group);
    case PP_MOVE_HOLE:
      return move_hole (panel, move);
    case PP_MOVE_WIRE:
      return set_length (panel, move->length);
    }
  g_return_val_if_reached (NULL);
}

PpPanel *
pp_moves_make (const PpMoves *self,
               const PpPanel *panel)
{
  g_autoptr (PpPanel) next = pp_panel_ref (panel);

  for (guint i = 0; i < self->n && next != NULL; i++)
    {
      PpPanel *made = make (next, &self->moves[i]);

      pp_panel_unref (next);
      next = made;
    }
  return g_steal_pointer (&next);
}
