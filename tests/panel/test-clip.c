/* test-clip.c: what is copied, and what pasting it makes of a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/clip.h"

#include "panel/edit.h"
#include "panel/panel-error.h"

#include "edit-command.h"
#include "small-panel.h"

#include <string.h>

static PpPanel *
run_good (const PpPanel *panel,
          const char    *command)
{
  g_autoptr (GError) error = NULL;
  PpPanel *next = edit_command_run (panel, command, &error);

  g_assert_no_error (error);
  return next;
}

/* The pieces of the words tell each other apart by their names. */
static PpPanel *
make_panel (const SmallPanel *words)
{
  PpPanel *panel = small_panel_good (words);

  for (guint i = 0; i < panel->tray->len; i++)
    {
      PpPiece draft = *pp_panel_piece (panel, i);
      g_autoptr (PpPiece) piece = NULL;
      g_autoptr (PpPanel) before = panel;

      draft.name = draft.id;
      piece = pp_piece_new (&draft, NULL);
      panel = pp_edit_set_piece (before, piece, NULL);
    }
  return panel;
}

static PpPanel *
clip_good (const PpPanel *panel,
           const char    *ids)
{
  g_auto (GStrv) words = g_strsplit (ids, " ", -1);
  g_autoptr (GError) error = NULL;
  PpPanel *clip = pp_clip_new (panel, (const char * const *) words, &error);

  g_assert_no_error (error);
  g_assert_nonnull (clip);
  return clip;
}

static PpPanel *
paste_good (const PpPanel *panel,
            const PpPanel *clip,
            char        ***ids)
{
  g_autoptr (GError) error = NULL;
  PpPanel *next = pp_edit_paste (panel, clip, 3, -4, ids, &error);

  g_assert_no_error (error);
  g_assert_nonnull (next);
  return next;
}

/* Everything that does not go along stands here too. */
static const SmallPanel source = {
  .fused = "jug+", .holes = "left right", .wire = "left right", .tray = "oxeye sedge fern",
  .placements = "p1 p2:sedge p3 p4:sedge:jug", .plan = "p1 p3", .log = "mixed p1",
  .quiet = "rocks p3", .title = "Towpath", .created = "2026-05-02",
};

typedef struct
{
  const char *copied;     /* ids */
  const char *tray;       /* of the clip */
  const char *placements; /* of the clip */
} Copy;

static const Copy copies[] = {
  { "p1", "oxeye", "p1" },
  { "p3 p1", "oxeye", "p1 p3" },
  { "p1 p1", "oxeye", "p1" },
  { "p4", "sedge", "p4:sedge" },
  { "p4 p3 p2 p1", "oxeye sedge", "p1 p2:sedge p3 p4:sedge" },
};

static void
test_copy (gconstpointer data)
{
  const Copy *row = data;
  g_autoptr (PpPanel) panel = small_panel_good (&source);
  g_autoptr (PpPanel) clip = clip_good (panel, row->copied);
  const SmallPanel words = { .fused = "", .holes = "", .wire = "", .quiet = "", .plan = "none",
                             .tray = row->tray, .placements = row->placements };

  small_panel_compare (clip, &words);
  small_panel_compare (panel, &source);
  g_assert_cmpuint (clip->log->len, ==, 0);
  g_assert_cmpstr (clip->title, ==, "");
  g_assert_true (clip->background == panel->background);
  g_assert_true (clip->units == panel->units);
}

static void
test_copy_inches (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&source);
  g_autoptr (PpPanel) inches = pp_edit_set_units (panel, PP_UNITS_INCH);
  g_autoptr (PpPanel) clip = clip_good (inches, "p1");

  g_assert_true (clip->units == PP_UNITS_INCH);
}

