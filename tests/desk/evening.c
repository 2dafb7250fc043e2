/* evening.c: an evening at the bench without a screen, to be killed at any moment.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     evening work FILE FOLDER ACTS [--naive]
 *     evening look FILE FOLDER
 *
 * `work` opens the panel of FILE, does ACTS acts with a journal in FOLDER, and saves after each
 * fifth. The last five happen at the bench: they are in the log, bind undo, and each is saved at
 * once. It says on its output what it begins and what is safe: "do 7", "kept 7", "save 10",
 * "saved 10"; at the end how many system calls its savings were, "calls 99". An act moves the hole
 * "left" to x = 40 + number / 8, so that any panel tells how far the evening had come; and a
 * piece. With KILL_SAVE=n it kills itself before the n-th system call
 * of its savings of FILE, with KILL_ANY=n before the n-th of all. --naive saves in place.
 * `look` says what a start would find: "file 10", "draft 12".
 *
 * The calls are those of save.c and draft.c, which the linker wraps (meson.build).
 */
#include "desk/file-words.h"
#include "desk/journal.h"
#include "desk/panel-io.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "glue/progress.h"
#include "panel/edit.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define START 40.0
#define STEPS 8.0  /* acts a mm: exact in binary */
#define SAVE_EVERY 5
#define AT_BENCH 5 /* acts */
#define PACE_MS 2

/* Counting calls. */
static gint kill_save, kill_any;
static gint n_save, n_any;
static char *save_folder;
static GPrivate in_save;  /* non-NULL in a thread that saves the maker's file */

static void
count_call (void)
{
  if (g_atomic_int_add (&n_any, 1) + 1 == kill_any)
    kill (getpid (), SIGKILL);
  if (g_private_get (&in_save) != NULL && g_atomic_int_add (&n_save, 1) + 1 == kill_save)
    kill (getpid (), SIGKILL);
}

#define WRAP(type, name, params, args)                                                             \
  type __real_##name params;                                                                       \
  type __wrap_##name params;                                                                       \
  type __wrap_##name params                                                                        \
  {                                                                                                \
    count_call ();                                                                                 \
    return __real_##name args;                                                                     \
  }

WRAP (ssize_t, write, (int fd, const void *bytes, size_t n), (fd, bytes, n))
WRAP (int, fsync, (int fd), (fd))
WRAP (int, rename, (const char *from, const char *to), (from, to))
WRAP (int, unlink, (const char *path), (path))
WRAP (int, fchown, (int fd, uid_t uid, gid_t gid), (fd, uid, gid))
WRAP (int, fchmod, (int fd, mode_t mode), (fd, mode))
WRAP (int, close, (int fd), (fd))

int __real_g_mkstemp_full (char *path, int flags, int mode);
int __wrap_g_mkstemp_full (char *path, int flags, int mode);

/* Where the temporary file is made tells what is being saved. */
int
__wrap_g_mkstemp_full (char *path,
                       int   flags,
                       int   mode)
{
  g_autofree char *folder = g_path_get_dirname (path);

  g_private_set (&in_save, save_folder != NULL && g_str_equal (folder, save_folder) ? path : NULL);
  count_call ();
  return __real_g_mkstemp_full (path, flags, mode);
}

static void
say (const char *what,
     int         number)
{
  char line[64];
  int n = snprintf (line, sizeof line, "%s %d\n", what, number);

  if (__real_write (STDOUT_FILENO, line, (size_t) n) != n)
    _exit (3);
}

static int
get_number (const PpPanel *panel)
{
  return (int) round ((pp_panel_find_hole (panel, "left", NULL)->x - START) * STEPS);
}

/* (transfer full) */
static PpPanel *
act (const PpPanel *panel,
     int            number)
{
  const PpPlacement *placement = pp_panel_placement (panel, (guint) number % panel->placements->len);
  const char * const ids[] = { placement->id, NULL };
  PpHole draft = *pp_panel_find_hole (panel, "left", NULL);
  g_autoptr (PpHole) hole = NULL;
  g_autoptr (PpPanel) next = NULL;

  draft.x = START + number / STEPS;
  hole = pp_hole_new (&draft, NULL);
  next = pp_edit_set_hole (panel, hole, NULL);
  return pp_edit_move (next, ids, number % 2 == 0 ? 1 : -1, 0.5, NULL);
}

