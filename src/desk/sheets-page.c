/* sheets-page.c: the last page of the work: the sheets as they will print.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sheets are drawn only while the page is seen. What stands there while others are being drawn is
 * pale, so that nobody takes it for the panel of this moment.
 */
#include "config.h"

#include "desk/sheets-page.h"

#include "desk/drop-down.h"
#include "desk/exporting.h"
#include "desk/focus-within.h"
#include "desk/print.h"
#include "desk/say.h"
#include "desk/settings.h"
#include "desk/sheets-form.h"
#include "desk/sheets-view.h"
#include "desk/shown-page.h"
#include "desk/side-layout.h"
#include "desk/template.h"
#include "desk/true-scale.h"
#include "desk/typing.h"
#include "panel/i18n.h"

#define ZOOM_STEP 1.25
#define LOOK_MSEC 100
#define SHOW_AFTER 4 /* looks at what is being made, until it is said */

struct _PpSheetsPage
{
  GtkWidget       parent_instance;
  PpDocument     *document;
  PpSheetMaker   *maker;
  gboolean        is_stale;  /* to be drawn when the page is seen */
  gboolean        is_wanted; /* what the maker makes; else words stand there */
  guint           timer;     /* while something is being made */
  guint           n_looks;

  PpSheetsForm   *form;
  GtkWidget      *print;
  GtkDropDown    *format;
  GtkWidget      *export;
  GtkStack       *stack;     /* the pages, or words in their place */
  PpSheetsView   *view;
  GtkLabel       *words;
  GtkWidget      *again;
  GtkRevealer    *making;
  GtkProgressBar *bar;
  GtkLabel       *place;
  GtkLabel       *zoom;
};

G_DEFINE_FINAL_TYPE (PpSheetsPage, pp_sheets_page, GTK_TYPE_WIDGET)

enum
{
  PROP_DOCUMENT = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* `sentence` NULL: the pages themselves. */
static void
say (PpSheetsPage *self,
     const char   *sentence)
{
  if (sentence != NULL)
    gtk_label_set_text (self->words, sentence);
  gtk_widget_set_visible (self->again, FALSE);
  gtk_stack_set_visible_child_name (self->stack, sentence != NULL ? "words" : "pages");
}

static void
moved_cb (PpSheetsView *view,
          PpSheetsPage *self)
{
  guint page = pp_sheets_view_get_page (view);
  guint n = pp_sheets_view_get_n_pages (view);
  g_autofree char *place = g_strdup_printf (_("Page %u of %u"), page, n);
  g_autofree char *zoom = pp_true_scale_format (GTK_WIDGET (view), pp_sheets_view_get_scale (view));

  pp_say_or_hide (self->place, n > 0 ? place : NULL);
  pp_say_or_hide (self->zoom, n > 0 ? zoom : NULL);
}

/* Else it would be told as if it still stood there. */
static void
faded_cb (GtkRevealer *making)
{
  gtk_widget_set_visible (GTK_WIDGET (making), gtk_revealer_get_reveal_child (making));
}

static void
show_making (PpSheetsPage *self,
             gboolean      is_made)
{
  if (is_made)
    g_clear_handle_id (&self->timer, g_source_remove);
  else
    gtk_widget_set_visible (GTK_WIDGET (self->making), TRUE);
  gtk_revealer_set_reveal_child (self->making, !is_made);
}

static gboolean
look_cb (gpointer data)
{
  PpSheetsPage *self = data;
  double done = pp_sheet_maker_get_done (self->maker);

  gtk_progress_bar_set_fraction (self->bar, done);
  if (++self->n_looks >= SHOW_AFTER)
    show_making (self, FALSE);
  return G_SOURCE_CONTINUE;
}

static void
begin_making (PpSheetsPage *self)
{
  self->n_looks = 0;
  if (self->timer == 0)
    self->timer = g_timeout_add (LOOK_MSEC, look_cb, self);
  gtk_widget_add_css_class (GTK_WIDGET (self->view), "pp-stale");
}

static void
made_cb (PpSheetMaker *maker,
         PpSheetSet   *set,
         PpSheetsPage *self)
{
  show_making (self, TRUE);
  gtk_widget_remove_css_class (GTK_WIDGET (self->view), "pp-stale");
  pp_sheets_form_set_counts (self->form, set->counts);
  pp_sheets_view_set_set (self->view, set);
  say (self, NULL);
}

static void
failed_cb (PpSheetMaker *maker,
           const char   *sentence,
           PpSheetsPage *self)
{
  show_making (self, TRUE);
  if (self->document == NULL || !self->is_wanted)
    return;
  pp_sheets_view_set_set (self->view, NULL);
  say (self, sentence != NULL ? sentence : _("The drawing of the sheets was stopped."));
  gtk_widget_set_visible (self->again, TRUE);
}

/* Why no sheet can be shown, or NULL. (transfer none) */
static const char *
find_obstacle (const PpPanel       *panel,
               const PpSheetChoice *choice)
{
  if (choice->kinds[0] != NULL)
    return NULL;
  if (panel->placements->len == 0)
    return _("Nothing lies on the glass yet. Once pieces lie there, their sheets stand here; the "
             "blank sheets can be printed now.");
  return _("No sheet is ticked. Tick those that you want to print.");
}

static void
draw_anew (PpSheetsPage *self)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_autoptr (PpSheetChoice) choice = pp_sheets_form_dup_choice (self->form);
  const char *obstacle = find_obstacle (panel, choice);

