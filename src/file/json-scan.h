/* json-scan.h: is this text JSON, to the letter?
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * json-glib is too lax to judge a file: it takes comments, a name twice, octal numbers and a
 * second document, turns 1e400 into infinity, cuts a text at \u0000, and nesting crashes it. So
 * this scanner goes over the bytes first, and json-glib reads only what has passed.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Objects and arrays that may stand inside one another. */
#define PP_JSON_MAX_DEPTH 64

/* Bytes of the largest text that is read. */
#define PP_JSON_MAX_BYTES (64 * 1024 * 1024)

/* Whether bytes are exactly one JSON value (RFC 8259) in UTF-8, without a byte order mark, that
 * can be kept whole: no name twice in one object (compared after its escapes are decoded), no
 * half of a surrogate pair, no \u0000, no number that a double cannot hold (1e400), no whole
 * number (one without point and exponent) outside -2^63 .. 2^63 - 1. A value too small for a
 * double (1e-400) is taken: it reads as 0.
 *
 * bytes: length of them, no terminating zero needed; may be NULL if length is 0.
 *
 * Takes n log n time at worst and never recurses. A name that stands twice is found when its
 * object closes, so another fault inside that object is reported first.
 *
 * Errors: PP_FILE_ERROR_LIMIT (longer than PP_JSON_MAX_BYTES, deeper than PP_JSON_MAX_DEPTH),
 * PP_FILE_ERROR_SYNTAX (not JSON), PP_FILE_ERROR_VALUE (JSON, but one of the values above).
 * The sentence begins "Line 12, column 7: ", both from 1, columns counting characters, unless the
 * file as a whole is at fault (empty, too large). */
gboolean pp_json_scan (const char *bytes,
                       gsize       length,
                       GError    **error);

G_END_DECLS
