/* plain-line.h: texts of a maker as they stand on a sheet, most on one line.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All are (transfer full).
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* `text` without what no XML file may hold. */
char *pp_plain_line_new       (const char    *text);
/* The same, its line feeds kept. */
char *pp_plain_line_new_lines (const char    *text);
/* The panel's title, or words for a panel without one, or for none (NULL). */
char *pp_plain_line_new_title (const PpPanel *panel);
/* The day on which the panel was begun, or "". */
char *pp_plain_line_new_date  (const PpPanel *panel);

G_END_DECLS
