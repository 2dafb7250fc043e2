/* save.c: temporary file, sync, rename, sync of the folder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The static functions tell a failure as the system does: FALSE, and the reason in errno.
 */
#include "file/save.h"

#include "file/file-error.h"
#include "file/shown-name.h"
#include "panel/i18n.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

/* As many as Linux itself follows. */
#define MAX_LINKS 40

/* The path that is no symbolic link itself; NULL if the links never end. (transfer full) */
static char *
resolve_links (const char *path)
{
  g_autofree char *target = g_strdup (path);

  for (guint i = 0; i <= MAX_LINKS; i++)
    {
      g_autofree char *link = g_file_read_link (target, NULL);
      g_autofree char *folder = NULL;

      if (link == NULL) /* no link, or not there: whoever uses it learns why */
        return g_steal_pointer (&target);
      folder = g_path_get_dirname (target);
      g_free (target);
      target = g_path_is_absolute (link) ? g_steal_pointer (&link)
                                         : g_build_filename (folder, link, NULL);
    }
  errno = ELOOP;
  return NULL;
}

/* old: mode 0 if nothing is there yet. Renaming over a file asks only for leave to write in the
 * folder, so a write-protected file must be noticed here. */
static gboolean
examine_target (const char  *target,
                struct stat *old)
{
  if (lstat (target, old) != 0)
    {
      old->st_mode = 0;
      return errno == ENOENT;
    }
  if (!S_ISREG (old->st_mode))
    {
      errno = S_ISDIR (old->st_mode) ? EISDIR : ENODEV;
      return FALSE;
    }
  return faccessat (AT_FDCWD, target, W_OK, AT_EACCESS) == 0;
}

static gboolean
write_all (int         fd,
           const char *bytes,
           gsize       length)
{
  while (length > 0)
    {
      gssize n = write (fd, bytes, length);

      if (n < 0 && errno != EINTR)
        return FALSE;
      if (n > 0)
        {
          bytes += n;
          length -= n;
        }
    }
  return TRUE;
}

/* Owner before mode, since a change of owner may clear bits of the mode. */
static gboolean
keep_owner_and_mode (int                fd,
                     const struct stat *old)
{
  mode_t mode = old->st_mode & 07777;

  if (old->st_mode == 0)
    return TRUE;
  if (fchown (fd, -1, old->st_gid) != 0) /* another group must not see more than everybody */
    mode = (mode & ~070) | (mode & 07) << 3;
  if (fchown (fd, old->st_uid, -1) != 0)
    mode &= ~06000; /* nor may a program run as another owner */
  return fchmod (fd, mode) == 0;
}

static gboolean
sync_descriptor (int fd)
{
  int result;

  do
    result = fsync (fd);
  while (result != 0 && errno == EINTR);
  return result == 0;
}

/* Closes fd in any case; some file systems tell only then that the disk is full. */
static gboolean
fill_temporary (int                fd,
                const char        *bytes,
                gsize              length,
                const struct stat *old)
{
  gboolean good = write_all (fd, bytes, length) && keep_owner_and_mode (fd, old)
                  && sync_descriptor (fd);
  int failure = errno;

  if (close (fd) != 0 && good && errno != EINTR)
    return FALSE;
  errno = failure;
  return good;
}

/* Some folders may be written but not read, and some file systems cannot sync a folder: there
 * nothing more can be done. */
static gboolean
sync_folder (const char *folder)
{
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);
  gboolean good;
  int failure;

  if (fd < 0)
    return TRUE;
  good = sync_descriptor (fd) || errno == EINVAL || errno == EBADF || errno == ENOTSUP;
  failure = errno;
  close (fd);
  errno = failure;
  return good;
}

static gboolean
replace_target (const char *target,
                const char *bytes,
                gsize       length)
{
  g_autofree char *folder = g_path_get_dirname (target);
  g_autofree char *temporary = g_build_filename (folder, ".petalpane-XXXXXX", NULL);
  struct stat old = { 0 };
  int fd, failure;

  if (!examine_target (target, &old))
    return FALSE;
  /* Nobody else reads the copy of a private file. A new file has its mode at once, because the
   * umask can be asked for only by changing it, under the feet of other threads. */
  fd = g_mkstemp_full (temporary, O_WRONLY | O_CLOEXEC, old.st_mode == 0 ? 0666 : 0600);
  if (fd < 0)
    return FALSE;
  if (fill_temporary (fd, bytes, length, &old) && g_rename (temporary, target) == 0)
    return sync_folder (folder);
  failure = errno;
  g_unlink (temporary);
  errno = failure;
  return FALSE;
}

/* What, where, what now. */
static char *
describe (int         failure,
          const char *name)
{
  switch (failure)
    {
    case ENOSPC:
    case EDQUOT:
      return g_strdup_printf (_("“%s” could not be saved because the disk is full: make room "
                                "on it, or save somewhere else."), name);
    case EFBIG:
      return g_strdup_printf (_("“%s” could not be saved because a file that large is not "
                                "allowed there: save somewhere else."), name);
    case EROFS:
      return g_strdup_printf (_("“%s” could not be saved because the disk can only be read: "
                                "save somewhere else."), name);
    case EACCES:
    case EPERM:
      return g_strdup_printf (_("“%s” could not be saved because it or its folder is protected "
                                "against changes: save somewhere else."), name);
    case ENOENT:
    case ENOTDIR:
      return g_strdup_printf (_("“%s” could not be saved because its folder is not there: "
                                "make the folder, or save somewhere else."), name);
    case EISDIR:
      return g_strdup_printf (_("“%s” could not be saved because a folder has that name: "
                                "choose another name."), name);
    case ENODEV:
      return g_strdup_printf (_("“%s” could not be saved because that is a device and not a "
                                "file: choose another name."), name);
    case ENAMETOOLONG:
      return g_strdup_printf (_("“%s” could not be saved because the name is too long: "
                                "choose a shorter one."), name);
    case ELOOP:
      return g_strdup_printf (_("“%s” could not be saved because it is a link that leads in a "
                                "circle: choose another name."), name);
    default:
      return g_strdup_printf (_("“%s” could not be saved (%s): try again, or save somewhere "
                                "else."), name, g_strerror (failure));
    }
}

gboolean
pp_file_save (const char *path,
              const char *bytes,
              gsize       length,
              GError    **error)
{
  g_autofree char *target = NULL;
  g_autofree char *name = NULL;
  g_autofree char *sentence = NULL;
  int failure;

  g_return_val_if_fail (path != NULL && (bytes != NULL || length == 0), FALSE);
  target = resolve_links (path);
  if (target != NULL && replace_target (target, bytes, length))
    return TRUE;
  failure = errno; /* before anything else asks the system */
  name = pp_shown_name (path);
  sentence = describe (failure, name);
  g_set_error_literal (error, PP_FILE_ERROR, PP_FILE_ERROR_IO, sentence);
  return FALSE;
}
