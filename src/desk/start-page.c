/* start-page.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/start-page.h"

struct _PpStartPage
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PpStartPage, pp_start_page, GTK_TYPE_WIDGET)

static void
pp_start_page_class_init (PpStartPageClass *klass)
{
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  g_signal_new ("begin", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 1, G_TYPE_POINTER);
  g_signal_new ("open", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 2, G_TYPE_FILE, G_TYPE_BOOLEAN);
}

static void
pp_start_page_init (PpStartPage *self)
{
}
