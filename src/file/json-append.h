/* json-append.h: the spelling of single JSON values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each appends one value, without space inside, to text; json-write.h puts them together.
 */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* string: UTF-8. In quotation marks; only what must be is escaped. */
void pp_json_append_string (GString    *text,
                            const char *string);

/* With as few digits as read back to the same double, whatever the locale: whole numbers below
 * 1e15 without point or exponent, others with 15, 16 or 17 significant digits. Minus zero becomes
 * 0. number: finite. */
void pp_json_append_number (GString *text,
                            double   number);

/* node: (nullable), NULL is null. As json-glib read it from a text that pp_json_scan has passed,
 * so that it holds no number that is not finite and nests at most PP_JSON_MAX_DEPTH deep (this
 * recurses). Whole numbers keep all their 64 bits. */
void pp_json_append_node (GString  *text,
                          JsonNode *node);

G_END_DECLS
