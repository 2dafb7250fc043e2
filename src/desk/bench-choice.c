/* bench-choice.c: which piece came off, broke or sits elsewhere.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Large buttons, the last placed first; the piece in hand may have broken too.
 */
#include "config.h"

#include "desk/bench-view-private.h"

#include "desk/angle-entry.h"
#include "desk/length-entry.h"
#include "desk/lines.h"
#include "glue/job.h"
#include "glue/progress.h"
#include "panel/i18n.h"
#include "sheet/words.h"

#define KEY "pp-job"

typedef enum
{
  FELL,
  BROKE,
  MOVED,
} What;

/* The focus goes back to the big control before its button goes, or GTK would give it to another
 * one, and the next Space would press that. */
static void
close_choice (PpBenchView *self)
{
  self->is_choosing = FALSE;
  gtk_widget_set_visible (self->bar, TRUE);
  gtk_widget_grab_focus (self->act);
  pp_lines_clear (self->answers);
}

void
pp_bench_choice_end (PpBenchView *self)
{
  close_choice (self);
  pp_bench_view_refresh (self);
}

static void
cancel_cb (GtkButton   *button,
           PpBenchView *self)
{
  pp_bench_choice_end (self);
}

static GtkWidget *
add_answer (PpBenchView *self,
            const char  *label,
            const char  *job,
            GCallback    callback)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_add_css_class (button, "pp-bench-answer");
  g_object_set_data_full (G_OBJECT (button), KEY, g_strdup (job), g_free);
  g_signal_connect (button, "clicked", callback, self);
  gtk_box_append (self->answers, button);
  return button;
}

static void
begin (PpBenchView *self,
       const char  *question)
{
  self->is_choosing = TRUE;
  pp_lines_clear (self->answers);
  gtk_label_set_text (self->question, question);
  gtk_stack_set_visible_child_name (self->screen, "choice");
  gtk_widget_set_visible (self->bar, FALSE);
}

static void
take_off (PpBenchView *self,
          gboolean     broke)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) jobs = NULL;

  for (guint i = 0; i < self->chosen->len; i++)
    g_strv_builder_add (builder, g_ptr_array_index (self->chosen, i));
  jobs = g_strv_builder_end (builder);
  close_choice (self);
  pp_bench_acts_come_off (self, (const char * const *) jobs, broke);
}

static void
all_fell_cb (GtkButton   *button,
             PpBenchView *self)
{
  take_off (self, FALSE);
}

static void
all_broke_cb (GtkButton   *button,
              PpBenchView *self)
{
  take_off (self, TRUE);
}

static void
ask_about_above (PpBenchView *self,
                 const char  *job,
                 char       **above,
                 gboolean     broke)
{
  g_autofree char *name = pp_bench_words_name (self->plan, job);
  g_autoptr (GString) others = g_string_new (NULL);
  g_autofree char *question = NULL;

  for (guint i = 0; above[i] != NULL; i++)
    {
      g_autofree char *other = pp_bench_words_name (self->plan, above[i]);

      pp_bench_words_append (others, other);
    }
  question = g_strdup_printf (_("Glued on “%s”: %s. Has that come off too?"), name, others->str);
  begin (self, question);
  gtk_widget_grab_focus (add_answer (self, _("No, nothing happened"), NULL,
                                     G_CALLBACK (cancel_cb)));
  add_answer (self, _("Yes, all of it"), NULL,
              broke ? G_CALLBACK (all_broke_cb) : G_CALLBACK (all_fell_cb));
}

static void
choose (PpBenchView *self,
        const char  *job,
        gboolean     broke)
{
  g_autofree char *chosen = g_strdup (job); /* its button goes */
  g_auto (GStrv) above = pp_progress_find_above (pp_document_get_panel (self->document),
                                                 self->plan->order, chosen);

  g_ptr_array_set_size (self->chosen, 0);
  g_ptr_array_add (self->chosen, g_strdup (chosen));
  for (guint i = 0; above[i] != NULL; i++)
    g_ptr_array_add (self->chosen, g_strdup (above[i]));
  if (above[0] != NULL)
    ask_about_above (self, chosen, above, broke);
  else
    take_off (self, broke);
}

static void
fell_cb (GtkButton   *button,
         PpBenchView *self)
{
  choose (self, g_object_get_data (G_OBJECT (button), KEY), FALSE);
}

static void
broke_cb (GtkButton   *button,
          PpBenchView *self)
{
  choose (self, g_object_get_data (G_OBJECT (button), KEY), TRUE);
}

static GtkWidget *
add_title (GtkGrid    *grid,
           const char *text,
           int         row)
{
  GtkWidget *title = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_grid_attach (grid, title, 0, row, 1, 1);
  return title;
}

static GtkWidget *
add_field (GtkGrid    *grid,
           GtkWidget  *field,
           const char *text,
           int         row,
           double      value)
{
  g_object_set (field, "titled-by", add_title (grid, text, row), NULL);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (field), value);
  gtk_grid_attach (grid, field, 1, row, 1, 1);
  return field;
}

