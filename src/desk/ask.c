/* ask.c: a question or a sentence in a window of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/ask.h"

#include "panel/i18n.h"

typedef struct
{
  PpAskFunc done;
  gpointer  data;
} Asked;

static void
response_cb (GtkDialog *dialog,
             int        response,
             Asked     *asked)
{
  Asked now = *asked;

  gtk_window_destroy (GTK_WINDOW (dialog));
  if (now.done != NULL)
    now.done (response >= 0 ? response : PP_ASK_NONE, now.data);
}

static void
free_asked (gpointer  data,
            GClosure *closure)
{
  g_free (data);
}

static void
add_button (GtkDialog  *dialog,
            const char *label,
            int         response,
            gboolean    is_default,
            gboolean    loses)
{
  GtkWidget *button = gtk_dialog_add_button (dialog, label, response);

  if (is_default)
    {
      gtk_dialog_set_default_response (dialog, response);
      gtk_widget_add_css_class (button, "suggested-action");
      gtk_widget_grab_focus (button);
    }
  if (loses)
    gtk_widget_add_css_class (button, "destructive-action");
}

/* Something to drag the window by that says nothing: the question is the title. */
static GtkWidget *
handle_new (void)
{
  GtkWidget *bar = gtk_header_bar_new ();

  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (bar),
                                   gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));
  return bar;
}

void
pp_ask (GtkWindow   *parent,
        const PpAsk *ask,
        PpAskFunc    done,
        gpointer     data)
{
  Asked *asked = g_new (Asked, 1);
  GtkWidget *dialog;

  g_return_if_fail (GTK_IS_WINDOW (parent) && ask != NULL);

  dialog = gtk_message_dialog_new (parent, GTK_DIALOG_MODAL, GTK_MESSAGE_OTHER, GTK_BUTTONS_NONE,
                                   "%s", ask->question);
  gtk_widget_add_css_class (dialog, "petalpane");
  gtk_widget_add_css_class (dialog, "pp-ask");
  gtk_window_set_titlebar (GTK_WINDOW (dialog), handle_new ());
  gtk_window_set_title (GTK_WINDOW (dialog), "Petalpane");
  if (ask->detail != NULL)
    gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", ask->detail);
  for (int i = 0; ask->buttons[i] != NULL; i++)
    add_button (GTK_DIALOG (dialog), ask->buttons[i], i, ask->buttons[i + 1] == NULL,
                i == ask->losing);
  *asked = (Asked) { done, data };
  g_signal_connect_data (dialog, "response", G_CALLBACK (response_cb), asked, free_asked, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
pp_ask_replace (GtkWindow  *parent,
                const char *path,
                PpAskFunc   done,
                gpointer    data)
{
  const char * const buttons[] = { _("_Cancel"), _("_Replace"), NULL };
  PpAsk ask = { .buttons = buttons, .losing = PP_ASK_REPLACE };
  g_autofree char *name = NULL, *question = NULL;

  g_return_if_fail (path != NULL);

  name = g_filename_display_basename (path);
  question = g_strdup_printf (_("There is a file “%s” already. Replace it?"), name);
  ask.question = question;
  pp_ask (parent, &ask, done, data);
}

void
pp_ask_tell (GtkWindow  *parent,
             const char *sentence)
{
  const char * const buttons[] = { _("_All right"), NULL };
  const PpAsk ask = { .question = sentence, .buttons = buttons, .losing = PP_ASK_NONE };

  g_return_if_fail (sentence != NULL);
  pp_ask (parent, &ask, NULL, NULL);
}
