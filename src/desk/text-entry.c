/* text-entry.c: a field for a few words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/text-entry.h"

#include "desk/typing.h"

struct _PpTextEntry
{
  GtkEntry parent_instance;
  char    *words;
};

G_DEFINE_FINAL_TYPE (PpTextEntry, pp_text_entry, GTK_TYPE_ENTRY)

static guint committed;

static const char *
get_text (PpTextEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self));
}

static void
leave_cb (GtkEventController *controller,
          PpTextEntry        *self)
{
  pp_text_entry_commit (self);
}

static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        PpTextEntry        *self)
{
  const char *action = pp_typing_get_step (key, state);

  if (action == NULL)
    return key == GDK_KEY_Escape && pp_text_entry_put_back (self);
  if (!pp_text_entry_put_back (self))
    gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
  return GDK_EVENT_STOP;
}

static void
pp_text_entry_finalize (GObject *object)
{
  g_free (PP_TEXT_ENTRY (object)->words);
  G_OBJECT_CLASS (pp_text_entry_parent_class)->finalize (object);
}

static void
pp_text_entry_class_init (PpTextEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = pp_text_entry_finalize;
  committed = g_signal_new ("committed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                            NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
pp_text_entry_init (PpTextEntry *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->words = g_strdup ("");
  gtk_editable_set_enable_undo (GTK_EDITABLE (self), FALSE);
  g_signal_connect (self, "activate", G_CALLBACK (pp_text_entry_commit), NULL);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  pp_typing_ask_first (GTK_EDITABLE (self), G_CALLBACK (key_cb), self);
}

void
pp_text_entry_set_words (PpTextEntry *self,
                         const char  *words)
{
  g_return_if_fail (PP_IS_TEXT_ENTRY (self) && words != NULL);

  if (g_str_equal (words, self->words))
    return;
  g_free (self->words);
  self->words = g_strdup (words);
  pp_text_entry_put_back (self);
}

void
pp_text_entry_commit (PpTextEntry *self)
{
  g_autofree char *words = NULL;

  g_return_if_fail (PP_IS_TEXT_ENTRY (self));

  words = g_strstrip (g_strdup (get_text (self)));
  if (g_str_equal (words, self->words))
    return;
  g_free (self->words);
  self->words = g_strdup (words);
  g_signal_emit (self, committed, 0, words);
}

gboolean
pp_text_entry_put_back (PpTextEntry *self)
{
  g_return_val_if_fail (PP_IS_TEXT_ENTRY (self), FALSE);

  if (g_str_equal (get_text (self), self->words))
    return FALSE;
  gtk_editable_set_text (GTK_EDITABLE (self), self->words);
  return TRUE;
}
