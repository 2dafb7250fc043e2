/* card.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/card.h"

struct _PpCard
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PpCard, pp_card, GTK_TYPE_WIDGET)

static void
pp_card_class_init (PpCardClass *klass)
{
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  g_signal_new ("leave", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 0);
}

static void
pp_card_init (PpCard *self)
{
}

void
pp_card_set_document (PpCard *self,
                      PpDocument *document)
{
}
