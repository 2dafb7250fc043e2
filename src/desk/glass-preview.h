/* glass-preview.h: the glass of a panel not begun yet, drawn to scale as it will hang.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With its holes, its wire up to the hook, and its measures along two sides as on a bench drawing.
 * Small glass is drawn smaller than large.
 */
#pragma once

#include "panel/panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_GLASS_PREVIEW (pp_glass_preview_get_type ())
G_DECLARE_FINAL_TYPE (PpGlassPreview, pp_glass_preview, PP, GLASS_PREVIEW, GtkWidget)

/* `panel` is nullable: nothing is drawn. */
void pp_glass_preview_set_panel (PpGlassPreview *self,
                                 const PpPanel  *panel);

G_END_DECLS
