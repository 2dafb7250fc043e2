/* piece-command-picture.c: petalpane-cli piece picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "cli/piece-command.h"

#include "cli/command.h"
#include "file/load.h"
#include "panel/i18n.h"
#include "piece/cutout.h"
#include "piece/discs.h"

/* What was asked for; strings as they were written, or NULL. */
typedef struct
{
  char  *frame;
  char  *corners;
  char  *length;
  double dpi;
  double camera;
  double rim;
  double more;
} Wish;

static void
wish_clear (Wish *self)
{
  g_free (self->frame);
  g_free (self->corners);
  g_free (self->length);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Wish, wish_clear)

/* `n` numbers with one of `between` between them, and nothing else. */
static gboolean
read_numbers (const char *text,
              const char *between,
              guint       n,
              double     *numbers)
{
  g_auto (GStrv) parts = g_strsplit_set (text, between, (int) n + 1);

  if (g_strv_length (parts) != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      char *end;

      numbers[i] = g_ascii_strtod (parts[i], &end);
      if (end == parts[i] || *end != '\0' || !isfinite (numbers[i]))
        return FALSE;
    }
  return TRUE;
}

static PpSquared *
square_frame (const Wish *wish,
              PpPhoto    *photo,
              GError    **error)
{
  PpPoint corners[4];
  double size[2], places[8];

  if (!read_numbers (wish->frame, "xX", 2, size))
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FRAME,
                           _("--frame must be width and height in mm, such as 180x240."));
      return NULL;
    }
  if (wish->corners == NULL)
    {
      if (!pp_discs_find (photo, size[0], size[1], corners, NULL, error))
        return NULL;
    }
  else if (!read_numbers (wish->corners, ",", 8, places))
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FRAME,
                           _("--corners must be eight numbers: x and y of each, in pixels."));
      return NULL;
    }
  for (guint i = 0; wish->corners != NULL && i < 4; i++)
    corners[i] = (PpPoint) { places[2 * i], places[2 * i + 1] };
  return pp_squared_by_frame (photo, corners, size[0], size[1], NULL, NULL, NULL, error);
}

static PpSquared *
square (const Wish *wish,
        PpPhoto    *photo,
        GError    **error)
{
  double numbers[5];

  if (wish->frame != NULL)
    return square_frame (wish, photo, error);
  if (wish->length == NULL)
    return pp_squared_by_dpi (photo, wish->dpi, NULL, NULL, NULL, error);
  if (read_numbers (wish->length, ",", 5, numbers))
    return pp_squared_by_length (photo, (PpPoint) { numbers[0], numbers[1] },
                                 (PpPoint) { numbers[2], numbers[3] }, numbers[4], NULL, NULL, NULL,
                                 error);
  g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FRAME,
                       _("--length must be five numbers: x and y of two points in pixels, and how "
                         "many mm lie between them."));
  return NULL;
}

static PpFound *
find (const Wish *wish,
      const char *file,
      GError    **error)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (PpPhoto) photo = NULL;
  g_autoptr (PpSquared) squared = NULL;
  g_autoptr (PpGround) ground = NULL;

  if (!pp_file_load (file, PP_PHOTO_MAX_BYTES, &bytes, error))
    return NULL;
  photo = pp_photo_load (bytes, NULL, NULL, NULL, error);
  squared = photo != NULL ? square (wish, photo, error) : NULL;
  ground = squared != NULL ? pp_ground_new (squared, NULL, NULL, NULL, error) : NULL;
  return ground != NULL ? pp_found_new (ground, wish->more, NULL, 0, NULL, NULL, NULL, error)
                        : NULL;
}

/* One of the pieces, as the answers have it; named after the file and numbered. */
static PpPiece *
make_one (const PpFound   *found,
          guint            index,
          const Wish      *wish,
          const char      *title,
          const PpAnswers *answers,
          PpPoint         *at,
          GError         **error)
{
  g_autofree char *id = g_strdup_printf ("picture-%u", index + 1);
  g_autofree char *name = found->n_pieces > 1 ? g_strdup_printf ("%s %u", title, index + 1)
                                              : g_strdup (title);
  PpPiece draft = pp_piece_draft ();
  g_autoptr (PpPiece) made = NULL;

  draft.id = id;
  draft.name = name;
  draft.thickness = PP_USUAL_THICKNESS;
  draft.colour = NULL;
  made = pp_cutout_make (found, index, (PpRim) { wish->rim, wish->camera }, &draft, TRUE, at,
                          error);
  return made != NULL ? pp_answers_apply (answers, made, error) : NULL;
}

