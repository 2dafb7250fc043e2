/* kinds.h: each kind of sheet, for the tables in sheet.c.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

#define PP_SHEET(name) extern const PpSheetKind pp_##name##_sheet;
#define PP_BLANK(name) PP_SHEET (name)
#include "sheet/kinds.list"
#undef PP_SHEET
#undef PP_BLANK

G_END_DECLS
