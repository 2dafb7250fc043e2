/* closure.h: which of numbered things must come before which, through any chain of edges.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _PpClosure PpClosure;

/* Things 0 to `n` - 1, no edge yet. (transfer full) */
PpClosure *pp_closure_new    (guint            n);
void       pp_closure_free   (PpClosure       *self);
/* Adds an edge. `first` < `second`, and every edge into `first` has been added before. FALSE if it
 * was known by a longer way; if the edges into `second` are added from the greatest `first` down,
 * those that give TRUE are the transitive reduction. */
gboolean   pp_closure_add    (PpClosure       *self,
                              guint            first,
                              guint            second);
/* Whether some chain of edges leads from `a` to `b`. */
gboolean   pp_closure_before (const PpClosure *self,
                              guint            a,
                              guint            b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpClosure, pp_closure_free)

G_END_DECLS
