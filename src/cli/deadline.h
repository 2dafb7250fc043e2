/* deadline.h: says "enough" when a time is up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct _PpDeadline PpDeadline;

/* The clock runs from now; `seconds` >= 0. */
PpDeadline   *pp_deadline_new        (double      seconds);
/* Cancelled when the time is up, in a thread of its own. (transfer none) */
GCancellable *pp_deadline_get_enough (PpDeadline *self);
void          pp_deadline_free       (PpDeadline *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpDeadline, pp_deadline_free)

G_END_DECLS
