/* clipboard.h: copied pieces on the system's clipboard, so that they go from window to window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is copied stands there as the text of a panel file (panel/clip.h).
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

#define PP_CLIPBOARD_MIME "application/x-petalpane-panel"

/* The chosen pieces; nothing where none is. */
void pp_clipboard_copy  (PpWindow *window);
/* On top, and chosen: at the pointer where that is over the canvas, else a little beside the
 * place they were copied from, or in the middle of the glass where they would not be on it.
 * Comes later, as what is there is read first; told in a sentence where it is not pieces. */
void pp_clipboard_paste (PpWindow *window);

G_END_DECLS
