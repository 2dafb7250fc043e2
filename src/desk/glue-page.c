/* glue-page.c: the third page of the work: the order of gluing, and the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan is the document's, made in its thread. While a newer one is made the list keeps the one
 * before; what is of another panel is shown no more.
 */
#include "config.h"

#include "desk/glue-page.h"

#include "desk/bench-view.h"
#include "desk/focus-within.h"
#include "desk/glue-list.h"
#include "desk/glue-map.h"
#include "desk/saving.h"
#include "desk/say.h"
#include "desk/shown-page.h"
#include "desk/side-layout.h"
#include "desk/template.h"
#include "desk/window.h"
#include "glue/reorder.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "sheet/words.h"

#define LOOK_MS 150       /* how often the search is looked at */
#define MOMENT 3          /* looks that pass before it is said that there is a search */

struct _PpGluePage
{
  GtkWidget      parent_instance;
  PpDocument    *document;
  const PpPlan  *plan;    /* that the list shows */
  char          *moved;   /* id of the job that was moved, to stay chosen; or NULL */
  guint          timer;
  guint          n_looks;

  GtkStack      *stack;
  PpBenchView   *bench;
  PpGlueMap     *map;
  PpGlueList    *list;
  GtkLabel      *summary;
  GtkLabel      *remark;
  GtkWidget     *planning;
  GtkProgressBar *progress;
  GtkWidget     *shortest;
  GtkWidget     *begin;
};

G_DEFINE_FINAL_TYPE (PpGluePage, pp_glue_page, GTK_TYPE_WIDGET)

enum
{
  PROP_DOCUMENT = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* The plan of the present panel, or NULL. */
static const PpPlan *
get_plan (PpGluePage *self)
{
  if (self->document == NULL || !pp_document_is_checked (self->document))
    return NULL;
  return pp_document_get_plan (self->document);
}

/* What there is to say of a plan with steps, on lines; (transfer full). */
static char *
remark_on (const PpPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (plan->findings, i);

      g_string_append_printf (text, "%s\n", finding->text);
    }
  if (plan->check->panel->plan != NULL)
    g_string_append_printf (text, "%s\n", _("This order is kept."));
  else if (!plan->optimal)
    g_string_append_printf (text, "%s\n", _("The shortest found; there may be a shorter one."));
  g_string_append (text, _("Drag a step to change the order, or move it with Alt+Up and "
                           "Alt+Down."));
  return g_string_free (text, FALSE);
}

static void
say_plan (PpGluePage   *self,
          const PpPlan *plan)
{
  PpSheetJob job = pp_words_get_job (plan);
  gboolean has_steps = plan->exists && plan->n_steps > 0;
  g_autofree char *summary = has_steps ? pp_words_format_plan (plan) : NULL;
  g_autofree char *remark = has_steps ? remark_on (plan) : g_strdup (pp_no_order_words (&job));

  pp_say_or_hide (self->summary, has_steps ? summary : _("Nothing to glue"));
  pp_say_or_hide (self->remark, remark);
  gtk_widget_set_sensitive (self->begin, has_steps);
  gtk_widget_set_visible (self->shortest, plan->check->panel->plan != NULL && has_steps);
}

static int
find_step (const PpPlan *plan,
           const char   *id)
{
  for (guint i = 0; id != NULL && i < plan->n_steps; i++)
    {
      g_autofree char *of_step = pp_job_dup_id (plan->check->panel, plan->order->n_knots,
                                                plan->steps[i].job);

      if (g_str_equal (of_step, id))
        return (int) i;
    }
  return -1;
}

static void
show_plan (PpGluePage   *self,
           const PpPlan *plan)
{
  int lit = find_step (plan, self->moved);

  if (lit < 0)
    lit = MIN (pp_glue_list_get_lit (self->list), (int) plan->n_steps - 1);
  g_clear_pointer (&self->moved, g_free);
  if (plan != self->plan)
    {
      pp_plan_ref (plan);
      g_clear_pointer (&self->plan, pp_plan_unref);
      self->plan = plan;
      pp_glue_list_set_plan (self->list, plan, lit);
    }
  say_plan (self, plan);
}

static void
show_search (PpGluePage *self,
             gboolean    is_on)
{
  double done = self->document != NULL ? pp_document_get_planning (self->document) : (double) NAN;

  gtk_widget_set_visible (self->planning, is_on && !isnan (done));
  if (!isnan (done))
    gtk_progress_bar_set_fraction (self->progress, done);
}

