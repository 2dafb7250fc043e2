/* hanging-view.c: the panel as it hangs, from the front and from the side, to take hold of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How it hangs is worked out here anew for each edit, from the mass of the last check: that moves
 * little while a hole is dragged, and is put right when the next check comes in.
 */
#include "config.h"

#include "desk/hanging-view-private.h"

#include "desk/canvas-piece.h"
#include "desk/em.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/letters.h"

#define EDGE_EM 2.2  /* free about the picture */
#define WORDS_EM 4.3 /* and under it */
#define SIDE_EM 6.0  /* from the front to the glass seen from the side */
#define LIT_MS 2500
#define HOLE_LEAST 5.0 /* px, radius */
#define REACH 14     /* px about a place that has the focus */

G_DEFINE_FINAL_TYPE (PpHangingView, pp_hanging_view, GTK_TYPE_WIDGET)

double
pp_hanging_view_get_hole_px (PpHangingView *self,
                             const PpHole  *hole)
{
  return MAX (hole->diameter / 2 * self->map.scale, HOLE_LEAST);
}

gboolean
pp_hanging_view_get_hook (PpHangingView *self,
                          PpPoint       *mm)
{
  if (!self->has_hang)
    return FALSE;
  if (self->is_hung)
    *mm = self->hung.hook;
  else
    pp_hung_find_up (pp_document_get_scene (self->document), &self->mass, mm);
  return TRUE;
}

static void
find_hung (PpHangingView *self,
           PpScene       *scene)
{
  const PpHungHow ways[] = { self->how, PP_HUNG_LEVEL, PP_HUNG_MIDDLE };

  self->is_hung = FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (ways) && !self->is_hung; i++)
    self->is_hung = pp_hung_of (scene, &self->mass, &self->hang, ways[i], &self->hung);
  if (!self->is_hung)
    self->hung = (PpHung) { .tilt = 0 };
}

static void
follow_hang (PpHangingView *self)
{
  PpScene *scene = pp_document_get_scene (self->document);
  const PpCheck *check = pp_document_get_check (self->document);

  self->has_hang = check != NULL && scene->n_knots == 2;
  self->is_hung = FALSE;
  self->hung.tilt = 0;
  self->depth = check != NULL ? check->depth : 0;
  if (!self->has_hang)
    return;
  self->mass = check->mass;
  pp_hang_init (&self->hang, scene, &self->mass);
  find_hung (self, scene);
}

/* In a drag the picture stays where it is, and turns at most. */
static void
place (PpHangingView *self)
{
  PpScene *scene = pp_document_get_scene (self->document);
  double em = pp_em_of (GTK_WIDGET (self));
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  PpBox area = { EDGE_EM * em, EDGE_EM * em, width - (EDGE_EM + SIDE_EM) * em,
                 height - (EDGE_EM + WORDS_EM) * em };
  PpBox box = pp_outline_get_box (scene->background_outline);
  double beside = self->depth + scene->panel->background->thickness;
  PpBox drawn;
  PpPoint hook;
  gboolean has_hook = pp_hanging_view_get_hook (self, &hook);

  for (guint i = 0; i < scene->n_bodies; i++)
    box = pp_box_union (box, scene->bodies[i]->box);
  if (self->drag.is_on)
    {
      self->map.tilt = self->hung.tilt;
      return;
    }
  self->map = pp_hanging_map_fit (box, has_hook ? &hook : NULL, self->hung.tilt, area, beside);
  drawn = pp_hanging_map_get_box (&self->map, box);
  self->low = drawn.y1;
  self->side_x = drawn.x1 + SIDE_EM * em + scene->panel->background->thickness * self->map.scale;
}

const PpHole *
pp_hanging_view_get_hole (PpHangingView *self,
                          guint          letter)
{
  const char *id = pp_canvas_piece_get_id (g_ptr_array_index (self->holes, letter));

  return pp_panel_find_hole (pp_document_get_panel (self->document), id, NULL);
}

/* "Hole A, 90 mm from the left and 45 mm from the top" */
static void
name_hole (PpHangingView *self,
           guint          letter)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  const PpHole *hole = pp_hanging_view_get_hole (self, letter);
  PpCanvasPiece *child = g_ptr_array_index (self->holes, letter);
  g_autofree char *at = pp_place_format (panel, (PpPoint) { hole->x, hole->y });
  g_autofree char *letters = pp_letters_format (letter);
  /* Translators: a hole by its letter, then where it is. */
  g_autofree char *name = g_strdup_printf (_("Hole %s, %s"), letters, at);

  pp_canvas_piece_set_name (child, name);
  pp_canvas_piece_set_state (child, hole->drilled ? _("Drilled: it stays where it is.")
                                                  : _("Not drilled. The arrows move it."));
  pp_canvas_piece_set_chosen (child, pp_document_is_chosen (self->document, hole->id));
}

