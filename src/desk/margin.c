/* margin.c: the margin beside the glass: the findings in words, worst first.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks come as fast as the maker drags. Sentences that change faster than they can be read help
 * nobody, and laying them out costs frames: so they are set at most every PACE_MS, the last ones
 * always. The findings of the document may be other ones by then: nothing here keeps one or its
 * number, only the key by which it is found again.
 */
#include "config.h"

#include "desk/margin-private.h"

#include "desk/keyed-box.h"
#include "desk/margin-words.h"
#include "desk/say.h"
#include "desk/template.h"
#include "desk/tick.h"
#include "panel/i18n.h"

#define PACE_MS 200   /* five times a second */
#define PLAN_MS 100   /* a check waits this long for its plan, so that no finding of it flickers */
#define MOMENT_MS 700 /* what may pass before "Looking" is said */

G_DEFINE_FINAL_TYPE (PpMargin, pp_margin, GTK_TYPE_WIDGET)

static guint show_me, light;

void
pp_margin_show_me (PpMargin *self,
                   guint     index)
{
  g_signal_emit (self, show_me, 0, index);
}

void
pp_margin_light (PpMargin *self,
                 int       index)
{
  g_signal_emit (self, light, 0, index);
}

/* GtkExpander would do as well, but trips over its folded child when Tab leaves it (GTK 4.8). */
static void
say_folded (GtkToggleButton *button,
            GtkLabel        *label,
            guint            n,
            const char      *words)
{
  pp_say_or_hide (label, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  gtk_widget_set_visible (GTK_WIDGET (button), n > 0);
  if (n == 0)
    gtk_toggle_button_set_active (button, FALSE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_STATE_EXPANDED,
                               gtk_toggle_button_get_active (button), -1);
}

static void
say_calm (PpMargin *self,
          gboolean  is_calm,
          gboolean  waits)
{
  const PpPanel *panel = pp_document_get_panel (self->document);

  if (is_calm)
    pp_say_or_hide (self->calm_words, pp_margin_words_calm (panel, waits));
  gtk_widget_set_visible (self->calm, is_calm);
  gtk_widget_set_visible (self->tick, !waits && panel->placements->len > 0);
}

static void
sync_words (PpMargin *self)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  guint n_known = pp_document_get_known (self->document)->len;
  guint n_folded = findings->len - MIN (findings->len, PP_FOLDING_OPEN);
  gboolean waits = pp_margin_words_waits (self->document);
  gboolean is_unfolded = gtk_toggle_button_get_active (self->folded);
  g_autofree char *counts = pp_margin_words_counts (findings);
  g_autofree char *folded = pp_margin_words_folded (n_folded, is_unfolded);
  g_autofree char *known = pp_margin_words_known (n_known);
  g_autofree char *waiting = waits ? pp_margin_words_waiting () : NULL;

  pp_say_or_hide (self->heading, findings->len > 0 ? counts : NULL);
  gtk_widget_set_visible (self->all_right, findings->len > 1);
  say_calm (self, findings->len == 0, waits);
  say_folded (self->folded, self->folded_words, n_folded, folded);
  say_folded (self->known, self->known_words, n_known, known);
  pp_say_or_hide (self->waiting, waiting);
}

/* Folded they cost nothing. */
static void
sync_figures (PpMargin *self)
{
  gboolean is_open = gtk_toggle_button_get_active (self->in_figures);

  gtk_widget_set_visible (GTK_WIDGET (self->in_figures), TRUE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->in_figures), GTK_ACCESSIBLE_STATE_EXPANDED,
                               is_open, -1);
  if (is_open)
    pp_panel_figures_show (self->figures, pp_document_get_check (self->document));
}

static void
refresh (PpMargin *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  self->shown_at = g_get_monotonic_time ();
  sync_words (self);
  pp_margin_sync (self);
  sync_figures (self);
}

static gboolean
refresh_cb (gpointer data)
{
  PpMargin *self = data;

  self->timer = 0;
  refresh (self);
  return G_SOURCE_REMOVE;
}

static void
checked_cb (PpDocument *document,
            PpMargin   *self)
{
  gint64 since = (g_get_monotonic_time () - self->shown_at) / 1000;
  gint64 wait = MAX (PACE_MS - since, pp_document_get_plan (document) == NULL ? PLAN_MS : 0);

  if (self->shown_at == 0 || wait <= 0)
    refresh (self);
  else if (self->timer == 0)
    self->timer = g_timeout_add ((guint) wait, refresh_cb, self);
}

static gboolean
looking_cb (gpointer data)
{
  PpMargin *self = data;

  self->timer = 0;
  gtk_widget_set_visible (self->tick, FALSE);
  pp_say_or_hide (self->calm_words, _("Looking the panel over …"));
  gtk_widget_set_visible (self->calm, TRUE);
  return G_SOURCE_REMOVE;
}

/* Twice: the first tick comes before the row has its place. */
static gboolean
focus_opened_cb (GtkWidget     *widget,
                 GdkFrameClock *clock,
                 gpointer       data)
{
  PpMargin *self = PP_MARGIN (widget);
  int *ticks = data;
  GtkWidget *row;

  if (++*ticks < 2)
    return G_SOURCE_CONTINUE;
  row = self->to_focus != NULL ? pp_keyed_box_find (self->open, self->to_focus) : NULL;
  g_clear_pointer (&self->to_focus, g_free);
  if (row != NULL)
    gtk_widget_grab_focus (row);
  return G_SOURCE_REMOVE;
}

