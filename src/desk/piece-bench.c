/* piece-bench.c: the piece bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Steps of undo are whole makings. A making of which nothing can be made, because something is
 * still to be told, is a step too; the piece made last stays in sight, and the sentence says what
 * is missing.
 */
#include "config.h"

#include "desk/piece-bench.h"

#include "desk/ask.h"
#include "desk/choice.h"
#include "desk/figure-entry.h"
#include "desk/making-put.h"
#include "desk/making-questions.h"
#include "desk/making-ways.h"
#include "desk/piece-view.h"
#include "desk/shown-page.h"
#include "desk/side-layout.h"
#include "desk/text-entry.h"
#include "desk/tray-words.h"
#include "desk/typing.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/height.h"

#define MOST_WIDTH 1560 /* px */
#define MOST_HEIGHT 940
#define SHARE_OF_SCREEN 0.94

struct _PpPieceBench
{
  GtkWindow          parent_instance;
  PpDocument        *document;
  char              *id;     /* of the tray piece that is made otherwise; NULL: a new one */
  GArray            *steps;  /* PpMaking */
  guint              step;   /* the present one */
  guint              kept;   /* the step that the tray has */
  char              *merge_key; /* of the present step; NULL: none */
  PpPiece           *piece;     /* the last that could be made; NULL: none */
  guint              piece_way; /* in which way */
  gboolean           is_showing;
  PpChoice         **ways;

  GtkWidget         *way_box;
  GtkStack          *forms;
  GtkStack          *views;
  PpPieceView       *view;
  GtkLabel          *summary;
  GtkLabel          *missing;
  PpMakingQuestions *questions;
  GtkWidget         *put;
  GtkWidget         *put_on;
};

G_DEFINE_FINAL_TYPE (PpPieceBench, pp_piece_bench, GTK_TYPE_WINDOW)

static guint changed_signal;

static void
clear_step (gpointer step)
{
  pp_making_clear (step);
}

/* "Leaf, 70 x 25 mm, about 14 g"; a weight that was weighed is not "about". */
static char *
describe (PpPieceBench *self)
{
  PpUnits units = pp_piece_bench_get_units (self);
  PpBox box = pp_outline_get_box (self->piece->outline);
  g_autofree char *size = pp_size_format (pp_box_width (box), pp_box_height (box), units);
  double g = pp_piece_get_mass (self->piece);
  g_autofree char *mass = isnan (self->piece->mass) ? pp_mass_format_about (g, units)
                                                    : pp_mass_format (g, units);
  g_autofree char *thick = pp_length_format (self->piece->thickness, units);

  /* Translators: a piece's name, its size, its thickness and what it weighs. */
  return g_strdup_printf (_("%s: %s, %s thick, %s"), pp_tray_words_name (self->piece), size, thick,
                          mass);
}

static void
show_piece (PpPieceBench *self,
            const char   *missing)
{
  const PpMaking *making = pp_piece_bench_get_making (self);
  const PpMakingWay *way = pp_making_way_get (making->way);
  g_autofree char *words = self->piece != NULL ? describe (self) : g_strdup ("");

  /* what another way made says nothing about this one */
  pp_piece_view_set_piece (self->view, missing == NULL || self->piece_way == making->way
                                         ? self->piece : NULL);
  if (way->add_marks != NULL && self->piece != NULL && missing == NULL)
    way->add_marks (making, pp_piece_bench_get_units (self), self->piece, self->view);
  gtk_label_set_text (self->summary, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->piece != NULL ? words : _("No piece yet"), -1);
  gtk_label_set_text (self->missing, missing != NULL ? missing : "");
  gtk_widget_set_visible (GTK_WIDGET (self->missing), missing != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->summary), missing == NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "bench.put", missing == NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "bench.put-on", missing == NULL);
}

static void
show_put (PpPieceBench      *self,
          const PpMakingWay *way)
{
  const char *words = self->id != NULL      ? _("Change it in the tray")
                      : way->finish != NULL ? _("Put all in the tray")
                                            : _("Put in the tray");

  gtk_button_set_label (GTK_BUTTON (self->put), words);
  gtk_widget_set_visible (self->put_on, self->id == NULL && way->finish == NULL);
}