/* As a program that does not think of the worst. */
static void
save_in_place (const PpPanel *panel,
               const char    *path)
{
  g_autoptr (GString) text = pp_panel_write (panel);
  int fd;

  g_private_set (&in_save, (gpointer) path);
  count_call ();
  fd = g_open (path, O_WRONLY | O_CREAT | O_TRUNC, 0666);
  for (gsize at = 0; at < text->len; at += 4096)
    if (write (fd, text->str + at, MIN (4096, text->len - at)) < 0)
      _exit (3);
  close (fd);
  g_private_set (&in_save, NULL);
}

typedef struct
{
  PpDocument *document;
  PpJournal  *journal;
  GFile      *file;
  const char *path;
  gboolean    is_naive;
  gboolean    is_saving;
  PpPanel    *saving;
} Evening;

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  Evening *self = data;
  g_autofree char *content = NULL;

  if (!pp_panel_io_save_finish (result, &content, NULL))
    _exit (4);
  say ("saved", get_number (self->saving));
  pp_document_set_saved (self->document, self->saving, self->file);
  pp_journal_set_content (self->journal, content);
  self->is_saving = FALSE;
}

static void
save (Evening *self)
{
  self->saving = (PpPanel *) pp_document_get_panel (self->document);
  say ("save", get_number (self->saving));
  if (self->is_naive)
    {
      save_in_place (self->saving, self->path);
      say ("saved", get_number (self->saving));
      pp_document_set_saved (self->document, self->saving, self->file);
      return;
    }
  self->is_saving = TRUE;
  pp_panel_io_save_async (self->saving, self->path, NULL, saved_cb, self);
  while (self->is_saving)
    g_main_context_iteration (NULL, TRUE);
}

/* As an edit, with the draft as its keeping; or as the bench has it, with the file. */
static void
do_act (Evening  *self,
        int       number,
        gboolean  at_bench)
{
  g_autoptr (PpPanel) next = act (pp_document_get_panel (self->document), number);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  say ("do", number);
  if (at_bench)
    {
      pp_document_record (self->document, pp_progress_mixed (next, now, NULL), NULL);
      save (self);
    }
  else
    {
      pp_document_take (self->document, g_steal_pointer (&next), NULL, "Act", NULL);
      while (!pp_journal_is_settled (self->journal))
        g_main_context_iteration (NULL, TRUE);
    }
  say ("kept", number);
}

static int
work (const char *path,
      const char *folder,
      int         n,
      gboolean    is_naive)
{
  g_autoptr (PpPanel) panel = pp_panel_load (path, NULL);
  Evening self = { .path = path, .file = g_file_new_for_path (path), .is_naive = is_naive };

  self.document = pp_document_new (panel, self.file);
  self.journal = pp_journal_new (self.document, folder, NULL);
  pp_journal_set_pace (self.journal, PACE_MS);
  for (int i = 1; i <= n; i++)
    {
      do_act (&self, i, i > n - AT_BENCH);
      if (i % SAVE_EVERY == 0 && i <= n - AT_BENCH)
        save (&self);
    }
  say ("calls", g_atomic_int_get (&n_save));
  pp_journal_end (self.journal);
  g_object_unref (self.journal);
  g_object_unref (self.document);
  g_object_unref (self.file);
  return 0;
}

static int
look (const char *path,
      const char *folder)
{
  g_autoptr (PpPanel) panel = pp_panel_load (path, NULL);
  g_autoptr (GPtrArray) drafts = pp_draft_find (folder);

  if (panel != NULL)
    say ("file", get_number (panel));
  for (guint i = 0; i < drafts->len; i++)
    {
      g_auto (PpDraftOrigin) origin = { NULL, NULL };
      g_autoptr (PpPanel) kept = pp_draft_read (g_ptr_array_index (drafts, i), &origin, NULL);

      if (kept != NULL && g_strcmp0 (origin.path, path) == 0)
        say ("draft", get_number (kept));
      else
        say ("torn", (int) i);
    }
  return 0;
}

static int
get_kill (const char *name)
{
  const char *value = g_getenv (name);

  return value != NULL ? atoi (value) : 0;
}

int
main (int    argc,
      char **argv)
{
  if (argc < 4)
    return 2;
  save_folder = g_path_get_dirname (argv[2]);
  if (g_str_equal (argv[1], "look"))
    return look (argv[2], argv[3]);
  kill_save = get_kill ("KILL_SAVE");
  kill_any = get_kill ("KILL_ANY");
  return work (argv[2], argv[3], atoi (argv[4]), argc > 5);
}
