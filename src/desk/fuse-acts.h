/* fuse-acts.h: what is fused onto the glass, and what stands in it: the acts of menus, keys and
 * cards.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is one step of undo. What cannot be done is told by the document's signal "refused".
 */
#pragma once

#include "desk/document.h"

G_BEGIN_DECLS

/* A jug that suits the glass, chosen. */
void        pp_fuse_acts_add_vase (PpDocument    *document);
/* The one chosen piece becomes part of the glass, and is chosen as that. */
void        pp_fuse_acts_piece    (PpDocument    *document);
/* The chosen stems stand in the pocket that is nearest to them. */
void        pp_fuse_acts_stand    (PpDocument    *document);
/* Whether any of the chosen pieces is a stem, and a pocket is there. */
gboolean    pp_fuse_acts_can_stand (PpDocument   *document);
/* The chosen fused part, off the glass. */
void        pp_fuse_acts_remove   (PpDocument    *document);

/* Its name, or its id where it has none. (transfer none) */
const char *pp_fuse_acts_name     (const PpFused *fused);

G_END_DECLS
