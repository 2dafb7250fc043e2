/* piece-command.c: petalpane-cli piece: the ways of making one, and where it goes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "cli/piece-command.h"

#include "cli/command.h"
#include "cli/piece-words.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "file/records-write.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/height.h"

#include <string.h>

void
pp_piece_wish_clear (PpPieceWish *self)
{
  g_clear_pointer (&self->into, g_free);
}

char **
pp_piece_command_parse (int                 argc,
                        char              **argv,
                        const char         *usage,
                        const char         *summary,
                        const GOptionEntry *more,
                        PpPieceWish        *wish)
{
  const GOptionEntry entries[] = {
    { "into", 0, 0, G_OPTION_ARG_FILENAME, &wish->into,
      N_("Put the piece on the tray of this panel file"), N_("FILE") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &wish->is_json, N_("Print the piece as JSON"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  const GOptionEntry *first = more != NULL ? more : entries;
  char **words = NULL;

  pp_command_parse_options (argc, argv, usage, summary, first, more != NULL ? entries : NULL,
                            &words);
  return words;
}

/* `at` (nullable): where the origins lay; at (0, 0). */
static int
print_json (PpPiece *const *pieces,
            const PpPoint  *at,
            guint           n_pieces)
{
  g_autoptr (PpJsonWriter) w = pp_json_writer_new ();
  g_autoptr (GString) text = NULL;

  pp_json_write_begin_object (w, NULL);
  pp_json_write_string (w, "format", "petalpane-pieces");
  pp_json_write_integer (w, "version", 1);
  pp_json_write_begin_array (w, "pieces");
  for (guint i = 0; i < n_pieces; i++)
    {
      pp_json_write_begin_object (w, NULL);
      pp_write_piece_members (w, pieces[i]);
      pp_json_write_begin_array (w, "at");
      pp_json_write_number (w, NULL, at != NULL ? at[i].x : 0);
      pp_json_write_number (w, NULL, at != NULL ? at[i].y : 0);
      pp_json_write_end_array (w);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
  text = pp_json_writer_finish (w);
  return pp_command_print_json (text);
}

/* How far off the flat top its high part is, as it was estimated. */
static void
print_gap (const PpPiece *piece)
{
  double gap;
  g_autofree char *length = NULL;

  pp_touch_of_piece (piece, &gap);
  length = pp_length_format (gap, PP_UNITS_MM);
  g_print (_("  Light under the high part, not measured: about %s\n"), length);
}

static void
print_words (const PpPiece *piece)
{
  PpBox box = pp_outline_get_box (piece->outline);
  g_autofree char *size = pp_size_format (pp_box_width (box), pp_box_height (box), PP_UNITS_MM);
  double g = pp_piece_get_mass (piece);
  g_autofree char *mass = isnan (piece->mass) ? pp_mass_format_about (g, PP_UNITS_MM)
                                              : pp_mass_format (g, PP_UNITS_MM);

  g_print (_("%s: %s, %s.\n"), piece->name, size, mass);
}

static gboolean
add_to_tray (const char     *file,
             PpPiece *const *pieces,
             guint           n_pieces,
             GError        **error)
{
  g_autoptr (PpPanel) panel = pp_panel_load (file, error);

  for (guint i = 0; panel != NULL && i < n_pieces; i++)
    {
      g_autoptr (PpPanel) before = g_steal_pointer (&panel);

      panel = pp_edit_add_piece (before, pieces[i], NULL, error);
    }
  return panel != NULL && pp_panel_save (panel, file, error);
}

int
pp_piece_command_deliver (const PpPieceWish *wish,
                          PpPiece *const    *pieces,
                          const PpPoint     *at,
                          guint              n_pieces,
                          gboolean           is_gap_guessed,
                          const char        *note)
{
  g_autoptr (GError) error = NULL;

  if (wish->into != NULL && !add_to_tray (wish->into, pieces, n_pieces, &error))
    return pp_command_fail (wish->into, error->message);
  if (wish->is_json)
    return print_json (pieces, at, n_pieces);
  for (guint i = 0; i < n_pieces; i++)
    {
      print_words (pieces[i]);
      if (is_gap_guessed)
        print_gap (pieces[i]);
    }
  if (note != NULL)
    g_print ("%s\n", note);
  return PP_EXIT_DONE;
}

char *
pp_piece_command_title (const char *file)
{
  g_autofree char *base = g_filename_display_basename (file);
  char *dot = strrchr (base, '.');

  return dot != NULL && dot != base ? g_strndup (base, (gsize) (dot - base))
                                    : g_steal_pointer (&base);
}

gboolean
pp_piece_command_read_answers (char     **words,
                               PpAnswers *answers)
{
  const char *fault;

  for (guint i = 0; words[i] != NULL; i++)
    {
      g_autofree char *key = NULL;
      const char *value;

      if (!pp_word_split (words[i], &key, &value) || !pp_word_read_answer (answers, key, value))
        {
          pp_command_fail (words[i], _("this says nothing of a piece; --help tells what does."));
          return FALSE;
        }
    }
  fault = pp_word_find_gap_fault (answers->touch, answers->gap);
  if (fault != NULL)
    pp_command_fail (NULL, fault);
  return fault == NULL;
}

static void
print_help (void)
{
  g_print (_("Usage: petalpane-cli piece WAY …\n\nWays, each with --help:\n"
             "  measures KIND KEY=LENGTH…: from a picture of a piece and its measures\n"
             "  ring READINGS…: a round piece, from a ring sheet\n"
             "  ladder READINGS…: a long piece, from a ladder\n"
             "  picture IMAGE: every piece in a photo or scan\n"
             "  drawing SVG: from a drawing in millimetres\n"));
}

int
pp_command_piece (int    argc,
                  char **argv)
{
  static const struct
  {
    const char *name;
    int       (*run) (int argc, char **argv);
  } ways[] = {
    { "measures", pp_piece_command_measures },
    { "ring", pp_piece_command_ring },
    { "ladder", pp_piece_command_ladder },
    { "picture", pp_piece_command_picture },
    { "drawing", pp_piece_command_drawing },
  };

  if (argc > 1 && (strcmp (argv[1], "--help") == 0 || strcmp (argv[1], "-h") == 0))
    {
      print_help ();
      return PP_EXIT_DONE;
    }
  for (guint i = 0; argc > 1 && i < G_N_ELEMENTS (ways); i++)
    if (strcmp (argv[1], ways[i].name) == 0)
      return ways[i].run (argc - 1, argv + 1);
  return pp_command_fail (NULL, _("say how the piece is made: piece measures, ring, "
                                  "ladder, picture or drawing, each with --help."));
}