static void
test_copy_unknown (void)
{
  const char * const ids[] = { "p1", "left", NULL };
  g_autoptr (PpPanel) panel = small_panel_good (&source);
  g_autoptr (GError) error = NULL;

  g_assert_null (pp_clip_new (panel, ids, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE);
}

typedef struct
{
  const char *tray; /* of the panel pasted into */
  const char *placements;
  const char *copied;
  const char *tray_after;
  const char *placements_after;
} Into;

static const Into intos[] = {
  { "oxeye sedge", "a", "p1", "oxeye sedge", "a p1" },
  { "oxeye sedge", "p1", "p1", "oxeye sedge", "p1 p2" },
  { "oxeye", "p8", "p2 p1", "oxeye sedge", "p8 p9 p10:sedge" },
  { "fern", "", "p4", "fern sedge", "p1:sedge" },
  { "", "", "p1 p2", "oxeye sedge", "p1 p2:sedge" },
  { "oxeye", "sedge", "p2", "oxeye piece-1", "sedge p2:piece-1" },
};

static void
test_paste (gconstpointer data)
{
  const Into *row = data;
  const SmallPanel before = { .fused = "jug+", .holes = "top", .tray = row->tray,
                              .placements = row->placements, .plan = "glass" };
  const SmallPanel after = { .fused = "jug+", .holes = "top", .tray = row->tray_after,
                             .placements = row->placements_after, .plan = "glass" };
  g_autoptr (PpPanel) panel = make_panel (&before);
  g_autoptr (PpPanel) from = make_panel (&source);
  g_autoptr (PpPanel) clip = clip_good (from, row->copied);
  g_autoptr (PpPanel) next = paste_good (panel, clip, NULL);

  small_panel_compare (next, &after);
  small_panel_compare (panel, &before);
}

/* A clip that could have come from any panel: its ids are those that a paste would make. */
static void
test_paste_made_ids (void)
{
  const SmallPanel into = { .tray = "sedge", .placements = "" };
  const SmallPanel odd = { .tray = "sedge piece-1 p3", .placements = "a:sedge b:piece-1 c:p3" };
  const SmallPanel after = { .tray = "sedge piece-2 piece-1 p3",
                             .placements = "p4:piece-2 p5:piece-1 p6:p3" };
  g_autoptr (PpPanel) panel = small_panel_good (&into);
  g_autoptr (PpPanel) from = make_panel (&odd);
  g_autoptr (PpPanel) clip = clip_good (from, "a b c");
  g_autoptr (PpPanel) next = paste_good (panel, clip, NULL);

  small_panel_compare (next, &after);
}

static void
test_paste_ids (void)
{
  g_autoptr (PpPanel) panel = make_panel (&source);
  g_autoptr (PpPanel) clip = clip_good (panel, "p3 p1");
  g_auto (GStrv) ids = NULL;
  g_autoptr (PpPanel) next = paste_good (panel, clip, &ids);
  g_autofree char *joined = g_strjoinv (" ", ids);

  g_assert_cmpstr (joined, ==, "p5 p6");
  g_assert_cmpuint (next->next_id, ==, 7);
}

/* Where each lies: moved by what was asked, else as it was; and what lay there is untouched. */
static void
test_paste_poses (void)
{
  g_autoptr (PpPanel) panel = make_panel (&source);
  g_autoptr (PpPanel) mirrored = run_good (panel, "mirror p2,p3 50");
  g_autoptr (PpPanel) clip = clip_good (mirrored, "p1 p2 p3 p4");
  g_autoptr (PpPanel) next = paste_good (mirrored, clip, NULL);

  g_assert_cmpuint (next->placements->len, ==, 8);
  for (guint i = 0; i < 4; i++)
    {
      const PpPlacement *original = pp_panel_placement (mirrored, i);
      const PpPlacement *copy = pp_panel_placement (next, i + 4);

      g_assert_true (pp_panel_placement (next, i) == original);
      g_assert_cmpfloat (copy->x, ==, original->x + 3);
      g_assert_cmpfloat (copy->y, ==, original->y - 4);
      g_assert_cmpfloat (copy->rotation, ==, original->rotation);
      g_assert_true (copy->mirrored == original->mirrored);
      g_assert_true (pp_panel_get_piece_of (next, copy) == pp_panel_get_piece_of (panel, original));
    }
  g_assert_true (next->tray == mirrored->tray);
}

static void
test_paste_is_free (void)
{
  g_autoptr (PpPanel) panel = make_panel (&source);
  PpPlacement draft = *pp_panel_placement (panel, 0);
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  PpPanel panel_draft = *panel;
  g_autoptr (PpPanel) glued = NULL;
  g_autoptr (PpPanel) next = NULL;
  const PpPlacement *copy;

  draft.pinned = TRUE;
  draft.glued_at = "2026-05-02T14:30:00+02:00";
  draft.extra = "\"shelf\": 2";
  g_ptr_array_add (list, pp_placement_new (&draft, NULL));
  panel_draft.placements = list;
  glued = pp_panel_new (&panel_draft, NULL);
  g_ptr_array_unref (list);
  next = paste_good (panel, glued, NULL);
  copy = pp_panel_placement (next, 4);
  g_assert_false (copy->pinned);
  g_assert_null (copy->glued_at);
  g_assert_null (copy->extra);
}

typedef struct
{
  const char *into;   /* groups of the placements there, "-" for none */
  const char *clip;   /* of those copied */
  const char *pasted; /* of their copies */
} Groups;

static const Groups groups[] = {
  { "-", "- -", "- -" },
  { "-", "bed bed", "bed bed" },
  { "bed", "bed bed", "group-1 group-1" },
  { "bed edge", "bed edge bed edge", "group-1 group-2 group-1 group-2" },
  { "bed", "edge bed edge bed", "edge group-1 edge group-1" },
  { "bed", "bed bed group-1 group-1", "group-2 group-2 group-1 group-1" },
  { "group-1", "group-1 group-2 group-1 group-2", "group-3 group-2 group-3 group-2" },
  { "bed", "bed - edge edge", "- - edge edge" },
};

/* As many placements as there are words, in those groups. */
static PpPanel *
make_grouped (const char *text)
{
  g_auto (GStrv) names = g_strsplit (text, " ", -1);
  g_autoptr (GString) placements = g_string_new (NULL);
  SmallPanel words = { .tray = "oxeye" };
  PpPanel *panel;

  for (guint i = 0; names[i] != NULL; i++)
    g_string_append_printf (placements, "%sp%u", i > 0 ? " " : "", i + 1);
  words.placements = placements->str;
  panel = small_panel_good (&words);
  for (guint i = 0; names[i] != NULL; i++)
    {
      const char *ids[] = { pp_panel_placement (panel, i)->id, NULL };
      g_autoptr (PpPanel) before = panel;

      panel = pp_edit_group (before, ids, g_str_equal (names[i], "-") ? NULL : names[i], NULL);
    }
  return panel;
}

static void
test_groups (gconstpointer data)
{
  const Groups *row = data;
  g_autoptr (PpPanel) panel = make_grouped (row->into);
  g_autoptr (PpPanel) clip = make_grouped (row->clip);
  g_autoptr (PpPanel) next = paste_good (panel, clip, NULL);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = panel->placements->len; i < next->placements->len; i++)
    {
      const char *group = pp_panel_placement (next, i)->group;

      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", group != NULL ? group : "-");
    }
  g_assert_cmpstr (text->str, ==, row->pasted);
}

