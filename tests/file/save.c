/* save.c: saving replaces a file whole or leaves it alone; loading is bounded.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stand-ins for a few system calls, which hide those of the C library in this program, write down
 * their order and fail when told to. They pass everything else on.
 */
#include "file/file-error.h"
#include "file/load.h"
#include "file/save.h"

#include "sample.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

/* What the system does badly, and what it was asked. */
static struct
{
  gsize most;          /* bytes a write takes; 0: all */
  guint interruptions; /* calls that end in EINTR before each that does its work */
  guint so_far;
  const char *failing; /* the call that fails with EIO */
  GString *calls;      /* (nullable) */
} stand_in;

static gboolean
is_interrupted (void)
{
  if (stand_in.so_far++ < stand_in.interruptions)
    {
      errno = EINTR;
      return TRUE;
    }
  stand_in.so_far = 0;
  return FALSE;
}

static gboolean
is_failing (const char *call)
{
  if (stand_in.calls != NULL)
    g_string_append_printf (stand_in.calls, "%s ", call);
  if (g_strcmp0 (stand_in.failing, call) != 0)
    return FALSE;
  errno = EIO;
  return TRUE;
}

ssize_t
write (int         fd,
       const void *bytes,
       size_t      length)
{
  if (fd > STDERR_FILENO)
    {
      if (is_interrupted () || is_failing ("write"))
        return -1;
      if (stand_in.most > 0)
        length = MIN (length, stand_in.most);
    }
  return syscall (SYS_write, fd, bytes, length);
}

int
fsync (int fd)
{
  struct stat info;

  if (is_interrupted ())
    return -1;
  if (fstat (fd, &info) == 0 && is_failing (S_ISDIR (info.st_mode) ? "sync-folder" : "sync-file"))
    return -1;
  return syscall (SYS_fsync, fd);
}

int
rename (const char *from,
        const char *to)
{
  return is_failing ("rename") ? -1 : syscall (SYS_renameat, AT_FDCWD, from, AT_FDCWD, to);
}

int
fchmod (int    fd,
        mode_t mode)
{
  return is_failing ("mode") ? -1 : syscall (SYS_fchmod, fd, mode);
}

typedef struct
{
  char *folder;
  char *path; /* "fern.petalpane" in it, not there yet */
} Fixture;

static char *
in_folder (const Fixture *fixture,
           const char    *name)
{
  return g_build_filename (fixture->folder, name, NULL);
}

static void
set_up (Fixture      *fixture,
        gconstpointer data)
{
  memset (&stand_in, 0, sizeof stand_in);
  fixture->folder = g_dir_make_tmp ("petalpane-save-XXXXXX", NULL);
  fixture->path = in_folder (fixture, "fern.petalpane");
}

static void
remove_all (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
        remove_all (path);
      else
        g_unlink (path);
    }
  g_rmdir (folder);
}

static void
tear_down (Fixture      *fixture,
           gconstpointer data)
{
  memset (&stand_in, 0, sizeof stand_in);
  remove_all (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->path);
}

static void
put (const char *path,
     const char *content)
{
  g_assert_true (g_file_set_contents (path, content, -1, NULL));
}

static void
assert_content (const char *path,
                const char *content)
{
  g_autofree char *found = NULL;

  g_assert_true (g_file_get_contents (path, &found, NULL, NULL));
  g_assert_cmpstr (found, ==, content);
}

static void
assert_saves (const char *path,
              const char *content)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (pp_file_save (path, content, strlen (content), &error));
  g_assert_no_error (error);
}

/* The whole path, or of a long one the beginning and the end, so that it can be read. */
static void
assert_names (const char *sentence,
              const char *path)
{
  gsize length = strlen (path);

  if (length > 100)
    {
      g_autofree char *first = g_strndup (path, 50);

      g_assert_nonnull (strstr (sentence, first));
      g_assert_cmpuint (strlen (sentence), <, 250);
      path += length - 50;
    }
  g_assert_nonnull (strstr (sentence, path));
}

