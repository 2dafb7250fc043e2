/* file-error.h: why a file could not be read or written.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each message is one plain sentence for the maker that names the place: line and column, JSON
 * path, or the path of the file.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_FILE_ERROR (pp_file_error_quark ())

typedef enum
{
  PP_FILE_ERROR_SYNTAX,  /* not JSON at all: damaged, or of another kind */
  PP_FILE_ERROR_FORMAT,  /* JSON, but not this format, or a part of it is missing */
  PP_FILE_ERROR_VERSION, /* written by a later version of the program */
  PP_FILE_ERROR_LIMIT,   /* larger, deeper or more of something than is read */
  PP_FILE_ERROR_VALUE,   /* well written, but a value cannot be */
  PP_FILE_ERROR_IO,      /* the disk or its owner says no: another place may do */
} PpFileError;

GQuark pp_file_error_quark (void);

G_END_DECLS
