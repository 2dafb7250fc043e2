/* hanging-page.c: the page that shows how the panel will hang.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing follows each edit; words are set at most every PACE_MS, as fast as they can be read.
 */
#include "config.h"

#include "desk/hanging-page.h"

#include "desk/card.h"
#include "desk/edit-acts.h"
#include "desk/finding-acts.h"
#include "desk/finding-row.h"
#include "desk/focus-within.h"
#include "desk/folding.h"
#include "desk/hanging-view.h"
#include "desk/hanging-words.h"
#include "desk/keyed-box.h"
#include "desk/lines.h"
#include "desk/say.h"
#include "desk/side-layout.h"
#include "desk/template.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/hanging-facts.h"

#include <math.h>

#define PACE_MS 200

struct _PpHangingPage
{
  GtkWidget      parent_instance;
  PpDocument    *document;
  GtkWidget     *body;
  PpHangingView *view;
  GtkLabel      *sentence;
  GtkWidget     *put_wire_on;
  PpCard        *card;
  GtkGrid       *facts;
  GPtrArray     *titles;  /* GtkLabel, borrowed, as the rows of facts */
  GPtrArray     *values;
  GtkWidget     *heading;
  GtkBox        *rows;    /* PpFindingRow */
  GtkWidget     *ways;
  GtkWidget     *level;
  GtkWidget     *middle;
  GtkWidget     *slipped;
  guint          timer;
  gint64         shown_at; /* monotonic, us */
};

G_DEFINE_FINAL_TYPE (PpHangingPage, pp_hanging_page, GTK_TYPE_WIDGET)

enum
{
  PROP_DOCUMENT = 1,
};

/* What hides the wire is asked about too: it changes as holes move. */
static gboolean
is_said_here (const PpFinding *finding)
{
  static const char * const hidden[] = { "wire-shows", "hidden-barely", "hole-shows", "knot-shows",
                                         "knot-barely", NULL };

  return pp_hanging_is_about (finding) || g_strv_contains (hidden, finding->code);
}

static void
show_me_cb (GtkWidget     *row,
            PpHangingPage *self)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  int index = pp_finding_acts_find (findings, gtk_widget_get_name (row));

  if (index >= 0)
    pp_hanging_view_light (self->view,
                           ((const PpFinding *) g_ptr_array_index (findings, (guint) index))->at);
}

static void
put_right_cb (GtkWidget     *row,
              PpHangingPage *self)
{
  pp_finding_acts_put_right (row, self->document);
}

static void
quiet_cb (GtkWidget     *row,
          gboolean       quiet,
          PpHangingPage *self)
{
  pp_finding_acts_quiet (row, self->document, quiet);
}

static GtkWidget *
make_row (const char *key,
          gpointer    data)
{
  GtkWidget *row = pp_finding_row_new ();

  g_signal_connect (row, "show-me", G_CALLBACK (show_me_cb), data);
  g_signal_connect (row, "put-right", G_CALLBACK (put_right_cb), data);
  g_signal_connect (row, "quiet", G_CALLBACK (quiet_cb), data);
  return row;
}

/* With the numbers that they have on the glass. */
static void
sync_rows (PpHangingPage *self)
{
  GPtrArray *findings = pp_document_get_findings (self->document);
  g_autoptr (GPtrArray) keys = pp_finding_keys (findings);
  g_autoptr (GPtrArray) here = g_ptr_array_new ();

  for (guint i = 0; i < findings->len; i++)
    if (is_said_here (g_ptr_array_index (findings, i)))
      g_ptr_array_add (here, g_ptr_array_index (keys, i));
  pp_keyed_box_sync (self->rows, here, make_row, self);
  for (guint i = 0; i < findings->len; i++)
    if (is_said_here (g_ptr_array_index (findings, i)))
      pp_finding_row_set (PP_FINDING_ROW (pp_keyed_box_find (self->rows,
                                                             g_ptr_array_index (keys, i))),
                          g_ptr_array_index (findings, i), i + 1, findings->len);
  gtk_widget_set_visible (self->heading, here->len > 0);
}

static GtkWidget *
make_fact_label (const char *style,
                 float       xalign)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, style);
  return label;
}

