/* bench-show.c: what is to be done now, on the screen of the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It is read anew from panel, plan and clock a few times a second (glue/bench.h); nothing here
 * counts time. So a closed lid, or a file opened again, changes nothing.
 */
#include "config.h"

#include "desk/bench-view-private.h"

#include "desk/bell.h"
#include "desk/css-class.h"
#include "desk/say.h"
#include "glue/last-act.h"
#include "panel/i18n.h"
#include "sheet/words.h"

#define FLASHES 8 /* of FLASH_MS, when a mix is soon past */
#define FLASH_MS 350

/* Lines with a little room between them. */
static void
say_lines (GtkLabel   *label,
           const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text, -1);
  g_auto (GStrv) lines = g_strsplit (escaped, "\n", -1);
  g_autofree char *markup = g_strjoinv ("\n<span size=\"40%\">\n</span>", lines);

  if (!g_str_equal (gtk_label_get_label (label), markup))
    gtk_label_set_markup (label, markup);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
}

/* The flash: on and off for a while, or where nothing is to move, once. */
static gboolean
flash_cb (gpointer data)
{
  PpBenchView *self = data;
  gboolean animates;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations", &animates,
                NULL);
  self->flash = self->flash > 0 ? self->flash - 1 : 0;
  pp_css_class_set (self->clock_box, "pp-flash",
                    self->flash > 0 && (!animates || self->flash % 2 == 1));
  return self->flash > 0 ? G_SOURCE_CONTINUE : G_SOURCE_REMOVE;
}

static guint
find_mixing (const PpPanel *panel)
{
  for (guint i = panel->log->len; i-- > 0;)
    if (((const PpLogEntry *) g_ptr_array_index (panel->log, i))->what == PP_LOG_MIXED)
      return i + 1;
  return 0;
}

/* Once a mix. */
static void
ring (PpBenchView        *self,
      const PpBenchWords *words)
{
  guint mixing = find_mixing (pp_document_get_panel (self->document));

  if (!words->is_late || self->rung == mixing)
    return;
  self->rung = mixing;
  pp_bell_ring (GTK_WIDGET (self));
  if (self->flash == 0)
    g_timeout_add_full (G_PRIORITY_DEFAULT, FLASH_MS, flash_cb, g_object_ref (self),
                        g_object_unref);
  self->flash = FLASHES;
}

static void
show_clock (PpBenchView        *self,
            const PpBenchWords *words)
{
  gboolean is_open = *words->age != '\0';

  pp_say_or_hide (self->age, words->age);
  pp_say (self->life_words, words->life);
  gtk_widget_set_visible (GTK_WIDGET (self->life), is_open);
  gtk_progress_bar_set_fraction (self->life, words->share);
  pp_css_class_set (self->clock_box, "pp-late", words->is_late);
  gtk_widget_set_visible (self->clock_box, is_open || *words->life != '\0');
  ring (self, words);
}

/* A piece's middle, or tip and base, each on a line of its own, and where it points. */
static char *
say_where (PpBenchView *self)
{
  PpSheetJob job = pp_words_get_job (self->plan);
  g_autoptr (PpJobWords) words = pp_job_words_new (&job, self->bench.step->job);
  g_auto (GStrv) lefts = g_strsplit (words->from_left, "\n", -1);
  g_auto (GStrv) tops = g_strsplit (words->from_top, "\n", -1);
  const char *unit = job.units == PP_UNITS_INCH ? _("in") : _("mm");
  GString *text = g_string_new (NULL);

  if (g_strv_length (lefts) == 1)
    /* Translators: figures with their unit, "mm" or "in" */
    g_string_append_printf (text, _("From the left: %s %s\nFrom the top: %s %s"), lefts[0], unit,
                            tops[0], unit);
  else
    /* Translators: the two ends of a long piece, each with its distance from the left, from the top
     * and the unit: "tip 95, 140 mm" */
    g_string_append_printf (text, _("From the left, from the top:\n%s, %s %s\n%s, %s %s"), lefts[0],
                            tops[0], unit, lefts[1], tops[1], unit);
  if (*words->turn != '\0')
    g_string_append_printf (text, _("\nPoints to %s o\342\200\231clock"), words->turn);
  return g_string_free (text, FALSE);
}

static void
show_piece (PpBenchView        *self,
            const PpBenchWords *words)
{
  guint n_knots = self->plan->order->n_knots;
  guint job = self->bench.step->job;
  g_autofree char *where = say_where (self);
  g_autofree char *spoken = g_strdup_printf ("%s. %s. %s", words->title, where, words->needs);

  pp_say (self->name, words->title);
  pp_say (self->where, where);
  pp_say_or_hide (self->needs, words->needs);
  gtk_widget_set_visible (self->back_box, job >= n_knots);
  pp_back_view_show (self->back, job >= n_knots ? self->plan->check : NULL,
                     job >= n_knots ? job - n_knots : 0);
  pp_glue_map_show (self->map, self->document, self->plan,
                    (int) (self->bench.step - self->plan->steps), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->map), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
}

