/* sheets-view.h: the pages that will print, as paper on the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a GtkScrolledWindow. As many side by side as there is room for; Page Down and Page Up go by
 * rows of them. Only what is seen is drawn, by the maker, whenever that has nothing else to do.
 * Signal: moved, when another page is in front or the zoom is another one.
 */
#pragma once

#include "desk/sheet-maker.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_SHEETS_VIEW (pp_sheets_view_get_type ())
G_DECLARE_FINAL_TYPE (PpSheetsView, pp_sheets_view, PP, SHEETS_VIEW, GtkWidget)

void   pp_sheets_view_set_maker (PpSheetsView *self,
                                 PpSheetMaker *maker);
/* `set` is nullable. The place in it stays. */
void   pp_sheets_view_set_set   (PpSheetsView *self,
                                 PpSheetSet   *set);
/* px a mm; 0: a whole page fits, whatever the size of the view. */
void   pp_sheets_view_set_zoom  (PpSheetsView *self,
                                 double        zoom);
/* px a mm, as it is now. */
double pp_sheets_view_get_scale (PpSheetsView *self);
guint  pp_sheets_view_get_n_pages (PpSheetsView *self);
/* The first page in front, from 1; 0 without any. */
guint  pp_sheets_view_get_page  (PpSheetsView *self);

G_END_DECLS
