/* typing.c: what is typed in a field and not taken yet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/typing.h"

#include "desk/figure-entry.h"
#include "desk/note-view.h"
#include "desk/text-entry.h"

const char *
pp_typing_get_step (guint           key,
                    GdkModifierType state)
{
  guint plain = gdk_keyval_to_lower (key);
  gboolean with_shift = (state & GDK_SHIFT_MASK) != 0;

  if ((state & GDK_CONTROL_MASK) == 0 || (state & GDK_ALT_MASK) != 0)
    return NULL;
  if (plain == GDK_KEY_z)
    return with_shift ? "win.redo" : "win.undo";
  return plain == GDK_KEY_y && !with_shift ? "win.redo" : NULL;
}

void
pp_typing_ask_first (GtkEditable *field,
                     GCallback    key_cb,
                     gpointer     data)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", key_cb, data);
  gtk_widget_add_controller (GTK_WIDGET (gtk_editable_get_delegate (field)), keys);
}

void
pp_typing_finish (GtkRoot *root)
{
  GtkWidget *focus, *figure, *words;

  g_return_if_fail (GTK_IS_ROOT (root));

  focus = gtk_root_get_focus (root);
  if (focus == NULL)
    return;
  figure = gtk_widget_get_ancestor (focus, PP_TYPE_FIGURE_ENTRY);
  words = gtk_widget_get_ancestor (focus, PP_TYPE_TEXT_ENTRY);
  if (figure != NULL)
    pp_figure_entry_commit (PP_FIGURE_ENTRY (figure));
  if (words != NULL)
    pp_text_entry_commit (PP_TEXT_ENTRY (words));
  if (PP_IS_NOTE_VIEW (focus))
    pp_note_view_commit (PP_NOTE_VIEW (focus));
}

GtkWidget *
pp_typing_find_fault (GtkWidget *widget)
{
  GtkWidget *found = NULL;

  if (!gtk_widget_get_mapped (widget))
    return NULL;
  if (PP_IS_FIGURE_ENTRY (widget))
    return pp_figure_entry_has_fault (PP_FIGURE_ENTRY (widget)) ? widget : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = pp_typing_find_fault (child);
  return found;
}
