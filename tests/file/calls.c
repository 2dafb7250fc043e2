/* calls.c: the system calls that go to one folder: written down, failed, or cut short by a kill.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#define _GNU_SOURCE
#include "calls.h"

#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define MOST_FILES 1024

static struct
{
  char      *folder; /* NULL: nothing is watched */
  guint      at;
  CallsHow   how;
  int        error;
  GPtrArray *calls;
  guint      n_files;
  guint      files[MOST_FILES]; /* of each descriptor: which opening it is; 0: not watched */
  char      *names[MOST_FILES];
} watch;

#define REAL(name) ((__typeof__ (&name)) dlsym (RTLD_NEXT, #name))

static void
free_call (gpointer data)
{
  Call *call = data;

  g_free (call->name);
  g_free (call->to);
  g_clear_pointer (&call->bytes, g_bytes_unref);
  g_free (call);
}

void
calls_watch (const char *folder,
             guint       at,
             CallsHow    how,
             int         error)
{
  g_assert_null (watch.folder);
  watch.at = at;
  watch.how = how;
  watch.error = error;
  watch.calls = g_ptr_array_new_with_free_func (free_call);
  watch.n_files = 0;
  watch.folder = g_strdup (folder);
}

GPtrArray *
calls_end (void)
{
  g_clear_pointer (&watch.folder, g_free);
  for (guint i = 0; i < MOST_FILES; i++)
    {
      watch.files[i] = 0;
      g_clear_pointer (&watch.names[i], g_free);
    }
  return g_steal_pointer (&watch.calls);
}

const char *
calls_name (CallKind kind)
{
  static const char * const names[] = { "open", "read", "write", "sync", "change", "close",
                                        "rename", "link", "unlink", "mkdir" };

  return names[kind];
}

/* Its name in the folder that is watched; NULL for what lies elsewhere, "" for the folder. */
static const char *
find_name (const char *path)
{
  gsize length = watch.folder != NULL ? strlen (watch.folder) : 0;

  if (watch.folder == NULL || strncmp (path, watch.folder, length) != 0)
    return NULL;
  if (path[length] == '\0')
    return "";
  return path[length] == '/' ? path + length + 1 : NULL;
}

static gboolean
is_watched (int fd)
{
  return watch.folder != NULL && fd >= 0 && fd < MOST_FILES && watch.files[fd] != 0;
}

/* (transfer none) */
static Call *
note (CallKind    kind,
      const char *name)
{
  Call *call = g_new0 (Call, 1);

  call->kind = kind;
  call->name = name != NULL && *name != '\0' ? g_strdup (name) : NULL;
  g_ptr_array_add (watch.calls, call);
  return call;
}

static Call *
note_file (CallKind kind,
           int      fd)
{
  Call *call = note (kind, watch.names[fd]);

  call->file = watch.files[fd];
  return call;
}

/* Whether a full or protected disk would refuse it. */
static gboolean
needs_leave (CallKind kind)
{
  return kind != CALL_READ && kind != CALL_CLOSE && kind != CALL_UNLINK;
}

static void
die (void)
{
  kill (getpid (), SIGKILL);
}

/* After it was noted; TRUE if the call must fail. */
static gboolean
meet (CallKind kind)
{
  guint number = watch.calls->len;

  if (watch.how == CALLS_KILL && number == watch.at)
    die ();
  if ((watch.how == CALLS_FAIL && number == watch.at)
      || (watch.how == CALLS_FAIL_ON && watch.at > 0 && number >= watch.at && needs_leave (kind)))
    {
      errno = watch.error;
      return TRUE;
    }
  return FALSE;
}

static void
leave (void)
{
  if (watch.how == CALLS_KILL_AFTER && watch.calls->len == watch.at)
    die ();
}

/* Nobody can say of a call that failed what it did: here it did nothing. */
static void
unnote (Call *call)
{
  call->file = 0;
  call->creates = call->truncates = FALSE;
  g_clear_pointer (&call->bytes, g_bytes_unref);
}

static int
open_watched (const char *path,
              const char *name,
              int         flags,
              mode_t      mode)
{
  Call *call = note (CALL_OPEN, name);
  gboolean was_there = access (path, F_OK) == 0;
  int fd;

  if (meet (CALL_OPEN))
    return -1;
  fd = REAL (open) (path, flags, mode);
  if (fd < 0 || fd >= MOST_FILES)
    return fd;
  watch.files[fd] = call->file = ++watch.n_files;
  watch.names[fd] = g_strdup (name);
  call->creates = !was_there;
  call->truncates = was_there && (flags & O_TRUNC) != 0;
  leave ();
  return fd;
}

