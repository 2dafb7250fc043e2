/* letters.h: letters that stand for holes and for edges of tiles.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* "A" for 0 to "Z", then "A2". (transfer full) */
char  *pp_letters_format   (guint          index);
/* The holes in the order of their letters, from the left: indices into panel->holes, as many as
 * there are. (transfer full): g_free(). */
guint *pp_letters_of_holes (const PpPanel *panel);

G_END_DECLS
