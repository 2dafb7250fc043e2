/* recovery.h: what was left behind unsaved is offered at the next start.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* One after another, with a question each; nothing is written over before the maker saves. What
 * belongs to a program that still runs is left alone. Needs a window. */
void pp_recovery_offer (GtkApplication *application);

G_END_DECLS
