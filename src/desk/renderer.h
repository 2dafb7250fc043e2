/* renderer.h: cairo draws where the graphics card is a program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gdk/gdk.h>

G_BEGIN_DECLS

/* Chooses GTK's renderer for this display; call it before the first window. What the user chose
 * by GSK_RENDERER stays. */
void pp_renderer_choose (GdkDisplay *display);

G_END_DECLS