static void
sits_cb (GtkButton   *button,
         PpBenchView *self)
{
  PpFigureEntry *left = g_object_get_data (G_OBJECT (button), "left");
  PpFigureEntry *top = g_object_get_data (G_OBJECT (button), "top");
  PpFigureEntry *turn = g_object_get_data (G_OBJECT (button), "turn");
  g_autofree char *job = g_strdup (g_object_get_data (G_OBJECT (button), KEY));
  PpBox glass = pp_background_get_box (pp_document_get_panel (self->document)->background);
  PpPoint middle;
  double rotation;

  pp_figure_entry_commit (left);
  pp_figure_entry_commit (top);
  pp_figure_entry_commit (turn);
  if (pp_figure_entry_has_fault (left) || pp_figure_entry_has_fault (top)
      || pp_figure_entry_has_fault (turn))
    return;
  middle.x = glass.x0 + pp_figure_entry_get_value (left);
  middle.y = glass.y0 + pp_figure_entry_get_value (top);
  rotation = pp_figure_entry_get_value (turn);
  close_choice (self);
  pp_bench_acts_move (self, job, middle, rotation);
}

static void
ask_place (PpBenchView *self,
           const char  *job)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  PpScene *scene = pp_document_get_scene (self->document);
  PpBox glass = pp_background_get_box (panel->background);
  g_autofree char *name = pp_bench_words_name (self->plan, job);
  g_autofree char *question = g_strdup_printf (_("Where does “%s” sit? Its middle, and its turn."),
                                               name);
  GtkWidget *left = g_object_new (PP_TYPE_LENGTH_ENTRY, NULL);
  GtkWidget *top = g_object_new (PP_TYPE_LENGTH_ENTRY, NULL);
  GtkWidget *turn = g_object_new (PP_TYPE_ANGLE_ENTRY, NULL);
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());
  GtkWidget *sits;
  const PpBody *body;
  guint index;

  if (pp_panel_find_placement (panel, job, &index) == NULL)
    return;
  body = scene->bodies[index];
  begin (self, question);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (left), panel->units);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (top), panel->units);
  gtk_grid_set_row_spacing (grid, 9);
  gtk_grid_set_column_spacing (grid, 18);
  add_field (grid, left, _("From the left"), 0, body->centroid.x - glass.x0);
  add_field (grid, top, _("From the top"), 1, body->centroid.y - glass.y0);
  add_field (grid, turn, _("Turn"), 2, body->placement->rotation);
  gtk_box_append (self->answers, GTK_WIDGET (grid));
  sits = add_answer (self, _("There it sits"), job, G_CALLBACK (sits_cb));
  g_object_set_data (G_OBJECT (sits), "left", left);
  g_object_set_data (G_OBJECT (sits), "top", top);
  g_object_set_data (G_OBJECT (sits), "turn", turn);
  add_answer (self, _("No, nothing happened"), NULL, G_CALLBACK (cancel_cb));
  gtk_widget_grab_focus (left);
}

static void
moved_cb (GtkButton   *button,
          PpBenchView *self)
{
  g_autofree char *job = g_strdup (g_object_get_data (G_OBJECT (button), KEY));

  ask_place (self, job);
}

/* "Oxeye, 120 mm from the left and 45 mm from the top": there may be several oxeyes. */
static char *
describe (PpBenchView *self,
          guint        job)
{
  PpSheetJob sheet_job = pp_words_get_job (self->plan);
  g_autoptr (PpJobWords) words = pp_job_words_new (&sheet_job, job);

  return g_strdup_printf ("%s, %s", words->name, words->place);
}

static gboolean
may_be (PpBenchView *self,
        guint        job,
        What         what)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  gboolean is_knot = job < self->plan->order->n_knots;

  if (is_knot && what != FELL)
    return FALSE;
  if (what == BROKE && self->bench.step != NULL && self->bench.step->job == job)
    return TRUE;
  return pp_job_is_done (panel, self->plan->order->n_knots, job);
}

/* Of a job in the plan its step; what was glued before the plan was made comes first. */
static int
get_rank (const PpPlan *plan,
          guint         job)
{
  for (guint i = 0; i < plan->n_steps; i++)
    if (plan->steps[i].job == job)
      return (int) i;
  return -1;
}

static int
compare_ranks (gconstpointer a,
               gconstpointer b,
               gpointer      plan)
{
  return get_rank (plan, *(const guint *) b) - get_rank (plan, *(const guint *) a);
}

static void
list (PpBenchView *self,
      What         what,
      const char  *question,
      GCallback    callback)
{
  g_autoptr (GArray) jobs = g_array_new (FALSE, FALSE, sizeof (guint));
  GtkWidget *first = NULL;

  begin (self, question);
  for (guint job = 0; job < self->plan->order->n_jobs; job++)
    if (may_be (self, job, what))
      g_array_append_val (jobs, job);
  g_array_sort_with_data (jobs, compare_ranks, (gpointer) self->plan);
  for (guint i = 0; i < jobs->len; i++)
    {
      guint job = g_array_index (jobs, guint, i);
      g_autofree char *id = pp_job_dup_id (pp_document_get_panel (self->document),
                                           self->plan->order->n_knots, job);
      g_autofree char *label = describe (self, job);
      GtkWidget *button = add_answer (self, label, id, callback);

      gtk_label_set_wrap (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), TRUE);
      first = first != NULL ? first : button;
    }
  add_answer (self, _("No, nothing happened"), NULL, G_CALLBACK (cancel_cb));
  gtk_widget_grab_focus (first != NULL ? first
                                       : gtk_widget_get_last_child (GTK_WIDGET (self->answers)));
}

void
pp_bench_choice_ask (PpBenchView *self,
                     gboolean     broke)
{
  if (broke)
    list (self, BROKE, _("What broke?"), G_CALLBACK (broke_cb));
  else
    list (self, FELL, _("What came off?"), G_CALLBACK (fell_cb));
}

void
pp_bench_choice_ask_where (PpBenchView *self)
{
  list (self, MOVED, _("What sits elsewhere?"), G_CALLBACK (moved_cb));
}
