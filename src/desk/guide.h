/* guide.h: the guide of data/guide, to be read in the window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* In the maker's language where there is one, else in English: one column of text and pictures, as
 * wide as is read well. (transfer floating) */
GtkWidget *pp_guide_new (void);

G_END_DECLS
