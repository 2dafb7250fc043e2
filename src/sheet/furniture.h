/* furniture.h: what every page carries: header, footer, and a line where there is nothing else.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* Header (sheet, heading, page 2 of 5) and footer (panel, maker, date); sets book->area. */
void  pp_furniture_draw       (PpBook       *book);

/* What header and footer of a page with that heading (nullable: none) leave. */
PpBox pp_furniture_get_area   (const PpBook *book,
                               const char   *heading);

/* A friendly line on a page that has nothing else to show. */
void  pp_furniture_draw_empty (PpBook       *book,
                               const char   *text);

G_END_DECLS
