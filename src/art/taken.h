/* taken.h: what cairo writes, kept in memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/* For the stream functions of cairo: adds to `closure`, a GByteArray. */
cairo_status_t pp_taken_add (void                *closure,
                             const unsigned char *data,
                             unsigned int         length);

G_END_DECLS
