/* shown.h: the words of a file inside a sentence of ours.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* At most 40 letters of `text` (UTF-8; NULL is none) and "…" for the rest; what cannot be shown in
 * a line, such as a line break, is U+FFFD. (transfer full) */
char *pp_shown (const char *text);

G_END_DECLS
