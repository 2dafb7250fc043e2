/* work.h: something that takes a while in a thread: how far it is, and whether it is still wanted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Counted; any thread may report, any thread may ask.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct _PpWork PpWork;

PpWork       *pp_work_new             (void);
PpWork       *pp_work_ref             (PpWork   *self);
void          pp_work_unref           (PpWork   *self);
/* (transfer none) */
GCancellable *pp_work_get_cancellable (PpWork   *self);
/* The part of the whole that is now being done: its reports of 0 to 1 mean `from` to `to`. For the
 * thread that works. */
void          pp_work_set_part        (PpWork   *self,
                                       double    from,
                                       double    to);
/* A PpProgressFunc whose data is the work. */
void          pp_work_report          (double    done,
                                       gpointer  work);
/* 0 to 1. */
double        pp_work_get_done        (PpWork   *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpWork, pp_work_unref)

G_END_DECLS