void
pp_margin_open_key (PpMargin   *self,
                    const char *key)
{
  pp_folding_ask (self->folding, key);
  refresh (self);
  if (self->to_focus == NULL)
    gtk_widget_add_tick_callback (GTK_WIDGET (self), focus_opened_cb, g_new0 (int, 1), g_free);
  g_free (self->to_focus);
  self->to_focus = g_strdup (key);
}

static void
unfolded_cb (GtkToggleButton *button,
             PpMargin        *self)
{
  if (self->document != NULL)
    refresh (self);
}

static void
pp_margin_measure (GtkWidget      *widget,
                   GtkOrientation  orientation,
                   int             for_size,
                   int            *minimum,
                   int            *natural,
                   int            *minimum_baseline,
                   int            *natural_baseline)
{
  gtk_widget_measure (PP_MARGIN (widget)->scroller, orientation, for_size, minimum, natural, NULL,
                      NULL);
}

static void
pp_margin_size_allocate (GtkWidget *widget,
                         int        width,
                         int        height,
                         int        baseline)
{
  gtk_widget_allocate (PP_MARGIN (widget)->scroller, width, height, baseline, NULL);
}

static void
let_go (PpMargin *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_pointer (&self->to_focus, g_free);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
pp_margin_dispose (GObject *object)
{
  PpMargin *self = PP_MARGIN (object);

  let_go (self);
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_MARGIN);
  G_OBJECT_CLASS (pp_margin_parent_class)->dispose (object);
}

static void
pp_margin_finalize (GObject *object)
{
  pp_folding_free (PP_MARGIN (object)->folding);
  G_OBJECT_CLASS (pp_margin_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpMargin, scroller);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, heading);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, all_right);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, calm);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, tick);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, calm_words);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, open);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, folded);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, folded_words);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, lines);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, known);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, known_words);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, quiet);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, waiting);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, in_figures);
  gtk_widget_class_bind_template_child (widget_class, PpMargin, figures);
  gtk_widget_class_bind_template_callback (widget_class, unfolded_cb);
  gtk_widget_class_bind_template_callback (widget_class, pp_margin_key_cb);
}

static void
pp_margin_class_init (PpMarginClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_margin_dispose;
  object_class->finalize = pp_margin_finalize;
  widget_class->measure = pp_margin_measure;
  widget_class->size_allocate = pp_margin_size_allocate;
  show_me = g_signal_new ("show-me", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                          NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  light = g_signal_new ("light", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                        G_TYPE_NONE, 1, G_TYPE_INT);
  g_type_ensure (PP_TYPE_PANEL_FIGURES);
  g_type_ensure (PP_TYPE_TICK);
  gtk_widget_class_set_css_name (widget_class, "pp-margin");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/petalpane/Petalpane/margin.ui");
  bind_children (widget_class);
}

/* What GTK builds its widgets of would be told by the names of its classes. */
static void
hide_inner (GtkWidget *widget)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkAccessibleRole role = gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (child));

      if (role == GTK_ACCESSIBLE_ROLE_WIDGET || role == GTK_ACCESSIBLE_ROLE_SCROLLBAR)
        g_object_set (child, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
      hide_inner (child);
    }
}

static void
pp_margin_init (PpMargin *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  hide_inner (GTK_WIDGET (self));
  self->folding = pp_folding_new ();
}

static void
clear (PpMargin *self)
{
  g_clear_pointer (&self->folding, pp_folding_free);
  self->folding = pp_folding_new ();
  self->shown_at = 0;
  pp_margin_clear_rows (self);
  gtk_toggle_button_set_active (self->folded, FALSE);
  gtk_toggle_button_set_active (self->known, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->folded), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->known), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->in_figures), FALSE);
  gtk_widget_set_visible (self->calm, FALSE);
  gtk_widget_set_visible (self->all_right, FALSE);
  pp_say_or_hide (self->heading, NULL);
  pp_say_or_hide (self->waiting, NULL);
}

void
pp_margin_set_document (PpMargin   *self,
                        PpDocument *document)
{
  g_return_if_fail (PP_IS_MARGIN (self));
  g_return_if_fail (document == NULL || PP_IS_DOCUMENT (document));

  let_go (self);
  clear (self);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  g_signal_connect (document, "checked", G_CALLBACK (checked_cb), self);
  if (pp_document_get_check (document) != NULL)
    refresh (self);
  else
    self->timer = g_timeout_add (MOMENT_MS, looking_cb, self);
}

void
pp_margin_open (PpMargin *self,
                guint     index)
{
  g_autoptr (GPtrArray) keys = NULL;

  g_return_if_fail (PP_IS_MARGIN (self));

  if (self->document == NULL)
    return;
  keys = pp_finding_keys (pp_document_get_findings (self->document));
  if (index < keys->len)
    pp_margin_open_key (self, g_ptr_array_index (keys, index));
}
