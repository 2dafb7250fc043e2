/* drawing.h: a piece from a drawing in mm.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/record.h"
#include "piece/drawing-part.h"

G_BEGIN_DECLS

/* A piece like `draft`, which says all but outline, kind and art: its kind is guessed, its art is
 * the drawing, its outline the drawing's silhouette, within 0.05 mm up to 120 mm a side, sharp
 * corners within 0.15. Covered is what is at least half as opaque as the most opaque place, lines
 * included; specks and pinholes under 1 mm² are left out. `element` (nullable) is the id of the
 * part of which the outline is taken; then the drawing is cut off at it, and a part that is only a
 * line counts with what it encloses. A width or height in mm, cm or inches is how large it is, else
 * one unit of its viewBox is 1 mm. The piece's origin is the middle of its area. Returns (transfer
 * full).
 * Errors: PP_ART_ERROR for a drawing that may not be drawn; PP_PANEL_ERROR_VALUE for one that is
 * empty, in several parts, or larger than a panel, or has no such part; else as pp_piece_new(). */
PpPiece   *pp_drawing_make       (GBytes         *svg,
                                  const char     *element,
                                  const PpPiece  *draft,
                                  GError        **error);
/* The parts to choose from, of PpDrawingPart. (transfer full) Errors: PP_ART_ERROR. */
GPtrArray *pp_drawing_list_parts (GBytes         *svg,
                                  GError        **error);

G_END_DECLS