/* Which is open64() for all that is built with 64 bits for a file's length, GLib too. */
int
open (const char *path,
      int         flags,
      ...)
{
  const char *name = find_name (path);
  mode_t mode = 0;
  va_list rest;

  va_start (rest, flags);
  if ((flags & O_CREAT) != 0)
    mode = va_arg (rest, mode_t);
  va_end (rest);
  return name != NULL ? open_watched (path, name, flags, mode) : REAL (open) (path, flags, mode);
}

ssize_t
read (int    fd,
      void  *bytes,
      size_t length)
{
  ssize_t n;

  if (!is_watched (fd))
    return REAL (read) (fd, bytes, length);
  note_file (CALL_READ, fd);
  if (meet (CALL_READ))
    return -1;
  n = REAL (read) (fd, bytes, length);
  leave ();
  return n;
}

ssize_t
write (int         fd,
       const void *bytes,
       size_t      length)
{
  Call *call;
  ssize_t n;

  if (!is_watched (fd))
    return REAL (write) (fd, bytes, length);
  call = note_file (CALL_WRITE, fd);
  if (meet (CALL_WRITE))
    return -1;
  if ((watch.how == CALLS_SHORT || watch.how == CALLS_KILL_HALF) && watch.calls->len == watch.at)
    length = (length + 1) / 2;
  n = REAL (write) (fd, bytes, length);
  if (watch.how == CALLS_KILL_HALF && watch.calls->len == watch.at)
    die ();
  call->bytes = g_bytes_new (bytes, n > 0 ? (gsize) n : 0);
  leave ();
  return n;
}

int
fsync (int fd)
{
  Call *call;
  int result;

  if (!is_watched (fd))
    return REAL (fsync) (fd);
  call = note_file (CALL_SYNC, fd);
  if (meet (CALL_SYNC))
    {
      unnote (call);
      return -1;
    }
  result = REAL (fsync) (fd);
  leave ();
  return result;
}

int
fchmod (int    fd,
        mode_t mode)
{
  int result;

  if (!is_watched (fd))
    return REAL (fchmod) (fd, mode);
  note_file (CALL_CHANGE, fd);
  if (meet (CALL_CHANGE))
    return -1;
  result = REAL (fchmod) (fd, mode);
  leave ();
  return result;
}

int
fchown (int   fd,
        uid_t owner,
        gid_t group)
{
  int result;

  if (!is_watched (fd))
    return REAL (fchown) (fd, owner, group);
  note_file (CALL_CHANGE, fd);
  if (meet (CALL_CHANGE))
    return -1;
  result = REAL (fchown) (fd, owner, group);
  leave ();
  return result;
}

/* One that fails has let the descriptor go all the same, as Linux does. */
int
close (int fd)
{
  int result;

  if (!is_watched (fd))
    return REAL (close) (fd);
  note_file (CALL_CLOSE, fd);
  watch.files[fd] = 0;
  g_clear_pointer (&watch.names[fd], g_free);
  if (meet (CALL_CLOSE))
    {
      int failure = errno;

      REAL (close) (fd);
      errno = failure;
      return -1;
    }
  result = REAL (close) (fd);
  leave ();
  return result;
}

#define DEFINE_TWO_PATHS(function, call_kind)                                                      \
  int function (const char *from, const char *to)                                                  \
  {                                                                                                \
    const char *name = find_name (from), *other = find_name (to);                                  \
    Call *call;                                                                                    \
    int result;                                                                                    \
                                                                                                   \
    if (name == NULL || other == NULL)                                                             \
      return REAL (function) (from, to);                                                           \
    call = note (call_kind, name);                                                                 \
    if (meet (call_kind))                                                                          \
      return -1;                                                                                   \
    result = REAL (function) (from, to);                                                           \
    call->to = result == 0 ? g_strdup (other) : NULL;                                              \
    leave ();                                                                                      \
    return result;                                                                                 \
  }

DEFINE_TWO_PATHS (rename, CALL_RENAME)
DEFINE_TWO_PATHS (link, CALL_LINK)

int
unlink (const char *path)
{
  const char *name = find_name (path);
  int result;

  if (name == NULL)
    return REAL (unlink) (path);
  note (CALL_UNLINK, name);
  if (meet (CALL_UNLINK))
    return -1;
  result = REAL (unlink) (path);
  leave ();
  return result;
}

int
mkdir (const char *path,
       mode_t      mode)
{
  const char *name = find_name (path);
  int result;

  if (name == NULL)
    return REAL (mkdir) (path, mode);
  note (CALL_FOLDER, name);
  if (meet (CALL_FOLDER))
    return -1;
  result = REAL (mkdir) (path, mode);
  leave ();
  return result;
}
