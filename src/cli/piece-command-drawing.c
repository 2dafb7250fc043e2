/* piece-command-drawing.c: petalpane-cli piece drawing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "cli/piece-command.h"

#include "cli/command.h"
#include "cli/piece-words.h"
#include "file/load.h"
#include "panel/i18n.h"
#include "piece/drawing.h"

/* What was not said of it; (nullable). */
static const char *
get_note (const PpAnswers *answers)
{
  if (isnan (answers->thickness))
    return answers->touch == PP_AS_MADE
             ? _("Not measured, so estimated: thickness, about 6 mm. It is taken to lie flat.")
             : pp_word_usual_thickness ();
  return answers->touch == PP_AS_MADE ? _("It is taken to lie flat.") : NULL;
}

/* `part` (nullable): the id of the part that is the outline. */
static int
make (const char        *file,
      const char        *part,
      const PpAnswers   *answers,
      const PpPieceWish *wish)
{
  g_autofree char *title = pp_piece_command_title (file);
  g_autoptr (GBytes) svg = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) made = NULL;
  g_autoptr (PpPiece) piece = NULL;
  PpPiece draft = pp_piece_draft ();

  if (!pp_file_load (file, PP_PIECE_MAX_ART, &svg, &error))
    return pp_command_fail (file, error->message);
  draft.id = "drawing";
  draft.name = title;
  draft.thickness = PP_USUAL_THICKNESS;
  made = pp_drawing_make (svg, part, &draft, &error);
  piece = made != NULL ? pp_answers_apply (answers, made, &error) : NULL;
  if (piece == NULL)
    return pp_command_fail (file, error->message);
  return pp_piece_command_deliver (wish, &piece, NULL, 1, pp_word_is_gap_guessed (answers),
                                   get_note (answers));
}

int
pp_piece_command_drawing (int    argc,
                          char **argv)
{
  g_auto (PpPieceWish) wish = { NULL };
  g_autofree char *part = NULL;
  const GOptionEntry entries[] = {
    { "part", 0, 0, G_OPTION_ARG_STRING, &part,
      N_("Its outline is that of the part with this id alone"), N_("ID") },
    G_OPTION_ENTRY_NULL,
  };
  PpAnswers answers = pp_answers_draft ();
  g_autofree char *summary = g_strdup_printf (
    _("Makes a piece from a drawing in millimetres; its silhouette, lines included, becomes the "
      "outline.\n\nKEY=VALUE, in mm unless a unit is written: %s"), pp_word_list_answers ());
  g_auto (GStrv) args = pp_piece_command_parse (argc, argv, _("SVG [KEY=VALUE…]"), summary,
                                                entries, &wish);

  if (args == NULL)
    return PP_EXIT_UNUSABLE;
  if (args[0] == NULL)
    return pp_command_fail (NULL, _("one drawing must be named; --help tells more."));
  if (!pp_piece_command_read_answers (args + 1, &answers))
    return PP_EXIT_UNUSABLE;
  return make (args[0], part, &answers, &wish);
}