static gboolean
look_cb (gpointer data)
{
  PpGluePage *self = data;

  self->n_looks++;
  if (self->n_looks < MOMENT)
    return G_SOURCE_CONTINUE;
  pp_say_or_hide (self->summary, _("Looking for the shortest order …"));
  pp_say_or_hide (self->remark, NULL);
  gtk_widget_set_sensitive (self->begin, FALSE);
  show_search (self, TRUE);
  return G_SOURCE_CONTINUE;
}

static void
refresh (PpGluePage *self)
{
  const PpPlan *plan = get_plan (self);

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)) || self->document == NULL)
    return;
  if (plan == NULL)
    {
      /* where the same lies on the glass, the numbers of before stay until there are others */
      const PpPanel *panel = pp_document_get_panel (self->document);
      gboolean is_alike = self->plan != NULL
                          && self->plan->check->panel->placements == panel->placements;

      pp_glue_map_show (self->map, self->document, is_alike ? self->plan : NULL,
                        pp_glue_list_get_lit (self->list), FALSE);
      if (self->timer == 0)
        self->n_looks = 0;
      if (self->timer == 0)
        self->timer = g_timeout_add (LOOK_MS, look_cb, self);
      return;
    }
  g_clear_handle_id (&self->timer, g_source_remove);
  show_search (self, FALSE);
  show_plan (self, plan);
  pp_glue_map_show (self->map, self->document, plan, pp_glue_list_get_lit (self->list), FALSE);
}

static void
refresh_cb (PpDocument *document,
            PpGluePage *self)
{
  refresh (self);
}

static void
tell (PpGluePage *self,
      const char *sentence)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (PP_IS_WINDOW (root))
    pp_window_tell (PP_WINDOW (root), sentence);
}

static void
tell_bar (PpGluePage   *self,
          const PpPlan *plan,
          PpReorder     asked,
          guint         from,
          guint         to)
{
  PpSheetJob job = pp_words_get_job (plan);
  g_autoptr (PpJobWords) moved = pp_job_words_new (&job, plan->steps[from].job);
  g_autoptr (PpJobWords) other = pp_job_words_new (&job, asked.job);
  const char *first = from < to ? moved->name : other->name;
  const char *second = from < to ? other->name : moved->name;
  g_autofree char *sentence
      = asked.bar == PP_BAR_RESTS
        ? g_strdup_printf (_("“%s” must be glued before “%s”, which lies on it."), first, second)
        : g_strdup_printf (_("“%s” comes before “%s”: knots go first, then stems, flat pieces, and "
                             "shaped ones last."), first, second);

  tell (self, sentence);
}

static void
move_cb (PpGlueList *list,
         guint       from,
         guint       to,
         PpGluePage *self)
{
  const PpPlan *plan = get_plan (self);
  g_autoptr (GError) error = NULL;
  const PpPanel *panel;
  PpReorder asked;

  if (plan == NULL || plan != self->plan || from >= plan->n_steps || to >= plan->n_steps)
    return;
  asked = pp_reorder_ask (plan, from, to);
  if (asked.bar != PP_BAR_NONE)
    {
      tell_bar (self, plan, asked, from, to);
      return;
    }
  panel = pp_document_get_panel (self->document);

  g_auto (GStrv) jobs = pp_reorder_jobs (plan, panel, from, to);

  g_free (self->moved);
  self->moved = pp_job_dup_id (panel, plan->order->n_knots, plan->steps[from].job);
  PpPanel *next = pp_edit_set_order (panel, (const char * const *) jobs, &error);

  pp_document_take (self->document, next, g_steal_pointer (&error), _("Change the order"), NULL);
}

static void
lit_cb (PpGlueList *list,
        int         step,
        PpGluePage *self)
{
  if (self->document != NULL)
    pp_glue_map_show (self->map, self->document, get_plan (self), step, FALSE);
}

static void
step_cb (PpGlueMap  *map,
         guint       step,
         PpGluePage *self)
{
  pp_glue_list_light (self->list, step);
}

static void
enough_cb (GtkButton  *button,
           PpGluePage *self)
{
  pp_document_stop_planning (self->document);
}