/* Refused in one sentence that holds reason and path. */
static void
assert_refused (const char *path,
                const char *content,
                const char *reason)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (pp_file_save (path, content, strlen (content), &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, reason));
  assert_names (error->message, path);
  g_assert_true (g_str_has_suffix (error->message, "."));
}

static void
test_new (Fixture      *fixture,
          gconstpointer data)
{
  const mode_t mask = umask (027);
  struct stat info;

  assert_saves (fixture->path, "first");
  umask (mask);
  assert_content (fixture->path, "first");
  g_assert_cmpint (stat (fixture->path, &info), ==, 0);
  g_assert_cmphex (info.st_mode & 07777, ==, 0640);
  g_assert_cmpuint (sample_count (fixture->folder), ==, 1);
}

static void
test_again (Fixture      *fixture,
            gconstpointer data)
{
  put (fixture->path, "a rather longer first one");
  assert_saves (fixture->path, "second");
  assert_content (fixture->path, "second");
  assert_saves (fixture->path, "");
  assert_content (fixture->path, "");
  g_assert_cmpuint (sample_count (fixture->folder), ==, 1);
}

static void
test_zero_bytes (Fixture      *fixture,
                 gconstpointer data)
{
  g_autofree char *found = NULL;
  gsize length;

  g_assert_true (pp_file_save (fixture->path, "a\0b", 3, NULL));
  g_assert_true (g_file_get_contents (fixture->path, &found, &length, NULL));
  g_assert_cmpmem (found, length, "a\0b", 3);
}

static const int modes[] = { 0600, 0640, 0644, 0664, 0666, 0755, 0200 };

static void
test_mode (Fixture      *fixture,
           gconstpointer data)
{
  const int *mode = data;
  const mode_t mask = umask (077); /* which must not matter */
  struct stat info;

  put (fixture->path, "old");
  g_assert_cmpint (g_chmod (fixture->path, *mode), ==, 0);
  assert_saves (fixture->path, "new");
  umask (mask);
  g_assert_cmpint (stat (fixture->path, &info), ==, 0);
  g_assert_cmphex (info.st_mode & 07777, ==, *mode);
}

static void
test_owner (Fixture      *fixture,
            gconstpointer data)
{
  const uid_t owner = 1234, group = 2345;
  struct stat info;

  put (fixture->path, "old");
  if (chown (fixture->path, owner, group) != 0)
    {
      g_test_skip ("only root can give a file away");
      return;
    }
  assert_saves (fixture->path, "new");
  g_assert_cmpint (stat (fixture->path, &info), ==, 0);
  g_assert_cmpuint (info.st_uid, ==, owner);
  g_assert_cmpuint (info.st_gid, ==, group);
}

typedef struct
{
  const char *name;
  const char *links[4]; /* name, what it holds, ... ; %s in what it holds is the folder */
  gboolean is_there;    /* whether fern.petalpane is */
} LinkRow;

static const LinkRow link_rows[] = {
  { "relative", { "a", "fern.petalpane" }, TRUE },
  { "absolute", { "a", "%s/fern.petalpane" }, TRUE },
  { "chain", { "a", "b", "b", "%s/fern.petalpane" }, TRUE },
  { "dangling", { "a", "fern.petalpane" }, FALSE },
  { "dangling-chain", { "a", "./b", "b", "fern.petalpane" }, FALSE },
};

static char *
make_link (Fixture           *fixture,
           const char *const *link)
{
  g_auto (GStrv) parts = g_strsplit (link[1], "%s", 2);
  g_autofree char *content = g_strjoinv (fixture->folder, parts);
  g_autofree char *path = in_folder (fixture, link[0]);

  g_assert_cmpint (symlink (content, path), ==, 0);
  return g_steal_pointer (&content);
}

