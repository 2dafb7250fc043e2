/* watch.h: whether a file still holds what this program last read from it or wrote to it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Contents are compared, not times: a file written anew with the same bytes has not changed, and
 * what this program writes itself is held back until it is known. For the main thread; files are
 * read in another.
 * Signal: noticed, without arguments: the state is another one, or the file changed once more.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef enum
{
  PP_WATCH_SAME,
  PP_WATCH_CHANGED, /* another program wrote something else */
  PP_WATCH_GONE,    /* moved, renamed or deleted */
} PpWatchState;

#define PP_TYPE_WATCH (pp_watch_get_type ())
G_DECLARE_FINAL_TYPE (PpWatch, pp_watch, PP, WATCH, GObject)

PpWatch     *pp_watch_new         (void);
/* file: nullable, a local one. content (file-words.h): what was last read from it or written to
 * it. The state is then the same. */
void         pp_watch_set         (PpWatch    *self,
                                   GFile      *file,
                                   const char *content);
/* NULL without a file. (transfer none) */
const char  *pp_watch_get_content (PpWatch    *self);
PpWatchState pp_watch_get_state   (PpWatch    *self);
/* Between the two the program writes the file itself, and nothing is noticed. */
void         pp_watch_hold        (PpWatch    *self);
void         pp_watch_release     (PpWatch    *self);
/* Looks at the file now and not only when the system says so: some disks never do. */
void         pp_watch_look        (PpWatch    *self);
/* What was noticed is known from now on; the state is the same again. */
void         pp_watch_accept      (PpWatch    *self);

G_END_DECLS
