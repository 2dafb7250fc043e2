/* wrap.h: sentences broken into lines for a terminal.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Appends `first` and the sentence, whose later lines stand in as far as `first` is long. */
void pp_append_wrapped (GString    *text,
                        const char *first,
                        const char *sentence);

G_END_DECLS
