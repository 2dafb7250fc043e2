/* settle-stack.h: every placement settled in turn, anew or as in the check before.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"

G_BEGIN_DECLS

/* Fills rests, joints (as the upward pass leaves them), bare_depth and depth of `self`, whose panel
 * and scene are set. `previous` is nullable; the answer is the same with and without it.
 * Errors: G_IO_ERROR_CANCELLED. */
gboolean pp_settle_stack (PpCheck         *self,
                          const PpCheck   *previous,
                          GCancellable    *cancellable,
                          PpProgressFunc   progress,
                          gpointer         data,
                          GError         **error);

G_END_DECLS
