/* panel-error.h: why a value cannot be part of a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Messages begin with the place inside the object, as a JSON path without the root
 * ("form.rise: ..."), so that a reader can put the path of the object before it.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_PANEL_ERROR (pp_panel_error_quark ())

typedef enum
{
  PP_PANEL_ERROR_VALUE,     /* a number, text or date that cannot be */
  PP_PANEL_ERROR_REFERENCE, /* names something that is not there, or is still needed elsewhere */
  PP_PANEL_ERROR_DUPLICATE, /* an id stands twice */
  PP_PANEL_ERROR_LIMIT,     /* more of something than a panel may hold */
} PpPanelError;

GQuark pp_panel_error_quark (void);

G_END_DECLS
