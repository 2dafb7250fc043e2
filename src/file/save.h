/* save.h: whole files out: the old one or the new one, never a torn one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GLib has two ways and neither does: g_file_set_contents_full replaces a link by a file and
 * resets the mode, g_file_replace_contents writes a new file in place and never syncs the folder.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Writes bytes as the whole content of the file, so that after a power cut at any moment either
 * the old content or the new one is there: a temporary file ".petalpane-XXXXXX" in the same folder
 * is written and synced, then takes the place of the file, then the folder is synced.
 *
 * path: in the file name encoding. A symbolic link stays one, and what it leads to (which may not
 * be there yet) is written. The mode of an old file is kept, and its owner and group where the
 * system allows it; if the group cannot be kept, the new one gets no more than everybody. A new
 * file gets 0666 less the umask. Other hard links keep the old content; access lists are not kept.
 * A file that is write-protected is not replaced. Blocks until the disk has answered: call it from
 * a worker thread where that matters.
 *
 * Errors: PP_FILE_ERROR_IO. The old file is untouched then and nothing is left behind, but for
 * one case: if the very last step, the sync of the folder, fails, the new content is in place
 * though the disk has not confirmed it. */
gboolean pp_file_save (const char *path,
                       const char *bytes,
                       gsize       length,
                       GError    **error);

G_END_DECLS
