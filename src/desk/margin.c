/* margin.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/margin.h"

struct _PpMargin
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PpMargin, pp_margin, GTK_TYPE_WIDGET)

static void
pp_margin_class_init (PpMarginClass *klass)
{
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  g_signal_new ("show-me", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
pp_margin_init (PpMargin *self)
{
}

void
pp_margin_set_document (PpMargin *self,
                        PpDocument *document)
{
}

void
pp_margin_open (PpMargin *self,
                guint     index)
{
}
