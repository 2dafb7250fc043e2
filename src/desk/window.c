/* window.c: the window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/window.h"

#include "desk/drafting.h"
#include "desk/drilling.h"
#include "desk/dry-run-page.h"
#include "desk/edit-actions.h"
#include "desk/file-actions.h"
#include "desk/file-drop.h"
#include "desk/key-tips.h"
#include "desk/pages.h"
#include "desk/piece-actions.h"
#include "desk/put-right.h"
#include "desk/start-page.h"
#include "desk/templating.h"
#include "desk/variants.h"
#include "desk/view-actions.h"
#include "desk/window-keeping.h"
#include "panel/i18n.h"

struct _PpWindow
{
  GtkApplicationWindow parent_instance;
  PpDocument          *document;

  GtkStack            *stack;
  GtkBox              *switcher;
  GtkRevealer         *telling;
  GtkLabel            *sentence;
  GtkLabel            *title;
  GtkLabel            *subtitle;
  GtkWidget           *undo;
  GtkWidget           *redo;
  GtkWidget           *history;
};

G_DEFINE_FINAL_TYPE (PpWindow, pp_window, GTK_TYPE_APPLICATION_WINDOW)

enum
{
  PROP_DOCUMENT = 1,
  PROP_PAGE_NAME,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

#define START "start" /* in the stack, where it is no page of the work */

static void
begin_cb (PpStartPage   *page,
          const PpPanel *panel,
          PpWindow      *self)
{
  g_autoptr (PpDocument) document = pp_document_new (panel, NULL);

  pp_window_set_document (self, document);
}

static void
open_cb (PpStartPage *page,
         GFile       *file,
         gboolean     as_copy,
         PpWindow    *self)
{
  pp_file_actions_open (self, file, as_copy);
}

static void
put_away_cb (GtkButton *button,
             PpWindow  *self)
{
  gtk_revealer_set_reveal_child (self->telling, FALSE);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (self->stack));
}

/* Asked after all else that Escape ends. */
static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *args,
           gpointer   data)
{
  PpWindow *self = PP_WINDOW (widget);
  gboolean tells = gtk_revealer_get_reveal_child (self->telling);

  gtk_revealer_set_reveal_child (self->telling, FALSE);
  return tells;
}

static void
refused_cb (PpDocument *document,
            const char *sentence,
            PpWindow   *self)
{
  pp_window_tell (self, sentence);
}

static char *
describe_file (PpDocument *document)
{
  GFile *file = pp_document_get_file (document);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autofree char *shown = path != NULL ? g_filename_display_basename (path) : NULL;

  if (shown == NULL)
    return g_strdup (_("Not saved yet"));
  if (!pp_document_is_saved (document))
    return g_strdup_printf (_("%s, changed since it was saved"), shown);
  return g_steal_pointer (&shown);
}

static void
show_title (PpWindow *self)
{
  g_autofree char *title = NULL, *subtitle = NULL;

  if (self->document == NULL)
    {
      gtk_window_set_title (GTK_WINDOW (self), "Petalpane");
      gtk_label_set_text (self->title, "Petalpane");
      gtk_widget_set_visible (GTK_WIDGET (self->subtitle), FALSE);
      return;
    }
  title = pp_document_dup_title (self->document);
  subtitle = describe_file (self->document);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->subtitle, subtitle);
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle), TRUE);
}