static void
shortest_cb (GtkButton  *button,
             PpGluePage *self)
{
  g_autoptr (GError) error = NULL;
  PpPanel *next = pp_edit_set_order (pp_document_get_panel (self->document), NULL, &error);

  pp_document_take (self->document, next, g_steal_pointer (&error), _("Back to the shortest order"),
                    NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->list));
}

static void
begin (PpGluePage *self)
{
  const PpPlan *plan = get_plan (self);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (plan == NULL || !plan->exists || plan->n_steps == 0 || !PP_IS_WINDOW (root))
    return;
  gtk_stack_set_visible_child_name (self->stack, "bench");
  pp_bench_view_begin (self->bench, PP_WINDOW (root), plan);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (PpGluePage) self = data;

  if (pp_saving_run_finish (result) && self->document != NULL)
    begin (self);
}

/* What is placed is written at once, so there must be a file. */
static void
begin_cb (GtkButton  *button,
          PpGluePage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (pp_document_get_file (self->document) == NULL)
    pp_saving_run_async (PP_WINDOW (root), FALSE, saved_cb, g_object_ref (self));
  else
    begin (self);
}

static void
end_bench (PpGluePage *self)
{
  pp_bench_view_end (self->bench);
  gtk_stack_set_visible_child_name (self->stack, "order");
}

static void
leave_cb (PpBenchView *bench,
          PpGluePage  *self)
{
  end_bench (self);
  refresh (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->list));
}

static void
set_document (PpGluePage *self,
              PpDocument *document)
{
  end_bench (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_pointer (&self->plan, pp_plan_unref);
  g_clear_pointer (&self->moved, g_free);
  g_set_object (&self->document, document);
  pp_glue_list_set_plan (self->list, NULL, -1);
  pp_glue_map_show (self->map, document, NULL, PP_NO_STEP, FALSE);
  if (document == NULL)
    return;
  g_signal_connect (document, "changed", G_CALLBACK (refresh_cb), self);
  g_signal_connect (document, "checked", G_CALLBACK (refresh_cb), self);
  refresh (self);
}

static void
pp_glue_page_set_property (GObject      *object,
                           guint         prop_id,
                           const GValue *value,
                           GParamSpec   *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    set_document (PP_GLUE_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static gboolean
pp_glue_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (PP_GLUE_PAGE (widget)->list));
}

static void
pp_glue_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (pp_glue_page_parent_class)->map (widget);
  refresh (PP_GLUE_PAGE (widget));
}

static void
pp_glue_page_unmap (GtkWidget *widget)
{
  PpGluePage *self = PP_GLUE_PAGE (widget);

  g_clear_handle_id (&self->timer, g_source_remove);
  end_bench (self);
  GTK_WIDGET_CLASS (pp_glue_page_parent_class)->unmap (widget);
}

static void
pp_glue_page_dispose (GObject *object)
{
  PpGluePage *self = PP_GLUE_PAGE (object);

  if (self->list != NULL)
    set_document (self, NULL);
  pp_template_dispose (GTK_WIDGET (self), PP_TYPE_GLUE_PAGE);
  G_OBJECT_CLASS (pp_glue_page_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, stack);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, bench);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, map);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, list);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, summary);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, remark);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, planning);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, progress);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, shortest);
  gtk_widget_class_bind_template_child (widget_class, PpGluePage, begin);
}

static void
pp_glue_page_class_init (PpGluePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_glue_page_dispose;
  G_OBJECT_CLASS (klass)->set_property = pp_glue_page_set_property;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_glue_page_grab_focus;
  widget_class->map = pp_glue_page_map;
  widget_class->unmap = pp_glue_page_unmap;
  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, PP_TYPE_DOCUMENT,
                                              G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
  g_type_ensure (PP_TYPE_BENCH_VIEW);
  g_type_ensure (PP_TYPE_GLUE_LIST);
  g_type_ensure (PP_TYPE_GLUE_MAP);
  g_type_ensure (PP_TYPE_SIDE_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/glue-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, step_cb);
  gtk_widget_class_bind_template_callback (widget_class, move_cb);
  gtk_widget_class_bind_template_callback (widget_class, lit_cb);
  gtk_widget_class_bind_template_callback (widget_class, enough_cb);
  gtk_widget_class_bind_template_callback (widget_class, shortest_cb);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
}

static void
pp_glue_page_init (PpGluePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_shown_page_tell (self->stack);
}
