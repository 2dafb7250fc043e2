/* canvas.c: the bench with the glass and all that lies on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/finding-acts.h"
#include "panel/i18n.h"

#define SETTLE_MS 120         /* of rest before a new zoom is drawn sharp */
#define PACE_MS 200           /* five times a second the marks follow a drag, as the sentences do */

G_DEFINE_FINAL_TYPE (PpCanvas, pp_canvas, GTK_TYPE_WIDGET)

enum
{
  ZOOMED,
  PIN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

PpBox
pp_canvas_get_glass_box (PpCanvas *self)
{
  return pp_background_get_box (pp_document_get_panel (self->document)->background);
}

static gboolean
settle_cb (gpointer data)
{
  PpCanvas *self = data;

  self->settle_timer = 0;
  pp_canvas_drop_layers (self);
  return G_SOURCE_REMOVE;
}

/* Only another scale is costly: the same one is drawn from the sprites there are. */
static void
put_off_layers (PpCanvas *self,
                double    scale_before)
{
  g_clear_handle_id (&self->settle_timer, g_source_remove);
  if (self->below != NULL && scale_before != self->zoom.scale)
    self->settle_timer = g_timeout_add (SETTLE_MS, settle_cb, self);
  else
    pp_canvas_drop_layers (self);
}

void
pp_canvas_set_zoom (PpCanvas *self,
                    PpZoom    zoom,
                    gboolean  is_fitted)
{
  double before = self->zoom.scale;

  self->is_fitted = is_fitted;
  self->zoom = zoom;
  put_off_layers (self, before);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  g_signal_emit (self, signals[ZOOMED], 0);
}

static void
fit (PpCanvas *self,
     int       width,
     int       height)
{
  PpZoom zoom;

  if (self->document == NULL || width <= 0 || height <= 0)
    return;
  zoom = pp_zoom_fit (pp_canvas_get_glass_box (self), width, height,
                      MIN (PP_CANVAS_MARGIN, MIN (width, height) / 8), self->look.from_behind);
  pp_canvas_set_zoom (self, zoom, TRUE);
}

/* Pieces moved while the layers stand still are drawn by themselves; anything else needs layers.
 * What a drag began from is no more once somebody else has edited the panel. */
static void
changed_cb (PpDocument *document,
            PpCanvas   *self)
{
  if (self->drag.panel != NULL && !self->drag.is_editing)
    pp_canvas_drag_forget (self);
  pp_canvas_sync_children (self);
  if (self->drag.kind != PP_DRAG_MOVE && self->drag.kind != PP_DRAG_TURN)
    pp_canvas_drop_layers (self);
  if (self->is_fitted && self->drag.kind == PP_DRAG_NONE)
    fit (self, gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* TRUE if what is in hand, or will be after the first move, is what was chosen. */
static gboolean
drags_chosen (PpCanvas *self)
{
  PpDragKind kind = self->drag.kind == PP_DRAG_UNDECIDED ? self->drag.meant : self->drag.kind;

  return kind == PP_DRAG_MOVE || kind == PP_DRAG_TURN || kind == PP_DRAG_VASE;
}

static void
chosen_cb (PpDocument *document,
           PpCanvas   *self)
{
  if (drags_chosen (self))
    pp_canvas_drag_forget (self);
  pp_canvas_select_children (self);
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
marks_cb (gpointer data)
{
  PpCanvas *self = data;

  self->marks_timer = 0;
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

/* Heights, and with them shadows, may have changed; in a drag that can wait for its end. */
static void
checked_cb (PpDocument *document,
            PpCanvas   *self)
{
  if (self->lit_key != NULL)
    self->lit = pp_finding_acts_find (pp_document_get_findings (document), self->lit_key);
  if (self->drag.kind == PP_DRAG_NONE)
    {
      pp_canvas_drop_layers (self);
      pp_canvas_describe_children (self);
    }
  else if (self->marks_timer == 0) /* all of the canvas is painted for them: not in every frame */
    self->marks_timer = g_timeout_add (PACE_MS, marks_cb, self);
}

static void
drawn_cb (PpDocument *document,
          PpCanvas   *self)
{
  g_hash_table_remove_all (self->sprites);
  pp_canvas_drop_layers (self);
}

static void
let_go (PpCanvas *self)
{
  g_clear_handle_id (&self->settle_timer, g_source_remove);
  g_clear_handle_id (&self->lit_timer, g_source_remove);
  g_clear_handle_id (&self->marks_timer, g_source_remove);
  pp_canvas_set_lit (self, -1);
  g_clear_pointer (&self->drag.panel, pp_panel_unref);
  g_clear_pointer (&self->drag.pressed, g_free);
  g_clear_pointer (&self->drag.movable, g_strfreev);
  g_clear_pointer (&self->drag.said, g_free);
  self->drag = (PpDrag) { 0 };
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  pp_canvas_drop_children (self);
  g_hash_table_remove_all (self->sprites);
  g_clear_pointer (&self->below, gsk_render_node_unref);
  g_clear_pointer (&self->above, gsk_render_node_unref);
  g_clear_pointer (&self->marks, gsk_render_node_unref);
  g_clear_pointer (&self->scene, pp_scene_unref);
  g_clear_pointer (&self->focused, g_free);
  self->has_pointer = FALSE;
  self->has_measured = FALSE;
}

static void
pp_canvas_dispose (GObject *object)
{
  PpCanvas *self = PP_CANVAS (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  if (self->children != NULL)
    let_go (self);
  g_clear_pointer (&self->children, g_hash_table_unref);
  g_clear_pointer (&self->order, g_ptr_array_unref);
  g_clear_pointer (&self->sprites, g_hash_table_unref);
  G_OBJECT_CLASS (pp_canvas_parent_class)->dispose (object);
}

static void
pp_canvas_size_allocate (GtkWidget *widget,
                         int        width,
                         int        height,
                         int        baseline)
{
  PpCanvas *self = PP_CANVAS (widget);

  if (self->document == NULL)
    return;
  if (self->allocated[0] != width || self->allocated[1] != height)
    {
      self->allocated[0] = width;
      self->allocated[1] = height;
      if (self->is_fitted)
        fit (self, width, height);
      else
        pp_canvas_drop_layers (self);
    }
  if (width > 0 && height > 0 && (self->scene == NULL || self->settle_timer == 0))
    pp_canvas_ensure_layers (self, width, height);
  pp_canvas_allocate_children (self);
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
pp_canvas_css_changed (GtkWidget         *widget,
                       GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (pp_canvas_parent_class)->css_changed (widget, change);
  pp_canvas_drop_layers (PP_CANVAS (widget));
}

static void
pp_canvas_class_init (PpCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_canvas_dispose;
  widget_class->snapshot = pp_canvas_snapshot;
  widget_class->size_allocate = pp_canvas_size_allocate;
  widget_class->css_changed = pp_canvas_css_changed;
  widget_class->focus = pp_canvas_focus;
  signals[ZOOMED] = g_signal_new ("zoomed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  signals[PIN] = g_signal_new ("pin", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                               G_TYPE_UINT);
  gtk_widget_class_set_css_name (widget_class, "pp-canvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
pp_canvas_init (PpCanvas *self)
{
  self->children = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->order = g_ptr_array_new ();
  self->sprites = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                         (GDestroyNotify) pp_sprite_unref);
  self->zoom = (PpZoom) { .scale = 1 };
  self->is_fitted = TRUE;
  self->lit = -1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("The glass"), -1);
  pp_canvas_add_pointer (self);
  pp_canvas_add_keys (self);
}

void
pp_canvas_set_document (PpCanvas   *self,
                        PpDocument *document)
{
  g_return_if_fail (PP_IS_CANVAS (self));

  let_go (self);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (document, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect (document, "checked", G_CALLBACK (checked_cb), self);
  g_signal_connect (document, "drawn", G_CALLBACK (drawn_cb), self);
  pp_canvas_sync_children (self);
  self->look = (PpLook) { 0 };
  self->measuring = FALSE;
  pp_canvas_zoom_fit (self);
}

const PpZoom *
pp_canvas_get_zoom (PpCanvas *self)
{
  g_return_val_if_fail (PP_IS_CANVAS (self), NULL);
  return &self->zoom;
}

void
pp_canvas_zoom_fit (PpCanvas *self)
{
  g_return_if_fail (PP_IS_CANVAS (self));

  self->is_fitted = TRUE;
  fit (self, gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)));
}

void
pp_canvas_zoom_by (PpCanvas *self,
                   double    factor)
{
  PpPoint middle;

  g_return_if_fail (PP_IS_CANVAS (self) && factor > 0);

  middle = (PpPoint) { gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
                       gtk_widget_get_height (GTK_WIDGET (self)) / 2.0 };
  pp_canvas_set_zoom (self, pp_zoom_around (&self->zoom, middle, factor), FALSE);
}

void
pp_canvas_zoom_to (PpCanvas *self,
                   double    scale)
{
  g_return_if_fail (PP_IS_CANVAS (self) && scale > 0);
  pp_canvas_zoom_by (self, scale / self->zoom.scale);
}

PpLook
pp_canvas_get_look (PpCanvas *self)
{
  g_return_val_if_fail (PP_IS_CANVAS (self), ((PpLook) { 0 }));
  return self->look;
}

void
pp_canvas_set_look (PpCanvas *self,
                    PpLook    look)
{
  gboolean turned;

  g_return_if_fail (PP_IS_CANVAS (self));

  turned = look.from_behind != self->look.from_behind;
  self->look = look;
  pp_canvas_drop_layers (self);
  if (turned)
    pp_canvas_zoom_fit (self);
}

void
pp_canvas_set_measuring (PpCanvas *self,
                         gboolean  measuring)
{
  g_return_if_fail (PP_IS_CANVAS (self));

  self->measuring = measuring;
  self->has_measured = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
