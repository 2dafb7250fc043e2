/* small-panel.c: panels written as a few words, for the tests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "small-panel.h"

#include "panel/panel-error.h"

#include <string.h>

PpOutline *
small_square (void)
{
  static const PpPoint corners[] = { { -10, -10 }, { 10, -10 }, { 10, 10 }, { -10, 10 } };

  return pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
}

/* The words between `mark`s; none of NULL and "". */
static char **
split (const char *text,
       const char *mark)
{
  return g_strsplit (text != NULL ? text : "", mark, -1);
}

PpFused *
small_fused (const char *word)
{
  g_autoptr (PpOutline) square = small_square ();
  g_autofree char *id = g_strndup (word, strcspn (word, "+"));
  PpFused draft = pp_fused_draft ();
  PpFused *fused;

  draft.id = id;
  draft.thickness = 3;
  draft.outline = square;
  draft.has_pocket = g_str_has_suffix (word, "+");
  draft.pocket.insert_thickness = 6;
  draft.pocket.insert = square;
  fused = pp_fused_new (&draft, NULL);
  g_assert_nonnull (fused);
  return fused;
}

PpHole *
small_hole (const char *id)
{
  PpHole draft = pp_hole_draft ();
  PpHole *hole;

  draft.id = id;
  hole = pp_hole_new (&draft, NULL);
  g_assert_nonnull (hole);
  return hole;
}

PpPiece *
small_piece (const char *id,
             GBytes     *art)
{
  g_autoptr (PpOutline) square = small_square ();
  PpPiece draft = pp_piece_draft ();
  PpPiece *piece;

  draft.id = id;
  draft.thickness = 5;
  draft.outline = square;
  draft.art = art;
  piece = pp_piece_new (&draft, NULL);
  g_assert_nonnull (piece);
  return piece;
}

PpWire *
small_wire (const char *from,
            const char *to,
            GError    **error)
{
  PpWire draft = pp_wire_draft ();

  draft.from = from;
  draft.to = to;
  return pp_wire_new (&draft, error);
}

static PpPlacement *
small_placement (const char *word,
                 guint       index)
{
  g_auto (GStrv) parts = split (word, ":");
  guint n = g_strv_length (parts);
  PpPlacement draft = pp_placement_draft ();
  PpPlacement *placement;

  draft.id = parts[0];
  draft.piece = n > 1 ? parts[1] : "oxeye";
  draft.pocket = n > 2 ? parts[2] : NULL;
  draft.x = index;
  draft.y = 2 * index;
  draft.rotation = 15 * index;
  placement = pp_placement_new (&draft, NULL);
  g_assert_nonnull (placement);
  return placement;
}

static PpLogEntry *
small_log_entry (const char *text)
{
  g_auto (GStrv) words = split (text, " ");
  PpLogEntry draft = pp_log_entry_draft ();
  PpLogEntry *entry;

  g_assert_true (pp_log_what_from_name (words[0], &draft.what));
  draft.at = "2026-05-02T14:30:00+02:00";
  draft.about = (const char * const *) words + 1;
  entry = pp_log_entry_new (&draft, NULL);
  g_assert_nonnull (entry);
  return entry;
}

static PpQuiet *
small_quiet (const char *text)
{
  g_auto (GStrv) words = split (text, " ");
  PpQuiet draft = pp_quiet_draft ();
  PpQuiet *quiet;

  draft.code = words[0];
  draft.about = (const char * const *) words + 1;
  quiet = pp_quiet_new (&draft, NULL);
  g_assert_nonnull (quiet);
  return quiet;
}

static void
fill_glass (PpPanel          *draft,
            const SmallPanel *words)
{
  g_auto (GStrv) fused = split (words->fused, " ");
  g_auto (GStrv) holes = split (words->holes, " ");

  draft->fused = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_fused_unref);
  for (guint i = 0; fused[i] != NULL; i++)
    g_ptr_array_add (draft->fused, small_fused (fused[i]));
  draft->holes = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_hole_unref);
  for (guint i = 0; holes[i] != NULL; i++)
    g_ptr_array_add (draft->holes, small_hole (holes[i]));
}

static void
fill_pieces (PpPanel          *draft,
             const SmallPanel *words)
{
  g_auto (GStrv) tray = split (words->tray, " ");
  g_auto (GStrv) placements = split (words->placements, " ");

  draft->tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  for (guint i = 0; tray[i] != NULL; i++)
    g_ptr_array_add (draft->tray, small_piece (tray[i], words->art));
  draft->placements = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  for (guint i = 0; placements[i] != NULL; i++)
    g_ptr_array_add (draft->placements, small_placement (placements[i], i));
}

static void
fill_notes (PpPanel          *draft,
            const SmallPanel *words)
{
  g_auto (GStrv) log = split (words->log, "|");
  g_auto (GStrv) quiet = split (words->quiet, "|");

  draft->log = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_log_entry_unref);
  for (guint i = 0; log[i] != NULL; i++)
    g_ptr_array_add (draft->log, small_log_entry (log[i]));
  draft->quiet = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_quiet_unref);
  for (guint i = 0; quiet[i] != NULL; i++)
    g_ptr_array_add (draft->quiet, small_quiet (quiet[i]));
}

