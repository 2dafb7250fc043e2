/* fault-acts.c: all that the program writes for good, each as one act; and three who do it badly.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fault-acts.h"

#include "file/box-write.h"
#include "file/box.h"
#include "file/draft.h"
#include "file/earlier.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "glue/progress.h"
#include "sample.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#define PANEL "panel.petalpane"
#define BOX "box.petalbox"
#define MIXED_AT 1780000000 /* s since 1970 */

/* (transfer full) */
static PpPanel *
make_panel (const char *title)
{
  g_autofree char *text = sample_new ();
  g_autofree char *titled = sample_change (text, "Towpath in June", title);
  g_autoptr (GBytes) bytes = sample_to_bytes (titled);
  g_autoptr (GError) error = NULL;
  PpPanel *panel = pp_panel_read (bytes, &error);

  g_assert_no_error (error);
  return panel;
}

static void
put_panel (const char *folder,
           const char *name)
{
  g_autoptr (PpPanel) panel = make_panel ("Before");
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;

  pp_panel_save (panel, path, &error);
  g_assert_no_error (error);
}

static gpointer
nothing_there (const char *folder,
               char      **file)
{
  *file = g_strdup (PANEL);
  return NULL;
}

static gpointer
panel_there (const char *folder,
             char      **file)
{
  put_panel (folder, PANEL);
  *file = g_strdup (PANEL);
  return NULL;
}

static gpointer
link_there (const char *folder,
            char      **file)
{
  g_autofree char *link = g_build_filename (folder, PANEL, NULL);

  *file = g_strdup ("kept-elsewhere.petalpane");
  put_panel (folder, *file);
  g_assert_cmpint (symlink (*file, link), ==, 0);
  return NULL;
}

static gboolean
save (const char *folder,
      gpointer    prepared,
      GError    **error)
{
  g_autoptr (PpPanel) panel = make_panel ("After");
  g_autofree char *path = g_build_filename (folder, PANEL, NULL);

  return pp_panel_save (panel, path, error);
}

static gboolean
record (const char *folder,
        gpointer    prepared,
        GError    **error)
{
  g_autofree char *path = g_build_filename (folder, PANEL, NULL);
  g_autoptr (PpPanel) panel = make_panel ("Before");
  g_autoptr (GDateTime) at = g_date_time_new_from_unix_utc (MIXED_AT);
  g_autoptr (PpPanel) mixed = pp_progress_mixed (panel, at, error);

  return mixed != NULL && pp_panel_save (mixed, path, error);
}

static gpointer
draft_there (const char *folder,
             char      **file)
{
  const PpDraftOrigin origin = { NULL, NULL };
  g_autoptr (PpPanel) panel = make_panel ("Before");
  g_autoptr (GDir) dir = NULL;
  g_autoptr (GError) error = NULL;
  PpDraft *draft = pp_draft_new (folder, &error);
  const char *name;

  g_assert_no_error (error);
  pp_draft_write (draft, panel, &origin, &error);
  g_assert_no_error (error);
  dir = g_dir_open (folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".draft"))
      *file = g_strdup (name);
  return draft;
}

static gboolean
keep_aside (const char *folder,
            gpointer    draft,
            GError    **error)
{
  const PpDraftOrigin origin = { NULL, NULL };
  g_autoptr (PpPanel) panel = make_panel ("After");

  return pp_draft_write (draft, panel, &origin, error);
}

static void
let_go_of_draft (gpointer draft)
{
  pp_draft_unref (draft);
}

static gpointer
box_there (const char *folder,
           char      **file)
{
  g_autofree char *path = g_build_filename (folder, BOX, NULL);
  g_autoptr (PpPanel) panel = make_panel ("Before");
  g_autoptr (GError) error = NULL;

  pp_box_save (panel->tray, path, &error);
  g_assert_no_error (error);
  pp_box_count (path, "none", 0, &error); /* so that its lock is there too */
  g_assert_no_error (error);
  *file = g_strdup (BOX);
  return NULL;
}

