/* panel-files.h: the panel files of a folder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* The panel files (GFile) in `folder`, named in the file name encoding, in the order of their names
 * as the user's language has it; hidden ones are left out, damaged ones are not. Empty where the
 * folder cannot be read. (transfer full) */
GPtrArray *pp_panel_files_list (const char *folder);

G_END_DECLS
