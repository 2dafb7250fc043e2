/* folding.h: which findings stand open in the margin, and which are folded away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Few stand open, so that they are read: the worst ones, but for those the maker opened by hand.
 * Values in, value out; knows no widget.
 */
#pragma once

#include "check/finding.h"

G_BEGIN_DECLS

#define PP_FOLDING_OPEN 3 /* stand open at most */

typedef struct _PpFolding PpFolding;

PpFolding *pp_folding_new     (void);
void       pp_folding_free    (PpFolding  *self);

/* The maker opened this one; where too many stand open, the one opened longest ago closes. */
void       pp_folding_ask     (PpFolding  *self,
                               const char *key);
/* Decides anew for `findings` (PpFinding), worst first; `keys` as below. One that stands open
 * stays so as long as no graver one needs its place, whatever its number has become. */
void       pp_folding_fold    (PpFolding  *self,
                               GPtrArray  *findings,
                               GPtrArray  *keys);
/* What pp_folding_fold() decided. */
gboolean   pp_folding_is_open (PpFolding  *self,
                               const char *key);

/* A name for each of `findings` (PpFinding) by which it is known again in the findings of the next
 * check: its code and what it is about, in whatever order. (transfer full): array of char *, no two
 * alike. */
GPtrArray *pp_finding_keys    (GPtrArray  *findings);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpFolding, pp_folding_free)

G_END_DECLS
