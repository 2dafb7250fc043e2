/* canvas-keys.c: arrows and the way from piece to piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Arrows nudge what is chosen by 1 mm or 1/16 in, with Shift by 10 mm or 1/2 in; while a key is
 * held all its nudges are one step of undo. Page Up and Page Down go through the pieces in
 * stacking order, Home and End to the lowest and the topmost.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/edit-acts.h"
#include "desk/nudge.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "shape/stand.h"

/* Nudges of the same things in a row are one step. */
static void
take (PpCanvas   *self,
      PpPanel    *next,
      GError     *error,
      const char *label)
{
  g_autofree char *joined
    = g_strjoinv (" ", (char **) pp_document_get_chosen_ids (self->document));
  g_autofree char *key = g_strconcat ("nudge ", joined, NULL);

  pp_document_take (self->document, next, error, label, key);
}

static void
nudge_pieces (PpCanvas *self,
              double    dx,
              double    dy)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_auto (GStrv) ids = pp_edit_acts_list_movable (self->document);
  GError *error = NULL;
  PpPanel *next;

  if (ids == NULL)
    return;
  next = pp_edit_move (panel, (const char * const *) ids, dx, dy, &error);
  next = pp_stand_follow (next, (const char * const *) ids, &error);
  take (self, next, error, _("Nudge"));
}

static void
nudge_hole (PpCanvas *self,
            double    dx,
            double    dy)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  PpHole draft = *pp_panel_find_hole (panel, pp_document_get_chosen_ids (self->document)[0], NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpHole) hole = NULL;
  PpPanel *next = NULL;

  draft.x += dx;
  draft.y += dy;
  hole = pp_hole_new (&draft, &error);
  if (hole != NULL)
    next = pp_edit_move_hole (panel, hole, &error);
  take (self, next, g_steal_pointer (&error), _("Move the hole"));
}

static void
nudge_fused (PpCanvas *self,
             double    dx,
             double    dy)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  GError *error = NULL;
  PpPanel *next = pp_edit_move_fused (panel, pp_document_get_chosen_ids (self->document)[0], dx, dy,
                                      &error);

  take (self, next, error, _("Nudge"));
}

/* FALSE where nothing is chosen that can be nudged. */
static gboolean
nudge (PpCanvas *self,
       double    dx,
       double    dy,
       gboolean  is_large)
{
  double step = pp_nudge_step (pp_document_get_panel (self->document)->units, is_large);

  if (self->zoom.from_behind)
    dx = -dx;
  switch (pp_document_get_chosen (self->document))
    {
    case PP_CHOSEN_PLACEMENTS:
      nudge_pieces (self, dx * step, dy * step);
      return TRUE;
    case PP_CHOSEN_HOLE:
      nudge_hole (self, dx * step, dy * step);
      return TRUE;
    case PP_CHOSEN_FUSED:
      nudge_fused (self, dx * step, dy * step);
      return TRUE;
    case PP_CHOSEN_NOTHING:
    case PP_CHOSEN_WIRE:
    case PP_CHOSEN_GLASS:
      return FALSE;
    }
  g_return_val_if_reached (FALSE);
}

/* To the piece `by` places from the one with the focus; the lowest if there is none. */
static gboolean
walk (PpCanvas *self,
      int       by)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  int n = (int) panel->placements->len;
  guint index = 0;

  if (n == 0)
    return FALSE;
  if (self->focused != NULL && pp_panel_find_placement (panel, self->focused, &index) != NULL)
    index = (guint) (((int) index + by % n + n) % n);
  pp_canvas_focus_piece (self, pp_panel_placement (panel, index)->id);
  return TRUE;
}

static gboolean
go_to (PpCanvas *self,
       gboolean  topmost)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  guint n = panel->placements->len;

  if (n == 0)
    return FALSE;
  pp_canvas_focus_piece (self, pp_panel_placement (panel, topmost ? n - 1 : 0)->id);
  return TRUE;
}

/* The last thing begun: a drag, a measure, measuring. */
static gboolean
leave_off (PpCanvas *self)
{
  if (self->drag.panel != NULL)
    pp_canvas_drag_cancel (self);
  else if (self->measuring && self->has_measured)
    pp_canvas_set_measuring (self, TRUE);
  else if (self->measuring)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.measure", NULL);
  else
    return FALSE;
  return TRUE;
}

static gboolean
pressed_cb (GtkEventControllerKey *keys,
            guint                  keyval,
            guint                  keycode,
            GdkModifierType        state,
            PpCanvas              *self)
{
  gboolean is_large = (state & GDK_SHIFT_MASK) != 0;
  PpPoint way;

  if (self->document == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if (pp_nudge_find_way (keyval, &way))
    return nudge (self, way.x, way.y, is_large);
  switch (keyval)
    {
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      return walk (self, 1);
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      return walk (self, -1);
    case GDK_KEY_Home:
    case GDK_KEY_KP_Home:
      return go_to (self, FALSE);
    case GDK_KEY_End:
    case GDK_KEY_KP_End:
      return go_to (self, TRUE);
    case GDK_KEY_space:
      self->panning = TRUE;
      return TRUE;
    case GDK_KEY_F10:
      if (!is_large)
        return FALSE;
      pp_canvas_open_menu_by_key (self);
      return TRUE;
    case GDK_KEY_Menu:
      pp_canvas_open_menu_by_key (self);
      return TRUE;
    case GDK_KEY_Escape:
      return leave_off (self);
    default:
      return FALSE;
    }
}

/* What was nudged is a step. */
static void
seal (PpCanvas *self)
{
  if (self->document != NULL && self->drag.panel == NULL)
    pp_document_seal (self->document);
}

/* Other keys are acts that may be one step when the same is pressed again. */
static void
released_cb (GtkEventControllerKey *keys,
             guint                  keyval,
             guint                  keycode,
             GdkModifierType        state,
             PpCanvas              *self)
{
  PpPoint way;

  if (keyval == GDK_KEY_space)
    self->panning = FALSE;
  if (pp_nudge_find_way (keyval, &way))
    seal (self);
}

/* Keys may be let go elsewhere. */
static void
leave_cb (GtkEventControllerFocus *focus,
          PpCanvas                *self)
{
  self->panning = FALSE;
  seal (self);
}

void
pp_canvas_add_keys (PpCanvas *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (keys, "key-pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (keys, "key-released", G_CALLBACK (released_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
