/* test-panel.c: what a panel asks of its records together, how it finds them, and who holds it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit.h"
#include "panel/panel-error.h"

#include "small-panel.h"

typedef struct
{
  const char *name;
  SmallPanel  words;
  int         code;
  const char *begins; /* NULL: allowed */
} Whole;

static const Whole wholes[] = {
  { "empty", { NULL } },
  { "all", { "jug+ form", "left right", "left right", "oxeye sedge", "p1 p2:sedge:jug p3", "p1",
    "mixed p1", "even-group p1" } },
  { "same-fused", { .fused = "jug jug" }, PP_PANEL_ERROR_DUPLICATE, "fused[1].id: " },
  { "same-hole", { .holes = "a b a" }, PP_PANEL_ERROR_DUPLICATE, "holes[2].id: " },
  { "same-piece", { .tray = "fern fern" }, PP_PANEL_ERROR_DUPLICATE, "tray[1].id: " },
  { "same-placement", { .tray = "oxeye", .placements = "p1 p2 p1" }, PP_PANEL_ERROR_DUPLICATE,
    "placements[2].id: " },
  { "hole-as-fused", { .fused = "jug", .holes = "jug" }, PP_PANEL_ERROR_DUPLICATE,
    "holes[0].id: " },
  { "piece-as-hole", { .holes = "a b", .tray = "fern b" }, PP_PANEL_ERROR_DUPLICATE,
    "tray[1].id: " },
  { "placement-as-piece", { .tray = "oxeye", .placements = "oxeye" }, PP_PANEL_ERROR_DUPLICATE,
    "placements[0].id: " },
  { "case-counts", { .tray = "fern Fern" } },
  { "wire-from-nowhere", { .holes = "right", .wire = "left right" }, PP_PANEL_ERROR_REFERENCE,
    "wire.from: " },
  { "wire-to-nowhere", { .holes = "left", .wire = "left right" }, PP_PANEL_ERROR_REFERENCE,
    "wire.to: " },
  { "wire-to-piece", { .holes = "left", .tray = "fern", .wire = "left fern" },
    PP_PANEL_ERROR_REFERENCE, "wire.to: " },
  { "no-piece", { .tray = "oxeye", .placements = "p1 p2:fern" }, PP_PANEL_ERROR_REFERENCE,
    "placements[1].piece: " },
  { "hole-as-piece", { .holes = "left", .placements = "p1:left" }, PP_PANEL_ERROR_REFERENCE,
    "placements[0].piece: " },
  { "no-fused", { .tray = "oxeye", .placements = "p1:oxeye:jug" }, PP_PANEL_ERROR_REFERENCE,
    "placements[0].pocket: " },
  { "no-pocket", { .fused = "jug", .tray = "oxeye", .placements = "p1:oxeye:jug" },
    PP_PANEL_ERROR_REFERENCE, "placements[0].pocket: " },
  { "piece-as-pocket", { .tray = "oxeye", .placements = "p1:oxeye:oxeye" },
    PP_PANEL_ERROR_REFERENCE, "placements[0].pocket: " },
  { "created-date", { .created = "2026-05-02" } },
  { "created-time", { .created = "2026-05-02T14:30:00+02:00" } },
  { "created-month", { .created = "2026-05" }, PP_PANEL_ERROR_VALUE, "created: " },
  { "created-no-day", { .created = "2026-06-31" }, PP_PANEL_ERROR_VALUE, "created: " },
  { "created-more", { .created = "2026-05-02x" }, PP_PANEL_ERROR_VALUE, "created: " },
  { "created-no-offset", { .created = "2026-05-02T14:30:00" }, PP_PANEL_ERROR_VALUE, "created: " },
};

static void
test_whole (gconstpointer data)
{
  const Whole *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = small_panel_new (&row->words, &error);

  if (row->begins != NULL)
    {
      g_assert_null (panel);
      small_assert_error (error, row->code, row->begins);
      return;
    }
  g_assert_no_error (error);
  small_panel_compare (panel, &row->words);
}

/* How many of something a panel may hold. */
typedef struct
{
  const char *list;
  gsize       offset;
  guint       most;
} Count;

static const Count counts[] = {
  { "fused", G_STRUCT_OFFSET (SmallPanel, fused), 64 },
  { "holes", G_STRUCT_OFFSET (SmallPanel, holes), 64 },
  { "tray", G_STRUCT_OFFSET (SmallPanel, tray), 2000 },
  { "placements", G_STRUCT_OFFSET (SmallPanel, placements), 2000 },
};

