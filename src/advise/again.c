/* again.c: another panel like this one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/again.h"

#include "panel/i18n.h"

static GPtrArray *
unglue_all (const PpPanel *panel)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);

  for (guint i = 0; i < panel->placements->len; i++)
    {
      PpPlacement draft = *pp_panel_placement (panel, i);

      draft.glued_at = NULL;
      g_ptr_array_add (list, pp_placement_new (&draft, NULL));
    }
  return list;
}

static GPtrArray *
undrill_all (const PpPanel *panel)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_hole_unref);

  for (guint i = 0; i < panel->holes->len; i++)
    {
      PpHole draft = *pp_panel_hole (panel, i);

      draft.drilled = FALSE;
      g_ptr_array_add (list, pp_hole_new (&draft, NULL));
    }
  return list;
}

static PpWire *
unknot (const PpWire *wire)
{
  PpWire draft;

  if (wire == NULL)
    return NULL;
  draft = *wire;
  draft.knotted_at = NULL;
  return pp_wire_new (&draft, NULL);
}

PpPanel *
pp_again_new (const PpPanel *panel)
{
  g_autoptr (GPtrArray) placements = NULL;
  g_autoptr (GPtrArray) holes = NULL;
  g_autoptr (GPtrArray) log = g_ptr_array_new ();
  g_autoptr (PpWire) wire = NULL;
  g_autofree char *title = NULL;
  PpPanel draft;

  g_return_val_if_fail (panel != NULL, NULL);

  draft = *panel;
  draft.placements = placements = unglue_all (panel);
  draft.holes = holes = undrill_all (panel);
  draft.wire = wire = unknot (panel->wire);
  draft.log = log;
  if (*panel->title != '\0')
    /* Translators: the title of a panel that is made like another, whose title is put in. */
    draft.title = title = g_strdup_printf (_("Another %s"), panel->title);
  return pp_panel_new (&draft, NULL);
}

GArray *
pp_again_list_to_make (const PpPanel *panel)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (PpToMake));

  for (guint i = 0; i < panel->tray->len; i++)
    {
      const PpPiece *piece = pp_panel_piece (panel, i);
      guint placed = pp_panel_count_placed (panel, piece->id);
      guint spare = piece->count > placed ? piece->count - placed : 0;
      PpToMake make = { .piece = i, .count = placed > spare ? placed - spare : 0 };

      if (make.count > 0)
        g_array_append_val (list, make);
    }
  return list;
}
