/* drafting.c: the journal of a window, and panels opened from drafts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A document that leaves its window was saved or given up, so its draft goes with it.
 */
#include "config.h"

#include "desk/drafting.h"

#include "desk/file-state.h"
#include "desk/journal.h"

#define KEY "pp-journal"
#define DRAFT_KEY "pp-draft" /* that the next document of the window was made of */

static void
end_journal (gpointer journal)
{
  pp_journal_end (journal);
  g_object_unref (journal);
}

static void
changed_cb (PpDocument *document,
            PpWindow   *window)
{
  PpJournal *journal = g_object_get_data (G_OBJECT (window), KEY);

  if (journal != NULL)
    pp_journal_set_content (journal, pp_watch_get_content (pp_file_state_of (window)->watch));
}

static void
failed_cb (PpJournal  *journal,
           const char *sentence,
           PpWindow   *window)
{
  pp_window_tell (window, sentence);
}

static void
document_cb (PpWindow   *window,
             GParamSpec *pspec,
             gpointer    data)
{
  PpDocument *document = pp_window_get_document (window);
  g_autofree char *folder = pp_draft_folder ();
  PpJournal *journal;

  g_object_set_data (G_OBJECT (window), KEY, NULL);
  if (document == NULL)
    return;
  journal = pp_journal_new (document, folder, g_object_steal_data (G_OBJECT (window), DRAFT_KEY));
  g_signal_connect_object (journal, "failed", G_CALLBACK (failed_cb), window, 0);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), window, 0);
  g_object_set_data_full (G_OBJECT (window), KEY, journal, end_journal);
}

static void
destroy_cb (PpWindow *window,
            gpointer  data)
{
  g_object_set_data (G_OBJECT (window), KEY, NULL);
}

void
pp_drafting_add (PpWindow *window)
{
  g_return_if_fail (PP_IS_WINDOW (window));

  g_signal_connect (window, "notify::document", G_CALLBACK (document_cb), NULL);
  g_signal_connect (window, "destroy", G_CALLBACK (destroy_cb), NULL);
}

void
pp_drafting_open (PpWindow            *window,
                  PpDocument          *document,
                  PpDraft             *draft,
                  const PpDraftOrigin *origin)
{
  g_return_if_fail (PP_IS_WINDOW (window) && PP_IS_DOCUMENT (document));
  g_return_if_fail (draft != NULL && origin != NULL);

  pp_document_set_lost (document);
  g_object_set_data_full (G_OBJECT (window), DRAFT_KEY, draft, (GDestroyNotify) pp_draft_unref);
  pp_window_set_document (window, document);
  /* What is not known is like nothing that may stand there: saving will ask. */
  pp_file_state_set (window, origin->content != NULL ? origin->content : "");
}
