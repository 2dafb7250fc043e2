/* glue-list.c: the steps of a glue plan, under headings for sittings and mixes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/glue-list.h"

#include "desk/mix-clock.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/order-plan.h"
#include "sheet/words.h"

struct _PpGlueList
{
  GtkWidget     parent_instance;
  const PpPlan *plan;
  GtkListBox   *box;
  gboolean      is_filling;
};

G_DEFINE_FINAL_TYPE (PpGlueList, pp_glue_list, GTK_TYPE_WIDGET)

static guint move_signal, lit_signal;

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
append (GtkWidget  *box,
        const char *text,
        const char *css_class)
{
  if (text != NULL && *text != '\0')
    gtk_box_append (GTK_BOX (box), make_label (text, css_class));
}

static GtkWidget *
make_face (const PpSheetJob *job,
           guint             index)
{
  g_autoptr (PpJobWords) words = pp_job_words_new (job, job->plan->steps[index].job);
  g_autoptr (PpStepWords) step = pp_step_words_new (job, index);
  g_autofree char *number = g_strdup_printf ("%u", index + 1);
  g_autofree char *needs = pp_step_needs_format (step);
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *middle = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *badge = gtk_label_new (number);
  GtkWidget *clock = make_label (step->clock, "numeric");

  gtk_widget_add_css_class (badge, "pp-badge");
  gtk_widget_add_css_class (badge, "numeric");
  gtk_widget_set_valign (badge, GTK_ALIGN_START);
  append (middle, words->act, "pp-act");
  append (middle, needs, "pp-needs");
  gtk_widget_set_hexpand (middle, TRUE);
  gtk_label_set_xalign (GTK_LABEL (clock), 1);
  gtk_label_set_justify (GTK_LABEL (clock), GTK_JUSTIFY_RIGHT);
  gtk_label_set_wrap (GTK_LABEL (clock), FALSE);
  gtk_widget_set_valign (clock, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (face), badge);
  gtk_box_append (GTK_BOX (face), middle);
  gtk_box_append (GTK_BOX (face), clock);
  return face;
}

static PpGlueList *
list_of (gpointer row)
{
  return PP_GLUE_LIST (gtk_widget_get_ancestor (row, PP_TYPE_GLUE_LIST));
}

static GdkContentProvider *
prepare_cb (GtkDragSource *source,
            double         x,
            double         y,
            GtkListBoxRow *row)
{
  g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (GTK_WIDGET (row));

  gtk_drag_source_set_icon (source, picture, (int) x, (int) y);
  return gdk_content_provider_new_typed (GTK_TYPE_LIST_BOX_ROW, row);
}

static gboolean
drop_cb (GtkDropTarget *target,
         const GValue  *value,
         double         x,
         double         y,
         GtkListBoxRow *row)
{
  GtkListBoxRow *dragged = g_value_get_object (value);
  int from = gtk_list_box_row_get_index (dragged);
  int to = gtk_list_box_row_get_index (row);

  /* of another window, or of steps that are no more */
  if (gtk_widget_get_parent (GTK_WIDGET (dragged)) != gtk_widget_get_parent (GTK_WIDGET (row)))
    return FALSE;
  if (from != to)
    g_signal_emit (list_of (row), move_signal, 0, (guint) from, (guint) to);
  return TRUE;
}

static void
make_movable (GtkWidget *row)
{
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (GTK_TYPE_LIST_BOX_ROW, GDK_ACTION_COPY);

  g_signal_connect (source, "prepare", G_CALLBACK (prepare_cb), row);
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (target));
}

static GtkWidget *
make_row (const PpSheetJob *job,
          guint             index)
{
  GtkWidget *row = gtk_list_box_row_new ();
  g_autoptr (PpStepWords) step = pp_step_words_new (job, index);

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), make_face (job, index));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  step->sentence, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  _("Alt+Up and Alt+Down move it."), -1);
  make_movable (row);
  return row;
}

/* "Begin at 12:30; 4:30 of its 5:00 are used." */
static char *
say_times (const PpPlan *plan,
           guint         mix)
{
  PpOrderRun run = pp_order_run_of_mix (plan, mix);
  const PpStep *last = &plan->steps[run.end - 1];
  double start = plan->mixes[mix].start;
  g_autofree char *from = pp_clock_format (start - pp_sitting_start (plan, run.sitting));
  g_autofree char *used = pp_clock_format (last->start + last->minutes - start);
  g_autofree char *life = pp_clock_format (plan->check->panel->adhesive->working_life);

  return g_strdup_printf (_("Begin at %s; %s of its %s are used."), from, used, life);
}

static GtkWidget *
make_heading (const PpPlan *plan,
              guint         mix)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  PpOrderRun run = pp_order_run_of_mix (plan, mix);
  gboolean opens = mix == 0 || pp_order_run_of_mix (plan, mix - 1).sitting != run.sitting;
  g_autofree char *a = pp_volume_format (plan->mixes[mix].a);
  g_autofree char *b = pp_volume_format (plan->mixes[mix].b);
  g_autofree char *sitting = g_strdup_printf (_("Sitting %u"), run.sitting);
  g_autofree char *title = g_strdup_printf (_("Mix %u of %u: part A %s, part B %s"), mix + 1,
                                            plan->n_mixes, a, b);
  g_autofree char *times = say_times (plan, mix);

  gtk_widget_add_css_class (box, "pp-mix");
  if (opens && plan->steps[plan->n_steps - 1].sitting > 1)
    append (box, sitting, "pp-sitting");
  append (box, title, "heading");
  gtk_box_append (GTK_BOX (box), pp_mix_clock_new (plan, mix));
  append (box, times, "pp-needs");
  return box;
}

