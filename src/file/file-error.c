/* file-error.c: the error domain of everything that reads and writes files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/file-error.h"

G_DEFINE_QUARK (pp-file-error-quark, pp_file_error)