static void
test_link (Fixture      *fixture,
           gconstpointer data)
{
  const LinkRow *row = data;
  g_autofree char *link = in_folder (fixture, "a");

  if (row->is_there)
    put (fixture->path, "old");
  for (guint i = 0; i < G_N_ELEMENTS (row->links) && row->links[i] != NULL; i += 2)
    g_free (make_link (fixture, row->links + i));
  assert_saves (link, "new");
  for (guint i = 0; i < G_N_ELEMENTS (row->links) && row->links[i] != NULL; i += 2)
    {
      g_autofree char *path = in_folder (fixture, row->links[i]);

      g_assert_true (g_file_test (path, G_FILE_TEST_IS_SYMLINK));
    }
  g_assert_false (g_file_test (fixture->path, G_FILE_TEST_IS_SYMLINK));
  assert_content (fixture->path, "new");
}

/* A relative link is read from the folder it stands in, and the temporary file goes where the
 * file is. */
static void
test_link_elsewhere (Fixture      *fixture,
                     gconstpointer data)
{
  g_autofree char *inner = in_folder (fixture, "inner");
  g_autofree char *link = in_folder (fixture, "inner/a");

  put (fixture->path, "old");
  g_assert_cmpint (g_mkdir (inner, 0700), ==, 0);
  g_assert_cmpint (symlink ("../fern.petalpane", link), ==, 0);
  assert_saves (link, "new");
  assert_content (fixture->path, "new");
  g_assert_cmpuint (sample_count (inner), ==, 1);
}

static void
test_linked_folder (Fixture      *fixture,
                    gconstpointer data)
{
  g_autofree char *inner = in_folder (fixture, "inner");
  g_autofree char *path = in_folder (fixture, "inner/fern.petalpane");

  g_assert_cmpint (symlink (fixture->folder, inner), ==, 0);
  assert_saves (path, "new");
  assert_content (fixture->path, "new");
}

/* The bytes are on the disk before the name leads to them, and the name before we say so. */
static void
test_order (Fixture      *fixture,
            gconstpointer data)
{
  g_autoptr (GString) calls = g_string_new (NULL);

  put (fixture->path, "old");
  stand_in.calls = calls;
  assert_saves (fixture->path, "new");
  stand_in.calls = NULL;
  g_assert_cmpstr (calls->str, ==, "write mode sync-file rename sync-folder ");
}

static void
test_short_writes (Fixture      *fixture,
                   gconstpointer data)
{
  stand_in.most = 3;
  stand_in.interruptions = 2;
  assert_saves (fixture->path, "Towpath in June");
  assert_content (fixture->path, "Towpath in June");
}

static const char *const failing_calls[] = { "write", "mode", "sync-file", "rename" };

static void
test_failing (Fixture      *fixture,
              gconstpointer call)
{
  put (fixture->path, "old");
  stand_in.failing = call;
  assert_refused (fixture->path, "new", "could not be saved (Input/output error)");
  stand_in.failing = NULL;
  assert_content (fixture->path, "old");
  g_assert_cmpuint (sample_count (fixture->folder), ==, 1);
}

/* The last step comes too late to leave the old content, but it is told. */
static void
test_failing_last (Fixture      *fixture,
                   gconstpointer data)
{
  put (fixture->path, "old");
  stand_in.failing = "sync-folder";
  assert_refused (fixture->path, "new", "could not be saved (Input/output error)");
  stand_in.failing = NULL;
  assert_content (fixture->path, "new");
  g_assert_cmpuint (sample_count (fixture->folder), ==, 1);
}

/* The space ends at each byte in turn. */
static void
test_no_room (Fixture      *fixture,
              gconstpointer data)
{
  static const char content[] = "a panel of some length";
  struct rlimit before, limit;

  put (fixture->path, "old");
  signal (SIGXFSZ, SIG_IGN);
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &before), ==, 0);
  limit = before;
  for (limit.rlim_cur = 0; limit.rlim_cur < strlen (content); limit.rlim_cur++)
    {
      g_autoptr (GError) error = NULL;
      gboolean saved;

      setrlimit (RLIMIT_FSIZE, &limit); /* also of our own log: nothing is printed until it ends */
      saved = pp_file_save (fixture->path, content, strlen (content), &error);
      setrlimit (RLIMIT_FSIZE, &before);
      g_assert_false (saved);
      g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
      g_assert_nonnull (strstr (error->message, "that large"));
      assert_content (fixture->path, "old");
      g_assert_cmpuint (sample_count (fixture->folder), ==, 1);
    }
  assert_saves (fixture->path, content);
}