static void
add_fact_row (PpHangingPage *self)
{
  GtkWidget *title = make_fact_label ("pp-faint", 0), *value = make_fact_label ("numeric", 1);
  int row = (int) self->titles->len;

  gtk_widget_set_hexpand (title, TRUE);
  gtk_grid_attach (self->facts, title, 0, row, 1, 1);
  gtk_grid_attach (self->facts, value, 1, row, 1, 1);
  g_ptr_array_add (self->titles, title);
  g_ptr_array_add (self->values, value);
}

static void
show_facts (PpHangingPage *self,
            const PpFacts *facts)
{
  guint n = facts->facts != NULL ? facts->facts->len : 0;

  while (self->titles->len < n)
    add_fact_row (self);
  for (guint i = 0; i < self->titles->len; i++)
    {
      const PpFact *fact = i < n ? &g_array_index (facts->facts, PpFact, i) : NULL;

      pp_say_or_hide (g_ptr_array_index (self->titles, i), fact != NULL ? fact->label : NULL);
      pp_say_or_hide (g_ptr_array_index (self->values, i), fact != NULL ? fact->value : NULL);
    }
}

static void
sync_facts (PpHangingPage *self,
            const PpCheck *check)
{
  PpUnits units = check->panel->units;
  g_auto (PpFacts) facts = { 0 };

  pp_hanging_facts_add (&facts, check, units);
  if (check->hang != NULL && isfinite (check->hang->wire_angle))
    pp_facts_add (&facts, _("The wire rises from level by"),
                  pp_angle_format (check->hang->wire_angle));
  if (check->hang != NULL && check->panel->display->place == PP_PLACE_WALL
      && isfinite (check->hang->wall_push) && check->hang->wall_push > 0)
    pp_facts_add (&facts, _("Its lower edge presses on the wall like"),
                  pp_hanging_words_pull (check->hang->wall_push, units));
  show_facts (self, &facts);
}

static void
show_way (PpHangingPage *self,
          GtkWidget     *button,
          PpHungHow      how)
{
  double tilt;
  gboolean is_possible = pp_hanging_view_get_tilt (self->view, how, &tilt);

  gtk_widget_set_sensitive (button, is_possible);
  if (!is_possible)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), FALSE);
}

static void
show_ways (PpHangingPage *self)
{
  double tilt;

  show_way (self, self->level, PP_HUNG_LEVEL);
  show_way (self, self->middle, PP_HUNG_MIDDLE);
  show_way (self, self->slipped, PP_HUNG_SLIPPED);
  gtk_widget_set_visible (self->ways,
                          pp_hanging_view_get_tilt (self->view, PP_HUNG_MIDDLE, &tilt));
}

static void
refresh (PpHangingPage *self)
{
  const PpCheck *check = pp_document_get_check (self->document);
  g_autofree char *sentence = NULL;

  g_clear_handle_id (&self->timer, g_source_remove);
  self->shown_at = g_get_monotonic_time ();
  if (check == NULL)
    return;
  sentence = pp_hanging_words_sentence (check->panel, check->hang);
  pp_say_or_hide (self->sentence, sentence);
  gtk_widget_set_visible (self->put_wire_on,
                          pp_document_get_panel (self->document)->wire == NULL);
  sync_facts (self, check);
  sync_rows (self);
  show_ways (self);
}

static gboolean
refresh_cb (gpointer data)
{
  PpHangingPage *self = data;

  self->timer = 0;
  refresh (self);
  return G_SOURCE_REMOVE;
}

/* Behind another page nothing is read. */
static void
checked_cb (PpDocument    *document,
            PpHangingPage *self)
{
  gint64 wait = PACE_MS - (g_get_monotonic_time () - self->shown_at) / 1000;

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  if (wait <= 0)
    refresh (self);
  else if (self->timer == 0)
    self->timer = g_timeout_add ((guint) wait, refresh_cb, self);
}

static void
way_cb (GtkToggleButton *button,
        PpHangingPage   *self)
{
  GtkWidget *widget = GTK_WIDGET (button);

  if (!gtk_toggle_button_get_active (button))
    return;
  pp_hanging_view_set_how (self->view, widget == self->middle    ? PP_HUNG_MIDDLE
                                       : widget == self->slipped ? PP_HUNG_SLIPPED
                                                                 : PP_HUNG_LEVEL);
}

static void
put_wire_on_cb (GtkButton     *button,
                PpHangingPage *self)
{
  pp_edit_acts_put_wire_on (self->document);
}

