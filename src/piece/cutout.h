/* cutout.h: a piece cut out of a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/record.h"
#include "piece/found.h"

G_BEGIN_DECLS

#define PP_CUTOUT_DPI 300.0 /* at most */

/* How high above the sheet the border of a piece is, and the lens; mm. NAN for the lens: the
 * border lies on the sheet, or the picture is a scan. */
typedef struct
{
  double rim;
  double lens;
} PpRim;

/* The outline as seen from straight above, far away: what is nearer to the lens looks larger, and
 * farther from the point that the lens stands over. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_VALUE for a rim that is not below the lens. */
PpOutline *pp_cutout_outline (const PpFound *found,
                              guint          piece,
                              PpRim          rim,
                              GError       **error);
/* A piece like `draft`, which says all but outline, kind, art, and colour if it is NULL: its kind
 * is guessed, its art is what the photo shows of it, its colour the mean of that; without
 * `with_art`, which is much faster, it has none. `at`: where its origin, the middle of its area,
 * lies in the squared frame. Returns (transfer full). Errors: as above, as pp_piece_new(), and
 * PP_PHOTO_ERROR_SIZE. */
PpPiece   *pp_cutout_make    (const PpFound *found,
                              guint          piece,
                              PpRim          rim,
                              const PpPiece *draft,
                              gboolean       with_art,
                              PpPoint       *at,
                              GError       **error);

G_END_DECLS
