/* tray.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/tray.h"

struct _PpTray
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PpTray, pp_tray, GTK_TYPE_WIDGET)

static void
pp_tray_class_init (PpTrayClass *klass)
{
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  g_signal_new ("place", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
pp_tray_init (PpTray *self)
{
}

void
pp_tray_set_document (PpTray *self,
                      PpDocument *document)
{
}

G_DEFINE_BOXED_TYPE (PpPieceDrag, pp_piece_drag, pp_piece_drag_copy, pp_piece_drag_free)

PpPieceDrag *
pp_piece_drag_copy (const PpPieceDrag *self)
{
  PpPieceDrag *copy = g_new (PpPieceDrag, 1);

  *copy = (PpPieceDrag) { g_strdup (self->piece), self->grip };
  return copy;
}

void
pp_piece_drag_free (PpPieceDrag *self)
{
  g_free (self->piece);
  g_free (self);
}

void
pp_tray_set_scale (PpTray *self,
                   double  scale)
{
}
