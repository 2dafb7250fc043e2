/* making-way-picture.h: names of the pieces of a picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/making.h"

G_BEGIN_DECLS

/* As the maker named it, else as the picture and numbered. (transfer full) */
char *pp_making_way_picture_name (const PpMaking *making,
                                  guint           piece);

G_END_DECLS
