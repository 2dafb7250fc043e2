/* earlier.h: what stood in a panel's file before it was saved over: a small history to go back to.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept in a folder of the user's, not beside the file: a stick stays as it is, and one that is lost
 * takes nothing along. A panel is known by the path of its file. Each kept save is a whole panel
 * file, named by the time it was written, in UTC. Any thread, any process. Paths are in the file
 * name encoding.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_EARLIER_MOST 10                        /* of one panel */
#define PP_EARLIER_MOST_BYTES (100 * 1024 * 1024) /* of all panels together */

typedef struct
{
  char      *path;
  GDateTime *saved; /* when it was written to the panel's file; local time */
} PpEarlier;

void       pp_earlier_free   (PpEarlier    *self);

/* $XDG_STATE_HOME/petalpane/earlier. (transfer full) */
char      *pp_earlier_folder (void);
/* Keeps what stands in the file now, to be called before it is saved over; no file there, or what
 * was kept last already, is no error. Of more than PP_EARLIER_MOST those go that lie closest to
 * their neighbours for their age, so that minutes, hours and weeks stay; then, of all panels, the
 * oldest until they have room in `most` bytes.
 * Errors: PP_FILE_ERROR, and nothing is kept. */
gboolean   pp_earlier_keep   (const char   *folder,
                              const char   *path,
                              guint64       most,
                              GError      **error);
/* PpEarlier, the latest first; (transfer full), never NULL. */
GPtrArray *pp_earlier_list   (const char   *folder,
                              const char   *path);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpEarlier, pp_earlier_free)

G_END_DECLS
