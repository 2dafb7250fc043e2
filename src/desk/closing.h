/* closing.h: what is asked before changes could be lost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Whether the window may be closed: "Save the changes?", and they are saved if so. Asks nothing
 * where nothing is unsaved. The window stays. */
void     pp_closing_ask_async  (PpWindow            *window,
                                GAsyncReadyCallback  done,
                                gpointer             data);
gboolean pp_closing_ask_finish (GAsyncResult        *result);
/* From now on the window asks before it closes. */
void     pp_closing_guard      (PpWindow            *window);
/* Asks window after window, and closes all of them if none objects. */
void     pp_closing_quit       (GtkApplication      *application);

G_END_DECLS