/* The same piece of other thickness, however often. */
static gboolean
change_box (const char *folder,
            gpointer    prepared,
            GError    **error)
{
  g_autofree char *path = g_build_filename (folder, BOX, NULL);
  g_autoptr (PpPanel) panel = make_panel ("Before");
  PpPiece piece = *(const PpPiece *) g_ptr_array_index (panel->tray, 0);

  piece.box = piece.id;
  piece.thickness += 1;
  return pp_box_put (path, &piece, NULL, error);
}

/* The history lies in the folder beside the file; which is not touched. */
static gpointer
save_to_keep (const char *folder,
              char      **file)
{
  g_autofree char *path = g_build_filename (folder, PANEL, NULL);
  g_autoptr (GPtrArray) kept = NULL;
  const PpEarlier *one;

  put_panel (folder, PANEL);
  pp_earlier_keep (folder, path, PP_EARLIER_MOST_BYTES, NULL);
  kept = pp_earlier_list (folder, path);
  one = g_ptr_array_index (kept, 0);
  *file = g_strdup (one->path + strlen (folder) + 1);
  g_unlink (one->path); /* so that its folder is there, and its name known */
  return NULL;
}

static gboolean
keep_earlier (const char *folder,
              gpointer    prepared,
              GError    **error)
{
  g_autofree char *path = g_build_filename (folder, PANEL, NULL);

  return pp_earlier_keep (folder, path, PP_EARLIER_MOST_BYTES, error);
}

/* As those write who think that all goes well. */
static gboolean
write_plainly (const char *path,
               gboolean    is_synced,
               GError    **error)
{
  g_autoptr (PpPanel) panel = make_panel ("After");
  g_autoptr (GString) text = pp_panel_write (panel);
  int fd = g_open (path, O_WRONLY | O_CREAT | O_TRUNC, 0666);
  gboolean good = fd >= 0 && write (fd, text->str, text->len) == (gssize) text->len
                  && (!is_synced || fsync (fd) == 0);

  if (fd < 0 || close (fd) != 0 || !good)
    {
      g_set_error_literal (error, PP_FILE_ERROR, PP_FILE_ERROR_IO, "No.");
      return FALSE;
    }
  return TRUE;
}

static gboolean
save_in_place (const char *folder,
               gpointer    prepared,
               GError    **error)
{
  g_autofree char *path = g_build_filename (folder, PANEL, NULL);

  return write_plainly (path, TRUE, error);
}

static gboolean
rename_over (const char *folder,
             gboolean    is_synced,
             GError    **error)
{
  g_autofree char *path = g_build_filename (folder, PANEL, NULL);
  g_autofree char *temporary = g_strconcat (path, ".new", NULL);

  return write_plainly (temporary, is_synced, error) && g_rename (temporary, path) == 0;
}

static gboolean
save_unsynced (const char *folder,
               gpointer    prepared,
               GError    **error)
{
  return rename_over (folder, FALSE, error);
}

static gboolean
save_without_folder (const char *folder,
                     gpointer    prepared,
                     GError    **error)
{
  return rename_over (folder, TRUE, error);
}

const FaultAct fault_acts[] = {
  { "save", panel_there, save },
  { "save-as", nothing_there, save },
  { "save-through-link", link_there, save },
  { "autosave", draft_there, keep_aside, let_go_of_draft },
  { "box", box_there, change_box },
  { "bench-record", panel_there, record },
  { "earlier-save", save_to_keep, keep_earlier },
  { "naive-in-place", panel_there, save_in_place, .is_torn_by_kill = TRUE, .is_careless = TRUE },
  { "naive-unsynced", panel_there, save_unsynced, .is_careless = TRUE },
  { "naive-without-folder", panel_there, save_without_folder, .is_careless = TRUE },
};
const guint n_fault_acts = G_N_ELEMENTS (fault_acts);
