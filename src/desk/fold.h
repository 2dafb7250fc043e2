/* fold.h: the button over what is folded away: "More".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What it opens goes by its property "active". Whether it stands open is told to assistive
 * technology.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_FOLD (pp_fold_get_type ())
G_DECLARE_FINAL_TYPE (PpFold, pp_fold, PP, FOLD, GtkToggleButton)

G_END_DECLS
