/* kind-guess.h: what kind of piece an outline looks like.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/record.h"

G_BEGIN_DECLS

/* A first answer for a piece that was only seen from above, to be corrected with one press: a stem
 * if it is a rod, straight or bent, a leaf if it is long, a flower if its rim is notched all
 * round, else a filler. Our own figures, no source; the buds and the round leaves that it takes
 * for leaves and flowers are told by nothing in their outlines. */
PpKind pp_kind_guess (const PpOutline *outline);

G_END_DECLS