static PpPanel *
make_many (const Count *row,
           guint        n,
           GError     **error)
{
  g_autoptr (GString) ids = g_string_new (NULL);
  SmallPanel words = { .tray = "oxeye" };

  for (guint i = 0; i < n; i++)
    g_string_append_printf (ids, i == 0 ? "x%u" : " x%u", i);
  *(const char **) G_STRUCT_MEMBER_P (&words, row->offset) = ids->str;
  return small_panel_new (&words, error);
}

static void
test_count (gconstpointer data)
{
  const Count *row = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *begins = g_strdup_printf ("%s: ", row->list);
  g_autoptr (PpPanel) most = make_many (row, row->most, &error);
  g_autoptr (PpPanel) more = NULL;

  g_assert_no_error (error);
  g_assert_nonnull (most);
  more = make_many (row, row->most + 1, &error);
  g_assert_null (more);
  small_assert_error (error, PP_PANEL_ERROR_LIMIT, begins);
}

typedef struct
{
  const char *name;
  SmallPanel  words;
  guint       next;
} Next;

static const Next nexts[] = {
  { "empty", { NULL }, 1 },
  { "kept", { .next_id = 40 }, 40 },
  { "kept-above", { .tray = "oxeye", .placements = "p12", .next_id = 40 }, 40 },
  { "raised", { .tray = "oxeye", .placements = "p12 p3", .next_id = 5 }, 13 },
  { "fused", { .fused = "jug-7" }, 8 },
  { "hole", { .holes = "left h21" }, 22 },
  { "piece", { .tray = "piece-5 oxeye" }, 6 },
  { "zeros", { .tray = "fern007" }, 8 },
  { "figures-alone", { .tray = "19" }, 1 },
  { "figures-first", { .tray = "19fern" }, 1 },
  { "plan", { .plan = "p30 p2" }, 31 },
  { "plan-knot", { .plan = "knot:h17 p2" }, 18 },
  { "plan-knot-alone", { .plan = "knot:left" }, 1 },
  { "log", { .log = "placed p8|fell p9 p41" }, 42 },
  { "quiet", { .quiet = "even-group p1 p6|rocks p2" }, 7 },
  { "code-does-not-count", { .quiet = "code99" }, 1 },
  { "largest", { .tray = "fern999999999" }, 1000000000 },
  { "too-large", { .tray = "fern1000000000 sedge3" }, 4 },
  { "huge", { .tray = "fern99999999999999999999999999999999", .log = "fell p4294967296" }, 1 },
};

static void
test_next (gconstpointer data)
{
  const Next *row = data;
  g_autoptr (PpPanel) panel = small_panel_good (&row->words);

  g_assert_cmpuint (panel->next_id, ==, row->next);
}

static const SmallPanel whole_words = {
  .fused = "jug+ form", .holes = "left right", .wire = "left right", .tray = "oxeye sedge",
  .placements = "p1 p2:sedge p3 p4:sedge:jug", .quiet = "even-group p1 p2|rocks p3|thin",
};

static void
test_find (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&whole_words);
  guint index = 77;

  g_assert_true (pp_panel_find_fused (panel, "form", &index) == pp_panel_fused (panel, 1));
  g_assert_cmpuint (index, ==, 1);
  g_assert_true (pp_panel_find_hole (panel, "left", &index) == pp_panel_hole (panel, 0));
  g_assert_cmpuint (index, ==, 0);
  g_assert_true (pp_panel_find_piece (panel, "sedge", NULL) == pp_panel_piece (panel, 1));
  g_assert_true (pp_panel_find_placement (panel, "p3", &index) == pp_panel_placement (panel, 2));
  g_assert_cmpuint (index, ==, 2);
  g_assert_true (pp_panel_get_piece_of (panel, pp_panel_placement (panel, 3))
                 == pp_panel_piece (panel, 1));
  g_assert_cmpuint (pp_panel_count_placed (panel, "sedge"), ==, 2);
  g_assert_cmpuint (pp_panel_count_placed (panel, "fern"), ==, 0);
}

