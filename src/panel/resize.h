/* resize.h: another size of glass under the same arrangement.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* The background gets another width and height, mm; its upper left corner and the pieces stay
 * where they are. Each hole keeps its distance from the nearer of the two side edges and from the
 * nearer of upper and lower edge, but not past the middle of the glass. A corner radius that would
 * be too large is made smaller. For a free outline a PP_PANEL_ERROR_VALUE.
 * (transfer full). Errors: as of edit.h. */
PpPanel *pp_edit_resize (const PpPanel  *panel,
                         double          width,
                         double          height,
                         GError        **error);

G_END_DECLS
