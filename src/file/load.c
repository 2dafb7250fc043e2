/* load.c: reading a file with a limit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The static functions tell a failure as the system does: FALSE or -1, and the reason in errno.
 */
#include "file/load.h"

#include "file/file-error.h"
#include "file/shown-name.h"
#include "panel/i18n.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

/* Bytes that are asked for at least, for files that tell no size. */
#define LEAST_ROOM 4096

static gboolean
check_plain (const struct stat *info)
{
  if (S_ISREG (info->st_mode))
    return TRUE;
  errno = S_ISDIR (info->st_mode) ? EISDIR : ENODEV;
  return FALSE;
}

/* Opening a device may already move it, so it is looked at first; and looked at again once open,
 * since something else may stand there by then. */
static int
open_plain (const char  *path,
            struct stat *info)
{
  int fd, failure;

  if (stat (path, info) != 0 || !check_plain (info))
    return -1;
  fd = g_open (path, O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC, 0);
  if (fd < 0 || (fstat (fd, info) == 0 && check_plain (info)))
    return fd;
  failure = errno;
  close (fd);
  errno = failure;
  return -1;
}

/* Appends what one read gives; 0 at the end, -1 on failure. */
static gssize
read_some (int         fd,
           GByteArray *content,
           gsize       room)
{
  guint before = content->len;
  gssize n;

  g_byte_array_set_size (content, before + room);
  do
    n = read (fd, content->data + before, room);
  while (n < 0 && errno == EINTR);
  g_byte_array_set_size (content, before + MAX (n, 0));
  return n;
}

/* expected: bytes; one more is asked for, so that a file of that size ends in the second read.
 * Never more than one byte past max is read or given room, whatever size the file claims. */
static gboolean
read_all (int         fd,
          gsize       expected,
          gsize       max,
          GByteArray *content)
{
  gssize n;

  do
    {
      gsize wanted = expected >= content->len ? expected - content->len + 1 : LEAST_ROOM;

      n = read_some (fd, content, MIN (wanted, max + 1 - content->len));
    }
  while (n > 0 && content->len <= max);
  if (content->len > max)
    errno = EFBIG;
  return n >= 0 && content->len <= max;
}

static gboolean
read_file (const char *path,
           gsize       max,
           GByteArray *content)
{
  struct stat info;
  int fd = open_plain (path, &info);
  gboolean good;
  int failure;

  if (fd < 0)
    return FALSE;
  good = read_all (fd, info.st_size, max, content);
  failure = errno;
  close (fd);
  errno = failure;
  return good;
}

/* What, where, what now. */
static char *
describe (int         failure,
          const char *name)
{
  switch (failure)
    {
    case ENOENT:
    case ENOTDIR:
      return g_strdup_printf (_("“%s” could not be opened because it is not there: it may have "
                                "been moved or renamed."), name);
    case EACCES:
    case EPERM:
      return g_strdup_printf (_("“%s” could not be opened because it is not yours to read: ask "
                                "its owner for leave or for a copy."), name);
    case EISDIR:
      return g_strdup_printf (_("“%s” could not be opened because it is a folder: choose a "
                                "file in it."), name);
    case ENODEV:
      return g_strdup_printf (_("“%s” could not be opened because it is a device and not a "
                                "file: choose a file."), name);
    case ENAMETOOLONG:
      return g_strdup_printf (_("“%s” could not be opened because the name is too long: no "
                                "file can have it."), name);
    case ELOOP:
      return g_strdup_printf (_("“%s” could not be opened because it is a link that leads in a "
                                "circle: choose another file."), name);
    default:
      return g_strdup_printf (_("“%s” could not be opened (%s): try again, or use a copy."),
                              name, g_strerror (failure));
    }
}

static void
set_failure (GError    **error,
             int         failure,
             const char *path,
             gsize       max)
{
  g_autofree char *name = pp_shown_name (path);
  g_autofree char *size = g_format_size_full (max, G_FORMAT_SIZE_IEC_UNITS);
  g_autofree char *sentence = NULL;

  if (failure == EFBIG)
    /* Translators: the name of a file and a size such as 64.0 MiB. */
    sentence = g_strdup_printf (_("“%s” could not be opened because it is larger than %s: "
                                  "choose another file."), name, size);
  else
    sentence = describe (failure, name);
  g_set_error_literal (error, PP_FILE_ERROR,
                       failure == EFBIG ? PP_FILE_ERROR_LIMIT : PP_FILE_ERROR_IO, sentence);
}

gboolean
pp_file_load (const char *path,
              gsize       max,
              GBytes    **bytes,
              GError    **error)
{
  g_autoptr (GByteArray) content = g_byte_array_new ();

  g_return_val_if_fail (path != NULL && bytes != NULL && max < G_MAXINT, FALSE);
  if (!read_file (path, max, content))
    {
      set_failure (error, errno, path, max);
      return FALSE;
    }
  *bytes = g_byte_array_free_to_bytes (g_steal_pointer (&content));
  return TRUE;
}