static void
test_find_nothing (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&whole_words);
  guint index = 77;

  g_assert_null (pp_panel_find_fused (panel, "left", &index));
  g_assert_null (pp_panel_find_hole (panel, "jug", &index));
  g_assert_null (pp_panel_find_piece (panel, "p1", &index));
  g_assert_null (pp_panel_find_placement (panel, "oxeye", &index));
  g_assert_null (pp_panel_find_placement (panel, "p5", &index));
  g_assert_null (pp_panel_find_placement (panel, NULL, &index));
  g_assert_cmpuint (index, ==, 77);
}

typedef struct
{
  const char *code;
  const char *about[4];
  gboolean    quiet;
} Quiet;

static const Quiet quiets[] = {
  { "even-group", { "p1", "p2" }, TRUE },
  { "even-group", { "p2", "p1" }, TRUE },
  { "even-group", { "p1", "p2", "p1" }, TRUE },
  { "even-group", { "p1" }, FALSE },
  { "even-group", { "p1", "p2", "p3" }, FALSE },
  { "even-group", { NULL }, FALSE },
  { "rocks", { "p3" }, TRUE },
  { "rocks", { "p1", "p2" }, FALSE },
  { "thin", { NULL }, TRUE },
  { "thin", { "p1" }, FALSE },
  { "thi", { NULL }, FALSE },
};

static void
test_quiet (gconstpointer data)
{
  const Quiet *row = data;
  g_autoptr (PpPanel) panel = small_panel_good (&whole_words);

  g_assert_cmpint (pp_panel_is_quiet (panel, row->code, row->about), ==, row->quiet);
}

static PpPanel *
panel_in (const PpPanel *panel,
          PpPlace        place)
{
  PpDisplay draft = pp_display_draft ();
  g_autoptr (PpDisplay) display = NULL;

  draft.place = place;
  display = pp_display_new (&draft, NULL);
  return pp_edit_set_display (panel, display, NULL);
}

static PpPanel *
with_limit (const PpPanel *panel,
            PpLimit        limit,
            double         value,
            GError       **error)
{
  PpPanel draft = *panel;

  draft.limits.value[limit] = value;
  return pp_panel_new (&draft, error);
}

static void
test_limits (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) wall = small_panel_good (&whole_words);
  g_autoptr (PpPanel) window = panel_in (wall, PP_PLACE_WINDOW);
  g_autoptr (PpPanel) own = with_limit (window, PP_LIMIT_OPAQUE, 0.5, NULL);
  g_autoptr (PpPanel) again = with_limit (own, PP_LIMIT_OPAQUE, NAN, NULL);

  g_assert_cmpfloat (pp_panel_get_limit (wall, PP_LIMIT_OPAQUE), ==, 0.35);
  g_assert_cmpfloat (pp_panel_get_limit (window, PP_LIMIT_OPAQUE), ==, 0.15);
  g_assert_cmpfloat (pp_panel_get_limit (own, PP_LIMIT_OPAQUE), ==, 0.5);
  g_assert_cmpfloat (pp_panel_get_limit (again, PP_LIMIT_OPAQUE), ==, 0.15);
  g_assert_cmpfloat (pp_panel_get_limit (own, PP_LIMIT_STEADY), ==, 3);
  g_assert_null (with_limit (own, PP_LIMIT_DAB, 0, &error));
  small_assert_error (error, PP_PANEL_ERROR_VALUE, "limits.dab: ");
}

static void
test_fused_glass (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&whole_words);
  PpFused draft = *pp_panel_fused (panel, 0);
  g_autoptr (PpFused) own = NULL;

  g_assert_cmpfloat (pp_panel_get_fused_density (panel, &draft), ==, 2500);
  g_assert_cmpfloat (pp_panel_get_fused_expansion (panel, &draft), ==, 9e-6);
  draft.glass.density = 2600;
  draft.glass.expansion = 0;
  own = pp_fused_new (&draft, NULL);
  g_assert_cmpfloat (pp_panel_get_fused_density (panel, own), ==, 2600);
  g_assert_cmpfloat (pp_panel_get_fused_expansion (panel, own), ==, 0);
}