static void
test_full_disk (Fixture      *fixture,
                gconstpointer data)
{
  g_autofree char *disk = in_folder (fixture, "disk");
  g_autofree char *path = in_folder (fixture, "disk/fern.petalpane");
  g_autofree char *large = g_strnfill (200000, 'm');

  g_assert_cmpint (g_mkdir (disk, 0700), ==, 0);
  if (mount ("none", disk, "tmpfs", 0, "size=64k") != 0)
    {
      g_test_skip ("only root can make a small disk");
      return;
    }
  put (path, "old");
  assert_refused (path, large, "the disk is full");
  assert_content (path, "old");
  g_assert_cmpuint (sample_count (disk), ==, 1);
  g_assert_cmpint (mount ("none", disk, "tmpfs", MS_REMOUNT | MS_RDONLY, "size=64k"), ==, 0);
  assert_refused (path, "new", "can only be read");
  assert_content (path, "old");
  g_assert_cmpint (umount (disk), ==, 0);
}

/* Root may write anywhere, so there the rest of the test runs as nobody. */
static void
test_protected (Fixture      *fixture,
                gconstpointer data)
{
  const uid_t nobody = 65534;
  const uid_t me = geteuid ();

  put (fixture->path, "old");
  g_assert_cmpint (g_chmod (fixture->path, 0444), ==, 0);
  g_assert_cmpint (chown (fixture->path, me == 0 ? nobody : me, -1), ==, 0);
  g_assert_cmpint (chown (fixture->folder, me == 0 ? nobody : me, -1), ==, 0);
  if (me == 0)
    g_assert_cmpint (seteuid (nobody), ==, 0);
  assert_refused (fixture->path, "new", "protected against changes");
  g_assert_cmpint (g_chmod (fixture->path, 0644), ==, 0);
  g_assert_cmpint (g_chmod (fixture->folder, 0500), ==, 0);
  assert_refused (fixture->path, "new", "protected against changes");
  assert_content (fixture->path, "old");
  g_assert_cmpint (g_chmod (fixture->folder, 0300), ==, 0); /* written, but not read */
  assert_saves (fixture->path, "new");
  g_assert_cmpint (g_chmod (fixture->folder, 0700), ==, 0);
  assert_content (fixture->path, "new");
  g_assert_cmpuint (sample_count (fixture->folder), ==, 1);
  if (me == 0)
    g_assert_cmpint (seteuid (me), ==, 0);
}

/* When the group cannot be kept, its members' rights must not fall to another group. */
static void
test_foreign_group (Fixture      *fixture,
                    gconstpointer data)
{
  const uid_t nobody = 65534;
  struct stat info;

  if (geteuid () != 0)
    {
      g_test_skip ("only root can become another");
      return;
    }
  put (fixture->path, "old");
  g_assert_cmpint (g_chmod (fixture->path, 0664), ==, 0);
  g_assert_cmpint (chown (fixture->path, nobody, 0), ==, 0);
  g_assert_cmpint (chown (fixture->folder, nobody, nobody), ==, 0);
  g_assert_cmpint (setegid (nobody), ==, 0);
  g_assert_cmpint (seteuid (nobody), ==, 0);
  assert_saves (fixture->path, "new");
  g_assert_cmpint (seteuid (0), ==, 0);
  g_assert_cmpint (setegid (0), ==, 0);
  g_assert_cmpint (stat (fixture->path, &info), ==, 0);
  /* Group 0 is still among the supplementary groups of root's processes in some places. */
  g_assert_cmphex (info.st_mode & 07777, ==, info.st_gid == 0 ? 0664 : 0644);
}

