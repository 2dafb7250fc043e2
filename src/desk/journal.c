/* journal.c: keeps aside what a document has that its file has not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One draft is being written at a time; what comes meanwhile is written next, and of several only
 * the last. In a drag nothing is written until it rests, but no longer than MOST_MS.
 */
#include "config.h"

#include "desk/journal.h"

#define PACE_MS 250
#define MOST_MS 1000

struct _PpJournal
{
  GObject        parent_instance;
  PpDocument    *document;
  char          *folder;
  PpDraft       *draft;    /* NULL before the first edit */
  char          *content;
  const PpPanel *written;  /* what stands in the draft; NULL: nothing */
  guint          n_cleared; /* how often the draft was dropped */
  gboolean       is_writing;
  gboolean       has_failed;
  guint          pace;
  guint          timer;
  gint64         waits_since; /* monotonic, us; 0: nothing waits */
};

G_DEFINE_FINAL_TYPE (PpJournal, pp_journal, G_TYPE_OBJECT)

static guint failed;

/* What a thread writes. */
typedef struct
{
  PpDraft       *draft;
  const PpPanel *panel;
  PpDraftOrigin  origin;
  guint          n_cleared; /* as it was when the writing began */
} Writing;

static void
free_writing (gpointer data)
{
  Writing *writing = data;

  pp_draft_unref (writing->draft);
  pp_panel_unref (writing->panel);
  pp_draft_origin_clear (&writing->origin);
  g_free (writing);
}

static void
write_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  Writing *writing = data;
  GError *error = NULL;

  if (pp_draft_write (writing->draft, writing->panel, &writing->origin, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/* Said once: who cannot mend it would hear it after each edit. */
static void
tell_failure (PpJournal    *self,
              const GError *error)
{
  if (!self->has_failed)
    g_signal_emit (self, failed, 0, error->message);
  self->has_failed = TRUE;
}

/* What stands in the draft is in the file by now. */
static void
clear (PpJournal *self)
{
  self->n_cleared++;
  g_clear_pointer (&self->written, pp_panel_unref);
  if (self->draft != NULL)
    pp_draft_clear (self->draft);
}

static void wait_to_write (PpJournal *self);

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (PpJournal) self = data;
  Writing *writing = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;

  self->is_writing = FALSE;
  g_clear_pointer (&self->written, pp_panel_unref);
  if (!g_task_propagate_boolean (G_TASK (result), &error))
    tell_failure (self, error);
  else if (writing->n_cleared == self->n_cleared)
    self->written = pp_panel_ref (writing->panel);
  if (self->document == NULL)
    return;
  if (pp_document_is_saved (self->document))
    clear (self);
  else if (self->written != pp_document_get_panel (self->document) && error == NULL)
    wait_to_write (self);
}

/* (transfer full) (nullable) */
static PpDraft *
get_draft (PpJournal *self)
{
  g_autoptr (GError) error = NULL;

  if (self->draft == NULL)
    self->draft = pp_draft_new (self->folder, &error);
  if (error != NULL)
    tell_failure (self, error);
  return self->draft != NULL ? pp_draft_ref (self->draft) : NULL;
}

/* The task does not hold the journal as its source: it may end in the thread, and so would that. */
static void
write_draft (PpJournal *self)
{
  GFile *file = pp_document_get_file (self->document);
  g_autoptr (GTask) task = NULL;
  PpDraft *draft;
  Writing *writing;

  self->waits_since = 0;
  if (self->is_writing || pp_document_is_saved (self->document)
      || self->written == pp_document_get_panel (self->document))
    return;
  draft = get_draft (self);
  if (draft == NULL)
    return;
  writing = g_new0 (Writing, 1);
  writing->draft = draft;
  writing->panel = pp_panel_ref (pp_document_get_panel (self->document));
  writing->origin.path = file != NULL ? g_file_get_path (file) : NULL;
  writing->origin.content = g_strdup (self->content);
  writing->n_cleared = self->n_cleared;
  task = g_task_new (NULL, NULL, written_cb, g_object_ref (self));
  g_task_set_task_data (task, writing, free_writing);
  self->is_writing = TRUE;
  g_task_run_in_thread (task, write_in_thread);
}

static gboolean
timer_cb (gpointer data)
{
  PpJournal *self = data;

  self->timer = 0;
  write_draft (self);
  return G_SOURCE_REMOVE;
}

static void
wait_to_write (PpJournal *self)
{
  gint64 now = g_get_monotonic_time ();
  gint64 waited;

  if (self->waits_since == 0)
    self->waits_since = now;
  waited = (now - self->waits_since) / 1000;
  g_clear_handle_id (&self->timer, g_source_remove);
  self->timer = g_timeout_add ((guint) CLAMP (MOST_MS - waited, 0, self->pace), timer_cb, self);
}

static void
changed_cb (PpDocument *document,
            PpJournal  *self)
{
  if (!pp_document_is_saved (document))
    wait_to_write (self);
}

/* Saved, or back at what is saved. */
static void
saved_cb (PpDocument *document,
          GParamSpec *pspec,
          PpJournal  *self)
{
  if (!pp_document_is_saved (document))
    {
      wait_to_write (self);
      return;
    }
  g_clear_handle_id (&self->timer, g_source_remove);
  self->waits_since = 0;
  clear (self);
}

static void
let_go (PpJournal *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
pp_journal_dispose (GObject *object)
{
  let_go (PP_JOURNAL (object));
  G_OBJECT_CLASS (pp_journal_parent_class)->dispose (object);
}

static void
pp_journal_finalize (GObject *object)
{
  PpJournal *self = PP_JOURNAL (object);

  g_clear_pointer (&self->draft, pp_draft_unref);
  g_clear_pointer (&self->written, pp_panel_unref);
  g_free (self->folder);
  g_free (self->content);
  G_OBJECT_CLASS (pp_journal_parent_class)->finalize (object);
}

static void
pp_journal_class_init (PpJournalClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = pp_journal_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_journal_finalize;
  failed = g_signal_new ("failed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                         NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
pp_journal_init (PpJournal *self)
{
  self->pace = PACE_MS;
}

PpJournal *
pp_journal_new (PpDocument *document,
                const char *folder,
                PpDraft    *draft)
{
  PpJournal *self;

  g_return_val_if_fail (PP_IS_DOCUMENT (document) && folder != NULL, NULL);

  self = g_object_new (PP_TYPE_JOURNAL, NULL);
  self->document = g_object_ref (document);
  self->folder = g_strdup (folder);
  self->draft = draft;
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (document, "notify::saved", G_CALLBACK (saved_cb), self);
  return self;
}

void
pp_journal_set_content (PpJournal  *self,
                        const char *content)
{
  g_return_if_fail (PP_IS_JOURNAL (self));

  g_free (self->content);
  self->content = g_strdup (content);
}

void
pp_journal_set_pace (PpJournal *self,
                     guint      pace)
{
  g_return_if_fail (PP_IS_JOURNAL (self));
  self->pace = pace;
}

gboolean
pp_journal_is_settled (PpJournal *self)
{
  g_return_val_if_fail (PP_IS_JOURNAL (self), TRUE);
  return !self->is_writing && self->timer == 0;
}

void
pp_journal_end (PpJournal *self)
{
  g_return_if_fail (PP_IS_JOURNAL (self));

  let_go (self);
  if (self->draft != NULL)
    pp_draft_discard (self->draft);
}