static void
clear_lists (PpPanel *draft)
{
  g_ptr_array_unref (draft->fused);
  g_ptr_array_unref (draft->holes);
  g_ptr_array_unref (draft->tray);
  g_ptr_array_unref (draft->placements);
  g_ptr_array_unref (draft->log);
  g_ptr_array_unref (draft->quiet);
}

static PpBackground *
small_background (void)
{
  PpBackground draft = pp_background_draft ();

  draft.width = 300;
  draft.height = 420;
  draft.thickness = 6;
  return pp_background_new (&draft, NULL);
}

PpPanel *
small_panel_new (const SmallPanel *words,
                 GError          **error)
{
  g_autoptr (PpBackground) background = small_background ();
  g_auto (GStrv) plan = words->plan != NULL ? split (words->plan, " ") : NULL;
  g_auto (GStrv) ends = split (words->wire, " ");
  g_autoptr (PpWire) wire = words->wire != NULL ? small_wire (ends[0], ends[1], NULL) : NULL;
  PpPanel draft = pp_panel_draft ();
  PpPanel *panel;

  draft.background = background;
  draft.wire = wire;
  draft.plan = (const char * const *) plan;
  draft.next_id = words->next_id;
  draft.title = words->title != NULL ? words->title : "";
  draft.created = words->created != NULL ? words->created : "";
  fill_glass (&draft, words);
  fill_pieces (&draft, words);
  fill_notes (&draft, words);
  panel = pp_panel_new (&draft, error);
  clear_lists (&draft);
  return panel;
}

PpPanel *
small_panel_good (const SmallPanel *words)
{
  g_autoptr (GError) error = NULL;
  PpPanel *panel = small_panel_new (words, &error);

  g_assert_no_error (error);
  return panel;
}

static void
add_word (GString    *text,
          const char *mark,
          const char *word)
{
  if (text->len > 0)
    g_string_append (text, mark);
  g_string_append (text, word);
}

static void
compare_fused (const PpPanel *panel,
               const char    *expected)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < panel->fused->len; i++)
    {
      add_word (text, " ", pp_panel_fused (panel, i)->id);
      g_string_append (text, pp_panel_fused (panel, i)->has_pocket ? "+" : "");
    }
  g_assert_cmpstr (text->str, ==, expected);
}

static void
compare_holes (const PpPanel *panel,
               const char    *expected)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < panel->holes->len; i++)
    add_word (text, " ", pp_panel_hole (panel, i)->id);
  g_assert_cmpstr (text->str, ==, expected);
}

static void
compare_tray (const PpPanel *panel,
              const char    *expected)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < panel->tray->len; i++)
    add_word (text, " ", pp_panel_piece (panel, i)->id);
  g_assert_cmpstr (text->str, ==, expected);
}

/* "oxeye" goes without saying, as in the words themselves. */
static void
compare_placements (const PpPanel *panel,
                    const char    *expected)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);

      add_word (text, " ", placement->id);
      if (placement->pocket != NULL || !g_str_equal (placement->piece, "oxeye"))
        g_string_append_printf (text, ":%s", placement->piece);
      if (placement->pocket != NULL)
        g_string_append_printf (text, ":%s", placement->pocket);
    }
  g_assert_cmpstr (text->str, ==, expected);
}

static void
compare_quiet (const PpPanel *panel,
               const char    *expected)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < panel->quiet->len; i++)
    {
      const PpQuiet *quiet = g_ptr_array_index (panel->quiet, i);
      g_autofree char *about = g_strjoinv (" ", (char **) quiet->about);

      add_word (text, "|", quiet->code);
      if (*about != '\0')
        add_word (text, " ", about);
    }
  g_assert_cmpstr (text->str, ==, expected);
}

static void
compare_wire (const PpPanel *panel,
              const char    *expected)
{
  g_autofree char *text = panel->wire != NULL
                            ? g_strjoin (" ", panel->wire->from, panel->wire->to, NULL)
                            : g_strdup ("");

  g_assert_cmpstr (text, ==, expected);
}

static void
compare_plan (const PpPanel *panel,
              const char    *expected)
{
  g_autofree char *text = panel->plan != NULL ? g_strjoinv (" ", (char **) panel->plan)
                                              : g_strdup ("none");

  g_assert_cmpstr (text, ==, expected);
}

void
small_panel_compare (const PpPanel    *panel,
                     const SmallPanel *words)
{
  if (words->fused != NULL)
    compare_fused (panel, words->fused);
  if (words->holes != NULL)
    compare_holes (panel, words->holes);
  if (words->wire != NULL)
    compare_wire (panel, words->wire);
  if (words->tray != NULL)
    compare_tray (panel, words->tray);
  if (words->placements != NULL)
    compare_placements (panel, words->placements);
  if (words->plan != NULL)
    compare_plan (panel, words->plan);
  if (words->quiet != NULL)
    compare_quiet (panel, words->quiet);
}

void
small_assert_error (const GError *error,
                    int           code,
                    const char   *begins)
{
  g_assert_error (error, PP_PANEL_ERROR, code);
  if (!g_str_has_prefix (error->message, begins))
    g_test_message ("“%s” does not begin with “%s”", error->message, begins);
  g_assert_true (g_str_has_prefix (error->message, begins));
}
