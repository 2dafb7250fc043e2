/* piece-command-readings.c: petalpane-cli piece ring, piece ladder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings are words on the command line, or in a file one after the other; what stands behind a #
 * of its own word, to the end of its line, is for the reader ("colour=#a03020" is none).
 */
#include "config.h"

#include "cli/piece-command.h"

#include "cli/command.h"
#include "cli/piece-words.h"
#include "file/load.h"
#include "panel/i18n.h"
#include "piece/readings.h"

#include <string.h>

#define MOST_TEXT (256 * 1024)
#define DEGREES_PER_HOUR 30.0

/* What has been read so far. `colour` and the words of `answers` lie in the list of words. */
typedef struct
{
  GArray     *rows;    /* PpSpoke or PpRung */
  GArray     *in_turn; /* of a ring: reaches without a spoke, in turn from 12 */
  PpAnswers   answers;
  const char *colour;
  double      length;  /* of a ladder: where the tip lies; NAN */
  double      next;    /* where the next rung without a height lies */
} Readings;

static void
readings_clear (Readings *self)
{
  g_array_unref (self->rows);
  g_array_unref (self->in_turn);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Readings, readings_clear)

static Readings
readings_draft (gsize size_of_row)
{
  return (Readings) { .rows = g_array_new (FALSE, FALSE, (guint) size_of_row),
                      .in_turn = g_array_new (FALSE, FALSE, sizeof (double)),
                      .answers = pp_answers_draft (), .length = NAN };
}

/* "12", "1", "1:30" as on the ring sheet. */
static gboolean
read_hour (const char *text,
           double     *degrees)
{
  char *end;
  guint64 hour = g_ascii_strtoull (text, &end, 10), minutes = 0;

  if (end == text || !g_ascii_isdigit (*text))
    return FALSE;
  if (*end == ':' && g_ascii_isdigit (end[1]))
    minutes = g_ascii_strtoull (end + 1, &end, 10);
  if (*end != '\0' || hour < 1 || hour > 12 || minutes >= 60)
    return FALSE;
  *degrees = ((double) (hour % 12) + (double) minutes / 60) * DEGREES_PER_HOUR;
  return TRUE;
}

/* "LEFT,RIGHT", or one figure for both. */
static gboolean
read_sides (const char *text,
            PpRung     *rung)
{
  g_auto (GStrv) sides = g_strsplit (text, ",", 3);
  guint n = g_strv_length (sides);

  if (n < 1 || n > 2 || !pp_word_read_length (sides[0], &rung->left))
    return FALSE;
  return pp_word_read_length (sides[n - 1], &rung->right);
}

static gboolean
read_spoke (Readings   *self,
            const char *key,
            const char *value)
{
  PpSpoke spoke;

  if (key == NULL)
    {
      double reach;

      if (!pp_word_read_length (value, &reach))
        return FALSE;
      g_array_append_val (self->in_turn, reach);
      return TRUE;
    }
  if (!read_hour (key, &spoke.turn) || !pp_word_read_length (value, &spoke.reach))
    return FALSE;
  g_array_append_val (self->rows, spoke);
  return TRUE;
}

static gboolean
read_rung (Readings   *self,
           const char *key,
           const char *value)
{
  PpRung rung = { .up = self->next };

  if (key != NULL && strcmp (key, "length") == 0)
    return pp_word_read_length (value, &self->length);
  if ((key != NULL && !pp_word_read_length (key, &rung.up)) || !read_sides (value, &rung))
    return FALSE;
  self->next = rung.up + PP_SHEET_RUNG;
  g_array_append_val (self->rows, rung);
  return TRUE;
}

typedef gboolean (*ReadFunc) (Readings *self, const char *key, const char *value);

static gboolean
read_word (Readings   *self,
           const char *word,
           ReadFunc    read_row)
{
  g_autofree char *key = NULL;
  const char *value;

  if (!pp_word_split (word, &key, &value))
    return read_row (self, NULL, word);
  if (strcmp (key, "colour") == 0)
    {
      self->colour = value;
      return TRUE;
    }
  return pp_word_read_answer (&self->answers, key, value) || read_row (self, key, value);
}

/* Ends the line before a remark ("# ..."), which is for who reads the file, and strips the space at
 * its start. */
static void
cut_remark (char *line)
{
  char *at = line;

  while (*at != '\0' && !(*at == '#' && (at == line || g_ascii_isspace (at[-1]))))
    at++;
  *at = '\0';
  g_strchug (line);
}

/* Puts the words of the file into the place of its name. */
static gboolean
spread_file (char  ***args,
             GError **error)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();

  if (!pp_file_load (**args, MOST_TEXT, &bytes, error))
    return FALSE;
  text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  lines = g_strsplit_set (text, "\r\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      gboolean is_row;
      g_auto (GStrv) parts = NULL;

      cut_remark (lines[i]);
      is_row = strchr (lines[i], '=') == NULL || g_ascii_isdigit (*lines[i]);
      parts = g_strsplit_set (lines[i], is_row ? " \t;" : "", -1);
      for (guint k = 0; parts[k] != NULL; k++)
        if (*g_strstrip (parts[k]) != '\0')
          g_strv_builder_add (words, parts[k]);
    }
  g_strv_builder_addv (words, (const char **) *args + 1);
  g_strfreev (*args);
  *args = g_strv_builder_end (words);
  return TRUE;
}

