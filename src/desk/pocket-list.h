/* pocket-list.h: the pockets of a panel as a list to choose one from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "none" comes first, at 0; then the fused parts that have a pocket, in the order of the panel.
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The names, for a drop-down. `fused` is the panel's list. Returns (transfer full). */
GtkStringList *pp_pocket_list_new      (GPtrArray *fused);
/* The part at `position`, (transfer none); NULL for "none" and past the end. */
const PpFused *pp_pocket_list_get_part (GPtrArray *fused, guint position);
/* Where the part with that id stands; 0 for NULL and for a part without a pocket. */
guint          pp_pocket_list_find     (GPtrArray *fused, const char *id);

G_END_DECLS
