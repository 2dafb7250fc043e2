/* load.h: a whole file in, with a limit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Reads a plain file whole. Symbolic links are followed. Never waits for anyone: a pipe, a device
 * or a folder is refused unopened. A file that grows while it is read is refused as soon as it
 * passes max.
 *
 * path: in the file name encoding. max: bytes, PP_JSON_MAX_BYTES for what is to be scanned.
 * bytes: (out) (transfer full), untouched on failure.
 *
 * Errors: PP_FILE_ERROR_LIMIT (larger than max), PP_FILE_ERROR_IO (everything else). */
gboolean pp_file_load (const char *path,
                       gsize       max,
                       GBytes    **bytes,
                       GError    **error);

G_END_DECLS