/* The words, read; a first one that names a file stands for what is in it. */
static gboolean
read_words (char   ***args,
            ReadFunc  read_row,
            Readings *self)
{
  g_autoptr (GError) error = NULL;
  const char *fault;

  if (**args != NULL && g_file_test (**args, G_FILE_TEST_EXISTS) && !spread_file (args, &error))
    {
      pp_command_fail (**args, error->message);
      return FALSE;
    }
  for (guint i = 0; (*args)[i] != NULL; i++)
    if (!read_word (self, (*args)[i], read_row))
      {
        pp_command_fail ((*args)[i], _("this is no reading; --help tells how they are written."));
        return FALSE;
      }
  fault = pp_word_find_gap_fault (self->answers.touch, self->answers.gap);
  if (fault != NULL)
    pp_command_fail (NULL, fault);
  return fault == NULL;
}

static int
deliver (const Readings    *self,
         const PpOutline   *outline,
         gboolean           is_long,
         const PpPieceWish *wish)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) made = NULL;
  g_autoptr (PpPiece) piece = NULL;
  PpPiece draft = pp_piece_draft ();
  gboolean is_thick = !isnan (self->answers.thickness);

  draft.id = is_long ? "ladder" : "ring";
  draft.name = is_long ? _("Long piece") : _("Round piece");
  draft.kind = is_long ? PP_KIND_LEAF : PP_KIND_FLOWER;
  draft.thickness = PP_USUAL_THICKNESS;
  if (self->colour != NULL)
    draft.colour = self->colour;
  if (self->answers.light != PP_AS_MADE)
    draft.transmittance = pp_light_get_transmittance ((PpLight) self->answers.light);
  made = pp_readings_make (outline, &draft, &error);
  piece = made != NULL ? pp_answers_apply (&self->answers, made, &error) : NULL;
  if (piece == NULL)
    return pp_command_fail (NULL, error->message);
  return pp_piece_command_deliver (
    wish, &piece, NULL, 1, pp_word_is_gap_guessed (&self->answers),
    is_thick ? NULL : pp_word_usual_thickness ());
}

int
pp_piece_command_ring (int    argc,
                       char **argv)
{
  g_auto (PpPieceWish) wish = { NULL };
  g_auto (Readings) readings = readings_draft (sizeof (PpSpoke));
  g_autoptr (GError) error = NULL;
  g_autoptr (PpOutline) outline = NULL;
  g_autofree char *summary = g_strdup_printf (
    _("Makes a piece from what was read on a ring sheet: how far out its edge lies on each spoke, "
      "in mm unless a unit is written. READINGS are 24 lengths, the first at 12 and on clockwise "
      "(or any other number of them, evenly round), or HOUR=LENGTH (12=31 12:30=30.5 1=28 …), or "
      "a file with these.\n\nKEY=VALUE: colour (#rrggbb); %s"), pp_word_list_answers ());
  g_auto (GStrv) args
      = pp_piece_command_parse (argc, argv, _("READINGS… [KEY=VALUE…]"), summary, NULL, &wish);

  if (args == NULL || !read_words (&args, read_spoke, &readings))
    return PP_EXIT_UNUSABLE;
  if (readings.in_turn->len > 0 && readings.rows->len > 0)
    return pp_command_fail (NULL, _("name the hour of each reading, or of none."));
  for (guint i = 0; i < readings.in_turn->len; i++)
    {
      PpSpoke spoke = { 360.0 * i / readings.in_turn->len,
                        g_array_index (readings.in_turn, double, i) };

      g_array_append_val (readings.rows, spoke);
    }
  outline = pp_readings_ring ((PpSpoke *) (gpointer) readings.rows->data, readings.rows->len,
                              &error);
  if (outline == NULL)
    return pp_command_fail (NULL, error->message);
  return deliver (&readings, outline, FALSE, &wish);
}

int
pp_piece_command_ladder (int    argc,
                         char **argv)
{
  g_auto (PpPieceWish) wish = { NULL };
  g_auto (Readings) readings = readings_draft (sizeof (PpRung));
  g_autoptr (GError) error = NULL;
  g_autoptr (PpOutline) outline = NULL;
  g_autofree char *summary = g_strdup_printf (
    _("Makes a long piece from what was read on a ladder, in mm unless a unit is written: at each "
      "rung how far its edges lie to the left and to the right of the middle line. READINGS are "
      "LEFT,RIGHT from rung 0 up, a rung every 10 mm, or HEIGHT=LEFT,RIGHT at any height, or a "
      "file with these. An end of width 0 is a tip; length=LENGTH puts one there.\n\n"
      "KEY=VALUE: colour (#rrggbb); %s"), pp_word_list_answers ());
  g_auto (GStrv) args
      = pp_piece_command_parse (argc, argv, _("READINGS… [KEY=VALUE…]"), summary, NULL, &wish);

  if (args == NULL || !read_words (&args, read_rung, &readings))
    return PP_EXIT_UNUSABLE;
  if (!isnan (readings.length))
    {
      PpRung tip = { .up = readings.length };

      g_array_append_val (readings.rows, tip);
    }
  outline = pp_readings_ladder ((PpRung *) (gpointer) readings.rows->data, readings.rows->len,
                                &error);
  if (outline == NULL)
    return pp_command_fail (NULL, error->message);
  return deliver (&readings, outline, TRUE, &wish);
}
