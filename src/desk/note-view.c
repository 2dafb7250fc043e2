/* note-view.c: a field for a note of several lines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/note-view.h"

#include "desk/typing.h"

struct _PpNoteView
{
  GtkTextView parent_instance;
  char       *words;
};

G_DEFINE_FINAL_TYPE (PpNoteView, pp_note_view, GTK_TYPE_TEXT_VIEW)

static guint committed;

/* (transfer full) */
static char *
dup_text (PpNoteView *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
leave_cb (GtkEventController *controller,
          PpNoteView         *self)
{
  pp_note_view_commit (self);
}

/* Undo is the panel's, as in every field; half typed, the old note comes back first. */
static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpNoteView         *self)
{
  const char *action = pp_typing_get_step (key, state);

  if (action == NULL)
    return key == GDK_KEY_Escape && pp_note_view_put_back (self);
  if (!pp_note_view_put_back (self))
    gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
  return GDK_EVENT_STOP;
}

static void
pp_note_view_finalize (GObject *object)
{
  g_free (PP_NOTE_VIEW (object)->words);
  G_OBJECT_CLASS (pp_note_view_parent_class)->finalize (object);
}

static void
pp_note_view_class_init (PpNoteViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = pp_note_view_finalize;
  committed = g_signal_new ("committed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                            NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
pp_note_view_init (PpNoteView *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->words = g_strdup ("");
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (self), FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (self), GTK_WRAP_WORD_CHAR);
  gtk_text_buffer_set_enable_undo (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self)), FALSE);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

void
pp_note_view_set_words (PpNoteView *self,
                        const char *words)
{
  g_return_if_fail (PP_IS_NOTE_VIEW (self) && words != NULL);

  if (g_str_equal (words, self->words))
    return;
  g_free (self->words);
  self->words = g_strdup (words);
  pp_note_view_put_back (self);
}

void
pp_note_view_commit (PpNoteView *self)
{
  g_autofree char *words = NULL;

  g_return_if_fail (PP_IS_NOTE_VIEW (self));

  words = dup_text (self);
  if (g_str_equal (words, self->words))
    return;
  g_free (self->words);
  self->words = g_strdup (words);
  g_signal_emit (self, committed, 0, words);
}

gboolean
pp_note_view_put_back (PpNoteView *self)
{
  g_autofree char *text = NULL;

  g_return_val_if_fail (PP_IS_NOTE_VIEW (self), FALSE);

  text = dup_text (self);
  if (g_str_equal (text, self->words))
    return FALSE;
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self)), self->words, -1);
  return TRUE;
}
