/* start-page.h: what the window shows before there is a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A new panel (wall or window, size, shape, thickness), a recent one, a template, a sample; and of
 * a recent one another like it or of another size. For the window of window.h.
 * Signals: begin (gpointer PpPanel, borrowed), the maker wants this new panel;
 *          open (GFile *file, gboolean as_copy), a recent panel, or a sample to copy.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_START_PAGE (pp_start_page_get_type ())
G_DECLARE_FINAL_TYPE (PpStartPage, pp_start_page, PP, START_PAGE, GtkWidget)

G_END_DECLS
