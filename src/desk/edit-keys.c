/* edit-keys.c: the keys of the actions on the chosen pieces.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK asks an application's keys before the widget with the focus, which would take Ctrl+C, Delete
 * or a plain letter away from a field that is being typed in. So the window looks first: while such
 * a field has the focus, these keys go to it and the widgets round it, and nowhere else. Any other
 * widget is asked first too, since a letter may find something in it. Escape means something
 * different to each widget on the way and is asked last of all.
 */
#include "config.h"

#include "desk/edit-keys.h"

#include "desk/acts.h"
#include "desk/help-window.h"
#include "desk/keys-window.h"

static const struct
{
  const char *action;
  const char *keys[4];
} rows[] = {
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.cut", { "<Control>x", "<Shift>Delete" } },
  { "win.copy", { "<Control>c", "<Control>Insert" } },
  { "win.paste", { "<Control>v", "<Shift>Insert" } },
  { "win.duplicate", { "<Control>d" } },
  { "win.remove", { "Delete", "BackSpace", "KP_Delete" } },
  { "win.select-all", { "<Control>a" } },
  { "win.turn-left", { "l" } },
  { "win.turn-right", { "r" } },
  { "win.turn-left-fine", { "<Shift>l" } },
  { "win.turn-right-fine", { "<Shift>r" } },
  { "win.mirror", { "m" } },
  { "win.stays-put", { "p" } },
  { "win.over", { "o" } },
  { "win.under", { "u" } },
  { "win.swap", { "s" } },
  { "win.space-evenly", { "e" } },
  { "win.mirror-across", { "<Shift>m" } },
  { "win.fuse-vase", { "v" } },
  { "win.fuse-piece", { "f" } },
  { "win.stand", { "i" } },
  { "win.choose-next", { "g" } },
  { "win.to-tray", { "t" } },
};

static const char * const help_keys[] = { "F1", NULL };
static const char * const keys_keys[] = { "<Control>question", "<Control>F1", NULL };

void
pp_edit_keys_set (GtkApplication *application)
{
  guint n_acts;
  const PpActKind * const *acts = pp_acts (&n_acts);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_application_set_accels_for_action (application, rows[i].action, rows[i].keys);
  for (guint i = 0; i < n_acts; i++)
    {
      g_autofree char *action = g_strconcat ("win.", acts[i]->name, NULL);

      gtk_application_set_accels_for_action (application, action, acts[i]->keys);
    }
  gtk_application_set_accels_for_action (application, "win.help", help_keys);
  gtk_application_set_accels_for_action (application, "win.show-help-overlay", keys_keys);
}

static gboolean
is_typing (GtkWidget *focus)
{
  return GTK_IS_EDITABLE (focus) || GTK_IS_TEXT_VIEW (focus);
}

static gboolean
matches (GdkEvent   *event,
         const char *key)
{
  GdkModifierType state;
  guint value;

  return gtk_accelerator_parse (key, &value, &state)
         && gdk_key_event_matches (event, value, state) != GDK_KEY_MATCH_NONE;
}

static gboolean
matches_any (GdkEvent           *event,
             const char * const *keys)
{
  for (; *keys != NULL; keys++)
    if (matches (event, *keys))
      return TRUE;
  return FALSE;
}

static gboolean
is_edit_key (GdkEvent *event)
{
  guint n_acts;
  const PpActKind * const *acts = pp_acts (&n_acts);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (matches_any (event, rows[i].keys))
      return TRUE;
  for (guint i = 0; i < n_acts; i++)
    if (matches_any (event, acts[i]->keys))
      return TRUE;
  return FALSE;
}

/* Asks the widget with the focus and those it lies in, as without any key of the application. */
static gboolean
ask_widgets (GtkEventControllerKey *keys,
             GtkWidget             *focus,
             GtkWidget             *window)
{
  for (GtkWidget *w = focus; w != NULL && w != window; w = gtk_widget_get_parent (w))
    if (gtk_event_controller_key_forward (keys, w))
      return TRUE;
  return FALSE;
}

static gboolean
pressed_cb (GtkEventControllerKey *keys,
            guint                  keyval,
            guint                  keycode,
            GdkModifierType        state,
            GtkWindow             *window)
{
  GtkWidget *focus = gtk_window_get_focus (window);
  GdkEvent *event = gtk_event_controller_get_current_event (GTK_EVENT_CONTROLLER (keys));

  if (focus == NULL || !is_edit_key (event))
    return GDK_EVENT_PROPAGATE;
  if (ask_widgets (keys, focus, GTK_WIDGET (window)) || is_typing (focus))
    return GDK_EVENT_STOP;
  return GDK_EVENT_PROPAGATE;
}

/* The last controller added is the first asked, and GTK adds its own with the application. */
static void
application_cb (GtkWindow  *window,
                GParamSpec *pspec,
                gpointer    data)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (pressed_cb), window);
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
}

static void
show_keys_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       window)
{
  gtk_window_present (GTK_WINDOW (pp_keys_window_new (window)));
}

static void
help_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  gtk_window_present (GTK_WINDOW (pp_help_window_new (window)));
}

static const GActionEntry help[] = {
  { "help", help_cb },
  { "show-help-overlay", show_keys_cb },
};

void
pp_edit_keys_add (PpWindow *window)
{
  GtkEventController *last = gtk_shortcut_controller_new ();
  GtkShortcut *escape = gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                          gtk_named_action_new ("win.choose-nothing"));

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (last), escape);
  gtk_widget_add_controller (GTK_WIDGET (window), last);
  g_action_map_add_action_entries (G_ACTION_MAP (window), help, G_N_ELEMENTS (help), window);
  g_signal_connect (window, "notify::application", G_CALLBACK (application_cb), NULL);
}