typedef void (*Alter) (PpPiece *draft);

#define ALTER(member, value)            \
  static void alter_##member (PpPiece *draft) \
  {                                     \
    draft->member = value;              \
  }

ALTER (name, "Ox-eye")
ALTER (kind, PP_KIND_FILLER)
ALTER (thickness, 5.5)
ALTER (mass, 12)
ALTER (density, 2400)
ALTER (transmittance, 0.25)
ALTER (colour, "#123456")
ALTER (box, "oxeye")
ALTER (extra, "\"kiln\": 3")
ALTER (count, 7)

static void
alter_form (PpPiece *draft)
{
  draft->form.kind = PP_FORM_DOMED;
  draft->form.rise = 4;
}

static void
alter_grid (PpPiece *draft)
{
  static const double heights[] = { 0, 1, 2, 3 };

  draft->form.kind = PP_FORM_MEASURED;
  draft->form.grid = pp_height_grid_new (-20, -20, 40, 2, 2, heights);
}

static void
alter_heights (PpPiece *draft)
{
  static const double heights[] = { 0, 1, 2, 4 };

  draft->form.kind = PP_FORM_MEASURED;
  draft->form.grid = pp_height_grid_new (-20, -20, 40, 2, 2, heights);
}

static void
alter_crown (PpPiece *draft)
{
  draft->crown.height = 3;
  draft->crown.radius = 4;
}

static PpPoint
widen (PpPoint       p,
       gconstpointer data)
{
  return (PpPoint) { p.x * 1.5, p.y };
}

static void
alter_outline (PpPiece *draft)
{
  draft->outline = pp_outline_map (draft->outline, widen, NULL);
}

static void
alter_art (PpPiece *draft)
{
  draft->art = g_bytes_new_static ("<svg/>", 6);
}

typedef struct
{
  const char *name;
  Alter       alter;
  gboolean    another; /* piece, with a place of its own on the tray */
} Alteration;

