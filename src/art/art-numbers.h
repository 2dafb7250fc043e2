/* art-numbers.h: how large the figures of a drawing can get.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Curves are drawn as many short lines, more the larger they are, so size is cost.
 * Private to the judge.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The greatest number in the text, signs dropped; what follows a # (a colour, an id) is none. */
double pp_art_numbers_greatest (const char *text);
/* By how much about a transform list enlarges: 1 for none, under 1 where it shrinks. */
double pp_art_numbers_scale    (const char *transforms);

G_END_DECLS
