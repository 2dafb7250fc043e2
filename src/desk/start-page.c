/* start-page.c: what the window shows before there is a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/start-page.h"

#include "desk/clock.h"
#include "desk/focus-within.h"
#include "desk/lines.h"
#include "desk/new-panel-form.h"
#include "desk/own-templates.h"
#include "desk/panel-row.h"
#include "desk/recent.h"
#include "desk/samples-folder.h"
#include "desk/starter.h"
#include "desk/template.h"
#include "desk/templating.h"
#include "desk/variants.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"

#define MOST_RECENT 6

struct _PpStartPage
{
  GtkWidget       parent_instance;
  PpNewPanelForm *form;
  GtkWidget      *recent;
  GtkWidget      *no_recent;
  GtkWidget      *templates;
  GtkWidget      *templates_part;
  GtkWidget      *samples;
  GtkWidget      *samples_part;
  GtkWidget      *scroller;
  gboolean        is_stale; /* the recent panels are others than those shown */
  char           *state;    /* of the templates shown */
};

G_DEFINE_FINAL_TYPE (PpStartPage, pp_start_page, GTK_TYPE_WIDGET)

enum
{
  BEGIN,
  OPEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
begin_cb (PpNewPanelForm   *form,
          const PpNewPanel *wish,
          PpStartPage      *self)
{
  g_autofree char *today = pp_clock_today ();
  g_autoptr (GPtrArray) tray = pp_starter_pieces ();
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = NULL;
  PpNewPanel dated = *wish;

  dated.created = today;
  panel = pp_new_panel (&dated, tray, &error);
  g_assert_no_error (error); /* the form asks for nothing that cannot be */
  g_signal_emit (self, signals[BEGIN], 0, panel);
}

static void
tile_cb (PpPanelTile *tile,
         PpStartPage *self)
{
  g_signal_emit (self, signals[OPEN], 0, pp_panel_tile_get_file (tile),
                 pp_panel_tile_is_sample (tile));
}

static void
fill (PpStartPage    *self,
      GtkWidget      *box,
      GPtrArray      *files,
      gboolean        are_samples,
      const PpRowAct *acts)
{
  pp_lines_clear (GTK_BOX (box));
  for (guint i = 0; i < files->len; i++)
    {
      GtkWidget *row = pp_panel_row_new (g_ptr_array_index (files, i), are_samples, acts);

      g_signal_connect (pp_panel_row_get_tile (row), "clicked", G_CALLBACK (tile_cb), self);
      gtk_box_append (GTK_BOX (box), row);
    }
}

static void
show_recent (PpStartPage *self)
{
  g_autoptr (GPtrArray) files = pp_recent_list (gtk_recent_manager_get_default (), MOST_RECENT);
  const PpRowAct acts[] = {
    { _("Another like this…"), "shelf.again" },
    { _("Fit to another size…"), "shelf.fit" },
    { _("Take it off this list"), "shelf.forget" },
    { NULL },
  };

  self->is_stale = FALSE;
  fill (self, self->recent, files, FALSE, acts);
  gtk_widget_set_visible (self->no_recent, files->len == 0);
}

/* Each panel shown is read and drawn: not for a page that nobody sees. */
static void
recent_cb (PpStartPage      *self,
           GtkRecentManager *manager)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_recent (self);
  else
    self->is_stale = TRUE;
}

/* Where others than those shown are there: each is read and drawn. */
static void
show_templates (PpStartPage *self)
{
  g_autofree char *state = pp_own_templates_get_state ();
  g_autoptr (GPtrArray) files = NULL;
  const PpRowAct acts[] = {
    { _("Rename…"), "shelf.rename" },
    { _("Put away…"), "shelf.put-away" },
    { NULL },
  };

  if (g_strcmp0 (state, self->state) == 0)
    return;
  g_free (self->state);
  self->state = g_steal_pointer (&state);
  files = pp_own_templates_list ();
  fill (self, self->templates, files, TRUE, acts);
  gtk_widget_set_visible (self->templates_part, files->len > 0);
}

