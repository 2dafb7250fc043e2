/* tick.h: the mark of what is done: a tick.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_TICK (pp_tick_get_type ())
G_DECLARE_FINAL_TYPE (PpTick, pp_tick, PP, TICK, GtkWidget)

G_END_DECLS
