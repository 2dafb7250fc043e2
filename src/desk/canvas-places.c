/* canvas-places.c: where things are on the canvas: what is chosen, findings, a piece put down.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/folding.h"
#include "desk/tray-words.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "shape/stand.h"

#define LIT_MS 2500 /* a finding stays lit */
#define ASIDE 10.0  /* mm: pieces put down one after another do not hide one another */

void
pp_canvas_set_lit (PpCanvas *self,
                   int       index)
{
  g_autoptr (GPtrArray) keys = NULL;

  self->lit = index;
  g_clear_pointer (&self->lit_key, g_free);
  if (index < 0)
    return;
  keys = pp_finding_keys (pp_document_get_findings (self->document));
  self->lit_key = g_strdup (g_ptr_array_index (keys, (guint) index));
}

static gboolean
unlight_cb (gpointer data)
{
  PpCanvas *self = data;

  self->lit_timer = 0;
  pp_canvas_set_lit (self, -1);
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

/* Chooses the pieces that the finding is about, so that they are seen too. */
static void
choose_about (PpCanvas        *self,
              const PpFinding *finding)
{
  pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, finding->about);
}

/* Moves the panel just so far that `mm` is well in sight. */
static void
bring_into_sight (PpCanvas *self,
                  PpPoint   mm)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  PpPoint px = pp_zoom_to_widget (&self->zoom, mm);
  PpZoom zoom = self->zoom;

  if (px.x >= PP_CANVAS_MARGIN && px.y >= PP_CANVAS_MARGIN && px.x <= width - PP_CANVAS_MARGIN
      && px.y <= height - PP_CANVAS_MARGIN)
    return;
  zoom.x += width / 2 - px.x;
  zoom.y += height / 2 - px.y;
  pp_canvas_set_zoom (self, zoom, FALSE);
}

void
pp_canvas_show_finding (PpCanvas *self,
                        guint     index)
{
  const PpFinding *finding;

  g_return_if_fail (PP_IS_CANVAS (self));

  if (self->document == NULL || index >= pp_document_get_findings (self->document)->len)
    return;
  finding = g_ptr_array_index (pp_document_get_findings (self->document), index);
  bring_into_sight (self, finding->at);
  choose_about (self, finding);
  pp_canvas_set_lit (self, (int) index);
  g_clear_handle_id (&self->lit_timer, g_source_remove);
  self->lit_timer = g_timeout_add (LIT_MS, unlight_cb, self);
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
pp_canvas_light_finding (PpCanvas *self,
                         int       index)
{
  g_return_if_fail (PP_IS_CANVAS (self));

  if (self->document == NULL || self->lit == index
      || index >= (int) pp_document_get_findings (self->document)->len)
    return;
  g_clear_handle_id (&self->lit_timer, g_source_remove);
  pp_canvas_set_lit (self, index);
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static PpBox
get_chosen_mm (PpCanvas *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const char * const *ids = pp_document_get_chosen_ids (self->document);
  PpBox box = pp_box_empty ();

  switch (pp_document_get_chosen (self->document))
    {
    case PP_CHOSEN_PLACEMENTS:
      for (guint i = 0; ids[i] != NULL; i++)
        {
          const PpBody *body = pp_canvas_find_body (self, ids[i]);

          if (body != NULL)
            box = pp_box_union (box, pp_box_move (body->box, pp_canvas_get_carried (self, body)));
        }
      return box;
    case PP_CHOSEN_HOLE:
      {
        const PpHole *hole = pp_panel_find_hole (panel, ids[0], NULL);

        return pp_box_grow ((PpBox) { hole->x, hole->y, hole->x, hole->y }, hole->diameter);
      }
    case PP_CHOSEN_WIRE:
      {
        const PpHole *from = pp_panel_find_hole (panel, panel->wire->from, NULL);
        const PpHole *to = pp_panel_find_hole (panel, panel->wire->to, NULL);

        box = pp_box_add_point (box, (PpPoint) { from->x, from->y });
        return pp_box_add_point (box, (PpPoint) { to->x, to->y });
      }
    case PP_CHOSEN_GLASS:
      return pp_canvas_get_glass_box (self);
    case PP_CHOSEN_FUSED:
      return pp_outline_get_box (pp_panel_find_fused (panel, ids[0], NULL)->outline);
    case PP_CHOSEN_NOTHING:
      return box;
    }
  g_return_val_if_reached (box);
}

GdkRectangle
pp_canvas_to_rectangle (PpCanvas *self,
                        PpBox     mm)
{
  PpPoint a = pp_zoom_to_widget (&self->zoom, (PpPoint) { mm.x0, mm.y0 });
  PpPoint b = pp_zoom_to_widget (&self->zoom, (PpPoint) { mm.x1, mm.y1 });

  return (GdkRectangle) { (int) fmin (a.x, b.x), (int) a.y, (int) fabs (b.x - a.x),
                          (int) (b.y - a.y) };
}

gboolean
pp_canvas_get_chosen_box (PpCanvas     *self,
                          GdkRectangle *box)
{
  PpBox mm;

  g_return_val_if_fail (PP_IS_CANVAS (self) && box != NULL, FALSE);

  mm = self->document != NULL ? get_chosen_mm (self) : pp_box_empty ();
  if (pp_box_is_empty (mm))
    return FALSE;
  *box = pp_canvas_to_rectangle (self, mm);
  return box->x + box->width > 0 && box->y + box->height > 0
         && box->x < gtk_widget_get_width (GTK_WIDGET (self))
         && box->y < gtk_widget_get_height (GTK_WIDGET (self));
}

void
pp_canvas_get_glass_rectangle (PpCanvas     *self,
                               GdkRectangle *rectangle)
{
  g_return_if_fail (PP_IS_CANVAS (self) && self->document != NULL && rectangle != NULL);
  *rectangle = pp_canvas_to_rectangle (self, pp_canvas_get_glass_box (self));
}

void
pp_canvas_put (PpCanvas   *self,
               const char *piece,
               PpPoint     mm)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpPiece *record = pp_panel_find_piece (panel, piece, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL, *label = NULL;
  PpPanel *next;

  if (record == NULL)
    return;
  label = g_strdup_printf (_("Place %s"), pp_tray_words_name (record));
  next = pp_edit_place (panel, piece, (PpPose) { mm.x, mm.y, 0, FALSE }, &id, &error);
  if (next != NULL)
    next = pp_stand_follow (next, (const char *[]) { id, NULL }, &error);
  if (!pp_document_take (self->document, next, g_steal_pointer (&error), label, NULL))
    return;
  pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char *[]) { id, NULL });
  pp_canvas_focus_piece (self, id);
}

