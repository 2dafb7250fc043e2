/* head-read.h: from bytes to a JSON tree that can be trusted, and what stands first in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "file/members.h"

G_BEGIN_DECLS

/* The strict scanner goes over the bytes first; json-glib, which takes much that is not JSON, only
 * reads what it has passed. (transfer full). Errors: as of pp_json_scan(). */
JsonNode *pp_json_read (GBytes     *bytes,
                        GError    **error);

/* Takes "format", which must be `format`, and "version", which must be 1. */
void      pp_read_head (PpMembers  *members,
                        const char *format);

G_END_DECLS