static int
make (const char        *file,
      const Wish        *wish,
      const PpAnswers   *answers,
      const PpPieceWish *into)
{
  g_autofree char *own_title = pp_piece_command_title (file);
  PpAnswers others = *answers;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpFound) found = find (wish, file, &error);
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autofree PpPoint *at = NULL;

  if (found == NULL)
    return pp_command_fail (file, error->message);
  if (found->n_pieces == 0)
    return pp_command_fail (file, _("no piece was found in this picture; they must lie apart from "
                                    "each other and be whole in it."));
  at = g_new (PpPoint, found->n_pieces);
  others.name = NULL;
  for (guint i = 0; i < found->n_pieces; i++)
    {
      PpPiece *piece = make_one (found, i, wish, answers->name != NULL ? answers->name : own_title,
                                 &others, &at[i], &error);

      if (piece == NULL)
        return pp_command_fail (file, error->message);
      g_ptr_array_add (pieces, piece);
    }
  return pp_piece_command_deliver (
    into, (PpPiece **) pieces->pdata, at, pieces->len, pp_word_is_gap_guessed (answers),
    isnan (answers->thickness) ? pp_word_usual_thickness () : NULL);
}

static gboolean
check (const Wish *wish)
{
  guint n_ways = (wish->frame != NULL) + (wish->length != NULL) + !isnan (wish->dpi);

  if (n_ways != 1)
    pp_command_fail (NULL, _("say how large things are in the picture: --frame, --dpi or --length, "
                             "one of them."));
  else if (wish->corners != NULL && wish->frame == NULL)
    pp_command_fail (NULL, _("--corners needs --frame, the size of what they are the corners of."));
  else if (wish->rim != 0 && isnan (wish->camera))
    pp_command_fail (NULL, _("--rim needs --camera, the height of the lens above the sheet."));
  else if (!(wish->more >= -1 && wish->more <= 1))
    pp_command_fail (NULL, _("--more must be from -1 to 1."));
  else
    return TRUE;
  return FALSE;
}

int
pp_piece_command_picture (int    argc,
                          char **argv)
{
  g_auto (PpPieceWish) into = { NULL };
  g_auto (Wish) wish = { .dpi = NAN, .camera = NAN };
  PpAnswers answers = pp_answers_draft ();
  const GOptionEntry entries[] = {
    { "frame", 0, 0, G_OPTION_ARG_STRING, &wish.frame,
      N_("The pieces lie in a printed frame of this size, mm"), N_("WxH") },
    { "corners", 0, 0, G_OPTION_ARG_STRING, &wish.corners,
      N_("Where its four discs are, in pixels, clockwise from the one with a hole; else they are "
         "looked for"), N_("X,Y,X,Y,X,Y,X,Y") },
    { "dpi", 0, 0, G_OPTION_ARG_DOUBLE, &wish.dpi, N_("The picture is a scan of so many dots to "
                                                      "the inch"), N_("N") },
    { "length", 0, 0, G_OPTION_ARG_STRING, &wish.length,
      N_("Two points, in pixels, and the mm between them"), N_("X1,Y1,X2,Y2,MM") },
    { "camera", 0, 0, G_OPTION_ARG_DOUBLE, &wish.camera,
      N_("Height of the lens above the sheet"), N_("MM") },
    { "rim", 0, 0, G_OPTION_ARG_DOUBLE, &wish.rim,
      N_("Height of the pieces' outline above the sheet"), N_("MM") },
    { "more", 0, 0, G_OPTION_ARG_DOUBLE, &wish.more,
      N_("From -1 to 1: the more, the paler a difference from the ground counts as glass"),
      N_("SHARE") },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *summary = g_strdup_printf (
    _("Makes a piece of everything that lies in a picture (PNG or JPEG), with what the picture "
      "shows of it.\n\nKEY=VALUE, in mm unless a unit is written: %s"), pp_word_list_answers ());
  g_auto (GStrv) args = pp_piece_command_parse (argc, argv, _("IMAGE [KEY=VALUE…]"), summary,
                                                entries, &into);

  if (args == NULL)
    return PP_EXIT_UNUSABLE;
  if (args[0] == NULL)
    return pp_command_fail (NULL, _("one picture must be named; --help tells more."));
  if (!check (&wish) || !pp_piece_command_read_answers (args + 1, &answers))
    return PP_EXIT_UNUSABLE;
  return make (args[0], &wish, &answers, &into);
}