static void
test_bad_names (Fixture      *fixture,
                gconstpointer data)
{
  g_autofree char *missing = in_folder (fixture, "none/fern.petalpane");
  g_autofree char *below_file = in_folder (fixture, "fern.petalpane/fern.petalpane");
  g_autofree char *long_name = g_strnfill (300, 'm');
  g_autofree char *long_path = in_folder (fixture, long_name);
  g_autofree char *inner = in_folder (fixture, "inner");
  g_autofree char *pipe_path = in_folder (fixture, "pipe");
  g_autofree char *loop = in_folder (fixture, "loop");
  g_autofree char *lost = in_folder (fixture, "lost");

  put (fixture->path, "old");
  g_assert_cmpint (g_mkdir (inner, 0700), ==, 0);
  g_assert_cmpint (mkfifo (pipe_path, 0600), ==, 0);
  g_assert_cmpint (symlink ("loop", loop), ==, 0);
  g_assert_cmpint (symlink ("none/fern.petalpane", lost), ==, 0);
  assert_refused (missing, "new", "its folder is not there");
  assert_refused (lost, "new", "its folder is not there");
  assert_refused (below_file, "new", "its folder is not there");
  assert_refused (long_path, "new", "the name is too long");
  assert_refused (inner, "new", "a folder has that name");
  assert_refused (pipe_path, "new", "that is a device");
  assert_refused (loop, "new", "leads in a circle");
  assert_content (fixture->path, "old");
  g_assert_cmpuint (sample_count (fixture->folder), ==, 5);
}

/* The longest name there is can be saved: the temporary one is not made from it. */
static void
test_longest_name (Fixture      *fixture,
                   gconstpointer data)
{
  g_autofree char *name = g_strnfill (255, 'm');
  g_autofree char *path = in_folder (fixture, name);

  assert_saves (path, "new");
  assert_content (path, "new");
}

#define MOST_SHOWN 100 /* letters of a name: of a longer one the middle is left out */

static void
assert_not_loaded (const char *path,
                   gsize       max,
                   int         code,
                   const char *reason)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (pp_file_load (path, max, &bytes, &error));
  g_assert_error (error, PP_FILE_ERROR, code);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, reason));
  if (strlen (path) <= MOST_SHOWN)
    g_assert_nonnull (strstr (error->message, path));
  else
    g_assert_cmpuint (strlen (error->message), <, 3 * MOST_SHOWN);
  g_assert_null (bytes);
}

static void
test_load (Fixture      *fixture,
           gconstpointer data)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GBytes) linked = NULL;
  g_autoptr (GBytes) empty = NULL;
  g_autofree char *link = in_folder (fixture, "a");
  const char *content = "Towpath in June";

  g_assert_cmpint (symlink ("fern.petalpane", link), ==, 0);
  put (fixture->path, content);
  g_assert_true (pp_file_load (fixture->path, strlen (content), &bytes, NULL));
  g_assert_cmpmem (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), content,
                   strlen (content));
  g_assert_true (pp_file_load (link, strlen (content), &linked, NULL));
  g_assert_true (g_bytes_equal (bytes, linked));
  assert_not_loaded (fixture->path, strlen (content) - 1, PP_FILE_ERROR_LIMIT, "larger than");
  put (fixture->path, "");
  g_assert_true (pp_file_load (fixture->path, 0, &empty, NULL));
  g_assert_cmpuint (g_bytes_get_size (empty), ==, 0);
}

/* A file of /proc tells the size 0, as if it had grown since: all of it is read, or refused. */
static void
test_load_grown (Fixture      *fixture,
                 gconstpointer data)
{
  static const char path[] = "/proc/self/status";
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;

  if (!g_file_test (path, G_FILE_TEST_IS_REGULAR))
    {
      g_test_skip ("there is no /proc");
      return;
    }
  g_assert_true (pp_file_load (path, 1 << 20, &bytes, &error));
  g_assert_cmpuint (g_bytes_get_size (bytes), >, 100);
  assert_not_loaded (path, 100, PP_FILE_ERROR_LIMIT, "larger than");
}

