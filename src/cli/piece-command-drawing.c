/* piece-command-drawing.c: petalpane-cli piece drawing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "cli/piece-command.h"

#include "cli/command.h"
#include "file/save.h"
#include "panel/i18n.h"
#include "piece/drawing.h"

#include <string.h>

#define USUAL_THICKNESS 6 /* mm */

/* The file's name without folder and ending. (transfer full) */
static char *
get_title (const char *file)
{
  g_autofree char *base = g_filename_display_basename (file);
  char *dot = strrchr (base, '.');

  return dot != NULL && dot != base ? g_strndup (base, (gsize) (dot - base))
                                    : g_steal_pointer (&base);
}

static int
make (const char        *file,
      const PpPieceWish *wish)
{
  g_autofree char *title = get_title (file);
  g_autoptr (GBytes) svg = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = NULL;
  PpPiece draft = pp_piece_draft ();

  if (!pp_file_load (file, PP_PIECE_MAX_ART, &svg, &error))
    return pp_command_fail (file, error->message);
  draft.id = "drawing";
  draft.name = title;
  draft.kind = PP_KIND_FILLER;
  draft.thickness = USUAL_THICKNESS;
  piece = pp_drawing_make (svg, &draft, &error);
  if (piece == NULL)
    return pp_command_fail (file, error->message);
  return pp_piece_command_deliver (wish, piece, _("Not measured, so estimated: thickness, about "
                                                  "6 mm. It is taken to lie flat."));
}

int
pp_piece_command_drawing (int    argc,
                          char **argv)
{
  g_auto (PpPieceWish) wish = { NULL };
  g_auto (GStrv) args = pp_piece_command_parse (
    argc, argv, _("SVG"),
    _("Makes a piece from a drawing in millimetres; its silhouette, lines included, becomes the "
      "outline."), &wish);

  if (args == NULL)
    return PP_EXIT_UNUSABLE;
  if (g_strv_length (args) != 1)
    return pp_command_fail (NULL, _("one drawing must be named; --help tells more."));
  return make (args[0], &wish);
}