static void
name_hook (PpHangingView *self,
           PpPoint        hook)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  double above = pp_background_get_box (panel->background).y0 - hook.y;
  g_autofree char *far = pp_length_format (fabs (above), panel->units);
  g_autofree char *name = NULL;

  if (!self->is_hung)
    name = g_strdup (_("Middle of the taut wire"));
  else
    name = g_strdup_printf (above >= 0 ? _("Hook, %s above the top of the glass")
                                       : _("Hook, %s below the top of the glass"), far);
  pp_canvas_piece_set_name (PP_CANVAS_PIECE (self->hook), name);
  pp_canvas_piece_set_state (PP_CANVAS_PIECE (self->hook),
                             panel->wire->knotted_at != NULL
                               ? _("The wire is knotted: its length stays.")
                               : _("Up and Down make the wire longer or shorter."));
}

static void
allocate_child (PpHangingView *self,
                GtkWidget     *child,
                PpPoint        mm)
{
  PpPoint px = pp_hanging_map_to_px (&self->map, mm);
  graphene_point_t at = GRAPHENE_POINT_INIT ((float) px.x - REACH, (float) px.y - REACH);

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
  gtk_widget_allocate (child, 2 * REACH, 2 * REACH, -1, gsk_transform_translate (NULL, &at));
}

static void
pp_hanging_view_size_allocate (GtkWidget *widget,
                               int        width,
                               int        height,
                               int        baseline)
{
  PpHangingView *self = PP_HANGING_VIEW (widget);
  PpPoint hook;

  if (self->document == NULL)
    return;
  place (self);
  if (pp_hanging_view_get_hook (self, &hook))
    allocate_child (self, self->hook, hook);
  for (guint i = 0; i < self->holes->len; i++)
    {
      const PpHole *hole = pp_hanging_view_get_hole (self, i);

      if (hole != NULL)
        allocate_child (self, g_ptr_array_index (self->holes, i), (PpPoint) { hole->x, hole->y });
    }
}