static void
test_wire_length (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&whole_words);
  g_autoptr (PpPanel) bare = small_panel_good (&(SmallPanel) { NULL });
  g_autoptr (PpPanel) slack = NULL;
  PpPanel draft = *panel;
  PpWire wire = *panel->wire;
  g_autoptr (PpWire) longer = NULL;

  g_assert_cmpfloat (pp_panel_get_wire_length (bare), ==, 0);
  g_assert_true (isnan (panel->wire->length));
  g_assert_cmpfloat (pp_panel_get_wire_length (panel), ==, pp_panel_get_hole_distance (panel));
  wire.length = pp_panel_get_hole_distance (panel) + 50;
  draft.wire = longer = pp_wire_new (&wire, NULL);
  slack = pp_panel_new (&draft, NULL);
  g_assert_cmpfloat (pp_panel_get_wire_length (slack), ==, wire.length);
}

static void
test_draft (void)
{
  PpPanel draft = pp_panel_draft ();
  g_autoptr (PpPanel) panel = small_panel_good (&(SmallPanel) { NULL });

  g_assert_cmpstr (draft.title, ==, "");
  g_assert_cmpstr (draft.maker, ==, "");
  g_assert_cmpstr (draft.note, ==, "");
  g_assert_cmpint (draft.units, ==, PP_UNITS_MM);
  g_assert_null (draft.wire);
  g_assert_null (draft.plan);
  g_assert_cmpfloat (panel->display->sideways, ==, 30);
  g_assert_cmpfloat (panel->adhesive->cure, ==, 1440);
  g_assert_cmpuint (panel->fused->len + panel->holes->len + panel->tray->len, ==, 0);
  g_assert_cmpuint (panel->placements->len + panel->log->len + panel->quiet->len, ==, 0);
}

#define N_THREADS 4
#define N_TURNS 2000

/* Whoever holds the panel may make the next one of it, which holds its records too. */
static gpointer
hold_and_let_go (gpointer data)
{
  static const char * const ids[] = { "p2", NULL };
  const PpPanel *panel = data;

  for (guint i = 0; i < N_TURNS; i++)
    {
      g_autoptr (PpPanel) held = pp_panel_ref (panel);
      g_autoptr (PpPiece) piece = pp_piece_ref (pp_panel_piece (held, 0));
      g_autoptr (PpOutline) outline = pp_outline_ref (piece->outline);
      g_autoptr (PpPanel) next = i % 100 == 0 ? pp_edit_move (held, ids, 1, 1, NULL) : NULL;

      g_assert_true (held == panel);
    }
  return NULL;
}

static void
set_flag (gpointer data)
{
  *(gboolean *) data = TRUE;
}

static void
test_threads (void)
{
  GThread *threads[N_THREADS];
  gboolean gone = FALSE;
  GBytes *art = g_bytes_new_with_free_func ("<svg/>", 6, set_flag, &gone);
  SmallPanel words = whole_words;
  PpPanel *panel;

  words.art = art;
  panel = small_panel_good (&words);
  g_bytes_unref (art);
  for (guint i = 0; i < N_THREADS; i++)
    threads[i] = g_thread_new ("holder", hold_and_let_go, panel);
  for (guint i = 0; i < N_THREADS; i++)
    g_thread_join (threads[i]);
  g_assert_false (gone);
  small_panel_compare (panel, &whole_words);
  pp_panel_unref (panel);
  g_assert_true (gone);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (wholes); i++)
    {
      g_autofree char *path = g_strdup_printf ("/panel/whole/%s", wholes[i].name);

      g_test_add_data_func (path, &wholes[i], test_whole);
    }
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      g_autofree char *path = g_strdup_printf ("/panel/count/%s", counts[i].list);

      g_test_add_data_func (path, &counts[i], test_count);
    }
  for (guint i = 0; i < G_N_ELEMENTS (nexts); i++)
    {
      g_autofree char *path = g_strdup_printf ("/panel/next-id/%s", nexts[i].name);

      g_test_add_data_func (path, &nexts[i], test_next);
    }
  for (guint i = 0; i < G_N_ELEMENTS (quiets); i++)
    {
      g_autofree char *path = g_strdup_printf ("/panel/quiet/%u-%s", i, quiets[i].code);

      g_test_add_data_func (path, &quiets[i], test_quiet);
    }
  g_test_add_func ("/panel/find", test_find);
  g_test_add_func ("/panel/find-nothing", test_find_nothing);
  g_test_add_func ("/panel/limits", test_limits);
  g_test_add_func ("/panel/fused-glass", test_fused_glass);
  g_test_add_func ("/panel/wire-length", test_wire_length);
  g_test_add_func ("/panel/draft", test_draft);
  g_test_add_func ("/panel/threads", test_threads);
  return g_test_run ();
}
