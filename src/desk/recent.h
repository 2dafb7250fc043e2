/* recent.h: the panels the maker had open last.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* At most `most` panels (GFile), the latest first, by media type or suffix; whether they are
 * still there is not looked at, since a disk may be slow. (transfer full) */
GPtrArray *pp_recent_list (GtkRecentManager *manager,
                           guint             most);

G_END_DECLS