static void
focus_cb (GtkEventControllerFocus *controller,
          PpHangingView           *self)
{
  GtkWidget *child = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
  const char *id = pp_canvas_piece_get_id (PP_CANVAS_PIECE (child));

  if (self->document == NULL)
    return;
  if (child == self->hook)
    pp_document_choose (self->document, PP_CHOSEN_WIRE, NULL);
  else
    pp_document_choose (self->document, PP_CHOSEN_HOLE, (const char *[]) { id, NULL });
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* (transfer none) */
static GtkWidget *
add_child (PpHangingView *self,
           const char    *id)
{
  GtkWidget *child = pp_canvas_piece_new (id);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (focus, "enter", G_CALLBACK (focus_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (gtk_widget_queue_draw), self);
  gtk_widget_add_controller (child, focus);
  gtk_widget_set_parent (child, GTK_WIDGET (self));
  return child;
}

GtkWidget *
pp_hanging_view_find_child (PpHangingView *self,
                            const char    *hole,
                            guint         *letter)
{
  for (guint i = 0; i < self->holes->len; i++)
    if (g_str_equal (pp_canvas_piece_get_id (g_ptr_array_index (self->holes, i)), hole))
      {
        if (letter != NULL)
          *letter = i;
        return g_ptr_array_index (self->holes, i);
      }
  return NULL;
}

/* The child of the i-th hole from the left, right after that of the one before. */
static void
sync_hole (PpHangingView *self,
           guint          i,
           const char    *id)
{
  GtkWidget *before = i > 0 ? g_ptr_array_index (self->holes, i - 1) : self->hook;
  guint was;
  GtkWidget *child = pp_hanging_view_find_child (self, id, &was);

  if (child != NULL)
    g_ptr_array_steal_index (self->holes, was);
  else
    child = add_child (self, id);
  g_ptr_array_insert (self->holes, (int) i, child);
  if (gtk_widget_get_prev_sibling (child) != before)
    gtk_widget_insert_after (child, GTK_WIDGET (self), before);
}

/* One a hole, from the left; a hole keeps its own, and with it the focus. */
static void
sync_holes (PpHangingView *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_autofree guint *order = pp_letters_of_holes (panel);

  for (guint i = 0; i < panel->holes->len; i++)
    sync_hole (self, i, pp_panel_hole (panel, order[i])->id);
  g_ptr_array_set_size (self->holes, (int) panel->holes->len);
  for (guint i = 0; i < panel->holes->len; i++)
    name_hole (self, i);
}

void
pp_hanging_view_follow (PpHangingView *self)
{
  PpPoint hook;
  gboolean has_hook;

  follow_hang (self);
  has_hook = pp_hanging_view_get_hook (self, &hook);
  /* While one is dragged past another, the letters wait. */
  if (!self->drag.is_on)
    sync_holes (self);
  gtk_widget_set_visible (self->hook, has_hook);
  if (has_hook)
    name_hook (self, hook);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Behind another page nothing is drawn, and nothing need be worked out. */
static void
follow_cb (PpDocument    *document,
           PpHangingView *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    pp_hanging_view_follow (self);
}

/* What a drag began from is no more once somebody else has edited the panel. */
static void
changed_cb (PpDocument    *document,
            PpHangingView *self)
{
  if (self->drag.is_on && !self->drag.is_editing)
    pp_hanging_view_forget_drag (self);
  follow_cb (document, self);
}

static void
drawn_cb (PpDocument    *document,
          PpHangingView *self)
{
  pp_hanging_view_drop (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
pp_hanging_view_map (GtkWidget *widget)
{
  PpHangingView *self = PP_HANGING_VIEW (widget);

  GTK_WIDGET_CLASS (pp_hanging_view_parent_class)->map (widget);
  if (self->document != NULL)
    pp_hanging_view_follow (self);
}

static void
let_go (PpHangingView *self)
{
  pp_hanging_view_forget_drag (self);
  pp_hanging_view_drop (self);
  g_clear_handle_id (&self->lit_timer, g_source_remove);
  self->is_lit = FALSE;
  self->has_hang = FALSE;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
pp_hanging_view_dispose (GObject *object)
{
  PpHangingView *self = PP_HANGING_VIEW (object);

  let_go (self);
  g_clear_pointer (&self->holes, g_ptr_array_unref);
  g_clear_pointer (&self->hook, gtk_widget_unparent);
  G_OBJECT_CLASS (pp_hanging_view_parent_class)->dispose (object);
}

static void
pp_hanging_view_class_init (PpHangingViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_hanging_view_dispose;
  widget_class->snapshot = pp_hanging_view_snapshot;
  widget_class->size_allocate = pp_hanging_view_size_allocate;
  widget_class->map = pp_hanging_view_map;
  gtk_widget_class_set_css_name (widget_class, "pp-hanging-view");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
pp_hanging_view_init (PpHangingView *self)
{
  self->holes = g_ptr_array_new_with_free_func ((GDestroyNotify) gtk_widget_unparent);
  self->hook = add_child (self, "hook");
  gtk_widget_set_visible (self->hook, FALSE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("The panel as it hangs"), -1);
  pp_hanging_view_add_pointer (self);
}

void
pp_hanging_view_set_document (PpHangingView *self,
                              PpDocument    *document)
{
  g_return_if_fail (PP_IS_HANGING_VIEW (self));
  g_return_if_fail (document == NULL || PP_IS_DOCUMENT (document));

  let_go (self);
  self->how = PP_HUNG_LEVEL;
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (document, "checked", G_CALLBACK (follow_cb), self);
  g_signal_connect (document, "chosen", G_CALLBACK (follow_cb), self);
  g_signal_connect (document, "drawn", G_CALLBACK (drawn_cb), self);
  follow_cb (document, self);
}

void
pp_hanging_view_set_how (PpHangingView *self,
                         PpHungHow      how)
{
  g_return_if_fail (PP_IS_HANGING_VIEW (self));

  if (self->how == how)
    return;
  self->how = how;
  if (self->document != NULL)
    pp_hanging_view_follow (self);
}

gboolean
pp_hanging_view_get_tilt (PpHangingView *self,
                          PpHungHow      how,
                          double        *tilt)
{
  PpHung hung;

  g_return_val_if_fail (PP_IS_HANGING_VIEW (self), FALSE);

  if (!self->has_hang || !pp_hung_of (pp_document_get_scene (self->document), &self->mass,
                                      &self->hang, how, &hung))
    return FALSE;
  *tilt = hung.tilt;
  return TRUE;
}

static gboolean
lit_cb (gpointer data)
{
  PpHangingView *self = data;

  self->lit_timer = 0;
  self->is_lit = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

void
pp_hanging_view_light (PpHangingView *self,
                       PpPoint        mm)
{
  g_return_if_fail (PP_IS_HANGING_VIEW (self));

  g_clear_handle_id (&self->lit_timer, g_source_remove);
  self->lit = mm;
  self->is_lit = TRUE;
  self->lit_timer = g_timeout_add (LIT_MS, lit_cb, self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