static const Alteration alterations[] = {
  { "name", alter_name, TRUE },
  { "kind", alter_kind, TRUE },
  { "thickness", alter_thickness, TRUE },
  { "mass", alter_mass, TRUE },
  { "density", alter_density, TRUE },
  { "light", alter_transmittance, TRUE },
  { "colour", alter_colour, TRUE },
  { "form", alter_form, TRUE },
  { "grid", alter_grid, TRUE },
  { "heights", alter_heights, TRUE },
  { "crown", alter_crown, TRUE },
  { "outline", alter_outline, TRUE },
  { "art", alter_art, TRUE },
  { "box", alter_box, TRUE },
  { "extra", alter_extra, TRUE },
  { "count", alter_count, FALSE },
};

/* Like `piece` but for one member. Frees what the alteration made. */
static PpPiece *
make_altered (const PpPiece    *piece,
              const Alteration *row)
{
  PpPiece draft = *piece;
  PpPiece *altered;

  row->alter (&draft);
  altered = pp_piece_new (&draft, NULL);
  g_assert_nonnull (altered);
  if (draft.outline != piece->outline)
    pp_outline_unref (draft.outline);
  if (draft.art != piece->art)
    g_bytes_unref (draft.art);
  if (draft.form.grid != piece->form.grid)
    pp_height_grid_unref (draft.form.grid);
  return altered;
}

