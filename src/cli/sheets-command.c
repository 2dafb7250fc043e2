/* sheets-command.c: petalpane-cli sheets.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheet/sheet.h"

#include "cli/command.h"
#include "cli/panel-answers.h"
#include "file/save.h"
#include "panel/i18n.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <string.h>

typedef struct
{
  char    *out;
  char    *sheets;
  char    *blank;
  char    *paper;
  char    *format;
  char    *units;
  gboolean mono;
  gboolean behind;
} Options;

static void
options_clear (Options *self)
{
  g_free (self->out);
  g_free (self->sheets);
  g_free (self->blank);
  g_free (self->paper);
  g_free (self->format);
  g_free (self->units);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* "record, order": what may be asked for. (transfer full) */
static char *
list_sheets (const PpSheetKind * const *kinds,
             guint                      n)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "", kinds[i]->id);
  return g_string_free (g_steal_pointer (&list), FALSE);
}

static gboolean
is_among (const char                *id,
          const PpSheetKind * const *kinds,
          guint                      n)
{
  for (guint i = 0; i < n; i++)
    if (strcmp (id, kinds[i]->id) == 0)
      return TRUE;
  return FALSE;
}

/* The ids of the sheets asked for, all of them by default, ended by NULL; NULL after a complaint.
 * (transfer full) */
static char **
parse_sheets (const char                *option,
              const char                *text,
              const PpSheetKind * const *kinds,
              guint                      n)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) asked = text != NULL ? g_strsplit (*text != '\0' ? text : " ", ",", -1) : NULL;

  for (guint i = 0; asked == NULL && i < n; i++)
    g_strv_builder_add (builder, kinds[i]->id);
  for (guint i = 0; asked != NULL && asked[i] != NULL; i++)
    {
      if (!is_among (asked[i], kinds, n))
        {
          g_autofree char *known = list_sheets (kinds, n);
          g_autofree char *sentence
              = g_strdup_printf (_("%s: there is no sheet “%s”; there are %s."), option, asked[i],
                                 known);

          pp_command_fail (NULL, sentence);
          return NULL;
        }
      g_strv_builder_add (builder, asked[i]);
    }
  return g_strv_builder_end (builder);
}

static gboolean
parse_formats (const char     *text,
               PpSheetFormats *formats)
{
  g_auto (GStrv) names = g_strsplit (text != NULL ? text : "pdf", ",", -1);

  *formats = 0;
  for (guint i = 0; names[i] != NULL; i++)
    if (strcmp (names[i], "pdf") == 0)
      *formats |= PP_SHEET_PDF;
    else if (strcmp (names[i], "svg") == 0)
      *formats |= PP_SHEET_SVG;
    else if (strcmp (names[i], "png") == 0)
      *formats |= PP_SHEET_PNG;
    else
      return FALSE;
  return *formats != 0;
}

/* Saves all files in the folder, which is made where it is not there yet. `panel` (nullable) is the
 * file that was read. */
static int
save_all (GPtrArray  *files,
          const char *folder,
          const char *panel)
{
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < files->len; i++)
    {
      const PpSheetFile *file = g_ptr_array_index (files, i);
      g_autofree char *path = g_build_filename (folder, file->name, NULL);

      if (panel != NULL && pp_command_is_same_file (path, panel))
        return pp_command_fail (path, _("this is the panel itself; name another folder."));
    }
  if (g_mkdir_with_parents (folder, 0777) != 0)
    {
      g_autofree char *sentence = g_strdup_printf (
          _("this folder cannot be made (%s); name another."), g_strerror (errno));

      return pp_command_fail (folder, sentence);
    }
  for (guint i = 0; i < files->len; i++)
    {
      const PpSheetFile *file = g_ptr_array_index (files, i);
      g_autofree char *path = g_build_filename (folder, file->name, NULL);

      if (!pp_file_save (path, g_bytes_get_data (file->bytes, NULL),
                         g_bytes_get_size (file->bytes), &error))
        return pp_command_fail (NULL, error->message);
    }
  return PP_EXIT_DONE;
}

/* `file` is NULL for empty sheets. */
static int
write_kinds (const char    *file,
             const Options *options,
             PpSheetJob    *job,
             char         **kinds,
             PpSheetFormats formats)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) files = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format_iso8601 (now);

  /* A build that wants the same bytes each time fixes the date; then the sheets take that. */
  job->date = g_getenv ("SOURCE_DATE_EPOCH") == NULL ? date : NULL;
  files = pp_sheets_write (job, (const char * const *) kinds, formats, &error);
  if (files == NULL)
    return pp_command_fail (file, error->message);
  return save_all (files, options->out, file);
}