static void
show_way (PpPieceBench *self)
{
  const PpMaking *making = pp_piece_bench_get_making (self);
  const char *name = pp_making_way_get (making->way)->name;
  gboolean has_view = gtk_stack_get_child_by_name (self->views, name) != NULL;

  self->is_showing = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->ways[making->way]), TRUE);
  gtk_stack_set_visible_child_name (self->forms, name);
  gtk_stack_set_visible_child_name (self->views, has_view ? name : "piece");
  show_put (self, pp_making_way_get (making->way));
  self->is_showing = FALSE;
}

static void
show (PpPieceBench *self)
{
  g_autoptr (GError) error = NULL;
  PpPiece *piece = pp_making_make (pp_piece_bench_get_making (self),
                                   pp_piece_bench_get_units (self), &error);

  if (piece != NULL)
    {
      g_clear_pointer (&self->piece, pp_piece_unref);
      self->piece = piece;
      self->piece_way = pp_piece_bench_get_making (self)->way;
    }
  show_piece (self, error != NULL ? error->message : NULL);
  show_way (self);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "bench.undo", self->step > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "bench.redo",
                                 self->step + 1 < self->steps->len);
  g_signal_emit (self, changed_signal, 0);
}

/* What is found in a picture is large, so one step at a time has it; the other is still shown what
 * was found until its own is. */
static void
go_to (PpPieceBench *self,
       guint         step)
{
  PpPicking *left = &g_array_index (self->steps, PpMaking, self->step).picking;
  PpPicking *now = &g_array_index (self->steps, PpMaking, step).picking;

  if (left != now)
    {
      pp_picking_forget (now);
      if (left->file == now->file)
        now->found = g_steal_pointer (&left->found);
      pp_picking_forget (left);
    }
  self->step = step;
  g_clear_pointer (&self->merge_key, g_free);
  show (self);
}

/* What is being typed goes first, as a text's own undo would have it. */
static gboolean
put_back_typed (PpPieceBench *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  GtkWidget *figure, *words;

  if (focus == NULL)
    return FALSE;
  figure = gtk_widget_get_ancestor (focus, PP_TYPE_FIGURE_ENTRY);
  words = gtk_widget_get_ancestor (focus, PP_TYPE_TEXT_ENTRY);
  return (figure != NULL && pp_figure_entry_put_back (PP_FIGURE_ENTRY (figure)))
         || (words != NULL && pp_text_entry_put_back (PP_TEXT_ENTRY (words)));
}

static void
undo_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  PpPieceBench *self = PP_PIECE_BENCH (widget);

  if (!put_back_typed (self) && self->step > 0)
    go_to (self, self->step - 1);
}

static void
redo_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  PpPieceBench *self = PP_PIECE_BENCH (widget);

  if (self->step + 1 < self->steps->len)
    go_to (self, self->step + 1);
}

/* TRUE if the tray took it. */
static gboolean
put (PpPieceBench *self)
{
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;
  GtkWidget *wrong;

  pp_typing_finish (GTK_ROOT (self));
  wrong = pp_typing_find_fault (GTK_WIDGET (self));
  if (wrong != NULL)
    gtk_widget_grab_focus (wrong);
  if (wrong != NULL || gtk_widget_get_visible (GTK_WIDGET (self->missing)))
    return FALSE;
  next = pp_making_put (pp_piece_bench_get_making (self), self->piece, self->id,
                        pp_document_get_panel (self->document), &label, &error);
  if (next == NULL)
    {
      gtk_label_set_text (self->summary, error->message); /* told by the document it came under */
      g_error_free (error);
      return FALSE;
    }
  pp_document_take (self->document, next, NULL, label, NULL);
  self->kept = self->step;
  return TRUE;
}

