/* outside-change.c: another program changed the panel's file, or took it away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/outside-change.h"

#include "desk/ask.h"
#include "desk/change-bar.h"
#include "desk/file-state.h"
#include "desk/file-words.h"
#include "desk/panel-io.h"
#include "panel/i18n.h"

/* What is being read belongs to one document, which the window may no longer show by then. */
typedef struct
{
  PpWindow   *window;
  PpDocument *document;
} Showing;

static void
free_showing (Showing *self)
{
  g_object_unref (self->window);
  g_object_unref (self->document);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Showing, free_showing)

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (Showing) self = data;
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_io_load_finish (result, &content, &error);

  if (!pp_file_state_is_alive (self->window)
      || pp_window_get_document (self->window) != self->document)
    return;
  if (panel == NULL)
    {
      pp_ask_tell (GTK_WINDOW (self->window), error->message);
      return;
    }
  pp_document_seal (self->document);
  pp_document_take (self->document, pp_panel_ref (panel), NULL, _("Show theirs"), NULL);
  pp_document_set_saved (self->document, panel, pp_document_get_file (self->document));
  pp_file_state_set (self->window, content);
}

static void
show_theirs_cb (PpChangeBar *bar,
                PpWindow    *window)
{
  PpDocument *document = pp_window_get_document (window);
  GFile *file = document != NULL ? pp_document_get_file (document) : NULL;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  Showing *self;

  if (path == NULL)
    return;
  self = g_new (Showing, 1);
  *self = (Showing) { g_object_ref (window), g_object_ref (document) };
  pp_panel_io_load_async (path, loaded_cb, self);
}

static void
keep_mine_cb (PpChangeBar *bar,
              PpWindow    *window)
{
  pp_watch_accept (pp_file_state_of (window)->watch);
  pp_document_set_lost (pp_window_get_document (window));
  gtk_widget_grab_focus (pp_window_get_page (window));
}

static void
tell_gone (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);
  g_autofree char *name = pp_file_name_show (pp_document_get_file (document));
  g_autofree char *sentence
      = g_strdup_printf (_("“%s” is no longer in its folder: it was moved, renamed or deleted. "
                           "Save to write it there again."), name);

  pp_document_set_lost (document);
  pp_window_tell (window, sentence);
}

static char *
describe_change (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);
  g_autofree char *name = pp_file_name_show (pp_document_get_file (document));

  return g_strdup_printf (_("“%s” was changed by another program."), name);
}

static void
noticed_cb (PpWatch     *watch,
            PpChangeBar *bar)
{
  PpWindow *window = PP_WINDOW (gtk_widget_get_root (GTK_WIDGET (bar)));
  PpWatchState state = pp_watch_get_state (watch);
  g_autofree char *sentence = state == PP_WATCH_CHANGED ? describe_change (window) : NULL;

  pp_change_bar_show (bar, sentence);
  if (state == PP_WATCH_GONE)
    tell_gone (window);
}

static void
active_cb (PpWindow   *window,
           GParamSpec *pspec,
           gpointer    data)
{
  if (gtk_window_is_active (GTK_WINDOW (window)))
    pp_watch_look (pp_file_state_of (window)->watch);
}

static void
document_cb (PpWindow   *window,
             GParamSpec *pspec,
             gpointer    data)
{
  pp_watch_set (pp_file_state_of (window)->watch, NULL, NULL);
}

static GtkWidget *
put_bar_above (GtkWindow *window)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *bar = pp_change_bar_new ();
  GtkWidget *page = g_object_ref (gtk_window_get_child (window));

  gtk_window_set_child (window, NULL);
  gtk_box_append (GTK_BOX (box), bar);
  gtk_box_append (GTK_BOX (box), page);
  gtk_widget_set_vexpand (page, TRUE);
  gtk_window_set_child (window, box);
  g_object_unref (page);
  return bar;
}

void
pp_outside_change_follow (PpWindow *window)
{
  PpWatch *watch = pp_file_state_of (window)->watch;
  GtkWidget *bar = put_bar_above (GTK_WINDOW (window));

  g_signal_connect (bar, "keep-mine", G_CALLBACK (keep_mine_cb), window);
  g_signal_connect (bar, "show-theirs", G_CALLBACK (show_theirs_cb), window);
  g_signal_connect_object (watch, "noticed", G_CALLBACK (noticed_cb), bar, 0);
  g_signal_connect (window, "notify::is-active", G_CALLBACK (active_cb), NULL);
  g_signal_connect (window, "notify::document", G_CALLBACK (document_cb), NULL);
}