static void
show_step (GtkWidget  *button,
           const char *text)
{
  if (g_strcmp0 (text, gtk_widget_get_tooltip_text (button)) == 0)
    return;
  gtk_widget_set_tooltip_text (button, text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
show_history (PpWindow *self)
{
  const char *back = pp_document_get_undo (self->document);
  const char *forth = pp_document_get_redo (self->document);
  /* Translators: an act by its name: "Undo: Move oxeye" */
  g_autofree char *undo = back != NULL ? g_strdup_printf (_("Undo: %s"), back)
                                       : g_strdup (_("Nothing to undo"));
  g_autofree char *redo = forth != NULL ? g_strdup_printf (_("Redo: %s"), forth)
                                        : g_strdup (_("Nothing to redo"));

  show_step (self->undo, undo);
  show_step (self->redo, redo);
}

static void
changed_cb (PpDocument *document,
            PpWindow   *self)
{
  show_history (self);
  show_title (self);
}

static void
saved_cb (PpDocument *document,
          GParamSpec *pspec,
          PpWindow   *self)
{
  show_title (self);
}

/* By function: the actions of the window listen with the window as their data too. */
static void
let_go (PpWindow *self)
{
  if (self->document != NULL)
    {
      g_signal_handlers_disconnect_by_func (self->document, changed_cb, self);
      g_signal_handlers_disconnect_by_func (self->document, refused_cb, self);
      g_signal_handlers_disconnect_by_func (self->document, saved_cb, self);
    }
  g_clear_object (&self->document);
}

static void
pp_window_get_property (GObject    *object,
                        guint       prop_id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    g_value_set_object (value, PP_WINDOW (object)->document);
  else if (prop_id == PROP_PAGE_NAME)
    g_value_set_string (value, pp_window_get_page_name (PP_WINDOW (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
pp_window_dispose (GObject *object)
{
  PpWindow *self = PP_WINDOW (object);

  if (self->stack != NULL)
    pp_pages_set_document (self->stack, NULL);
  let_go (self);
  gtk_widget_dispose_template (GTK_WIDGET (self), PP_TYPE_WINDOW);
  G_OBJECT_CLASS (pp_window_parent_class)->dispose (object);
}

static void
pp_window_unmap (GtkWidget *widget)
{
  pp_window_keeping_keep (GTK_WINDOW (widget));
  GTK_WIDGET_CLASS (pp_window_parent_class)->unmap (widget);
}

static void
pp_window_class_init (PpWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_window_dispose;
  G_OBJECT_CLASS (klass)->get_property = pp_window_get_property;
  widget_class->unmap = pp_window_unmap;
  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, PP_TYPE_DOCUMENT,
                                              G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_PAGE_NAME] = g_param_spec_string ("page-name", NULL, NULL, NULL,
                                               G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
  g_type_ensure (PP_TYPE_START_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/window.ui");
  gtk_widget_class_bind_template_child (widget_class, PpWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, switcher);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, telling);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, sentence);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, title);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, PpWindow, history);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
  gtk_widget_class_bind_template_callback (widget_class, put_away_cb);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
}

/* The bar is not drawn then; GTK 4.8 tells of it all the same. */
static void
tell_bar (GtkWindow *self)
{
  gtk_accessible_update_state (GTK_ACCESSIBLE (gtk_window_get_titlebar (self)),
                               GTK_ACCESSIBLE_STATE_HIDDEN, gtk_window_is_fullscreen (self), -1);
}

static void
pp_window_init (PpWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_pages_add (self, self->stack, self->switcher);
  g_signal_connect (self, "notify::fullscreened", G_CALLBACK (tell_bar), NULL);
  pp_edit_actions_add (self);
  pp_file_actions_add (self);
  pp_view_actions_add (self);
  pp_put_right_add (self);
  pp_drilling_add (self);
  pp_piece_actions_add (self);
  pp_variants_add (self);
  pp_templating_add (self);
  pp_drafting_add (self);
  pp_file_drop_add (self);
  pp_key_tips_add (GTK_WIDGET (self));
  pp_window_set_document (self, NULL);
}

PpWindow *
pp_window_new (GtkApplication *application)
{
  PpWindow *self = g_object_new (PP_TYPE_WINDOW, "application", application, NULL);

  pp_window_keeping_restore (GTK_WINDOW (self)); /* it fills no screen before it is whole */
  return self;
}

PpDocument *
pp_window_get_document (PpWindow *self)
{
  g_return_val_if_fail (PP_IS_WINDOW (self), NULL);
  return self->document;
}

static void
follow (PpWindow *self)
{
  g_signal_connect (self->document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (self->document, "refused", G_CALLBACK (refused_cb), self);
  g_signal_connect (self->document, "notify::saved", G_CALLBACK (saved_cb), self);
  g_signal_connect (self->document, "notify::file", G_CALLBACK (saved_cb), self);
  show_history (self);
}

static void
show (PpWindow   *self,
      const char *name)
{
  gtk_stack_set_visible_child_name (self->stack, name);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PAGE_NAME]);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (self->stack));
}

/* Another document is shown on the page that is open. */
static const char *
choose_page (PpWindow *self)
{
  const char *name = pp_window_get_page_name (self);

  if (self->document == NULL)
    return START;
  return name != NULL ? name : PP_PAGE_DRY_RUN;
}

void
pp_window_set_document (PpWindow   *self,
                        PpDocument *document)
{
  g_return_if_fail (PP_IS_WINDOW (self));
  g_return_if_fail (document == NULL || PP_IS_DOCUMENT (document));

  let_go (self);
  self->document = document != NULL ? g_object_ref (document) : NULL;
  if (document != NULL)
    follow (self);
  pp_pages_set_document (self->stack, document);
  gtk_widget_set_visible (self->history, document != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->switcher), document != NULL);
  gtk_revealer_set_reveal_child (self->telling, FALSE);
  show_title (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DOCUMENT]);
  show (self, choose_page (self));
}

PpCanvas *
pp_window_get_canvas (PpWindow *self)
{
  g_return_val_if_fail (PP_IS_WINDOW (self), NULL);
  return pp_dry_run_page_get_canvas (
      PP_DRY_RUN_PAGE (gtk_stack_get_child_by_name (self->stack, PP_PAGE_DRY_RUN)));
}

const char *
pp_window_get_page_name (PpWindow *self)
{
  const char *name;

  g_return_val_if_fail (PP_IS_WINDOW (self), NULL);

  name = gtk_stack_get_visible_child_name (self->stack);
  return g_str_equal (name, START) ? NULL : name;
}

GtkWidget *
pp_window_get_page (PpWindow *self)
{
  g_return_val_if_fail (PP_IS_WINDOW (self), NULL);
  return pp_window_get_page_name (self) != NULL ? gtk_stack_get_visible_child (self->stack) : NULL;
}

void
pp_window_show_page (PpWindow   *self,
                     const char *name)
{
  g_return_if_fail (PP_IS_WINDOW (self) && name != NULL && self->document != NULL);
  if (!g_str_equal (name, choose_page (self)))
    gtk_revealer_set_reveal_child (self->telling, FALSE);
  show (self, name);
}

static gboolean
is_there (GBinding     *binding,
          const GValue *document,
          GValue       *enabled,
          gpointer      data)
{
  g_value_set_boolean (enabled, g_value_get_object (document) != NULL);
  return TRUE;
}

void
pp_window_tie_to_document (PpWindow   *self,
                           const char *action)
{
  GAction *tied;

  g_return_if_fail (PP_IS_WINDOW (self) && action != NULL);

  tied = g_action_map_lookup_action (G_ACTION_MAP (self), action);
  g_object_bind_property_full (self, "document", tied, "enabled", G_BINDING_SYNC_CREATE, is_there,
                               NULL, NULL, NULL);
}

void
pp_window_tell (PpWindow   *self,
                const char *sentence)
{
  g_return_if_fail (PP_IS_WINDOW (self) && sentence != NULL);

  gtk_label_set_text (self->sentence, sentence);
  gtk_revealer_set_reveal_child (self->telling, TRUE);
}
