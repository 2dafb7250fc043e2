/* keyed-box.h: the children of a box, each known by a key, made to follow a list.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What stays in the list keeps its widget, and with it focus and layout. Where the one that has
 * the focus goes, the one in its place has it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Makes the child of a key; (transfer floating). */
typedef GtkWidget *(*PpKeyedBoxMake) (const char *key,
                                      gpointer    data);

/* Drops the children whose key is not in `keys` (char *, no two alike), makes those that are
 * missing, and puts all in the order of `keys`. A child's key is its widget name. */
void       pp_keyed_box_sync  (GtkBox         *box,
                               GPtrArray      *keys,
                               PpKeyedBoxMake  make,
                               gpointer        data);
/* (transfer none) (nullable) */
GtkWidget *pp_keyed_box_find  (GtkBox         *box,
                               const char     *key);
G_END_DECLS
