/* new-panel-form.h: the sheet on which a new panel is chosen: place, shape, size, thickness.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything has a sensible value from the start, so one press of Return begins. What is chosen
 * is drawn beside the choices.
 * Signal: begin (gpointer PpNewPanel), borrowed: the maker wants this one.
 */
#pragma once

#include "panel/new-panel.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_NEW_PANEL_FORM (pp_new_panel_form_get_type ())
G_DECLARE_FINAL_TYPE (PpNewPanelForm, pp_new_panel_form, PP, NEW_PANEL_FORM, GtkWidget)

G_END_DECLS
