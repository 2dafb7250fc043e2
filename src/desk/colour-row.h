/* colour-row.h: colours of glass side by side, to press.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first is "as pictured", no colour of the maker's; then common ones; the last opens a chooser.
 * One of a group: arrow keys choose.
 * Signal: chosen (const char *colour), "#rrggbb" or NULL.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_COLOUR_ROW (pp_colour_row_get_type ())
G_DECLARE_FINAL_TYPE (PpColourRow, pp_colour_row, PP, COLOUR_ROW, GtkWidget)

GtkWidget *pp_colour_row_new (void);
/* `colour` is nullable; "chosen" is not emitted. */
void       pp_colour_row_set (PpColourRow *self,
                              const char  *colour);

G_END_DECLS
