/* panel-picture.h: a whole panel as a picture for a widget.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is made in any thread, with a scene of its own.
 */
#pragma once

#include "art/draw.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What a picture of it is to have room for: the glass and all that lies on it or beside, mm. */
PpBox       pp_panel_picture_get_box (const PpScene *scene);
/* In a square of `side` px, on nothing: what is not glass is clear. `scene` was `before` (nullable)
 * until something was moved: pieces that lie elsewhere now get a line of `colour` round them, and a
 * broken one where they lay. (transfer full) */
GdkTexture *pp_panel_picture_new (const PpScene *scene,
                                  PpGallery     *gallery,
                                  int            side,
                                  const PpScene *before,
                                  const GdkRGBA *colour);

/* `texture` half as large, so that it stays sharp at twice the scale. (transfer full) */
GdkPaintable *pp_panel_picture_halve (GdkTexture *texture);

G_END_DECLS
