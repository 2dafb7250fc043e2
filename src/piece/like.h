/* like.h: a piece like another: of another size, under another name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

#define PP_LIKE_LEAST 0.05 /* times as large */
#define PP_LIKE_MOST 20.0

/* `scale` times as large in plan: outline, art, crown and the heights of its form, so that it is
 * the same shape; as thick as before, since the same sheet of glass is cut. Its weight is not
 * known unless the size is the same. One of it, in no box; a taken id is made new by
 * pp_edit_add_piece(). Art that may not be drawn stays behind unless the size is the same.
 * `name` (nullable): as before. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_VALUE for a scale out of range; else as pp_piece_new(). */
PpPiece *pp_like_make (const PpPiece *piece,
                       const char    *name,
                       double         scale,
                       GError       **error);

G_END_DECLS
