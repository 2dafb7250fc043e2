/* print.c: the sheets on a printer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Check and plan are made before the printer is asked for, so that a page takes no longer than its
 * drawing. How many pages there are is known only with the paper.
 */
#include "config.h"

#include "desk/print.h"

#include "desk/ask.h"
#include "desk/file-state.h"
#include "desk/print-memory.h"
#include "desk/work-dialog.h"
#include "panel/i18n.h"

typedef struct
{
  PpSheetAnswers *answers;
  PpSheetChoice  *choice;
  PpSheetJob      job;
  double          scale;   /* of the drawing on the paper */
  GPtrArray      *pages;
  PpWindow       *window;
  GError         *error;   /* why they could not be drawn, or NULL */
} Printing;

static void
free_printing (gpointer  data,
               GClosure *closure)
{
  Printing *self = data;

  g_clear_pointer (&self->pages, g_ptr_array_unref);
  pp_sheet_answers_free (self->answers);
  pp_sheet_choice_free (self->choice);
  g_object_unref (self->window);
  g_clear_error (&self->error);
  g_free (self);
}

static void
begin_print_cb (GtkPrintOperation *operation,
                GtkPrintContext   *context,
                Printing          *self)
{
  self->job.paper.width = gtk_print_context_get_width (context);
  self->job.paper.height = gtk_print_context_get_height (context);
  self->scale = pp_paper_fit (&self->job.paper);
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_clear_error (&self->error);
  self->pages = pp_sheets_record (&self->job, (const char * const *) self->choice->kinds,
                                  &self->error);
  gtk_print_operation_set_n_pages (operation, self->pages != NULL ? (int) self->pages->len : 1);
  if (self->pages == NULL)
    gtk_print_operation_cancel (operation);
}

static void
draw_page_cb (GtkPrintOperation *operation,
              GtkPrintContext   *context,
              int                page,
              Printing          *self)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);

  cairo_save (cr);
  cairo_scale (cr, self->scale, self->scale);
  pp_sheets_draw_page (g_ptr_array_index (self->pages, page), cr);
  cairo_restore (cr);
}

static void
done_cb (GtkPrintOperation       *operation,
         GtkPrintOperationResult  result,
         Printing                *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *sentence = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    pp_print_memory_keep (gtk_print_operation_get_print_settings (operation));
  if (!pp_file_state_is_alive (self->window))
    return;
  if (self->error != NULL)
    pp_ask_tell (GTK_WINDOW (self->window), self->error->message);
  else if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      gtk_print_operation_get_error (operation, &error);
      sentence = g_strdup_printf (_("The sheets could not be printed: %s"), error->message);
      pp_ask_tell (GTK_WINDOW (self->window), sentence);
    }
}

/* Prints what `answers` are of, on the paper of the choice unless the dialog comes to say another.
 * answers: (transfer full). (transfer full) */
static GtkPrintOperation *
make_operation (PpWindow            *window,
                PpSheetAnswers      *answers,
                const PpSheetChoice *choice)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = pp_print_memory_setup (&choice->paper);
  Printing *self = g_new0 (Printing, 1);

  self->window = g_object_ref (window);
  self->answers = answers;
  self->choice = pp_sheet_choice_copy (choice);
  self->job = pp_sheet_choice_job (self->choice, answers);
  gtk_print_operation_set_unit (operation, GTK_UNIT_MM);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_data (operation, "begin-print", G_CALLBACK (begin_print_cb), self,
                         free_printing, 0);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), self);
  g_signal_connect (operation, "done", G_CALLBACK (done_cb), self);
  return operation;
}

/* Until the answers are there. */
typedef struct
{
  PpWindow      *window;
  PpDocument    *document;
  PpWorkDialog  *dialog;
  PpWork        *work;
  const PpPanel *panel;
  PpSheetChoice *choice;
} Wish;

static void
free_wish (Wish *self)
{
  gtk_window_destroy (GTK_WINDOW (self->dialog));
  pp_sheet_choice_free (self->choice);
  pp_panel_unref (self->panel);
  pp_work_unref (self->work);
  g_object_unref (self->document);
  g_object_unref (self->window);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Wish, free_wish)

static void
release_cb (GtkPrintOperation       *operation,
            GtkPrintOperationResult  result,
            gpointer                 data)
{
  g_application_release (g_application_get_default ());
}

/* The program stays until all pages are out, though the last window be closed: half a set of sheets
 * looks like a whole one. */
static void
hold_cb (GtkPrintOperation *operation,
         GtkPrintContext   *context,
         gpointer           data)
{
  g_application_hold (g_application_get_default ());
  g_signal_connect (operation, "done", G_CALLBACK (release_cb), NULL);
}

static void
print (Wish           *wish,
       PpSheetAnswers *answers)
{
  g_autoptr (GtkPrintOperation) operation = make_operation (wish->window, answers, wish->choice);
  g_autoptr (GtkPrintSettings) settings = pp_print_memory_get ();
  g_autofree char *title = pp_document_dup_title (wish->document);

  gtk_print_operation_set_job_name (operation, title);
  gtk_print_operation_set_print_settings (operation, settings);
  g_signal_connect (operation, "begin-print", G_CALLBACK (hold_cb), NULL);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           GTK_WINDOW (wish->window), NULL);
}

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (Wish) self = data;
  PpSheetAnswers *answers = g_task_propagate_pointer (G_TASK (result), NULL);

  if (answers == NULL) /* stopped */
    return;
  if (pp_file_state_is_alive (self->window))
    print (self, answers);
  else
    pp_sheet_answers_free (answers);
}

static void
answer_in_thread (GTask        *task,
                  gpointer      source,
                  gpointer      data,
                  GCancellable *cancellable)
{
  Wish *self = data;
  GError *error = NULL;
  PpSheetAnswers *answers = pp_sheet_answers_new (self->panel, TRUE, self->work, &error);

  if (answers == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, answers, (GDestroyNotify) pp_sheet_answers_free);
}

void
pp_print_run (PpWindow            *window,
              const PpSheetChoice *choice)
{
  Wish *self = g_new0 (Wish, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, answered_cb, self);

  self->window = g_object_ref (window);
  self->document = g_object_ref (pp_window_get_document (window));
  self->panel = pp_panel_ref (pp_document_get_panel (self->document));
  self->choice = pp_sheet_choice_copy (choice);
  self->work = pp_work_new ();
  self->dialog = pp_work_dialog_new (GTK_WINDOW (window), _("The sheets are being made ready."),
                                     self->work);
  g_task_set_task_data (task, self, NULL);
  g_task_run_in_thread (task, answer_in_thread);
}
