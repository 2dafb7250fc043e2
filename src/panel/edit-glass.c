/* edit-glass.c: edits of background, holes, wire, display and notes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

#include <math.h>

PpPanel *
pp_edit_set_background (const PpPanel      *panel,
                        const PpBackground *background,
                        GError            **error)
{
  PpPanel draft = *panel;

  draft.background = background;
  return pp_panel_new (&draft, error);
}

static GPtrArray *
copy_holes (const PpPanel *panel)
{
  return pp_records_copy (panel->holes, (PpRecordRef) pp_hole_ref,
                          (GDestroyNotify) pp_hole_unref);
}

PpPanel *
pp_edit_set_hole (const PpPanel *panel,
                  const PpHole  *hole,
                  GError       **error)
{
  g_autoptr (GPtrArray) list = copy_holes (panel);
  guint index = 0;
  gboolean is_there = pp_panel_find_hole (panel, hole->id, &index) != NULL;
  PpPanel draft = *panel;

  pp_edit_put (list, is_there, index, pp_hole_ref (hole), (GDestroyNotify) pp_hole_unref);
  draft.holes = list;
  return pp_panel_new (&draft, error);
}

PpPanel *
pp_edit_move_hole (const PpPanel *panel,
                   const PpHole  *hole,
                   GError       **error)
{
  g_autoptr (PpPanel) moved = pp_edit_set_hole (panel, hole, error);
  g_autoptr (PpWire) wire = NULL;
  PpWire draft;
  double longer;

  if (moved == NULL || moved->wire == NULL || isnan (moved->wire->length)
      || moved->wire->knotted_at != NULL)
    return g_steal_pointer (&moved);
  longer = pp_panel_get_hole_distance (moved) - pp_panel_get_hole_distance (panel);
  draft = *moved->wire;
  draft.length += longer;
  if (longer == 0 || draft.length <= 0)
    return g_steal_pointer (&moved);
  wire = pp_wire_new (&draft, error);
  return wire != NULL ? pp_edit_set_wire (moved, wire, error) : NULL;
}

PpPanel *
pp_edit_remove_hole (const PpPanel *panel,
                     const char    *hole,
                     GError       **error)
{
  g_autoptr (GPtrArray) list = NULL;
  PpPanel draft = *panel;
  guint index;

  if (pp_panel_find_hole (panel, hole, &index) == NULL)
    return pp_edit_refuse_unknown (hole, error);
  if (pp_wire_ends_in (panel->wire, hole))
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE,
                   _("The wire ends in this hole; take the wire off first."));
      return NULL;
    }
  draft.holes = list = copy_holes (panel);
  g_ptr_array_remove_index (list, index);
  return pp_panel_new (&draft, error);
}

PpPanel *
pp_edit_set_wire (const PpPanel *panel,
                  const PpWire  *wire,
                  GError       **error)
{
  PpPanel draft = *panel;

  draft.wire = wire;
  return pp_panel_new (&draft, error);
}

PpPanel *
pp_edit_set_display (const PpPanel   *panel,
                     const PpDisplay *display,
                     GError         **error)
{
  PpPanel draft = *panel;

  draft.display = display;
  return pp_panel_new (&draft, error);
}

PpPanel *
pp_edit_set_units (const PpPanel *panel,
                   PpUnits        units)
{
  PpPanel draft = *panel;

  draft.units = units;
  return pp_panel_new (&draft, NULL);
}

PpPanel *
pp_edit_set_titles (const PpPanel *panel,
                    const char    *title,
                    const char    *maker,
                    const char    *note)
{
  PpPanel draft = *panel;

  draft.title = title != NULL ? title : panel->title;
  draft.maker = maker != NULL ? maker : panel->maker;
  draft.note = note != NULL ? note : panel->note;
  return pp_panel_new (&draft, NULL);
}

PpPanel *
pp_edit_set_order (const PpPanel      *panel,
                   const char * const *jobs,
                   GError            **error)
{
  PpPanel draft = *panel;

  draft.plan = jobs;
  draft.plan_extra = jobs != NULL ? panel->plan_extra : NULL;
  return pp_panel_new (&draft, error);
}

PpPanel *
pp_edit_set_quiet (const PpPanel      *panel,
                   const char         *code,
                   const char * const *about,
                   gboolean            quiet,
                   GError            **error)
{
  g_autoptr (GPtrArray) list
      = pp_records_copy (panel->quiet, (PpRecordRef) pp_quiet_ref, (GDestroyNotify) pp_quiet_unref);
  PpQuiet entry = pp_quiet_draft ();
  PpPanel draft = *panel;
  PpQuiet *added;

  for (guint i = list->len; i-- > 0;)
    if (pp_quiet_is_of (g_ptr_array_index (list, i), code, about))
      g_ptr_array_remove_index (list, i);
  entry.code = code;
  entry.about = about;
  added = pp_quiet_new (&entry, error);
  if (added == NULL)
    return NULL;
  if (quiet)
    g_ptr_array_add (list, added);
  else
    pp_quiet_unref (added);
  draft.quiet = list;
  return pp_panel_new (&draft, error);
}