static void
leave_cb (PpCard        *card,
          PpHangingPage *self)
{
  gtk_widget_child_focus (GTK_WIDGET (self->view), GTK_DIR_TAB_FORWARD);
}

/* The card is here for holes and wire. */
static void
pp_hanging_page_map (GtkWidget *widget)
{
  PpHangingPage *self = PP_HANGING_PAGE (widget);

  GTK_WIDGET_CLASS (pp_hanging_page_parent_class)->map (widget);
  if (self->document == NULL)
    return;
  if (pp_document_get_chosen (self->document) != PP_CHOSEN_HOLE)
    pp_document_choose (self->document, pp_document_get_panel (self->document)->wire != NULL
                                          ? PP_CHOSEN_WIRE : PP_CHOSEN_NOTHING, NULL);
  refresh (self);
}

static void
pp_hanging_page_measure (GtkWidget      *widget,
                         GtkOrientation  orientation,
                         int             for_size,
                         int            *minimum,
                         int            *natural,
                         int            *minimum_baseline,
                         int            *natural_baseline)
{
  gtk_widget_measure (PP_HANGING_PAGE (widget)->body, orientation, for_size, minimum, natural,
                      minimum_baseline, natural_baseline);
}

static void
pp_hanging_page_size_allocate (GtkWidget *widget,
                               int        width,
                               int        height,
                               int        baseline)
{
  gtk_widget_allocate (PP_HANGING_PAGE (widget)->body, width, height, baseline, NULL);
}

static void
let_go (PpHangingPage *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
pp_hanging_page_dispose (GObject *object)
{
  PpHangingPage *self = PP_HANGING_PAGE (object);

  let_go (self);
  g_clear_pointer (&self->titles, g_ptr_array_unref);
  g_clear_pointer (&self->values, g_ptr_array_unref);
  pp_template_dispose (GTK_WIDGET (self), PP_TYPE_HANGING_PAGE);
  G_OBJECT_CLASS (pp_hanging_page_parent_class)->dispose (object);
}

static gboolean
pp_hanging_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_child_focus (GTK_WIDGET (PP_HANGING_PAGE (widget)->view),
                                 GTK_DIR_TAB_FORWARD);
}

static void
pp_hanging_page_set_property (GObject      *object,
                              guint         prop_id,
                              const GValue *value,
                              GParamSpec   *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    pp_hanging_page_set_document (PP_HANGING_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, body);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, view);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, sentence);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, put_wire_on);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, card);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, facts);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, heading);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, rows);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, ways);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, level);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, middle);
  gtk_widget_class_bind_template_child (widget_class, PpHangingPage, slipped);
}

static void
pp_hanging_page_class_init (PpHangingPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_hanging_page_dispose;
  G_OBJECT_CLASS (klass)->set_property = pp_hanging_page_set_property;
  g_object_class_install_property (G_OBJECT_CLASS (klass), PROP_DOCUMENT,
                                   g_param_spec_object ("document", NULL, NULL, PP_TYPE_DOCUMENT,
                                                        G_PARAM_WRITABLE
                                                        | G_PARAM_STATIC_STRINGS));
  widget_class->map = pp_hanging_page_map;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_hanging_page_grab_focus;
  widget_class->measure = pp_hanging_page_measure;
  widget_class->size_allocate = pp_hanging_page_size_allocate;
  g_type_ensure (PP_TYPE_CARD);
  g_type_ensure (PP_TYPE_HANGING_VIEW);
  g_type_ensure (PP_TYPE_SIDE_LAYOUT);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/hanging-page.ui");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, way_cb);
  gtk_widget_class_bind_template_callback (widget_class, put_wire_on_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
}

static void
pp_hanging_page_init (PpHangingPage *self)
{
  self->titles = g_ptr_array_new ();
  self->values = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
pp_hanging_page_set_document (PpHangingPage *self,
                              PpDocument    *document)
{
  g_return_if_fail (PP_IS_HANGING_PAGE (self));
  g_return_if_fail (document == NULL || PP_IS_DOCUMENT (document));

  let_go (self);
  pp_lines_clear (self->rows);
  pp_hanging_view_set_document (self->view, document);
  pp_card_set_document (self->card, document);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->level), TRUE);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  g_signal_connect (document, "checked", G_CALLBACK (checked_cb), self);
}
