/* recovery.c: what was left behind unsaved is offered at the next start.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drafts are read in a thread: the file that one of them is of may lie where nothing answers.
 */
#include "config.h"

#include "desk/recovery.h"

#include "desk/ask.h"
#include "desk/drafting.h"
#include "desk/file-state.h"
#include "desk/file-words.h"
#include "desk/panel-io.h"
#include "file/panel-write.h"
#include "panel/i18n.h"

/* The buttons of the question. */
enum
{
  LATER,
  LEAVE_OUT,
  OPEN,
};

typedef struct
{
  GtkApplication *application;
  GPtrArray      *drafts;      /* those not asked about yet, the last first */
  PpDraft        *draft;       /* being asked about */
  PpDraftOrigin   origin;
  PpDocument     *document;    /* of it */
} Recovery;

static void
forget_draft (Recovery *self)
{
  g_clear_pointer (&self->draft, pp_draft_unref);
  g_clear_object (&self->document);
  pp_draft_origin_clear (&self->origin);
}

static void
free_recovery (Recovery *self)
{
  forget_draft (self);
  g_ptr_array_unref (self->drafts);
  g_object_unref (self->application);
  g_free (self);
}

/* What a thread reads. */
typedef struct
{
  PpDraft       *draft;
  PpDraftOrigin  origin;
  const PpPanel *panel;    /* NULL: it cannot be read */
  gboolean       is_saved; /* the file has it */
} Reading;

static void
free_reading (gpointer data)
{
  Reading *self = data;

  pp_draft_unref (self->draft);
  pp_draft_origin_clear (&self->origin);
  g_clear_pointer (&self->panel, pp_panel_unref);
  g_free (self);
}

/* The program ended between saving and dropping the draft. */
static gboolean
is_saved (const PpPanel       *panel,
          const PpDraftOrigin *origin)
{
  g_autofree char *there = origin->path != NULL ? pp_panel_io_look (origin->path) : NULL;
  g_autoptr (GString) text = pp_panel_write (panel);
  g_autofree char *here = pp_file_content_of (text->str, text->len);

  return there != NULL && g_str_equal (there, here);
}

/* A window that shows the start page, or a new one. */
static PpWindow *
find_window (Recovery *self)
{
  GtkWindow *active = gtk_application_get_active_window (self->application);
  PpWindow *window;

  if (PP_IS_WINDOW (active) && pp_window_get_document (PP_WINDOW (active)) == NULL)
    return PP_WINDOW (active);
  window = pp_window_new (self->application);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

/* Where its file is open already, that window shows it if nothing is lost by that; else it is shown
 * as a panel without a file, so that neither is written over the other. */
static void
open_draft (Recovery *self)
{
  GFile *file = pp_document_get_file (self->document);
  PpWindow *other = file != NULL ? pp_file_state_find (self->application, file) : NULL;

  if (other != NULL && pp_document_is_saved (pp_window_get_document (other)))
    {
      pp_drafting_open (other, self->document, g_steal_pointer (&self->draft), &self->origin);
      return;
    }
  if (other != NULL)
    {
      g_autoptr (PpPanel) panel = pp_panel_ref (pp_document_get_panel (self->document));

      g_object_unref (self->document);
      self->document = pp_document_new (panel, NULL);
    }
  pp_drafting_open (find_window (self), self->document, g_steal_pointer (&self->draft),
                    &self->origin);
}

static void ask_next (Recovery *self);

static void
asked_cb (int      answer,
          gpointer data)
{
  Recovery *self = data;

  if (answer == OPEN)
    open_draft (self);
  else if (answer == LEAVE_OUT)
    pp_draft_discard (self->draft);
  g_application_release (G_APPLICATION (self->application));
  ask_next (self);
}

static void
ask (Recovery  *self,
     GtkWindow *window)
{
  g_autofree char *title = pp_document_dup_title (self->document);
  g_autofree char *question = g_strdup_printf (_("Petalpane closed before “%s” was saved."), title);
  const char * const buttons[] = { _("_Ask later"), _("_Leave it out"), _("_Open it"), NULL };
  const PpAsk words = {
    .question = question,
    .detail = _("What you did was kept aside. Open it, and it is as you left it; your file stays "
                "as it is until you save. Left out, it is gone."),
    .buttons = buttons,
    .losing = LEAVE_OUT,
  };

  g_application_hold (G_APPLICATION (self->application)); /* so that it does not end meanwhile */
  pp_ask (window, &words, asked_cb, self);
}

static void
read_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Reading *self = data;

  self->panel = pp_draft_read (self->draft, &self->origin, NULL);
  self->is_saved = self->panel != NULL && is_saved (self->panel, &self->origin);
  g_task_return_boolean (task, TRUE);
}

/* One that cannot be read stays where it is. */
static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Recovery *self = data;
  Reading *reading = g_task_get_task_data (G_TASK (result));
  GtkWindow *window = gtk_application_get_active_window (self->application);
  g_autoptr (GFile) file = NULL;

  if (reading->is_saved)
    pp_draft_discard (self->draft);
  if (window == NULL || reading->panel == NULL || reading->is_saved)
    {
      ask_next (self);
      return;
    }
  self->origin = reading->origin;
  reading->origin = (PpDraftOrigin) { 0 };
  if (self->origin.path != NULL)
    file = g_file_new_for_path (self->origin.path);
  self->document = pp_document_new (reading->panel, file);
  ask (self, window);
}

static void
ask_next (Recovery *self)
{
  g_autoptr (GTask) task = NULL;
  Reading *reading;

  forget_draft (self);
  if (self->drafts->len == 0 || gtk_application_get_active_window (self->application) == NULL)
    {
      free_recovery (self);
      return;
    }
  self->draft = g_ptr_array_steal_index (self->drafts, self->drafts->len - 1);
  reading = g_new0 (Reading, 1);
  reading->draft = pp_draft_ref (self->draft);
  task = g_task_new (NULL, NULL, read_cb, self);
  g_task_set_task_data (task, reading, free_reading);
  g_task_run_in_thread (task, read_in_thread);
}

void
pp_recovery_offer (GtkApplication *application)
{
  g_autofree char *folder = pp_draft_folder ();
  Recovery *self;

  g_return_if_fail (GTK_IS_APPLICATION (application));

  self = g_new0 (Recovery, 1);
  self->application = g_object_ref (application);
  self->drafts = pp_draft_find (folder);
  ask_next (self);
}
