/* kinds.h: the draw function of each kind of sheet, for the table in sheet.c.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

void pp_record_sheet_draw (PpBook *book);
void pp_order_sheet_draw  (PpBook *book);
void pp_pattern_sheet_draw (PpBook *book);
void pp_parking_sheet_draw (PpBook *book);
void pp_hanging_sheet_draw (PpBook *book);
void pp_cutting_sheet_draw (PpBook *book);
void pp_materials_sheet_draw (PpBook *book);
void pp_label_sheet_draw (PpBook *book);
void pp_ring_sheet_draw (PpBook *book);
void pp_ladder_sheet_draw (PpBook *book);
void pp_frame_sheet_draw (PpBook *book);

G_END_DECLS
