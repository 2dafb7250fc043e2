/* print-memory.h: how was printed last: printer, tray, both sides, ...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept in the user's configuration, so that the next day asks for nothing anew. The paper is that
 * of the Sheets page and no part of it.
 */
#pragma once

#include "sheet/paper.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* (transfer full) */
GtkPrintSettings *pp_print_memory_get   (void);
/* What cannot be written is forgotten without a word. */
void              pp_print_memory_keep  (GtkPrintSettings *settings);
/* For paper as it is read, wider than high: lying on its side. (transfer full) */
GtkPageSetup     *pp_print_memory_setup (const PpPaper    *paper);

G_END_DECLS
