/* edit-command.c: edits written as commands, for the tests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "edit-command.h"

#include "panel/edit.h"

#include "small-panel.h"

/* The words of a command as one edit reads them. */
typedef struct
{
  char **word; /* after the name */
  char **ids;  /* of the first word */
} Args;

#define IDS(args) ((const char * const *) (args)->ids)

static double
number (const Args *args,
        guint       i)
{
  return g_ascii_strtod (args->word[i], NULL);
}

static PpPose
pose (const Args *args,
      guint       from)
{
  return (PpPose) { number (args, from), number (args, from + 1), number (args, from + 2),
                    number (args, from + 3) != 0 };
}

static PpPanel *
do_place (const PpPanel *panel, const Args *args, GError **error)
{
  g_autofree char *id = NULL;
  PpPanel *next = pp_edit_place (panel, args->word[0], pose (args, 1), &id, error);

  g_assert_cmpint (next != NULL, ==, id != NULL);
  if (next != NULL)
    g_assert_nonnull (pp_panel_find_placement (next, id, NULL));
  return next;
}

static PpPanel *
do_pose (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_set_pose (panel, args->word[0], pose (args, 1), error);
}

static PpPanel *
do_move (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_move (panel, IDS (args), number (args, 1), number (args, 2), error);
}

static PpPanel *
do_turn (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_turn (panel, IDS (args), (PpPoint) { number (args, 1), number (args, 2) },
                       number (args, 3), error);
}

static PpPanel *
do_mirror (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_mirror (panel, IDS (args), number (args, 1), error);
}

static PpPanel *
do_lift (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_lift (panel, IDS (args), error);
}

static PpPanel *
do_lower (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_lower (panel, IDS (args), error);
}

static PpPanel *
do_restack (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_restack (panel, args->word[0], (guint) number (args, 1), error);
}

/* Without a name: out of the group; "-" is the empty name. */
static PpPanel *
do_group (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_group (panel, IDS (args), g_strcmp0 (args->word[1], "-") == 0 ? "" : args->word[1],
                        error);
}

static PpPanel *
do_remove (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_remove (panel, IDS (args), error);
}

static PpPanel *
do_duplicate (const PpPanel *panel, const Args *args, GError **error)
{
  g_auto (GStrv) ids = NULL;
  PpPanel *next = pp_edit_duplicate (panel, IDS (args), number (args, 1), number (args, 2), &ids,
                                     error);

  g_assert_cmpint (next != NULL, ==, ids != NULL);
  for (guint i = 0; ids != NULL && ids[i] != NULL; i++)
    g_assert_cmpstr (pp_panel_find_placement (next, ids[i], NULL)->piece, ==,
                     pp_panel_find_placement (panel, args->ids[i], NULL)->piece);
  return next;
}

static PpPanel *
do_swap (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_swap (panel, args->word[0], args->word[1], error);
}

static PpPanel *
do_pin (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_pin (panel, IDS (args), number (args, 1) != 0, error);
}

static PpPanel *
do_pocket (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_set_pocket (panel, args->word[0], args->word[1], error);
}

static PpPanel *
do_add_piece (const PpPanel *panel, const Args *args, GError **error)
{
  g_autoptr (PpPiece) piece = small_piece (args->word[0], NULL);
  g_autofree char *id = NULL;
  PpPanel *next = pp_edit_add_piece (panel, piece, &id, error);

  g_assert_cmpint (next != NULL, ==, id != NULL);
  if (next != NULL)
    g_assert_nonnull (pp_panel_find_piece (next, id, NULL));
  return next;
}

static PpPanel *
do_set_piece (const PpPanel *panel, const Args *args, GError **error)
{
  g_autoptr (PpPiece) piece = small_piece (args->word[0], NULL);
  PpPanel *next = pp_edit_set_piece (panel, piece, error);

  if (next != NULL)
    g_assert_true (pp_panel_find_piece (next, piece->id, NULL) == piece);
  return next;
}

static PpPanel *
do_remove_piece (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_remove_piece (panel, args->word[0], error);
}

static PpPanel *
do_set_fused (const PpPanel *panel, const Args *args, GError **error)
{
  g_autoptr (PpFused) fused = small_fused (args->word[0]);
  PpPanel *next = pp_edit_set_fused (panel, fused, error);

  if (next != NULL)
    g_assert_true (pp_panel_find_fused (next, fused->id, NULL) == fused);
  return next;
}

