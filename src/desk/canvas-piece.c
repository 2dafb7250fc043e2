/* canvas-piece.c: the child of the canvas that stands for one placement.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-piece.h"

struct _PpCanvasPiece
{
  GtkWidget        parent_instance;
  char            *id;
  char            *name;
  char            *state;
  gboolean         chosen;
  PpCanvasPieceKey key;
};

G_DEFINE_FINAL_TYPE (PpCanvasPiece, pp_canvas_piece, GTK_TYPE_WIDGET)

static gboolean
pp_canvas_piece_contains (GtkWidget *widget,
                          double     x,
                          double     y)
{
  return FALSE;
}

static void
pp_canvas_piece_finalize (GObject *object)
{
  PpCanvasPiece *self = PP_CANVAS_PIECE (object);

  g_clear_pointer (&self->key.placement, pp_placement_unref);
  g_free (self->id);
  g_free (self->name);
  g_free (self->state);
  G_OBJECT_CLASS (pp_canvas_piece_parent_class)->finalize (object);
}

static void
pp_canvas_piece_class_init (PpCanvasPieceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = pp_canvas_piece_finalize;
  widget_class->contains = pp_canvas_piece_contains;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "pp-piece");
}

static void
pp_canvas_piece_init (PpCanvasPiece *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
pp_canvas_piece_new (const char *id)
{
  PpCanvasPiece *self = g_object_new (PP_TYPE_CANVAS_PIECE, NULL);

  self->id = g_strdup (id);
  return GTK_WIDGET (self);
}

const char *
pp_canvas_piece_get_id (PpCanvasPiece *self)
{
  g_return_val_if_fail (PP_IS_CANVAS_PIECE (self), NULL);
  return self->id;
}

void
pp_canvas_piece_set_name (PpCanvasPiece *self,
                          const char    *name)
{
  g_return_if_fail (PP_IS_CANVAS_PIECE (self) && name != NULL);

  if (g_strcmp0 (self->name, name) == 0)
    return;
  g_free (self->name);
  self->name = g_strdup (name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
pp_canvas_piece_set_state (PpCanvasPiece *self,
                           const char    *state)
{
  g_return_if_fail (PP_IS_CANVAS_PIECE (self) && state != NULL);

  if (g_strcmp0 (self->state, state) == 0)
    return;
  g_free (self->state);
  self->state = g_strdup (state);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, state,
                                  -1);
}

void
pp_canvas_piece_set_chosen (PpCanvasPiece *self,
                            gboolean       chosen)
{
  g_return_if_fail (PP_IS_CANVAS_PIECE (self));

  if (self->chosen == chosen)
    return;
  self->chosen = chosen;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_SELECTED, chosen, -1);
}

gboolean
pp_canvas_piece_set_key (PpCanvasPiece    *self,
                         PpCanvasPieceKey  key)
{
  g_return_val_if_fail (PP_IS_CANVAS_PIECE (self), FALSE);

  if (self->key.placement == key.placement && self->key.index == key.index
      && self->key.n == key.n && self->key.units == key.units)
    return FALSE;
  g_clear_pointer (&self->key.placement, pp_placement_unref);
  self->key = key;
  self->key.placement = pp_placement_ref (key.placement);
  return TRUE;
}
