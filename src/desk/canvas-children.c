/* canvas-children.c: a child widget a placement, for focus and assistive technology.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They lie over one another as the pieces do, in stacking order, and all together are one tab
 * stop: Tab leaves the canvas from any of them and comes back to the last one.
 */
#include "config.h"

#include "desk/canvas-piece.h"
#include "desk/canvas-private.h"
#include "desk/placement-words.h"

static void
focus_entered_cb (GtkEventControllerFocus *focus,
                  PpCanvas                *self)
{
  GtkWidget *child = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (focus));
  const char *id = pp_canvas_piece_get_id (PP_CANVAS_PIECE (child));

  if (g_strcmp0 (self->focused, id) != 0)
    {
      g_free (self->focused);
      self->focused = g_strdup (id);
    }
  if (self->document != NULL && self->drag.panel == NULL
      && (pp_document_get_chosen (self->document) != PP_CHOSEN_PLACEMENTS
          || !pp_document_is_chosen (self->document, id)))
    pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char *[]) { id, NULL });
}

static GtkWidget *
add_child (PpCanvas   *self,
           const char *id)
{
  GtkWidget *child = pp_canvas_piece_new (id);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (focus, "enter", G_CALLBACK (focus_entered_cb), self);
  gtk_widget_add_controller (child, focus);
  g_hash_table_insert (self->children, g_strdup (id), child);
  return child;
}

static gboolean
drop_gone (gpointer key,
           gpointer value,
           gpointer data)
{
  PpCanvas *self = data;

  if (pp_panel_find_placement (pp_document_get_panel (self->document), key, NULL) != NULL)
    return FALSE;
  gtk_widget_unparent (value);
  return TRUE;
}

/* The child of the i-th placement, right after that of the one before. */
static void
sync_one (PpCanvas      *self,
          const PpPanel *panel,
          guint          i)
{
  const PpPlacement *placement = pp_panel_placement (panel, i);
  GtkWidget *child = g_hash_table_lookup (self->children, placement->id);
  PpCanvasPieceKey key = { placement, i, panel->placements->len, panel->units };
  GtkWidget *before = i > 0 ? g_ptr_array_index (self->order, i - 1) : NULL;

  if (child == NULL)
    child = add_child (self, placement->id);
  if (gtk_widget_get_parent (child) == NULL || gtk_widget_get_prev_sibling (child) != before)
    gtk_widget_insert_after (child, GTK_WIDGET (self), before);
  g_ptr_array_add (self->order, child);
  if (pp_canvas_piece_set_key (PP_CANVAS_PIECE (child), key))
    {
      g_autofree char *name = pp_placement_words_name (panel, i);

      pp_canvas_piece_set_name (PP_CANVAS_PIECE (child), name);
    }
}

void
pp_canvas_sync_children (PpCanvas *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);

  g_ptr_array_set_size (self->order, 0);
  g_hash_table_foreach_remove (self->children, drop_gone, self);
  for (guint i = 0; i < panel->placements->len; i++)
    sync_one (self, panel, i);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

void
pp_canvas_describe_children (PpCanvas *self)
{
  for (guint i = 0; i < self->order->len; i++)
    {
      PpCanvasPiece *child = g_ptr_array_index (self->order, i);
      g_autofree char *state = pp_placement_words_state (self->document,
                                                         pp_canvas_piece_get_id (child));

      pp_canvas_piece_set_state (child, state);
    }
}

void
pp_canvas_select_children (PpCanvas *self)
{
  gboolean pieces = pp_document_get_chosen (self->document) == PP_CHOSEN_PLACEMENTS;

  for (guint i = 0; i < self->order->len; i++)
    {
      PpCanvasPiece *child = g_ptr_array_index (self->order, i);

      pp_canvas_piece_set_chosen (child, pieces && pp_document_is_chosen (self->document,
                                                     pp_canvas_piece_get_id (child)));
    }
}

static void
allocate_one (PpCanvas  *self,
              GtkWidget *child)
{
  const PpBody *body = pp_canvas_find_body (self, pp_canvas_piece_get_id (PP_CANVAS_PIECE (child)));
  GskTransform *to;
  PpPoint carried;
  GdkRectangle at;

  if (body == NULL)
    {
      gtk_widget_allocate (child, 1, 1, -1, NULL);
      return;
    }
  carried = pp_canvas_get_carried (self, body);
  at = pp_canvas_to_rectangle (self, pp_box_move (body->box, carried));
  to = gsk_transform_translate (NULL, &GRAPHENE_POINT_INIT ((float) at.x, (float) at.y));
  gtk_widget_allocate (child, MAX (1, at.width), MAX (1, at.height), -1, to);
}

void
pp_canvas_allocate_children (PpCanvas *self)
{
  for (guint i = 0; i < self->order->len; i++)
    {
      GtkWidget *child = g_ptr_array_index (self->order, i);
      int least;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      allocate_one (self, child);
    }
}

static gboolean
drop_one (gpointer key,
          gpointer value,
          gpointer data)
{
  gtk_widget_unparent (value);
  return TRUE;
}

void
pp_canvas_drop_children (PpCanvas *self)
{
  g_ptr_array_set_size (self->order, 0);
  g_hash_table_foreach_remove (self->children, drop_one, NULL);
}

gboolean
pp_canvas_focus (GtkWidget        *widget,
                 GtkDirectionType  direction)
{
  PpCanvas *self = PP_CANVAS (widget);
  GtkWidget *last;

  if (self->menu != NULL)
    return gtk_widget_child_focus (self->menu, direction);
  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return FALSE;
  if (gtk_widget_get_focus_child (widget) != NULL || gtk_widget_has_focus (widget))
    return FALSE;
  last = self->focused != NULL ? g_hash_table_lookup (self->children, self->focused) : NULL;
  if (last == NULL && self->order->len > 0)
    last = g_ptr_array_index (self->order, 0);
  return gtk_widget_grab_focus (last != NULL ? last : widget);
}

void
pp_canvas_focus_piece (PpCanvas   *self,
                       const char *id)
{
  GtkWidget *child = g_hash_table_lookup (self->children, id);

  if (child != NULL)
    gtk_widget_grab_focus (child);
}
