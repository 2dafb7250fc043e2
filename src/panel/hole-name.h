/* hole-name.h: which hole is meant, in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What stands before "hole": the ids that the program itself gives, in the maker's language; any
 * other id as it is. (transfer none) */
const char *pp_hole_name (const char *id);

G_END_DECLS
