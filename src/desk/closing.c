/* closing.c: what is asked before changes could be lost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/closing.h"

#include "desk/ask.h"
#include "desk/file-state.h"
#include "desk/saving.h"
#include "desk/typing.h"
#include "panel/i18n.h"

/* Takes over `task`. */
static void
end (GTask    *task,
     gboolean  may_close)
{
  pp_file_state_of (g_task_get_source_object (task))->is_asking = FALSE;
  g_task_return_boolean (task, may_close);
  g_object_unref (task);
}

static gboolean
has_changes (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);

  return document != NULL && !pp_document_is_saved (document);
}

static void ask_to_save (GTask *task);

/* The panel may have been changed while it was being written. */
static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  gboolean is_saved = pp_saving_run_finish (result);

  if (is_saved && has_changes (PP_WINDOW (source)))
    ask_to_save (data);
  else
    end (data, is_saved);
}

static void
asked_cb (int      answer,
          gpointer data)
{
  GTask *task = data;

  if (answer == 2)
    pp_saving_run_async (g_task_get_source_object (task), FALSE, saved_cb, task);
  else
    end (task, answer == 1);
}

static void
ask_to_save (GTask *task)
{
  PpWindow *window = g_task_get_source_object (task);
  g_autofree char *title = pp_document_dup_title (pp_window_get_document (window));
  g_autofree char *question = g_strdup_printf (_("Save the changes to “%s”?"), title);
  const char * const buttons[] = { _("_Cancel"), _("_Discard"), _("_Save"), NULL };
  const PpAsk ask = {
    .question = question,
    .detail = _("What is discarded is lost."),
    .buttons = buttons,
    .losing = 1,
  };

  gtk_window_present (GTK_WINDOW (window));
  pp_ask (GTK_WINDOW (window), &ask, asked_cb, task);
}

static void
waited_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  PpWindow *window = PP_WINDOW (source);

  if (pp_file_state_is_alive (window) && has_changes (window))
    ask_to_save (data);
  else
    end (data, TRUE);
}

void
pp_closing_ask_async (PpWindow            *window,
                      GAsyncReadyCallback  done,
                      gpointer             data)
{
  GTask *task = g_task_new (window, NULL, done, data);

  pp_typing_finish (GTK_ROOT (window));
  pp_file_state_of (window)->is_asking = TRUE;
  pp_saving_wait_async (window, waited_cb, task);
}

gboolean
pp_closing_ask_finish (GAsyncResult *result)
{
  return g_task_propagate_boolean (G_TASK (result), NULL);
}

static void
may_close_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  if (pp_closing_ask_finish (result))
    gtk_window_destroy (GTK_WINDOW (source));
}

static gboolean
close_request_cb (GtkWindow *window,
                  gpointer   data)
{
  PpFileState *state = pp_file_state_of (PP_WINDOW (window));

  pp_typing_finish (GTK_ROOT (window));
  if (!state->is_saving && !state->is_asking && !has_changes (PP_WINDOW (window)))
    return FALSE;
  if (!state->is_asking)
    pp_closing_ask_async (PP_WINDOW (window), may_close_cb, NULL);
  return TRUE;
}

void
pp_closing_guard (PpWindow *window)
{
  g_signal_connect (window, "close-request", G_CALLBACK (close_request_cb), NULL);
}

/* A window, and the panel in it when it was last said that it may be closed. */
typedef struct
{
  PpWindow      *window;
  gboolean       may_close;
  const PpPanel *panel; /* (nullable) */
} Leaving;

typedef struct
{
  GArray *windows; /* Leaving */
  guint   asked;   /* the window being asked about */
} Quitting;

static void ask_next (Quitting *self);

static void
clear_leaving (gpointer data)
{
  Leaving *self = data;

  g_object_unref (self->window);
  g_clear_pointer (&self->panel, pp_panel_unref);
}

static void
free_quitting (Quitting *self)
{
  g_array_unref (self->windows);
  g_free (self);
}

static const PpPanel *
get_panel (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);

  return document != NULL ? pp_document_get_panel (document) : NULL;
}

static void
one_may_close_cb (GObject      *source,
                  GAsyncResult *result,
                  gpointer      data)
{
  Quitting *self = data;
  Leaving *leaving = &g_array_index (self->windows, Leaving, self->asked);

  if (!pp_closing_ask_finish (result))
    {
      free_quitting (self);
      return;
    }
  leaving->may_close = TRUE;
  g_clear_pointer (&leaving->panel, pp_panel_unref);
  if (get_panel (leaving->window) != NULL)
    leaving->panel = pp_panel_ref (get_panel (leaving->window));
  ask_next (self);
}

/* All are asked before the first is closed: a Cancel at the last leaves everything as it was. A
 * panel may be changed while another window is asked about: that window is asked about again. */
static void
ask_next (Quitting *self)
{
  for (self->asked = 0; self->asked < self->windows->len; self->asked++)
    {
      const Leaving *leaving = &g_array_index (self->windows, Leaving, self->asked);

      if (leaving->may_close && get_panel (leaving->window) == leaving->panel)
        continue;
      if (pp_file_state_of (leaving->window)->is_asking) /* let that be answered first */
        free_quitting (self);
      else
        pp_closing_ask_async (leaving->window, one_may_close_cb, self);
      return;
    }
  for (guint i = 0; i < self->windows->len; i++)
    gtk_window_destroy (GTK_WINDOW (g_array_index (self->windows, Leaving, i).window));
  free_quitting (self);
}

void
pp_closing_quit (GtkApplication *application)
{
  Quitting *self = g_new0 (Quitting, 1);

  self->windows = g_array_new (FALSE, TRUE, sizeof (Leaving));
  g_array_set_clear_func (self->windows, clear_leaving);
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (PP_IS_WINDOW (l->data))
      {
        Leaving leaving = { .window = g_object_ref (l->data) };

        g_array_append_val (self->windows, leaving);
      }
  ask_next (self);
}
