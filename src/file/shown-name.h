/* shown-name.h: the name of a file in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* In UTF-8; a name that nobody would read to its end has its middle left out. (transfer full) */
char *pp_shown_name (const char *path);

G_END_DECLS
