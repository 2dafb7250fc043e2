/* canvas.c: the bench with the glass and all that lies on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "panel/edit.h"
#include "panel/i18n.h"

#define FIT_MARGIN 48         /* px about the glass */
#define SETTLE_MS 120         /* of rest before a new zoom is drawn sharp */
#define LIT_MS 2500

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
                      MIN (FIT_MARGIN, MIN (width, height) / 8), self->look.from_behind);
  pp_canvas_set_zoom (self, zoom, TRUE);
}

/* Pieces moved while the layers stand still are drawn by themselves; anything else needs layers. */
static void
changed_cb (PpDocument *document,
            PpCanvas   *self)
{
  pp_canvas_sync_children (self);
  if (self->drag.kind != PP_DRAG_MOVE && self->drag.kind != PP_DRAG_TURN)
    pp_canvas_drop_layers (self);
  if (self->is_fitted && self->drag.kind == PP_DRAG_NONE)
    fit (self, gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
chosen_cb (PpDocument *document,
           PpCanvas   *self)
{
  pp_canvas_select_children (self);
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Heights, and with them shadows, may have changed; in a drag that can wait for its end. */
static void
checked_cb (PpDocument *document,
            PpCanvas   *self)
{
  if (self->lit >= (int) pp_document_get_findings (document)->len)
    self->lit = -1;
  if (self->drag.kind == PP_DRAG_NONE)
    {
      pp_canvas_drop_layers (self);
      pp_canvas_describe_children (self);
    }
  self->marks_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
let_go (PpCanvas *self)
{
  g_clear_handle_id (&self->settle_timer, g_source_remove);
  g_clear_handle_id (&self->lit_timer, g_source_remove);
  self->lit = -1;
  g_clear_pointer (&self->drag.panel, pp_panel_unref);
  g_clear_pointer (&self->drag.pressed, g_free);
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
}

static void
style_updated_cb (PpCanvas *self)
{
  pp_canvas_drop_layers (self);
}

static void
pp_canvas_css_changed (GtkWidget         *widget,
                       GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (pp_canvas_parent_class)->css_changed (widget, change);
  style_updated_cb (PP_CANVAS (widget));
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
  pp_canvas_sync_children (self);
  self->look = (PpLook) { 0 };
  self->measuring = FALSE;
  pp_canvas_zoom_fit (self);
}

PpDocument *
pp_canvas_get_document (PpCanvas *self)
{
  g_return_val_if_fail (PP_IS_CANVAS (self), NULL);
  return self->document;
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

gboolean
pp_canvas_get_measuring (PpCanvas *self)
{
  g_return_val_if_fail (PP_IS_CANVAS (self), FALSE);
  return self->measuring;
}

static gboolean
unlight_cb (gpointer data)
{
  PpCanvas *self = data;

  self->lit_timer = 0;
  self->lit = -1;
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

  if (px.x >= FIT_MARGIN && px.y >= FIT_MARGIN && px.x <= width - FIT_MARGIN
      && px.y <= height - FIT_MARGIN)
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
  self->lit = (int) index;
  g_clear_handle_id (&self->lit_timer, g_source_remove);
  self->lit_timer = g_timeout_add (LIT_MS, unlight_cb, self);
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
          PpPoint carried;

          if (body == NULL)
            continue;
          carried = pp_canvas_get_carried (self, body);
          box = pp_box_union (box, (PpBox) { body->box.x0 + carried.x, body->box.y0 + carried.y,
                                             body->box.x1 + carried.x, body->box.y1 + carried.y });
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
    case PP_CHOSEN_NOTHING:
      return box;
    }
  g_return_val_if_reached (box);
}

static GdkRectangle
to_rectangle (PpCanvas *self,
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
  *box = to_rectangle (self, mm);
  return box->x + box->width > 0 && box->y + box->height > 0
         && box->x < gtk_widget_get_width (GTK_WIDGET (self))
         && box->y < gtk_widget_get_height (GTK_WIDGET (self));
}

void
pp_canvas_get_glass_rectangle (PpCanvas     *self,
                               GdkRectangle *rectangle)
{
  g_return_if_fail (PP_IS_CANVAS (self) && self->document != NULL && rectangle != NULL);
  *rectangle = to_rectangle (self, pp_canvas_get_glass_box (self));
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
  label = g_strdup_printf (_("Place %s"), record->name);
  next = pp_edit_place (panel, piece, (PpPose) { mm.x, mm.y, 0, FALSE }, &id, &error);
  if (!pp_document_take (self->document, next, g_steal_pointer (&error), label, NULL))
    return;
  pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char *[]) { id, NULL });
  pp_canvas_focus_piece (self, id);
}

void
pp_canvas_place (PpCanvas   *self,
                 const char *piece)
{
  PpPoint middle, mm;
  PpBox box;

  g_return_if_fail (PP_IS_CANVAS (self) && piece != NULL);

  if (self->document == NULL)
    return;
  middle = (PpPoint) { gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
                       gtk_widget_get_height (GTK_WIDGET (self)) / 2.0 };
  mm = pp_zoom_to_panel (&self->zoom, middle);
  box = pp_canvas_get_glass_box (self);
  mm.x = CLAMP (mm.x, box.x0, box.x1);
  mm.y = CLAMP (mm.y, box.y0, box.y1);
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
