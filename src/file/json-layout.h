/* json-layout.h: where a JSON text breaks its lines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Columns of a line that holds an array; only a text or name of that length makes it longer. */
#define PP_JSON_LINE 100

/* Lays out json anew: two spaces a level and a line for each member of an object and for each
 * object in an array. An array with no object inside (coordinates, heights, ids) runs on in its
 * line and wraps between its elements. Ends in a line break. The values are not touched.
 *
 * json: one value that is JSON (pp_json_scan). (transfer full) */
GString *pp_json_layout (const char *json);

G_END_DECLS