/* Whether a piece lies with its origin at the place already. */
static gboolean
is_taken (const PpPanel *panel,
          PpPoint        mm)
{
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);

      if (pp_point_distance ((PpPoint) { placement->x, placement->y }, mm) < ASIDE / 2)
        return TRUE;
    }
  return FALSE;
}

/* Right and down, and in again on the other side where the glass ends. */
static PpPoint
step_aside (PpPoint from,
            PpBox   glass)
{
  PpPoint to = { from.x + ASIDE, from.y + ASIDE };

  if (to.x > glass.x1)
    to.x = glass.x0 + (to.x - glass.x1);
  if (to.y > glass.y1)
    to.y = glass.y0 + (to.y - glass.y1);
  return pp_box_clamp (glass, to);
}

void
pp_canvas_place (PpCanvas   *self,
                 const char *piece)
{
  const PpPanel *panel;
  PpPoint middle, mm;
  PpBox box;

  g_return_if_fail (PP_IS_CANVAS (self) && piece != NULL);

  if (self->document == NULL)
    return;
  middle = (PpPoint) { gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
                       gtk_widget_get_height (GTK_WIDGET (self)) / 2.0 };
  box = pp_canvas_get_glass_box (self);
  mm = pp_box_clamp (box, pp_zoom_to_panel (&self->zoom, middle));
  panel = pp_document_get_panel (self->document);
  for (guint i = 0; i < panel->placements->len && is_taken (panel, mm); i++)
    mm = step_aside (mm, box);
  pp_canvas_put (self, piece, mm);
}

PpPoint
pp_canvas_get_pointer (PpCanvas *self)
{
  g_return_val_if_fail (PP_IS_CANVAS (self), ((PpPoint) { 0, 0 }));

  if (self->has_pointer || self->document == NULL)
    return self->pointer;
  return pp_box_middle (pp_canvas_get_glass_box (self));
}
