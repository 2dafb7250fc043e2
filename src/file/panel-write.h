/* panel-write.h: a panel as its file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* What pp_panel_read() reads back to an equal panel, unknown members included; read and written
 * again it is the same text to the byte. (transfer full) */
GString *pp_panel_write (const PpPanel *panel);

/* The same, or NULL. Errors: PP_FILE_ERROR_LIMIT for a panel too large to be read again. */
GString *pp_panel_write_readable (const PpPanel *panel,
                                  GError       **error);

/* Writes it in place of the file at `path` (in the file name encoding), which stays as it was
 * unless all goes well. Errors: PP_FILE_ERROR_IO, as of pp_file_save(), and as of
 * pp_panel_write_readable(). */
gboolean pp_panel_save  (const PpPanel *panel,
                         const char    *path,
                         GError       **error);

G_END_DECLS
