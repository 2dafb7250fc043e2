/* act.c: a panel in the making, after something happened at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/act.h"

void
pp_act_clear (PpAct *self)
{
  g_ptr_array_unref (self->placements);
  g_ptr_array_unref (self->tray);
  g_ptr_array_unref (self->log);
  g_clear_pointer (&self->wire, pp_wire_unref);
  g_free (self->at);
}

void
pp_act_init (PpAct         *self,
             const PpPanel *panel,
             GDateTime     *at)
{
  *self = (PpAct) {
    .panel = *panel,
    .placements = pp_records_copy (panel->placements, (PpRecordRef) pp_placement_ref,
                                   (GDestroyNotify) pp_placement_unref),
    .tray = pp_records_copy (panel->tray, (PpRecordRef) pp_piece_ref,
                             (GDestroyNotify) pp_piece_unref),
    .log = pp_records_copy (panel->log, (PpRecordRef) pp_log_entry_ref,
                            (GDestroyNotify) pp_log_entry_unref),
    .at = g_date_time_format (at, "%Y-%m-%dT%H:%M:%S%:z"),
  };
  self->panel.placements = self->placements;
  self->panel.tray = self->tray;
  self->panel.log = self->log;
}

void
pp_act_log (PpAct              *self,
            const char         *at,
            PpLogWhat           what,
            const char * const *about)
{
  PpLogEntry entry = pp_log_entry_draft ();

  entry.at = at;
  entry.what = what;
  if (about != NULL)
    entry.about = about;
  g_ptr_array_add (self->log, pp_log_entry_new (&entry, NULL));
}

void
pp_act_set_glued (PpAct      *self,
                  guint       index,
                  const char *at)
{
  PpPlacement draft = *pp_panel_placement (&self->panel, index);

  draft.glued_at = at;
  PpPlacement *changed = pp_placement_new (&draft, NULL);

  pp_placement_unref (self->placements->pdata[index]);
  self->placements->pdata[index] = changed;
}

void
pp_act_set_knotted (PpAct      *self,
                    const char *at)
{
  PpWire draft = *self->panel.wire;

  draft.knotted_at = at;
  PpWire *changed = pp_wire_new (&draft, NULL);

  g_clear_pointer (&self->wire, pp_wire_unref);
  self->wire = changed;
  self->panel.wire = changed;
}

void
pp_act_break (PpAct *self,
              guint  piece)
{
  PpPiece draft = *(const PpPiece *) g_ptr_array_index (self->tray, piece);

  if (draft.count == 0)
    return;
  draft.count--;
  PpPiece *changed = pp_piece_new (&draft, NULL);

  pp_piece_unref (self->tray->pdata[piece]);
  self->tray->pdata[piece] = changed;
}