static void
show_screen (PpBenchView        *self,
             const PpBenchWords *words)
{
  gboolean is_place = self->is_ready && words->next == PP_NEXT_PLACE;
  gboolean is_other = self->step != self->bench.step || self->next != words->next;

  self->step = self->bench.step;
  self->next = words->next;
  if (is_place && is_other)
    show_piece (self, words);
  gtk_stack_set_visible_child_name (self->screen, is_place ? "place" : "words");
  if (is_place)
    return;
  if (!self->is_ready)
    {
      g_autofree char *before = pp_bench_words_before (self->plan,
                                                       pp_document_get_panel (self->document));

      self->next = PP_NEXT_PLAN;
      pp_say (self->title, _("Before the first mix"));
      say_lines (self->lines, before);
      return;
    }
  pp_say (self->title, words->title);
  say_lines (self->lines, words->lines);
}

static void
say_on (GtkWidget  *button,
        GtkLabel   *label,
        const char *text)
{
  if (g_str_equal (gtk_label_get_text (label), text))
    return;
  gtk_label_set_text (label, text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
show_bell (GtkButton *button)
{
  const char *words = pp_bell_is_on () ? _("Bell on") : _("Bell off");

  if (g_strcmp0 (gtk_button_get_label (button), words) != 0)
    gtk_button_set_label (button, words);
}

static void
show_controls (PpBenchView        *self,
               const PpBenchWords *words)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_autofree char *last = pp_last_act_find (panel);
  g_autofree char *name = last != NULL && *last != '\0' ? pp_bench_words_name (self->plan, last)
                                                        : g_strdup (_("mixed"));
  /* Translators: a stray press, by what it said: "Take back: Oxeye" */
  g_autofree char *take_back = g_strdup_printf (_("Take back: %s"), name);
  gboolean waits = self->is_ready && words->waits
                   && (!self->is_hurried || words->action == NULL);

  say_on (self->act, self->act_words,
          !self->is_ready ? _("All ready") : waits ? words->wait : words->action);
  pp_css_class_set (self->act, "pp-waits", waits);
  gtk_widget_set_visible (self->hurry, waits && words->next != PP_NEXT_PLAN);
  gtk_widget_set_visible (self->take_back, last != NULL);
  say_on (self->take_back, self->take_back_words, take_back);
  gtk_widget_set_visible (self->happened, self->is_ready);
  /* at the end it is the big control */
  gtk_widget_set_visible (self->leave, words->next != PP_NEXT_NONE);
  gtk_widget_set_sensitive (self->remixed, words->next == PP_NEXT_PLACE);
  gtk_widget_set_visible (self->bar, TRUE);
  show_bell (GTK_BUTTON (self->bell));
}

void
pp_bench_view_read (PpBenchView *self,
                    GDateTime   *now)
{
  pp_bench_read (&self->bench, self->plan, pp_document_get_panel (self->document), now);
  if (self->bench.next != PP_NEXT_MIX || !self->is_hurried || !self->bench.can_hurry)
    return;
  self->bench.next = PP_NEXT_PLACE;
  self->bench.wait = 0;
}

/* The plan in hand, or if it does not hold any more, one that does and has come in. */
static void
read_bench (PpBenchView *self,
            GDateTime   *now)
{
  const PpPlan *newer;

  pp_bench_view_read (self, now);
  newer = pp_document_is_checked (self->document) ? pp_document_get_plan (self->document) : NULL;
  if (self->bench.next != PP_NEXT_PLAN || newer == NULL || newer == self->plan)
    return;
  pp_plan_ref (newer);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->plan = newer;
  self->step = NULL;
  pp_bench_view_read (self, now);
}

/* There is a plan of what is left, and it cannot be followed. */
static gboolean
is_stuck (PpBenchView *self)
{
  return self->bench.next == PP_NEXT_PLAN && pp_document_is_checked (self->document)
         && pp_document_get_plan (self->document) == self->plan;
}

static void
show_stuck (PpBenchView *self)
{
  PpSheetJob job = pp_words_get_job (self->plan);

  pp_say (self->title, _("The rest cannot be glued as it lies"));
  say_lines (self->lines, pp_no_order_words (&job));
}

/* Where what had the focus is gone, Space must still find the big control. */
static void
hold_focus (PpBenchView *self)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (gtk_widget_get_visible (GTK_WIDGET (self->happenings)))
    return;
  if (focus == NULL || !gtk_widget_get_mapped (focus))
    gtk_widget_grab_focus (self->act);
}

void
pp_bench_view_refresh (PpBenchView *self)
{
  g_autoptr (GDateTime) now = pp_clock_now (&self->clock);
  g_autoptr (PpBenchWords) words = NULL;

  if (self->document == NULL || self->is_choosing || pp_bench_keep_is_writing (self->keep))
    return;
  read_bench (self, now);
  words = pp_bench_words_new (&self->bench, self->plan, pp_document_get_panel (self->document),
                              now);
  pp_say (self->count, self->is_ready ? words->count : "");
  /* it holds what stands beside it at the other end, and would be told of by its class */
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->count), GTK_ACCESSIBLE_STATE_HIDDEN,
                               !self->is_ready, -1);
  show_screen (self, words);
  if (is_stuck (self) && self->is_ready)
    show_stuck (self);
  show_clock (self, words);
  show_controls (self, words);
  pp_say_or_hide (self->meanwhile, self->is_ready ? words->meanwhile : "");
  hold_focus (self);
}
