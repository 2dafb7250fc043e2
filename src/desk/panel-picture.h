/* panel-picture.h: a whole panel as a picture for a widget.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For any thread, with a scene of its own.
 */
#pragma once

#include "art/draw.h"

#include <gdk/gdk.h>

G_BEGIN_DECLS

/* In a square of `side` px, on nothing: what is not glass is clear. `scene` was `before` (nullable)
 * until something was moved: pieces that lie elsewhere now get a line of `colour` round them, and a
 * broken one where they lay. (transfer full) */
GdkTexture *pp_panel_picture_new (const PpScene *scene,
                                  PpGallery     *gallery,
                                  int            side,
                                  const PpScene *before,
                                  const GdkRGBA *colour);

G_END_DECLS