/* Where a question goes in the same moment, a window manager may give the keys to nobody. */
static void
leave (PpPieceBench *self)
{
  GtkWindow *window = gtk_window_get_transient_for (GTK_WINDOW (self));

  gtk_window_destroy (GTK_WINDOW (self));
  if (window != NULL)
    gtk_window_present (window);
}

static void
put_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  if (put (PP_PIECE_BENCH (widget)))
    leave (PP_PIECE_BENCH (widget));
}

/* The next piece is often of the same sort and glass: way, picture and thickness stay. Kind and
 * light do not: they would be told of it though nobody looked. */
static void
put_on_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  PpPieceBench *self = PP_PIECE_BENCH (widget);
  g_auto (PpMaking) next = { 0 };
  g_autofree char *said = NULL;

  if (self->id != NULL || !put (self))
    return;
  said = g_strdup_printf (_("%s is in the tray. Now the next one."),
                          pp_tray_words_name (self->piece));
  next = pp_making_next (pp_piece_bench_get_making (self));
  g_array_set_size (self->steps, 0);
  self->step = self->kept = 0;
  g_array_append_val (self->steps, next);
  next = (PpMaking) { 0 };
  g_clear_pointer (&self->piece, pp_piece_unref);
  go_to (self, 0);
  gtk_label_set_text (self->summary, said);
  gtk_widget_set_visible (GTK_WIDGET (self->summary), TRUE); /* beside what the next is missing */
  gtk_widget_child_focus (GTK_WIDGET (self->forms), GTK_DIR_TAB_FORWARD);
}

static void
left_cb (int      answer,
         gpointer data)
{
  g_autoptr (PpPieceBench) self = data;

  if (answer == 0)
    leave (self);
  else if (answer == 2)
    gtk_widget_activate_action (GTK_WIDGET (self), "bench.put", NULL);
}

/* Nothing is asked where nothing would be lost. */
static gboolean
pp_piece_bench_close_request (GtkWindow *window)
{
  PpPieceBench *self = PP_PIECE_BENCH (window);
  const char *labels[] = { _("Throw it away"), _("Go on making it"), NULL, NULL };
  const PpAsk ask = { _("The piece is not in the tray yet."), NULL, labels, 0 };

  pp_typing_finish (GTK_ROOT (self));
  if (self->step == self->kept)
    return FALSE;
  if (!gtk_widget_get_visible (GTK_WIDGET (self->missing)))
    labels[2] = _("Put in the tray");
  pp_ask (window, &ask, left_cb, g_object_ref (self));
  return TRUE;
}

/* In the capture phase, before a field takes Ctrl+Z for its own text. */
static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpPieceBench       *self)
{
  gboolean control = (state & GDK_CONTROL_MASK) != 0;
  gboolean shift = (state & GDK_SHIFT_MASK) != 0;
  guint lower = gdk_keyval_to_lower (key);
  const char *action = NULL;

  if (control && (key == GDK_KEY_Return || key == GDK_KEY_KP_Enter))
    action = shift && gtk_widget_get_visible (self->put_on) ? "bench.put-on" : "bench.put";
  else if (control && lower == GDK_KEY_z)
    action = shift ? "bench.redo" : "bench.undo";
  else if (control && lower == GDK_KEY_y)
    action = "bench.redo";
  if (action == NULL)
    return GDK_EVENT_PROPAGATE;
  /* not the action: a text that is typed can be put back where there is no step to undo */
  if (g_str_equal (action, "bench.undo"))
    undo_action (GTK_WIDGET (self), action, NULL);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
  return GDK_EVENT_STOP;
}

static void
way_cb (PpChoice     *choice,
        PpPieceBench *self)
{
  g_auto (PpMaking) next = { 0 };

  if (self->is_showing || !gtk_check_button_get_active (GTK_CHECK_BUTTON (choice)))
    return;
  next = pp_making_copy (pp_piece_bench_get_making (self));
  for (guint i = 0; i < pp_making_n_ways (); i++)
    if (self->ways[i] == choice)
      next.way = i;
  pp_piece_bench_change (self, &next, "way");
}