/* Far larger than the memory: only what is allowed is given room. */
static void
test_load_huge (Fixture      *fixture,
                gconstpointer data)
{
  const off_t size = (off_t) 1 << 40;

  put (fixture->path, "");
  if (truncate (fixture->path, size) != 0)
    {
      g_test_skip ("the disk knows no files with holes");
      return;
    }
  assert_not_loaded (fixture->path, 1000, PP_FILE_ERROR_LIMIT, "larger than");
}

static void
test_load_refused (Fixture      *fixture,
                   gconstpointer data)
{
  const gsize max = 1000;
  g_autofree char *pipe_path = in_folder (fixture, "pipe");
  g_autofree char *loop = in_folder (fixture, "loop");
  g_autofree char *long_name = g_strnfill (300, 'm');
  g_autofree char *long_path = in_folder (fixture, long_name);

  g_assert_cmpint (mkfifo (pipe_path, 0600), ==, 0);
  g_assert_cmpint (symlink ("loop", loop), ==, 0);
  assert_not_loaded (fixture->path, max, PP_FILE_ERROR_IO, "not there");
  assert_not_loaded (fixture->folder, max, PP_FILE_ERROR_IO, "is a folder");
  assert_not_loaded (pipe_path, max, PP_FILE_ERROR_IO, "is a device");
  assert_not_loaded ("/dev/zero", max, PP_FILE_ERROR_IO, "is a device");
  assert_not_loaded (loop, max, PP_FILE_ERROR_IO, "in a circle");
  assert_not_loaded (long_path, max, PP_FILE_ERROR_IO, "too long");
}

static void
test_load_protected (Fixture      *fixture,
                     gconstpointer data)
{
  const uid_t nobody = 65534;
  const uid_t me = geteuid ();

  put (fixture->path, "old");
  g_assert_cmpint (g_chmod (fixture->path, 0000), ==, 0);
  g_assert_cmpint (g_chmod (fixture->folder, 0755), ==, 0);
  if (me == 0)
    g_assert_cmpint (seteuid (nobody), ==, 0);
  assert_not_loaded (fixture->path, 1000, PP_FILE_ERROR_IO, "not yours to read");
  if (me == 0)
    g_assert_cmpint (seteuid (me), ==, 0);
}

static void
add (const char    *group,
     const char    *name,
     gconstpointer  data,
     void         (*test) (Fixture *, gconstpointer))
{
  g_autofree char *path = g_strconcat ("/save/", group, name, NULL);

  g_test_add (path, Fixture, data, set_up, test, tear_down);
}

static void
add_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      g_autofree char *name = g_strdup_printf ("%04o", modes[i]);

      add ("mode/", name, &modes[i], test_mode);
    }
  for (guint i = 0; i < G_N_ELEMENTS (link_rows); i++)
    add ("link/", link_rows[i].name, &link_rows[i], test_link);
  for (guint i = 0; i < G_N_ELEMENTS (failing_calls); i++)
    add ("failing/", failing_calls[i], failing_calls[i], test_failing);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ();
  add ("", "new", NULL, test_new);
  add ("", "again", NULL, test_again);
  add ("", "zero-bytes", NULL, test_zero_bytes);
  add ("", "owner", NULL, test_owner);
  add ("", "link-elsewhere", NULL, test_link_elsewhere);
  add ("", "linked-folder", NULL, test_linked_folder);
  add ("", "order", NULL, test_order);
  add ("", "short-writes", NULL, test_short_writes);
  add ("", "failing-last", NULL, test_failing_last);
  add ("", "no-room", NULL, test_no_room);
  add ("", "full-disk", NULL, test_full_disk);
  add ("", "protected", NULL, test_protected);
  add ("", "foreign-group", NULL, test_foreign_group);
  add ("", "bad-names", NULL, test_bad_names);
  add ("", "longest-name", NULL, test_longest_name);
  add ("load/", "plain", NULL, test_load);
  add ("load/", "grown", NULL, test_load_grown);
  add ("load/", "huge", NULL, test_load_huge);
  add ("load/", "refused", NULL, test_load_refused);
  add ("load/", "protected", NULL, test_load_protected);
  return g_test_run ();
}