static void
header_cb (GtkListBoxRow *row,
           GtkListBoxRow *before,
           gpointer       data)
{
  PpGlueList *self = data;
  guint index = (guint) gtk_list_box_row_get_index (row);
  guint mix;

  if (self->plan == NULL || index >= self->plan->n_steps)
    return;
  mix = self->plan->steps[index].mix;
  if (before != NULL && self->plan->steps[index - 1].mix == mix)
    gtk_list_box_row_set_header (row, NULL);
  else if (gtk_list_box_row_get_header (row) == NULL)
    gtk_list_box_row_set_header (row, make_heading (self->plan, mix - 1));
}

static void
selected_cb (GtkListBox    *box,
             GtkListBoxRow *row,
             PpGlueList    *self)
{
  if (!self->is_filling)
    g_signal_emit (self, lit_signal, 0, row != NULL ? gtk_list_box_row_get_index (row) : -1);
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        PpGlueList            *self)
{
  int lit = pp_glue_list_get_lit (self);
  int to = key == GDK_KEY_Up || key == GDK_KEY_KP_Up ? lit - 1 : lit + 1;

  if ((state & gtk_accelerator_get_default_mod_mask ()) != GDK_ALT_MASK || lit < 0)
    return FALSE;
  if (key != GDK_KEY_Up && key != GDK_KEY_KP_Up && key != GDK_KEY_Down && key != GDK_KEY_KP_Down)
    return FALSE;
  if (self->plan != NULL && to >= 0 && to < (int) self->plan->n_steps)
    g_signal_emit (self, move_signal, 0, (guint) lit, (guint) to);
  return TRUE;
}

/* One stop of Tab: rows are gone through with the arrows. */
static gboolean
pp_glue_list_focus (GtkWidget        *widget,
                    GtkDirectionType  direction)
{
  gboolean is_tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;

  if (is_tab && gtk_widget_get_focus_child (widget) != NULL)
    return FALSE;
  if (is_tab)
    return gtk_widget_grab_focus (widget);
  return GTK_WIDGET_CLASS (pp_glue_list_parent_class)->focus (widget, direction);
}

static gboolean
pp_glue_list_grab_focus (GtkWidget *widget)
{
  PpGlueList *self = PP_GLUE_LIST (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->box);

  if (row == NULL)
    row = gtk_list_box_get_row_at_index (self->box, 0);
  return row != NULL && gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
pp_glue_list_dispose (GObject *object)
{
  PpGlueList *self = PP_GLUE_LIST (object);

  self->is_filling = TRUE;
  if (self->box != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->box));
  self->box = NULL;
  g_clear_pointer (&self->plan, pp_plan_unref);
  G_OBJECT_CLASS (pp_glue_list_parent_class)->dispose (object);
}

static void
pp_glue_list_class_init (PpGlueListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_glue_list_dispose;
  widget_class->focus = pp_glue_list_focus;
  widget_class->grab_focus = pp_glue_list_grab_focus;
  gtk_widget_class_set_css_name (widget_class, "pp-glue-list");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  move_signal = g_signal_new ("move", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                              G_TYPE_UINT, G_TYPE_UINT);
  lit_signal = g_signal_new ("lit", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                             G_TYPE_INT);
}

static void
pp_glue_list_init (PpGlueList *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->box = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->box, GTK_SELECTION_BROWSE);
  gtk_list_box_set_header_func (self->box, header_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->box), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Steps"), -1);
  gtk_widget_set_parent (GTK_WIDGET (self->box), GTK_WIDGET (self));
  g_signal_connect (self->box, "row-selected", G_CALLBACK (selected_cb), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

static void
fill (PpGlueList *self)
{
  PpSheetJob job;
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->box))) != NULL)
    gtk_list_box_remove (self->box, row);
  if (self->plan == NULL)
    return;
  job = pp_words_get_job (self->plan);
  for (guint i = 0; i < self->plan->n_steps; i++)
    gtk_list_box_append (self->box, make_row (&job, i));
}

void
pp_glue_list_set_plan (PpGlueList   *self,
                       const PpPlan *plan,
                       int           lit)
{
  gboolean had_focus;

  g_return_if_fail (PP_IS_GLUE_LIST (self));

  had_focus = gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;
  if (plan != NULL)
    pp_plan_ref (plan);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->plan = plan;
  self->is_filling = TRUE;
  fill (self);
  if (lit >= 0 && plan != NULL && lit < (int) plan->n_steps)
    gtk_list_box_select_row (self->box, gtk_list_box_get_row_at_index (self->box, lit));
  self->is_filling = FALSE;
  if (had_focus)
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

void
pp_glue_list_light (PpGlueList *self,
                    guint       step)
{
  GtkListBoxRow *row;

  g_return_if_fail (PP_IS_GLUE_LIST (self));

  row = gtk_list_box_get_row_at_index (self->box, (int) step);
  if (row == NULL)
    return;
  gtk_list_box_select_row (self->box, row);
  gtk_widget_grab_focus (GTK_WIDGET (row));
}

int
pp_glue_list_get_lit (PpGlueList *self)
{
  GtkListBoxRow *row;

  g_return_val_if_fail (PP_IS_GLUE_LIST (self), -1);

  row = gtk_list_box_get_selected_row (self->box);
  return row != NULL ? gtk_list_box_row_get_index (row) : -1;
}