static int
write_sheets (const char    *file,
              const Options *options,
              PpSheetJob    *job,
              PpSheetFormats formats)
{
  guint n;
  const PpSheetKind * const *kinds = pp_sheet_kinds (&n);
  g_auto (GStrv) asked = parse_sheets ("--sheets", options->sheets, kinds, n);
  g_auto (PpPanelAnswers) answers = { NULL };
  g_autoptr (GError) error = NULL;

  if (asked == NULL)
    return PP_EXIT_UNUSABLE;
  if (!pp_panel_answers_init (&answers, file, options->units != NULL ? &job->units : NULL, NULL,
                              &error))
    return pp_command_fail (file, error->message);
  job->check = answers.check;
  job->plan = answers.plan;
  job->gallery = answers.gallery;
  job->units = answers.panel->units;
  return write_kinds (file, options, job, asked, formats);
}

static int
write_blanks (const Options *options,
              PpSheetJob    *job,
              PpSheetFormats formats)
{
  guint n;
  const PpSheetKind * const *kinds = pp_sheet_blanks (&n);
  g_auto (GStrv) asked = parse_sheets ("--blank", options->blank, kinds, n);

  return asked != NULL ? write_kinds (NULL, options, job, asked, formats) : PP_EXIT_UNUSABLE;
}

/* (transfer full) */
static char *
describe_sheets (void)
{
  guint n;
  const PpSheetKind * const *kinds = pp_sheet_kinds (&n);
  g_autofree char *list = list_sheets (kinds, n);

  return g_strdup_printf (_("Which sheets, all unless said: %s"), list);
}

static char *
describe_blanks (void)
{
  guint n;
  const PpSheetKind * const *kinds = pp_sheet_blanks (&n);
  g_autofree char *list = list_sheets (kinds, n);

  return g_strdup_printf (_("Instead, without a file, empty sheets for making pieces: %s"), list);
}

/* Fills the job with what the options say of it; (nullable): what is wrong with them. */
static const char *
read_options (const Options  *options,
              char          **words,
              PpSheetJob     *job,
              PpSheetFormats *formats)
{
  if (options->blank == NULL && g_strv_length (words) != 1)
    return _("one panel file must be named; --help tells more.");
  if (options->blank != NULL && (words[0] != NULL || options->sheets != NULL))
    return _("--blank takes neither a panel file nor --sheets.");
  if (options->out == NULL)
    return _("-o must name the folder to write to.");
  if (!pp_paper_parse (options->paper != NULL ? options->paper : "a4", &job->paper))
    return _("--paper must be a4, a3, letter, legal, tabloid, or width and height in mm from 120 "
             "to 5000, such as 300x420.");
  if (!parse_formats (options->format, formats))
    return _("--format must be of pdf, svg and png.");
  if (options->units != NULL && !pp_units_from_name (options->units, &job->units))
    return _("--units must be mm or in.");
  job->mono = options->mono;
  job->behind = options->behind;
  return NULL;
}

int
pp_command_sheets (int    argc,
                   char **argv)
{
  g_auto (Options) options = { NULL };
  g_autofree char *which = describe_sheets (), *blanks = describe_blanks ();
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &options.out, N_("The folder to write to"),
      N_("FOLDER") },
    { "sheets", 0, 0, G_OPTION_ARG_STRING, &options.sheets, which,
      N_("NAME,…") },
    { "blank", 0, 0, G_OPTION_ARG_STRING, &options.blank, blanks,
      N_("NAME,…") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &options.paper,
      N_("a4, a3, letter, legal, tabloid, or width and height in mm as 300x420"), N_("SIZE") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options.format,
      N_("pdf (all pages in one), svg or png (one a page); pdf unless said"), N_("NAME,…") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &options.units, N_("mm or in, as the panel unless said"),
      N_("UNIT") },
    { "mono", 0, 0, G_OPTION_ARG_NONE, &options.mono,
      N_("Outlines and hatches instead of colours"), NULL },
    { "behind", 0, 0, G_OPTION_ARG_NONE, &options.behind,
      N_("The pattern mirrored, for work from behind"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (GStrv) words = NULL;
  PpSheetFormats formats = 0;
  PpSheetJob job = { 0 };
  const char *fault;

  if (!pp_command_parse_words (argc, argv, entries, _("Writes the sheets for the bench."), &words))
    return PP_EXIT_UNUSABLE;
  fault = read_options (&options, words, &job, &formats);
  if (fault != NULL)
    return pp_command_fail (NULL, fault);
  if (options.blank != NULL)
    return write_blanks (&options, &job, formats);
  return write_sheets (words[0], &options, &job, formats);
}