static void
test_alteration (gconstpointer data)
{
  const Alteration *row = data;
  const SmallPanel words = { .tray = "oxeye", .placements = "p1" };
  const SmallPanel another = { .tray = "oxeye piece-2", .placements = "p1 p3:piece-2" };
  const SmallPanel same = { .tray = "oxeye", .placements = "p1 p2" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autoptr (PpPiece) altered = make_altered (pp_panel_piece (panel, 0), row);
  g_autoptr (PpPanel) from = pp_edit_set_piece (panel, altered, NULL);
  g_autoptr (PpPanel) clip = clip_good (from, "p1");
  g_autoptr (PpPanel) next = paste_good (panel, clip, NULL);
  g_autoptr (PpPanel) twice = paste_good (next, clip, NULL);

  small_panel_compare (next, row->another ? &another : &same);
  /* Pasted again, it finds what it put on the tray. */
  g_assert_true (twice->tray == next->tray);
}

static void
check_pair (const PpPanel    *panel,
            const Alteration *row,
            const Alteration *other)
{
  g_autoptr (PpPiece) here = make_altered (pp_panel_piece (panel, 0), row);
  g_autoptr (PpPiece) there = make_altered (pp_panel_piece (panel, 0), other);
  g_autoptr (PpPanel) into = pp_edit_set_piece (panel, here, NULL);
  g_autoptr (PpPanel) from = pp_edit_set_piece (panel, there, NULL);
  g_autoptr (PpPanel) clip = clip_good (from, "p1");
  g_autoptr (PpPanel) next = paste_good (into, clip, NULL);

  g_assert_cmpint (next->tray == into->tray, ==, row == other);
}

/* Each altered piece is itself, also as another record, as it is when read from another file; and
 * none is another. */
static void
test_pairs (void)
{
  const SmallPanel words = { .tray = "oxeye", .placements = "p1" };
  g_autoptr (PpPanel) panel = small_panel_good (&words);

  for (guint i = 0; i < G_N_ELEMENTS (alterations); i++)
    for (guint j = 0; j < G_N_ELEMENTS (alterations); j++)
      check_pair (panel, &alterations[i], &alterations[j]);
}

/* Many placements of one piece, by pasting the panel into itself. */
static PpPanel *
make_many (guint n)
{
  const SmallPanel words = { .tray = "oxeye", .placements = "p1" };
  PpPanel *panel = small_panel_good (&words);

  while (panel->placements->len < n)
    {
      guint more = MIN (panel->placements->len, n - panel->placements->len);
      g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
      g_autoptr (PpPanel) before = panel;
      g_autoptr (PpPanel) clip = NULL;
      g_auto (GStrv) ids = NULL;

      for (guint i = 0; i < more; i++)
        g_strv_builder_add (builder, pp_panel_placement (panel, i)->id);
      ids = g_strv_builder_end (builder);
      clip = pp_clip_new (before, (const char * const *) ids, NULL);
      panel = paste_good (before, clip, NULL);
    }
  return panel;
}

static void
test_too_many (void)
{
  g_autoptr (PpPanel) one = make_many (1);
  g_autoptr (PpPanel) few = make_many (PP_PANEL_MAX_PLACEMENTS - 1);
  g_autoptr (PpPanel) full = paste_good (few, one, NULL);
  g_autoptr (GError) error = NULL;
  char **ids = NULL;

  g_assert_cmpuint (full->placements->len, ==, PP_PANEL_MAX_PLACEMENTS);
  g_assert_null (pp_edit_paste (full, one, 0, 0, &ids, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT);
  g_assert_null (ids);
}

static void
test_too_many_kinds (void)
{
  const SmallPanel words = { .tray = "fern", .placements = "a:fern" };
  g_autoptr (GString) tray = g_string_new (NULL);
  SmallPanel full = { .placements = "" };
  g_autoptr (PpPanel) panel = NULL, from = make_panel (&words);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < PP_PANEL_MAX_TRAY; i++)
    g_string_append_printf (tray, "%sk%u", i > 0 ? " " : "", i);
  full.tray = tray->str;
  panel = small_panel_good (&full);
  g_assert_null (pp_edit_paste (panel, from, 0, 0, NULL, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT);
}

static void
test_too_far (void)
{
  g_autoptr (PpPanel) panel = make_panel (&source);
  g_autoptr (GError) error = NULL;

  g_assert_null (pp_edit_paste (panel, panel, (double) INFINITY, 0, NULL, &error));
  g_assert_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE);
}

static void
test_nothing (void)
{
  const SmallPanel empty = { NULL };
  g_autoptr (PpPanel) panel = make_panel (&source);
  g_autoptr (PpPanel) clip = small_panel_good (&empty);
  g_auto (GStrv) ids = NULL;
  g_autoptr (PpPanel) next = paste_good (panel, clip, &ids);

  small_panel_compare (next, &source);
  g_assert_cmpuint (g_strv_length (ids), ==, 0);
}

/* Copying what was pasted gives the clip again, but for its ids and its place. */
static void
test_round_trip (void)
{
  g_autoptr (PpPanel) panel = make_panel (&source);
  g_autoptr (PpPanel) grouped = run_good (panel, "group p1,p2 bed");
  g_autoptr (PpPanel) clip = clip_good (grouped, "p1 p2 p4");
  g_auto (GStrv) ids = NULL;
  g_autoptr (PpPanel) next = paste_good (grouped, clip, &ids);
  g_autofree char *joined = g_strjoinv (" ", ids);
  g_autoptr (PpPanel) again = clip_good (next, joined);
  g_autoptr (PpPanel) back = pp_edit_paste (clip, again, -3, 4, NULL, NULL);

  g_assert_cmpuint (back->placements->len, ==, 6);
  g_assert_true (back->tray == clip->tray);
  for (guint i = 0; i < 3; i++)
    {
      const PpPlacement *first = pp_panel_placement (back, i);
      const PpPlacement *second = pp_panel_placement (back, i + 3);

      g_assert_cmpstr (first->piece, ==, second->piece);
      g_assert_cmpfloat (first->x, ==, second->x);
      g_assert_cmpfloat (first->y, ==, second->y);
      g_assert_cmpfloat (first->rotation, ==, second->rotation);
      g_assert_true ((first->group == NULL) == (second->group == NULL));
    }
}

/* "/clip/paste/2" */
static void
add_rows (const char   *name,
          gconstpointer rows,
          gsize         size,
          guint         n,
          GTestDataFunc test)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *path = g_strdup_printf ("/clip/%s/%u", name, i);

      g_test_add_data_func (path, (const char *) rows + i * size, test);
    }
}

#define ADD_ROWS(name, rows, test) add_rows (name, rows, sizeof *(rows), G_N_ELEMENTS (rows), test)

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD_ROWS ("copy", copies, test_copy);
  g_test_add_func ("/clip/copy/inches", test_copy_inches);
  g_test_add_func ("/clip/copy/unknown", test_copy_unknown);
  ADD_ROWS ("paste", intos, test_paste);
  g_test_add_func ("/clip/paste/made-ids", test_paste_made_ids);
  g_test_add_func ("/clip/paste/ids", test_paste_ids);
  g_test_add_func ("/clip/paste/poses", test_paste_poses);
  g_test_add_func ("/clip/paste/is-free", test_paste_is_free);
  ADD_ROWS ("groups", groups, test_groups);
  ADD_ROWS ("alteration", alterations, test_alteration);
  g_test_add_func ("/clip/pairs", test_pairs);
  g_test_add_func ("/clip/too-many", test_too_many);
  g_test_add_func ("/clip/too-many-kinds", test_too_many_kinds);
  g_test_add_func ("/clip/too-far", test_too_far);
  g_test_add_func ("/clip/nothing", test_nothing);
  g_test_add_func ("/clip/round-trip", test_round_trip);
  return g_test_run ();
}
