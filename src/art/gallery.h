/* gallery.h: the art of a whole tray, judged and loaded once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Panels that share pieces share their art, and so do pieces with the same bytes.
 */
#pragma once

#include "art/art.h"
#include "panel/panel.h"

G_BEGIN_DECLS

typedef struct _PpGallery PpGallery;

/* `previous` (nullable) lends what it has loaded. (transfer full), counted. */
PpGallery *pp_gallery_new       (const PpPanel *panel,
                                 PpGallery     *previous);
PpGallery *pp_gallery_ref       (PpGallery     *self);
void       pp_gallery_unref     (PpGallery     *self);
/* NULL if the piece has none, or none that may be drawn. (transfer none) */
PpArt     *pp_gallery_get       (PpGallery     *self,
                                 const PpPiece *piece);
/* Why the piece's art is left out, one plain sentence, or NULL. (transfer none) */
const char *pp_gallery_get_fault (PpGallery    *self,
                                 const PpPiece *piece);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpGallery, pp_gallery_unref)

G_END_DECLS