  self->is_stale = FALSE;
  gtk_widget_set_sensitive (self->print, obstacle == NULL);
  gtk_widget_set_sensitive (self->export, obstacle == NULL);
  self->is_wanted = obstacle == NULL;
  if (self->is_wanted)
    {
      begin_making (self);
      pp_sheet_maker_ask (self->maker, panel, choice);
      return;
    }
  pp_sheet_maker_stop (self->maker);
  show_making (self, TRUE);
  pp_sheets_view_set_set (self->view, NULL);
  say (self, obstacle);
}

/* At once, or when the page is seen next. */
static void
follow (PpSheetsPage *self)
{
  self->is_stale = TRUE;
  if (self->document != NULL && gtk_widget_get_mapped (GTK_WIDGET (self)))
    draw_anew (self);
}

static void
document_changed_cb (PpDocument   *document,
                     PpSheetsPage *self)
{
  pp_sheets_form_set_panel (self->form, pp_document_get_panel (document));
  if (pp_document_get_panel (document)->placements->len == 0)
    pp_sheets_form_set_counts (self->form, NULL);
  follow (self);
}

static void
form_changed_cb (PpSheetsForm *form,
                 PpSheetsPage *self)
{
  follow (self);
}

static void
stop_cb (GtkButton    *button,
         PpSheetsPage *self)
{
  pp_sheet_maker_stop (self->maker);
}

static void
again_cb (GtkButton    *button,
          PpSheetsPage *self)
{
  draw_anew (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
set_document (PpSheetsPage *self,
              PpDocument   *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  pp_sheet_maker_stop (self->maker);
  g_set_object (&self->document, document);
  pp_sheets_view_set_set (self->view, NULL);
  pp_sheets_form_set_counts (self->form, NULL);
  if (document == NULL)
    return;
  g_signal_connect (document, "changed", G_CALLBACK (document_changed_cb), self);
  document_changed_cb (document, self);
}

static void
pp_sheets_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (pp_sheets_page_parent_class)->map (widget);
  if (PP_SHEETS_PAGE (widget)->is_stale)
    follow (PP_SHEETS_PAGE (widget));
}

static void
pp_sheets_page_set_property (GObject      *object,
                             guint         prop_id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    set_document (PP_SHEETS_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

/* The pages can be leafed through at once, and where there are none, others ticked. */
static gboolean
pp_sheets_page_grab_focus (GtkWidget *widget)
{
  PpSheetsPage *self = PP_SHEETS_PAGE (widget);

  if (g_str_equal (gtk_stack_get_visible_child_name (self->stack), "pages"))
    return gtk_widget_grab_focus (GTK_WIDGET (self->view));
  return gtk_widget_child_focus (GTK_WIDGET (self->form), GTK_DIR_TAB_FORWARD);
}

static void
print_cb (GtkWidget  *widget,
          const char *action,
          GVariant   *parameter)
{
  PpSheetsPage *self = PP_SHEETS_PAGE (widget);
  g_autoptr (PpSheetChoice) choice = NULL;

  pp_typing_finish (gtk_widget_get_root (widget));
  choice = pp_sheets_form_dup_choice (self->form);
  if (choice->kinds[0] != NULL)
    pp_print_run (PP_WINDOW (gtk_widget_get_root (widget)), choice);
}

static void
export_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  PpSheetsPage *self = PP_SHEETS_PAGE (widget);
  g_autoptr (PpSheetChoice) choice = NULL;
  guint n;
  const PpSheetFormat *formats = pp_sheet_formats (&n);

  pp_typing_finish (gtk_widget_get_root (widget));
  choice = pp_sheets_form_dup_choice (self->form);
  if (choice->kinds[0] != NULL)
    pp_exporting_sheets (PP_WINDOW (gtk_widget_get_root (widget)), choice,
                         formats[gtk_drop_down_get_selected (self->format)].format);
}

static void
zoom_in_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  PpSheetsView *view = PP_SHEETS_PAGE (widget)->view;

  pp_sheets_view_set_zoom (view, pp_sheets_view_get_scale (view) * ZOOM_STEP);
}

static void
zoom_out_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  PpSheetsView *view = PP_SHEETS_PAGE (widget)->view;

  pp_sheets_view_set_zoom (view, pp_sheets_view_get_scale (view) / ZOOM_STEP);
}

