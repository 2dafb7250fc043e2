/* exporting.c: the sheets and the picture of a panel, written to files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/exporting.h"

#include "art/picture.h"
#include "check/heights.h"
#include "desk/export-wish.h"
#include "desk/file-words.h"
#include "desk/picture-dialog.h"
#include "desk/sheet-answers.h"
#include "panel/i18n.h"

typedef struct
{
  PpSheetChoice  *choice;
  PpSheetFormats  format;
} Sheets;

static void
free_sheets (gpointer data)
{
  Sheets *self = data;

  pp_sheet_choice_free (self->choice);
  g_free (self);
}

/* In a folder they lie beside those of other panels. */
static void
name_after_panel (GPtrArray     *files,
                  const PpPanel *panel)
{
  for (guint i = 0; *panel->title != '\0' && i < files->len; i++)
    {
      PpSheetFile *file = g_ptr_array_index (files, i);
      g_autofree char *old = file->name;
      g_autofree char *title = pp_file_name_suggest (panel->title, " ");

      file->name = g_strconcat (title, old, NULL);
    }
}

static GPtrArray *
draw_sheets (const PpPanel *panel,
             gpointer       data,
             PpWork        *work,
             GError       **error)
{
  const Sheets *sheets = data;
  g_autoptr (PpSheetAnswers) answers = pp_sheet_answers_new (panel, TRUE, work, error);
  PpSheetJob job;
  GPtrArray *files;

  if (answers == NULL)
    return NULL;
  job = pp_sheet_choice_job (sheets->choice, answers);
  files = pp_sheets_write (&job, (const char * const *) sheets->choice->kinds, sheets->format,
                           error);
  if (files != NULL && sheets->format != PP_SHEET_PDF)
    name_after_panel (files, panel);
  return files;
}

static char *
tell_sheets (const char *file,
             const char *folder)
{
  if (file == NULL)
    return g_strdup_printf (_("The sheets are in the folder “%s”."), folder);
  /* Translators: the name of a file, then of its folder. */
  return g_strdup_printf (_("The sheets are in “%s” in the folder “%s”."), file, folder);
}

void
pp_exporting_sheets (PpWindow            *window,
                     const PpSheetChoice *choice,
                     PpSheetFormats       format)
{
  const Sheets sheets = { pp_sheet_choice_copy (choice), format };
  const PpExport export = {
    .doing = _("The sheets are being drawn."),
    .tell = tell_sheets,
    .draw = draw_sheets,
    .data = g_memdup2 (&sheets, sizeof sheets),
    .free_data = free_sheets,
  };

  if (format == PP_SHEET_PDF)
    pp_export_wish_file (window, &export, _("Export the sheets"),
                         C_("end of a file's name", "sheets"), ".pdf");
  else
    pp_export_wish_folder (window, &export, _("A folder for the sheets"));
}

typedef struct
{
  int      width;
  gboolean from_behind;
} Picture;

static GBytes *
draw_png (const PpSheetAnswers *answers,
          const Picture   *picture,
          GError         **error)
{
  const PpCheck *check = answers->check;
  const PpViewFrom view = { .from_behind = picture->from_behind };
  g_autofree double *bases = NULL, *tops = NULL;

  pp_heights_of (check, &bases, &tops);
  return pp_picture_png (check->scene, answers->gallery, bases, tops, &view, picture->width,
                         error);
}

static GPtrArray *
draw_picture (const PpPanel *panel,
              gpointer       data,
              PpWork        *work,
              GError       **error)
{
  g_autoptr (PpSheetAnswers) answers = pp_sheet_answers_new (panel, FALSE, work, error);
  g_autoptr (GBytes) png = answers != NULL ? draw_png (answers, data, error) : NULL;
  GPtrArray *files;

  if (png == NULL)
    return NULL;
  files = pp_sheet_files_new ();
  pp_sheet_files_add (files, "picture.png", png);
  return files;
}

static char *
tell_picture (const char *file,
              const char *folder)
{
  /* Translators: the name of a file, then of its folder. */
  return g_strdup_printf (_("The picture is “%s” in the folder “%s”."), file, folder);
}

static void
picture_accepted_cb (PpPictureDialog *dialog,
                     int              width,
                     gboolean         from_behind,
                     PpWindow        *window)
{
  Picture picture = { width, from_behind };
  const PpExport export = {
    .doing = _("The picture is being drawn."),
    .tell = tell_picture,
    .draw = draw_picture,
    .data = g_memdup2 (&picture, sizeof picture),
    .free_data = g_free,
  };

  pp_export_wish_file (window, &export, _("Export a picture"),
                       from_behind ? C_("end of a file's name", "from behind")
                                   : C_("end of a file's name", "picture"),
                       ".png");
}

void
pp_exporting_picture (PpWindow *window)
{
  PpLook look = pp_canvas_get_look (pp_window_get_canvas (window));
  PpPictureDialog *dialog = pp_picture_dialog_new (GTK_WINDOW (window), look.from_behind);

  g_signal_connect_object (dialog, "accepted", G_CALLBACK (picture_accepted_cb), window, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}
