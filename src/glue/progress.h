/* progress.h: what happens at the bench, each an edit that turns a panel into the next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Jobs are named as in the file: a placement's id, or "knot:left". `order` is of the panel, or of
 * an earlier one with the same placements in the same poses. `at` is when it happened; the log
 * keeps it, and glued_at and knotted_at say the same.
 *
 * Each returns (transfer full), or NULL and a PP_PANEL_ERROR: REFERENCE for a job that is not
 * there, VALUE for what cannot have happened. No edit changes a placement that it does not name.
 */
#pragma once

#include "glue/order.h"
#include "panel/edit.h"

G_BEGIN_DECLS

/* The parts of a mix have touched: its mixing and its life begin. */
PpPanel *pp_progress_mixed        (const PpPanel      *panel,
                                   GDateTime          *at,
                                   GError            **error);
/* The last mixing was a stray press; the mix before it goes on. */
PpPanel *pp_progress_unmixed      (const PpPanel      *panel,
                                   GDateTime          *at,
                                   GError            **error);
/* Left alone for longer: what was mixed is given up. */
PpPanel *pp_progress_paused       (const PpPanel      *panel,
                                   GDateTime          *at,
                                   GError            **error);
/* A job is done. All that a hard edge puts before it must be. */
PpPanel *pp_progress_placed       (const PpPanel      *panel,
                                   const PpOrder      *order,
                                   const char         *job,
                                   GDateTime          *at,
                                   GError            **error);
/* That was a stray press. */
PpPanel *pp_progress_taken_back   (const PpPanel      *panel,
                                   const PpOrder      *order,
                                   const char         *job,
                                   GDateTime          *at,
                                   GError            **error);
/* Jobs, ended by NULL, that were done came off, and are to be done again. What is glued above one
 * of them must be among them: see pp_progress_find_above(). */
PpPanel *pp_progress_fell         (const PpPanel      *panel,
                                   const PpOrder      *order,
                                   const char * const *jobs,
                                   GDateTime          *at,
                                   GError            **error);
/* The same for pieces that broke, done or not; the tray has one fewer of each. A piece that breaks
 * under another that stays glued has not come off. */
PpPanel *pp_progress_broke        (const PpPanel      *panel,
                                   const PpOrder      *order,
                                   const char * const *jobs,
                                   GDateTime          *at,
                                   GError            **error);
/* A glued placement sits elsewhere than it was laid out. What comes of it needs a new order. */
PpPanel *pp_progress_moved        (const PpPanel      *panel,
                                   const char         *placement,
                                   PpPose              pose,
                                   GDateTime          *at,
                                   GError            **error);
/* Jobs done to which hard edges lead from this one: they come off with it. (transfer full), free
 * with g_strfreev(). */
char   **pp_progress_find_above   (const PpPanel      *panel,
                                   const PpOrder      *order,
                                   const char         *job);

G_END_DECLS
