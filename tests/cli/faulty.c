/* faulty.c: a disk that is full or protected, for a program that knows nothing of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * To be preloaded. PP_FAULTY names a file of one line, "ERRNO FOLDER": from then on, until the file
 * is gone, nothing in the folder can be made or written, and errno is that number. So the same
 * program can be shown a disk that goes bad and gets well again.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define REAL(name) ((__typeof__ (&name)) dlsym (RTLD_NEXT, #name))

/* The errno for what lies at the path, or 0. */
static int
get_fault (const char *path)
{
  const char *order = getenv ("PP_FAULTY");
  char line[PATH_MAX + 32] = "", folder[PATH_MAX];
  int fd, fault;
  ssize_t n;

  if (order == NULL || (fd = REAL (open) (order, O_RDONLY | O_CLOEXEC)) < 0)
    return 0;
  n = read (fd, line, sizeof line - 1);
  REAL (close) (fd);
  if (n <= 0 || sscanf (line, "%d %4095s", &fault, folder) != 2)
    return 0;
  return strncmp (path, folder, strlen (folder)) == 0 ? fault : 0;
}

int
open (const char *path,
      int         flags,
      ...)
{
  mode_t mode = 0;
  va_list rest;

  va_start (rest, flags);
  if ((flags & O_CREAT) != 0)
    mode = va_arg (rest, mode_t);
  va_end (rest);
  if ((flags & (O_CREAT | O_TRUNC)) != 0)
    {
      int fault = get_fault (path);

      /* a full disk still has room for a name */
      if (fault != 0 && fault != ENOSPC)
        {
          errno = fault;
          return -1;
        }
    }
  return REAL (open) (path, flags, mode);
}

ssize_t
write (int         fd,
       const void *bytes,
       size_t      length)
{
  char link[64], path[PATH_MAX];
  ssize_t n;
  int fault;

  snprintf (link, sizeof link, "/proc/self/fd/%d", fd);
  n = getenv ("PP_FAULTY") != NULL ? readlink (link, path, sizeof path - 1) : -1;
  if (n > 0 && path[0] == '/')
    {
      path[n] = '\0';
      fault = get_fault (path);
      if (fault != 0)
        {
          errno = fault;
          return -1;
        }
    }
  return REAL (write) (fd, bytes, length);
}