static void
show_samples (PpStartPage *self)
{
  g_autoptr (GPtrArray) files = pp_samples_folder_list ();

  fill (self, self->samples, files, TRUE, NULL);
  gtk_widget_set_visible (self->samples_part, files->len > 0);
}

static void
pp_start_page_map (GtkWidget *widget)
{
  PpStartPage *self = PP_START_PAGE (widget);

  if (self->is_stale)
    show_recent (self);
  show_templates (self);
  GTK_WIDGET_CLASS (pp_start_page_parent_class)->map (widget);
}

/* A dialog over the page has done something with them. */
static void
active_cb (PpStartPage *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_templates (self);
}

static void
pp_start_page_root (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (pp_start_page_parent_class)->root (widget);
  g_signal_connect_object (gtk_widget_get_root (widget), "notify::is-active",
                           G_CALLBACK (active_cb), widget, G_CONNECT_SWAPPED);
}

static void
act_cb (GtkWidget  *widget,
        const char *action,
        GVariant   *uri)
{
  PpWindow *window = PP_WINDOW (gtk_widget_get_root (widget));
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (uri, NULL));

  if (g_str_equal (action, "shelf.again"))
    pp_variants_offer (window, file, FALSE);
  else if (g_str_equal (action, "shelf.fit"))
    pp_variants_offer (window, file, TRUE);
  else if (g_str_equal (action, "shelf.rename"))
    pp_templating_rename (window, file);
  else if (g_str_equal (action, "shelf.put-away"))
    pp_templating_put_away (window, file);
  else
    gtk_recent_manager_remove_item (gtk_recent_manager_get_default (),
                                    g_variant_get_string (uri, NULL), NULL);
}

static gboolean
pp_start_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (PP_START_PAGE (widget)->form));
}

static void
pp_start_page_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_START_PAGE);
  G_OBJECT_CLASS (pp_start_page_parent_class)->dispose (object);
}

static void
pp_start_page_finalize (GObject *object)
{
  g_free (PP_START_PAGE (object)->state);
  G_OBJECT_CLASS (pp_start_page_parent_class)->finalize (object);
}

static void
install_acts (GtkWidgetClass *widget_class)
{
  static const char * const acts[] = {
    "shelf.again", "shelf.fit", "shelf.forget", "shelf.rename", "shelf.put-away",
  };

  for (guint i = 0; i < G_N_ELEMENTS (acts); i++)
    gtk_widget_class_install_action (widget_class, acts[i], "s", act_cb);
}

static void
pp_start_page_class_init (PpStartPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_start_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_start_page_finalize;
  widget_class->map = pp_start_page_map;
  widget_class->root = pp_start_page_root;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_start_page_grab_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[BEGIN] = g_signal_new ("begin", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[OPEN] = g_signal_new ("open", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 2, G_TYPE_FILE, G_TYPE_BOOLEAN);
  g_type_ensure (PP_TYPE_NEW_PANEL_FORM);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/start-page.ui");
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, form);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, recent);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, no_recent);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, templates);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, templates_part);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, samples);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, samples_part);
  gtk_widget_class_bind_template_child (widget_class, PpStartPage, scroller);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
  install_acts (widget_class);
}

/* A bar and the range in it would be heard by the names of their classes. */
static void
name_bar (GtkWidget *bar)
{
  for (GtkWidget *part = bar; part != NULL; part = gtk_widget_get_first_child (part))
    if (GTK_IS_SCROLLBAR (part) || GTK_IS_RANGE (part))
      gtk_accessible_update_property (GTK_ACCESSIBLE (part), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _("Scroll"), -1);
}

static void
pp_start_page_init (PpStartPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  name_bar (gtk_scrolled_window_get_hscrollbar (GTK_SCROLLED_WINDOW (self->scroller)));
  name_bar (gtk_scrolled_window_get_vscrollbar (GTK_SCROLLED_WINDOW (self->scroller)));
  show_samples (self);
  show_recent (self);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (recent_cb),
                           self, G_CONNECT_SWAPPED);
}
