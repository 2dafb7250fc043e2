/* shown-page.c: tells assistive technology which page of a stack is in front.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/shown-page.h"

static void
shown_cb (GtkStack *stack)
{
  GtkWidget *shown = gtk_stack_get_visible_child (stack);

  for (GtkWidget *w = gtk_widget_get_first_child (GTK_WIDGET (stack)); w != NULL;
       w = gtk_widget_get_next_sibling (w))
    gtk_accessible_update_state (GTK_ACCESSIBLE (w), GTK_ACCESSIBLE_STATE_HIDDEN, w != shown, -1);
}

void
pp_shown_page_tell (GtkStack *stack)
{
  g_return_if_fail (GTK_IS_STACK (stack));

  g_signal_connect (stack, "notify::visible-child", G_CALLBACK (shown_cb), NULL);
  shown_cb (stack);
}
