/* panel-io.h: panels read and written in a thread, with what stands in their file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paths are in the file name encoding. `content` tells contents apart (file-words.h).
 */
#pragma once

#include "panel/panel.h"

#include <gio/gio.h>

G_BEGIN_DECLS

void      pp_panel_io_load_async  (const char          *path,
                                   GAsyncReadyCallback  done,
                                   gpointer             data);
/* content: (out) (transfer full). (transfer full), or NULL. Errors: PP_FILE_ERROR; each message is
 * one sentence with the file's name. */
PpPanel  *pp_panel_io_load_finish (GAsyncResult        *result,
                                   char               **content,
                                   GError             **error);
/* What stands in the file is kept among the earlier saves first (file/earlier.h).
 * expected (nullable): what should stand in the file now; a file that is not there is as good. */
void      pp_panel_io_save_async  (const PpPanel       *panel,
                                   const char          *path,
                                   const char          *expected,
                                   GAsyncReadyCallback  done,
                                   gpointer             data);
/* content: (out) (transfer full), as written. Errors: G_IO_ERROR_WRONG_ETAG where the file holds
 * something else than `expected`, and is left as it is; PP_FILE_ERROR as of pp_panel_save(). */
gboolean  pp_panel_io_save_finish (GAsyncResult        *result,
                                   char               **content,
                                   GError             **error);
/* What stands in the file now; NULL if it is not there. A file that cannot be read has the content
 * "". Blocks: for a thread. (transfer full) */
char     *pp_panel_io_look        (const char          *path);

G_END_DECLS
