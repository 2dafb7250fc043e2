/* samples-folder.h: the panels to open and learn from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* The sample panels (GFile) by name, those installed or else those of the tree the program was
 * built from; empty where there are none. (transfer full) */
GPtrArray *pp_samples_folder_list (void);

G_END_DECLS