static void
way_pointed_cb (PpChoice     *choice,
                PpPieceBench *self)
{
  gtk_widget_child_focus (GTK_WIDGET (self->forms), GTK_DIR_TAB_FORWARD);
}

static void
pressed_cb (PpPieceView  *view,
            double        x,
            double        y,
            PpPieceBench *self)
{
  const PpMaking *making = pp_piece_bench_get_making (self);
  const PpMakingWay *way = pp_making_way_get (making->way);
  g_auto (PpMaking) next = pp_making_copy (making);

  if (way->press != NULL && way->press (&next, pp_piece_bench_get_units (self), (PpPoint) { x, y }))
    pp_piece_bench_change (self, &next, NULL);
}

static void
pp_piece_bench_dispose (GObject *object)
{
  PpPieceBench *self = PP_PIECE_BENCH (object);

  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_PIECE_BENCH);
  G_OBJECT_CLASS (pp_piece_bench_parent_class)->dispose (object);
}

static void
pp_piece_bench_finalize (GObject *object)
{
  PpPieceBench *self = PP_PIECE_BENCH (object);

  g_array_unref (self->steps);
  g_free (self->id);
  g_free (self->merge_key);
  g_free (self->ways);
  g_clear_pointer (&self->piece, pp_piece_unref);
  G_OBJECT_CLASS (pp_piece_bench_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, PpPieceBench, way_box);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, forms);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, views);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, view);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, summary);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, missing);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, questions);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, put);
  gtk_widget_class_bind_template_child (klass, PpPieceBench, put_on);
  gtk_widget_class_bind_template_callback (klass, key_cb);
  gtk_widget_class_bind_template_callback (klass, pressed_cb);
}