static PpPanel *
do_remove_fused (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_remove_fused (panel, args->word[0], error);
}

static PpPanel *
do_set_hole (const PpPanel *panel, const Args *args, GError **error)
{
  g_autoptr (PpHole) hole = small_hole (args->word[0]);
  PpPanel *next = pp_edit_set_hole (panel, hole, error);

  if (next != NULL)
    g_assert_true (pp_panel_find_hole (next, hole->id, NULL) == hole);
  return next;
}

static PpPanel *
do_remove_hole (const PpPanel *panel, const Args *args, GError **error)
{
  return pp_edit_remove_hole (panel, args->word[0], error);
}

/* Without words: takes it off. */
static PpPanel *
do_wire (const PpPanel *panel, const Args *args, GError **error)
{
  g_autoptr (PpWire) wire = args->word[0] != NULL
                              ? small_wire (args->word[0], args->word[1], NULL) : NULL;
  PpPanel *next = pp_edit_set_wire (panel, wire, error);

  if (next != NULL)
    g_assert_true (next->wire == wire);
  return next;
}

/* "quiet p1,p2 1 CODE". */
static PpPanel *
do_quiet (const PpPanel *panel, const Args *args, GError **error)
{
  const char *code = args->word[2] != NULL ? args->word[2] : "";
  PpPanel *next = pp_edit_set_quiet (panel, code, IDS (args), number (args, 1) != 0, error);

  if (next != NULL)
    g_assert_cmpint (pp_panel_is_quiet (next, code, IDS (args)), ==, number (args, 1) != 0);
  return next;
}

static PpPanel *
do_background (const PpPanel *panel, const Args *args, GError **error)
{
  PpBackground draft = *panel->background;
  g_autoptr (PpBackground) background = NULL;
  PpPanel *next;

  draft.width = number (args, 0);
  background = pp_background_new (&draft, NULL);
  next = pp_edit_set_background (panel, background, error);
  g_assert_true (next->background == background);
  return next;
}

static PpPanel *
do_display (const PpPanel *panel, const Args *args, GError **error)
{
  PpDisplay draft = *panel->display;
  g_autoptr (PpDisplay) display = NULL;
  PpPanel *next;

  draft.sideways = number (args, 0);
  display = pp_display_new (&draft, NULL);
  next = pp_edit_set_display (panel, display, error);
  g_assert_true (next->display == display);
  return next;
}

static PpPanel *
do_inches (const PpPanel *panel, const Args *args, GError **error)
{
  PpPanel *next = pp_edit_set_units (panel, PP_UNITS_INCH);

  g_assert_cmpint (next->units, ==, PP_UNITS_INCH);
  return next;
}

static PpPanel *
do_title (const PpPanel *panel, const Args *args, GError **error)
{
  PpPanel *next = pp_edit_set_titles (panel, args->word[0], NULL, NULL);

  g_assert_cmpstr (next->title, ==, args->word[0]);
  return next;
}

typedef struct
{
  const char *name;
  PpPanel    *(*edit) (const PpPanel *panel, const Args *args, GError **error);
} Command;

static const Command commands[] = {
  { "place", do_place },
  { "pose", do_pose },
  { "move", do_move },
  { "turn", do_turn },
  { "mirror", do_mirror },
  { "lift", do_lift },
  { "lower", do_lower },
  { "restack", do_restack },
  { "group", do_group },
  { "remove", do_remove },
  { "duplicate", do_duplicate },
  { "swap", do_swap },
  { "pin", do_pin },
  { "pocket", do_pocket },
  { "add-piece", do_add_piece },
  { "set-piece", do_set_piece },
  { "remove-piece", do_remove_piece },
  { "set-fused", do_set_fused },
  { "remove-fused", do_remove_fused },
  { "set-hole", do_set_hole },
  { "remove-hole", do_remove_hole },
  { "wire", do_wire },
  { "quiet", do_quiet },
  { "background", do_background },
  { "display", do_display },
  { "inches", do_inches },
  { "title", do_title },
};

PpPanel *
edit_command_run (const PpPanel *panel,
                  const char    *command,
                  GError       **error)
{
  g_auto (GStrv) words = g_strsplit (command, " ", -1);
  g_auto (GStrv) ids = g_strsplit (words[1] != NULL ? words[1] : "", ",", -1);
  const Args args = { words + 1, ids };

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i].name, words[0]))
      return commands[i].edit (panel, &args, error);
  g_assert_not_reached ();
}