static void
zoom_fit_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  pp_sheets_view_set_zoom (PP_SHEETS_PAGE (widget)->view, 0);
}

static void
zoom_true_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  pp_sheets_view_set_zoom (PP_SHEETS_PAGE (widget)->view, pp_true_scale_of (widget));
}

static void
pp_sheets_page_dispose (GObject *object)
{
  PpSheetsPage *self = PP_SHEETS_PAGE (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  if (self->maker != NULL)
    {
      pp_sheet_maker_stop (self->maker);
      g_signal_handlers_disconnect_by_data (self->maker, self);
    }
  g_clear_object (&self->maker);
  pp_template_dispose (GTK_WIDGET (self), PP_TYPE_SHEETS_PAGE);
  G_OBJECT_CLASS (pp_sheets_page_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, form);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, print);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, format);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, export);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, stack);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, view);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, words);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, again);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, making);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, bar);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, place);
  gtk_widget_class_bind_template_child (widget_class, PpSheetsPage, zoom);
  gtk_widget_class_bind_template_callback (widget_class, form_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, moved_cb);
  gtk_widget_class_bind_template_callback (widget_class, faded_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
  gtk_widget_class_bind_template_callback (widget_class, again_cb);
}

static void
pp_sheets_page_class_init (PpSheetsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_sheets_page_dispose;
  G_OBJECT_CLASS (klass)->set_property = pp_sheets_page_set_property;
  widget_class->map = pp_sheets_page_map;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_sheets_page_grab_focus;
  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, PP_TYPE_DOCUMENT,
                                              G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
  g_type_ensure (PP_TYPE_SHEETS_FORM);
  g_type_ensure (PP_TYPE_SHEETS_VIEW);
  g_type_ensure (PP_TYPE_SIDE_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/sheets-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "page.print", NULL, print_cb);
  gtk_widget_class_install_action (widget_class, "page.export", NULL, export_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-in", NULL, zoom_in_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-out", NULL, zoom_out_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-fit", NULL, zoom_fit_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-true", NULL, zoom_true_cb);
}

static void
add_formats (PpSheetsPage *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  g_autofree char *kept = pp_settings_dup_text (PP_SETTINGS_FORMAT);
  guint n, chosen = 0;
  const PpSheetFormat *formats = pp_sheet_formats (&n);

  for (guint i = 0; i < n; i++)
    {
      gtk_string_list_append (list, _(formats[i].title));
      if (g_str_equal (formats[i].id, kept))
        chosen = i;
    }
  gtk_drop_down_set_model (self->format, G_LIST_MODEL (list));
  gtk_drop_down_set_selected (self->format, chosen);
}

static void
format_cb (PpSheetsPage *self)
{
  guint n;
  const PpSheetFormat *formats = pp_sheet_formats (&n);

  pp_settings_keep_text (PP_SETTINGS_FORMAT,
                         formats[gtk_drop_down_get_selected (self->format)].id);
}

static void
pp_sheets_page_init (PpSheetsPage *self)
{
  self->maker = pp_sheet_maker_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_shown_page_tell (self->stack);
  add_formats (self);
  pp_drop_down_tell (self->format, GTK_WIDGET (self->format));
  g_signal_connect_swapped (self->format, "notify::selected", G_CALLBACK (format_cb), self);
  pp_sheets_view_set_maker (self->view, self->maker);
  gtk_widget_set_direction (GTK_WIDGET (self->zoom), GTK_TEXT_DIR_LTR);
  g_signal_connect (self->maker, "made", G_CALLBACK (made_cb), self);
  g_signal_connect (self->maker, "failed", G_CALLBACK (failed_cb), self);
}