static void
pp_piece_bench_class_init (PpPieceBenchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_piece_bench_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_piece_bench_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = pp_piece_bench_close_request;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (PP_TYPE_MAKING_QUESTIONS);
  g_type_ensure (PP_TYPE_PIECE_VIEW);
  g_type_ensure (PP_TYPE_SIDE_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/piece-bench.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "bench.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "bench.redo", NULL, redo_action);
  gtk_widget_class_install_action (widget_class, "bench.put", NULL, put_action);
  gtk_widget_class_install_action (widget_class, "bench.put-on", NULL, put_on_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_piece_bench_init (PpPieceBench *self)
{
  self->steps = g_array_new (FALSE, FALSE, sizeof (PpMaking));
  g_array_set_clear_func (self->steps, clear_step);
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
add_ways (PpPieceBench *self)
{
  self->ways = g_new0 (PpChoice *, pp_making_n_ways ());
  for (guint i = 0; i < pp_making_n_ways (); i++)
    {
      const PpMakingWay *way = pp_making_way_get (i);
      PpChoice *choice = g_object_new (PP_TYPE_CHOICE, "words", _(way->title), NULL);

      gtk_check_button_set_group (GTK_CHECK_BUTTON (choice),
                                  i > 0 ? GTK_CHECK_BUTTON (self->ways[0]) : NULL);
      gtk_widget_set_hexpand (GTK_WIDGET (choice), TRUE);
      gtk_box_append (GTK_BOX (self->way_box), GTK_WIDGET (choice));
      self->ways[i] = choice;
      gtk_stack_add_named (self->forms, way->new_form (self), way->name);
      g_signal_connect (choice, "toggled", G_CALLBACK (way_cb), self);
      g_signal_connect (choice, "pointed", G_CALLBACK (way_pointed_cb), self);
    }
  pp_shown_page_tell (self->forms);
  pp_shown_page_tell (self->views);
}

/* Large, as the piece is to be seen large, where the screen is. */
static void
set_size (PpPieceBench *self,
          GtkWindow    *parent)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (parent));
  GdkDisplay *display = gtk_widget_get_display (GTK_WIDGET (parent));
  GdkMonitor *monitor = NULL;
  GdkRectangle room;

  if (surface != NULL)
    monitor = gdk_display_get_monitor_at_surface (display, surface);
  if (monitor == NULL)
    return;
  gdk_monitor_get_geometry (monitor, &room);
  gtk_window_set_default_size (GTK_WINDOW (self),
                               (int) fmin (MOST_WIDTH, room.width * SHARE_OF_SCREEN),
                               (int) fmin (MOST_HEIGHT, room.height * SHARE_OF_SCREEN));
}

PpPieceBench *
pp_piece_bench_new (GtkWindow  *parent,
                    PpDocument *document,
                    const char *piece)
{
  PpPieceBench *self;
  const PpPiece *old = NULL;
  PpMaking first;

  g_return_val_if_fail (PP_IS_DOCUMENT (document), NULL);

  if (piece != NULL)
    old = pp_panel_find_piece (pp_document_get_panel (document), piece, NULL);
  first = old != NULL ? pp_making_of (old) : pp_making_new (pp_making_way_find ("measures"));
  self = g_object_new (PP_TYPE_PIECE_BENCH, "transient-for", parent, NULL);
  set_size (self, parent);
  self->document = g_object_ref (document);
  self->id = old != NULL ? g_strdup (piece) : NULL;
  g_array_append_val (self->steps, first);
  pp_piece_view_set_units (self->view, pp_piece_bench_get_units (self));
  pp_making_questions_set_bench (self->questions, self);
  add_ways (self);
  gtk_window_set_title (GTK_WINDOW (self), old != NULL ? _("Change a piece") : _("A new piece"));
  show (self);
  return self;
}

PpDocument *
pp_piece_bench_get_document (PpPieceBench *self)
{
  g_return_val_if_fail (PP_IS_PIECE_BENCH (self), NULL);
  return self->document;
}

PpUnits
pp_piece_bench_get_units (PpPieceBench *self)
{
  g_return_val_if_fail (PP_IS_PIECE_BENCH (self), PP_UNITS_MM);
  return pp_document_get_panel (self->document)->units;
}

const PpMaking *
pp_piece_bench_get_making (PpPieceBench *self)
{
  g_return_val_if_fail (PP_IS_PIECE_BENCH (self), NULL);
  return &g_array_index (self->steps, PpMaking, self->step);
}

const PpPiece *
pp_piece_bench_get_piece (PpPieceBench *self)
{
  g_return_val_if_fail (PP_IS_PIECE_BENCH (self), NULL);
  return self->piece;
}

void
pp_piece_bench_change (PpPieceBench   *self,
                       const PpMaking *next,
                       const char     *merge_key)
{
  PpMaking copy;

  g_return_if_fail (PP_IS_PIECE_BENCH (self) && next != NULL);

  copy = pp_making_copy (next);
  if (merge_key == NULL || g_strcmp0 (merge_key, self->merge_key) != 0)
    pp_picking_forget (&g_array_index (self->steps, PpMaking, self->step++).picking);
  g_array_set_size (self->steps, self->step);
  g_array_append_val (self->steps, copy);
  pp_making_set_text (&self->merge_key, merge_key);
  show (self);
}

void
pp_piece_bench_amend (PpPieceBench   *self,
                      const PpMaking *next)
{
  PpMaking copy;

  g_return_if_fail (PP_IS_PIECE_BENCH (self) && next != NULL);

  copy = pp_making_copy (next);
  pp_making_clear (&g_array_index (self->steps, PpMaking, self->step));
  g_array_index (self->steps, PpMaking, self->step) = copy;
  show (self);
}

void
pp_piece_bench_begin_asking (PpPieceBench *self)
{
  g_return_if_fail (PP_IS_PIECE_BENCH (self));
  gtk_widget_child_focus (GTK_WIDGET (self->questions), GTK_DIR_TAB_FORWARD);
}

void
pp_piece_bench_set_view (PpPieceBench *self,
                         const char   *way,
                         GtkWidget    *view)
{
  g_return_if_fail (PP_IS_PIECE_BENCH (self));
  gtk_stack_add_named (self->views, view, way);
}
