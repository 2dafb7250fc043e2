/* outline.h: a polygon with holes, the shape of everything cut from glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A GeoJSON Polygon (RFC 7946, section 3.1.6): ring 0 is the border, the others are holes; each
 * ring is closed, its last position equal to its first. Immutable and counted atomically, so
 * threads may share one. That rings do not cross is asked by shape/ (pp_outline_is_simple()).
 */
#pragma once

#include "panel/point.h"

G_BEGIN_DECLS

#define PP_OUTLINE_MAX_POSITIONS 10000 /* a ring */

typedef struct _PpOutline PpOutline;

/* `lengths` holds the number of positions of each of `n_rings` rings, whose positions follow one
 * another in `points`. `extra` (nullable): members of the GeoJSON object that the program does
 * not know, as JSON text without braces, kept for writing.
 * Returns (transfer full).
 * Errors: PP_PANEL_ERROR_VALUE for no ring, a ring of fewer than four positions, one that is not
 * closed, or a number that is not finite; PP_PANEL_ERROR_LIMIT for too many positions.
 */
PpOutline     *pp_outline_new             (const guint      *lengths,
                                           guint             n_rings,
                                           const PpPoint    *points,
                                           const char       *extra,
                                           GError          **error);
/* A border without holes; closes it where the last point is not the first. Never fails: `points`
 * must be at least three finite points. Returns (transfer full). */
PpOutline     *pp_outline_new_ring        (const PpPoint    *points,
                                           guint             n_points);
/* Of closed rings that were computed: as pp_outline_new (), but never fails, and has no bound on
 * the positions of a ring, which is one for files. Returns (transfer full). */
PpOutline     *pp_outline_new_rings       (const guint      *lengths,
                                           guint             n_rings,
                                           const PpPoint    *points);
PpOutline     *pp_outline_ref             (const PpOutline  *self);
void           pp_outline_unref           (const PpOutline  *self);

guint          pp_outline_get_n_rings     (const PpOutline  *self);
/* (transfer none): the positions of one ring, `n_positions` with the closing one. */
const PpPoint *pp_outline_get_ring        (const PpOutline  *self,
                                           guint             ring,
                                           guint            *n_positions);
PpBox          pp_outline_get_box         (const PpOutline  *self);
const char    *pp_outline_get_extra       (const PpOutline  *self);
gboolean       pp_outline_equal           (const PpOutline  *a,
                                           const PpOutline  *b);
/* Whether all positions are the same within PP_TIE: an outline that was moved about. */
gboolean       pp_outline_near            (const PpOutline  *a,
                                           const PpOutline  *b);

/* Two ends, a base and a tip: at least half as long again as wide, up and down. */
gboolean       pp_outline_is_long         (const PpOutline  *self);

/* Maps every position; `map` must keep rings rings (an affine map does). Returns (transfer
 * full). */
typedef PpPoint (*PpPointMap)             (PpPoint           p,
                                           gconstpointer     data);
PpOutline     *pp_outline_map             (const PpOutline  *self,
                                           PpPointMap        map,
                                           gconstpointer     data);
/* Returns (transfer full). */
PpOutline     *pp_outline_move            (const PpOutline  *self,
                                           PpPoint           by);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpOutline, pp_outline_unref)

G_END_DECLS
