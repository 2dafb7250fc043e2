/* calls.h: the system calls that go to one folder: written down, failed, or cut short by a kill.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The functions of the C library that change files are defined anew in the test program, so they
 * stand before the library's for GLib too; they do what they are told and pass the rest on. What
 * does not go to the folder that is watched is neither counted nor touched. One thread.
 */
#pragma once

#include <glib.h>

typedef enum
{
  CALL_OPEN,
  CALL_READ,
  CALL_WRITE,
  CALL_SYNC,
  CALL_CHANGE, /* of owner or mode */
  CALL_CLOSE,
  CALL_RENAME,
  CALL_LINK,
  CALL_UNLINK,
  CALL_FOLDER,
} CallKind;

typedef struct
{
  CallKind kind;
  char    *name;      /* in the folder; NULL: the folder itself */
  char    *to;        /* of RENAME and LINK */
  GBytes  *bytes;     /* of WRITE: what was really written */
  guint    file;      /* of OPEN, WRITE, SYNC: which opening it was, from 1 */
  gboolean creates;   /* OPEN made the file */
  gboolean truncates; /* OPEN emptied it */
} Call;

typedef enum
{
  CALLS_WELL,
  CALLS_FAIL,      /* that one, with `error` */
  CALLS_FAIL_ON,   /* that one, and from there on all that need room or leave to write */
  CALLS_SHORT,     /* a write takes half, and the rest comes in the next */
  CALLS_KILL,      /* before it */
  CALLS_KILL_HALF, /* a write has taken half */
  CALLS_KILL_AFTER,
} CallsHow;

/* at: the number of the call, from 1; 0: none. */
void       calls_watch    (const char *folder,
                           guint       at,
                           CallsHow    how,
                           int         error);
/* What was called since, in order (Call); (transfer full). */
GPtrArray *calls_end      (void);
const char *calls_name    (CallKind    kind);
