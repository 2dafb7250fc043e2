/* crash.h: what a power cut may leave of a file, told from the calls that were made.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A disk that promises no more than the calls ask of it. Bytes written and not yet synced may be
 * there, be cut at any of their writes or in the middle of the last, or stand as zeros at their
 * full length. Names made, moved or taken away since the last sync of the folder may each have
 * reached the disk or not, in any order; one move is whole or not at all. What is synced stays.
 */
#pragma once

#include "calls.h"

/* content (nullable): of the file after the cut; NULL: no file of that name. n_calls: how many had
 * been made. Returns whether it may be so. */
typedef gboolean (*CrashCheck) (GBytes  *content,
                                guint    n_calls,
                                gpointer data);

/* Asks of every state after every call; before (nullable): what was in the file and safe there.
 * n_states: (out) (nullable). Returns how many may not be. */
guint   crash_count_faults (GPtrArray  *calls,
                            const char *name,
                            GBytes     *before,
                            CrashCheck  check,
                            gpointer    data,
                            guint      *n_states);
/* What the calls left in the file where there was no power cut; (nullable) (transfer full). It must
 * be what is really there: else a call went past the watch. */
GBytes *crash_last         (GPtrArray  *calls,
                            const char *name,
                            GBytes     *before);
