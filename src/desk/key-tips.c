/* key-tips.c: what a control does, with the key that does it too.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text of the tooltip stays as it is, since it is also what the control is called by for those
 * who hear it; the key is put behind it when the tooltip is shown.
 */
#include "config.h"

#include "desk/key-tips.h"

#include "panel/i18n.h"

/* Of the action with its target, as "Ctrl+0". (transfer full) (nullable) */
static char *
find_key (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  const char *action = gtk_actionable_get_action_name (GTK_ACTIONABLE (widget));
  GVariant *target = gtk_actionable_get_action_target_value (GTK_ACTIONABLE (widget));
  g_autofree char *detailed = NULL;
  g_auto (GStrv) keys = NULL;
  GdkModifierType state;
  guint key;

  if (!GTK_IS_WINDOW (root) || action == NULL)
    return NULL;
  detailed = g_action_print_detailed_name (action, target);
  keys = gtk_application_get_accels_for_action (gtk_window_get_application (GTK_WINDOW (root)),
                                                detailed);
  if (keys[0] == NULL || !gtk_accelerator_parse (keys[0], &key, &state))
    return NULL;
  return gtk_accelerator_get_label (key, state);
}

static gboolean
query_cb (GtkWidget  *widget,
          int         x,
          int         y,
          gboolean    by_keyboard,
          GtkTooltip *tooltip,
          gpointer    data)
{
  const char *words = gtk_widget_get_tooltip_text (widget);
  g_autofree char *key = find_key (widget);
  g_autofree char *text = NULL;

  if (key == NULL)
    return FALSE;
  /* Translators: what a button does, and the key that does the same. */
  text = words != NULL ? g_strdup_printf (_("%s (%s)"), words, key) : g_strdup (key);
  gtk_tooltip_set_text (tooltip, text);
  return TRUE;
}

void
pp_key_tips_add (GtkWidget *widget)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  if (GTK_IS_ACTIONABLE (widget)
      && gtk_actionable_get_action_name (GTK_ACTIONABLE (widget)) != NULL)
    {
      gtk_widget_set_has_tooltip (widget, TRUE);
      g_signal_connect (widget, "query-tooltip", G_CALLBACK (query_cb), NULL);
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    pp_key_tips_add (child);
}
