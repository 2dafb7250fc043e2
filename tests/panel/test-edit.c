/* test-edit.c: what each edit makes of a panel, what it refuses, and what it leaves alone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
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
  g_assert_nonnull (next);
  return next;
}

/* What every command but those that say otherwise begins with. */
#define START                                                                               \
  .fused = "jug+ form", .holes = "left right mid", .wire = "left right",                    \
  .tray = "oxeye sedge fern", .placements = "p1 p2:sedge p3 p4:sedge:jug",                  \
  .plan = "p1 knot:left p3 p2", .quiet = "even-group p1 p2|rocks p3|thin"

static const SmallPanel start = { START };

typedef struct
{
  const char *command;
  SmallPanel  after; /* what is NULL is as at the start */
} Script;

static const Script scripts[] = {
  { "place fern 1 2 3 0", { .placements = "p1 p2:sedge p3 p4:sedge:jug p5:fern" } },
  { "move p1,p3 5 6", { NULL } },
  { "lift p1", { .placements = "p2:sedge p1 p3 p4:sedge:jug" } },
  { "swap p1 fern", { .placements = "p1:fern p2:sedge p3 p4:sedge:jug" } },
  { "swap p4 oxeye", { .placements = "p1 p2:sedge p3 p4:oxeye:jug" } },
  { "duplicate p1 1 2", { .placements = "p1 p2:sedge p3 p4:sedge:jug p5" } },
  { "duplicate p3,p2 1 2", { .placements = "p1 p2:sedge p3 p4:sedge:jug p5:sedge p6" } },
  { "duplicate p4 1 2", { .placements = "p1 p2:sedge p3 p4:sedge:jug p5:sedge:jug" } },
  { "pocket p2 jug", { .placements = "p1 p2:sedge:jug p3 p4:sedge:jug" } },
  { "pocket p4", { .placements = "p1 p2:sedge p3 p4:sedge" } },
  { "remove p2", { .placements = "p1 p3 p4:sedge:jug", .plan = "p1 knot:left p3",
                   .quiet = "rocks p3|thin" } },
  { "remove p1,p3", { .placements = "p2:sedge p4:sedge:jug", .plan = "knot:left p2",
                      .quiet = "thin" } },
  { "remove p4", { .placements = "p1 p2:sedge p3" } },
  { "remove p1,p2,p3,p4", { .placements = "", .plan = "knot:left", .quiet = "thin" } },
  { "add-piece campion", { .tray = "oxeye sedge fern campion" } },
  { "add-piece fern", { .tray = "oxeye sedge fern piece-5" } },
  { "add-piece p1", { .tray = "oxeye sedge fern piece-5" } },
  { "add-piece left", { .tray = "oxeye sedge fern piece-5" } },
  { "set-piece sedge", { NULL } },
  { "remove-piece fern", { .tray = "oxeye sedge" } },
  { "set-fused vase+", { .fused = "jug+ form vase+" } },
  { "set-fused form+", { .fused = "jug+ form+" } },
  { "remove-fused jug", { .fused = "form", .placements = "p1 p2:sedge p3 p4:sedge" } },
  { "remove-fused form", { .fused = "jug+" } },
  { "set-hole top", { .holes = "left right mid top" } },
  { "set-hole right", { NULL } },
  { "remove-hole mid", { .holes = "left right" } },
  { "wire mid left", { .wire = "mid left" } },
  { "wire", { .wire = "" } },
  { "quiet p2,p1 0 even-group", { .quiet = "rocks p3|thin" } },
  { "quiet p2,p1 1 even-group", { .quiet = "rocks p3|thin|even-group p2 p1" } },
  { "quiet p1 1 rocks", { .quiet = "even-group p1 p2|rocks p3|thin|rocks p1" } },
  { "quiet p1 0 rocks", { NULL } },
  { "background 500", { NULL } },
  { "display 45", { NULL } },
  { "inches", { NULL } },
  { "title Estuary", { NULL } },
};

static void
test_script (gconstpointer data)
{
  const Script *row = data;
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) next = run_good (panel, row->command);
  const SmallPanel *after = &row->after;
  SmallPanel words = start;

  words.fused = after->fused != NULL ? after->fused : start.fused;
  words.holes = after->holes != NULL ? after->holes : start.holes;
  words.wire = after->wire != NULL ? after->wire : start.wire;
  words.tray = after->tray != NULL ? after->tray : start.tray;
  words.placements = after->placements != NULL ? after->placements : start.placements;
  words.plan = after->plan != NULL ? after->plan : start.plan;
  words.quiet = after->quiet != NULL ? after->quiet : start.quiet;
  small_panel_compare (next, &words);
  small_panel_compare (panel, &start);
}

/* "stack | command | stack". */
static const char * const stacks[] = {
  "a b c | lift a | b a c",
  "a b c | lift b | a c b",
  "a b c | lift c | a b c",
  "a b c | lift a,b | c a b",
  "a b c d | lift a,c | b a d c",
  "a b c d | lift c,a | b a d c",
  "a b c d | lift b,d | a c b d",
  "a b c | lift b,c | a b c",
  "a b c | lift a,a | b a c",
  "a | lift a | a",
  "a b c | lower c | a c b",
  "a b c | lower b | b a c",
  "a b c | lower a | a b c",
  "a b c | lower b,c | b c a",
  "a b c d | lower b,d | b a d c",
  "a b c d | lower a,c | a c b d",
  "a b c | lower a,b | a b c",
  "a | lower a | a",
  "a b c | restack a 2 | b c a",
  "a b c | restack a 1 | b a c",
  "a b c | restack c 0 | c a b",
  "a b c | restack b 1 | a b c",
  "a b c | move c,a 1 1 | a b c",
  "a b c | group c,a left | a b c",
  "a b c | remove b | a c",
};

static void
test_stack (gconstpointer data)
{
  const char *text = data;
  g_auto (GStrv) parts = g_strsplit (text, " | ", 3);
  SmallPanel before = { .tray = "oxeye", .placements = parts[0] };
  SmallPanel after = { .placements = parts[2] };
  g_autoptr (PpPanel) panel = small_panel_good (&before);
  g_autoptr (PpPanel) next = run_good (panel, parts[1]);

  small_panel_compare (next, &after);
  /* A stack that does not change gives the panel back. */
  if (strstr (parts[1], "stack") != NULL || parts[1][0] == 'l')
    g_assert_cmpint (next == panel, ==, g_str_equal (parts[0], parts[2]));
}

typedef struct
{
  const char *command;
  int         code;
  const char *begins;
} Refused;

#define UNKNOWN PP_PANEL_ERROR_REFERENCE, "There is no “x”"

static const Refused refuseds[] = {
  { "place x 0 0 0 0", UNKNOWN },
  { "place fern nan 0 0 0", PP_PANEL_ERROR_VALUE, "x: " },
  { "place fern 0 inf 0 0", PP_PANEL_ERROR_VALUE, "y: " },
  { "place fern 0 0 nan 0", PP_PANEL_ERROR_VALUE, "rotation: " },
  { "pose x 0 0 0 0", UNKNOWN },
  { "pose p1 0 nan 0 0", PP_PANEL_ERROR_VALUE, "y: " },
  { "move p1,x 1 1", UNKNOWN },
  { "move p1,oxeye 1 1", PP_PANEL_ERROR_REFERENCE, "There is no “oxeye”" },
  { "move p1 inf 1", PP_PANEL_ERROR_VALUE, "x: " },
  { "turn x 0 0 90", UNKNOWN },
  { "turn p1 0 0 nan", PP_PANEL_ERROR_VALUE, "x: " },
  { "mirror x 0", UNKNOWN },
  { "mirror p1 nan", PP_PANEL_ERROR_VALUE, "x: " },
  { "lift p1,x", UNKNOWN },
  { "lower x", UNKNOWN },
  { "restack x 0", UNKNOWN },
  { "restack p1 4", PP_PANEL_ERROR_VALUE, "There is no place 5" },
  { "group x left", UNKNOWN },
  { "group p1 -", PP_PANEL_ERROR_VALUE, "A group needs a name." },
  { "remove p1,x", UNKNOWN },
  { "duplicate p1,x 1 1", UNKNOWN },
  { "duplicate p1 nan 1", PP_PANEL_ERROR_VALUE, "x: " },
  { "swap x fern", UNKNOWN },
  { "swap p1 x", UNKNOWN },
  { "swap p1 p2", PP_PANEL_ERROR_REFERENCE, "There is no “p2”" },
  { "pin x 1", UNKNOWN },
  { "pocket x jug", UNKNOWN },
  { "pocket p1 x", PP_PANEL_ERROR_REFERENCE, "placements[0].pocket: " },
  { "pocket p2 form", PP_PANEL_ERROR_REFERENCE, "placements[1].pocket: " },
  { "set-piece x", UNKNOWN },
  { "remove-piece x", UNKNOWN },
  { "remove-piece sedge", PP_PANEL_ERROR_REFERENCE, "“sedge” lies on the glass" },
  { "set-fused jug", PP_PANEL_ERROR_REFERENCE, "placements[3].pocket: " },
  { "set-fused fern", PP_PANEL_ERROR_DUPLICATE, "tray[2].id: " },
  { "remove-fused x", UNKNOWN },
  { "set-hole p2", PP_PANEL_ERROR_DUPLICATE, "placements[1].id: " },
  { "remove-hole x", UNKNOWN },
  { "remove-hole left", PP_PANEL_ERROR_REFERENCE, "The wire ends in this hole" },
  { "remove-hole right", PP_PANEL_ERROR_REFERENCE, "The wire ends in this hole" },
  { "wire left x", PP_PANEL_ERROR_REFERENCE, "wire.to: " },
  { "wire x left", PP_PANEL_ERROR_REFERENCE, "wire.from: " },
  { "quiet p1 1", PP_PANEL_ERROR_VALUE, "code: " },
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) next = edit_command_run (panel, row->command, &error);

  g_assert_null (next);
  small_assert_error (error, row->code, row->begins);
  small_panel_compare (panel, &start);
}

/* A stack, or a tray, that is full already. */
static void
test_full (gconstpointer data)
{
  const char *command = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) ids = g_string_new ("x0");
  SmallPanel words = { .tray = "oxeye" };
  g_autoptr (PpPanel) panel = NULL;
  gboolean tray = g_str_has_prefix (command, "add-piece");

  for (guint i = 1; i < PP_PANEL_MAX_PLACEMENTS; i++)
    g_string_append_printf (ids, " x%u", i);
  if (tray)
    words.tray = ids->str;
  else
    words.placements = ids->str;
  panel = small_panel_good (&words);
  g_assert_null (edit_command_run (panel, command, &error));
  small_assert_error (error, PP_PANEL_ERROR_LIMIT, tray ? "tray: " : "placements: ");
}

/* What of a panel a command may change; all else is shared with the one before. */
typedef enum
{
  FUSED = 1 << 0,
  HOLES = 1 << 1,
  TRAY = 1 << 2,
  PLACEMENTS = 1 << 3,
  LOG = 1 << 4,
  QUIET = 1 << 5,
  BACKGROUND = 1 << 6,
  WIRE = 1 << 7,
  DISPLAY = 1 << 8,
  ADHESIVE = 1 << 9,
} Part;

typedef struct
{
  const char *command;
  Part        changed;
  const char *ids; /* between spaces: placements that are other records now */
} Shared;

static const Shared shareds[] = {
  { "place fern 1 2 3 0", PLACEMENTS, "" },
  { "pose p2 1 2 3 0", PLACEMENTS, " p2 " },
  { "move p1,p3 1 2", PLACEMENTS, " p1 p3 " },
  { "move p1,p1 1 2", PLACEMENTS, " p1 " },
  { "turn p4 0 0 45", PLACEMENTS, " p4 " },
  { "mirror p2,p4 150", PLACEMENTS, " p2 p4 " },
  { "lift p1", PLACEMENTS, "" },
  { "lift p4", 0, "" },
  { "lower p3", PLACEMENTS, "" },
  { "restack p1 3", PLACEMENTS, "" },
  { "group p1,p2 left", PLACEMENTS, " p1 p2 " },
  { "pin p3 1", PLACEMENTS, " p3 " },
  { "pocket p4", PLACEMENTS, " p4 " },
  { "swap p1 fern", PLACEMENTS, " p1 " },
  { "duplicate p1 1 1", PLACEMENTS, "" },
  { "remove p2", PLACEMENTS | QUIET, "" },
  { "remove p4", PLACEMENTS, "" },
  { "add-piece campion", TRAY, "" },
  { "set-piece fern", TRAY, "" },
  { "remove-piece fern", TRAY, "" },
  { "set-fused vase", FUSED, "" },
  { "remove-fused jug", FUSED | PLACEMENTS, " p4 " },
  { "remove-fused form", FUSED, "" },
  { "set-hole top", HOLES, "" },
  { "remove-hole mid", HOLES, "" },
  { "wire mid left", WIRE, "" },
  { "wire", WIRE, "" },
  { "quiet p1 1 rocks", QUIET, "" },
  { "background 500", BACKGROUND, "" },
  { "display 45", DISPLAY, "" },
  { "inches", 0, "" },
  { "title Estuary", 0, "" },
};

static Part
find_changed (const PpPanel *a,
              const PpPanel *b)
{
  return (a->fused != b->fused ? FUSED : 0) | (a->holes != b->holes ? HOLES : 0)
         | (a->tray != b->tray ? TRAY : 0) | (a->placements != b->placements ? PLACEMENTS : 0)
         | (a->log != b->log ? LOG : 0) | (a->quiet != b->quiet ? QUIET : 0)
         | (a->background != b->background ? BACKGROUND : 0) | (a->wire != b->wire ? WIRE : 0)
         | (a->display != b->display ? DISPLAY : 0) | (a->adhesive != b->adhesive ? ADHESIVE : 0);
}

static void
check_placements_shared (const PpPanel *panel,
                         const PpPanel *next,
                         const char    *changed)
{
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *before = pp_panel_placement (panel, i);
      const PpPlacement *after = pp_panel_find_placement (next, before->id, NULL);
      g_autofree char *word = g_strdup_printf (" %s ", before->id);

      if (after != NULL)
        g_assert_cmpint (after == before, ==, strstr (changed, word) == NULL);
    }
}

/* Records of a list that stand in the other one too. */
static guint
count_shared (GPtrArray *a,
              GPtrArray *b)
{
  guint n = 0;

  for (guint i = 0; i < a->len; i++)
    n += g_ptr_array_find (b, g_ptr_array_index (a, i), NULL);
  return n;
}

static void
test_shared (gconstpointer data)
{
  const Shared *row = data;
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) next = run_good (panel, row->command);

  g_assert_cmpint (find_changed (panel, next), ==, row->changed);
  check_placements_shared (panel, next, row->ids);
  g_assert_cmpuint (count_shared (panel->fused, next->fused), >=, panel->fused->len - 1);
  g_assert_cmpuint (count_shared (panel->holes, next->holes), >=, panel->holes->len - 1);
  g_assert_cmpuint (count_shared (panel->tray, next->tray), >=, panel->tray->len - 1);
  g_assert_cmpuint (count_shared (panel->quiet, next->quiet), >=, panel->quiet->len - 1);
}

/* A point (u, v) of the piece as it lies on the glass, by the formula of the engine's page. */
static PpPoint
placed (const PpPlacement *placement,
        double             u,
        double             v)
{
  double r = placement->rotation * G_PI / 180;
  double m = placement->mirrored ? -1 : 1;

  return (PpPoint) { placement->x + m * u * cos (r) - v * sin (r),
                     placement->y + m * u * sin (r) + v * cos (r) };
}

static PpPoint
moved (PpPoint       p,
       const double *by)
{
  return (PpPoint) { p.x + by[0], p.y + by[1] };
}

static PpPoint
turned (PpPoint       p,
        const double *by)
{
  double r = by[2] * G_PI / 180;
  double x = p.x - by[0], y = p.y - by[1];

  return (PpPoint) { by[0] + x * cos (r) - y * sin (r), by[1] + x * sin (r) + y * cos (r) };
}

static PpPoint
mirrored (PpPoint       p,
          const double *by)
{
  return (PpPoint) { 2 * by[0] - p.x, p.y };
}

/* Where each point goes that lies on a piece. */
typedef struct
{
  const char *command;
  PpPoint     (*map) (PpPoint p, const double *by);
  double      by[3];
} Carried;

static const Carried carrieds[] = {
  { "move p 3 -4.5", moved, { 3, -4.5 } },
  { "turn p 0 0 90", turned, { 0, 0, 90 } },
  { "turn p 40 -7 33", turned, { 40, -7, 33 } },
  { "turn p 40 -7 -200", turned, { 40, -7, -200 } },
  { "turn p 40 -7 725", turned, { 40, -7, 725 } },
  { "mirror p 0", mirrored, { 0 } },
  { "mirror p 150", mirrored, { 150 } },
  { "mirror p -20.25", mirrored, { -20.25 } },
};

static const char * const poses[] = {
  "pose p 0 0 0 0", "pose p 30 40 0 1", "pose p 30 40 15 0", "pose p -12.5 8 200 1",
  "pose p 7 300 -75 1", "pose p 7 300 -750 0",
};

/* mm: figures of a few hundred by sums of a few terms. */
#define EXACT 1e-9

static const SmallPanel one = { .tray = "oxeye", .placements = "p" };

static void
check_carried (const Carried     *row,
               const PpPlacement *before,
               const PpPlacement *after)
{
  static const PpPoint corners[] = { { 0, 0 }, { 10, -10 }, { 10, 10 }, { -10, 10 }, { 3, 1 } };

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      PpPoint expected = row->map (placed (before, corners[i].x, corners[i].y), row->by);
      PpPoint found = placed (after, corners[i].x, corners[i].y);

      g_assert_cmpfloat_with_epsilon (found.x, expected.x, EXACT);
      g_assert_cmpfloat_with_epsilon (found.y, expected.y, EXACT);
    }
}

static void
test_carried (gconstpointer data)
{
  const Carried *row = data;
  g_autoptr (PpPanel) panel = small_panel_good (&one);

  for (guint i = 0; i < G_N_ELEMENTS (poses); i++)
    {
      g_autoptr (PpPanel) before = run_good (panel, poses[i]);
      g_autoptr (PpPanel) after = run_good (before, row->command);

      check_carried (row, pp_panel_placement (before, 0), pp_panel_placement (after, 0));
    }
}

/* "there | back": figures that are the same to the last bit. */
static const char * const returns[] = {
  "turn p 10 20 90 | turn p 10 20 -90",
  "turn p 10 20 180 | turn p 10 20 180",
  "turn p 10 20 90 | turn p 10 20 270",
  "mirror p 150 | mirror p 150",
  "move p 4 0.5 | move p -4 -0.5",
};

static void
test_return (gconstpointer data)
{
  const char *text = data;
  g_auto (GStrv) parts = g_strsplit (text, " | ", 2);
  g_autoptr (PpPanel) panel = small_panel_good (&one);
  g_autoptr (PpPanel) before = run_good (panel, "pose p 30 40 15 0");
  g_autoptr (PpPanel) there = run_good (before, parts[0]);
  g_autoptr (PpPanel) back = run_good (there, parts[1]);
  const PpPlacement *placement = pp_panel_placement (back, 0);

  g_assert_cmpfloat (placement->x, ==, 30);
  g_assert_cmpfloat (placement->y, ==, 40);
  g_assert_cmpfloat (fmod (placement->rotation, 360), ==, 15);
  g_assert_false (placement->mirrored);
}

/* A turn by any angle and back comes near; that of several keeps them together. */
static void
test_turn_back (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) there = run_good (panel, "turn p1,p2,p3 30 40 33.3");
  g_autoptr (PpPanel) back = run_good (there, "turn p1,p2,p3 30 40 -33.3");

  for (guint i = 0; i < 3; i++)
    {
      const PpPlacement *a = pp_panel_placement (panel, i), *b = pp_panel_placement (back, i);

      g_assert_cmpfloat_with_epsilon (a->x, b->x, EXACT);
      g_assert_cmpfloat_with_epsilon (a->y, b->y, EXACT);
      g_assert_cmpfloat_with_epsilon (a->rotation, b->rotation, EXACT);
    }
}

/* A copy is a new piece of glass: neither pinned nor glued, but of the same group. */
static void
test_copy (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&(SmallPanel) { .tray = "oxeye" });
  PpPlacement draft = pp_placement_draft ();
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  PpPanel with = *panel;
  g_autoptr (PpPanel) before = NULL;
  g_autoptr (PpPanel) after = NULL;
  const PpPlacement *copy;

  draft = (PpPlacement) { "p", "oxeye", 30, 40, 15, TRUE, "left", NULL, TRUE,
                          "2026-05-02T14:30:00Z", "\"a\": 1" };
  g_ptr_array_add (list, pp_placement_new (&draft, NULL));
  with.placements = list;
  before = pp_panel_new (&with, NULL);
  after = run_good (before, "duplicate p 5 -6");
  copy = pp_panel_placement (after, 1);
  g_assert_cmpfloat (copy->x, ==, 35);
  g_assert_cmpfloat (copy->y, ==, 34);
  g_assert_cmpfloat (copy->rotation, ==, 15);
  g_assert_true (copy->mirrored);
  g_assert_cmpstr (copy->group, ==, "left");
  g_assert_false (copy->pinned);
  g_assert_null (copy->glued_at);
  g_assert_null (copy->extra);
}

static void
test_swap_keeps_pose (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) next = run_good (panel, "swap p3 fern");
  const PpPlacement *a = pp_panel_placement (panel, 2), *b = pp_panel_placement (next, 2);

  g_assert_cmpfloat (a->x, ==, b->x);
  g_assert_cmpfloat (a->y, ==, b->y);
  g_assert_cmpfloat (a->rotation, ==, b->rotation);
}

static void
test_group (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) first = run_good (panel, "group p1,p2 group-1");
  g_autoptr (PpPanel) third = run_good (first, "group p3 group-3");
  g_autoptr (PpPanel) out = run_good (third, "group p1");
  g_autofree char *name = pp_edit_new_group_name (panel);
  g_autofree char *next_name = pp_edit_new_group_name (third);

  g_assert_cmpstr (pp_panel_placement (third, 1)->group, ==, "group-1");
  g_assert_cmpstr (pp_panel_placement (third, 2)->group, ==, "group-3");
  g_assert_null (pp_panel_placement (third, 3)->group);
  g_assert_null (pp_panel_placement (out, 0)->group);
  g_assert_cmpstr (pp_panel_placement (out, 1)->group, ==, "group-1");
  g_assert_cmpstr (name, ==, "group-1");
  g_assert_cmpstr (next_name, ==, "group-2");
}

static void
test_pin (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) pinned = run_good (panel, "pin p1,p2 1");
  g_autoptr (PpPanel) freed = run_good (pinned, "pin p1 0");

  g_assert_true (pp_panel_placement (pinned, 0)->pinned);
  g_assert_true (pp_panel_placement (pinned, 1)->pinned);
  g_assert_false (pp_panel_placement (pinned, 2)->pinned);
  g_assert_false (pp_panel_placement (freed, 0)->pinned);
  g_assert_true (pp_panel_placement (freed, 1)->pinned);
}

/* An id once given is not given again, though what had it is gone. */
static void
test_ids (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&start);
  g_autoptr (PpPanel) more = run_good (panel, "place fern 0 0 0 0");
  g_autoptr (PpPanel) fewer = run_good (more, "remove p5");
  g_autoptr (PpPanel) again = run_good (fewer, "place fern 0 0 0 0");
  g_autofree char *id = pp_edit_new_id (again, "h");
  g_autoptr (PpPanel) huge
      = small_panel_good (&(SmallPanel) { .tray = "oxeye", .placements = "p4", .next_id = 3 });
  g_autofree char *free_id = pp_edit_new_id (huge, "p");

  g_assert_cmpstr (pp_panel_placement (more, 4)->id, ==, "p5");
  g_assert_cmpstr (pp_panel_placement (again, 4)->id, ==, "p6");
  g_assert_cmpstr (id, ==, "h7");
  g_assert_cmpstr (free_id, ==, "p5");
}

static void
test_titles (void)
{
  g_autoptr (PpPanel) panel = small_panel_good (&(SmallPanel) { .title = "Towpath" });
  g_autoptr (PpPanel) maker = pp_edit_set_titles (panel, NULL, "A. Maker", NULL);
  g_autoptr (PpPanel) both = pp_edit_set_titles (maker, "Estuary", NULL, "blue");

  g_assert_cmpstr (maker->title, ==, "Towpath");
  g_assert_cmpstr (maker->note, ==, "");
  g_assert_cmpstr (both->title, ==, "Estuary");
  g_assert_cmpstr (both->maker, ==, "A. Maker");
  g_assert_cmpstr (both->note, ==, "blue");
  g_assert_cmpstr (panel->maker, ==, "");
}

/* Every row of Script, Refused, Shared and Carried begins with its command. */
static void
add_rows (const char   *what,
          gconstpointer rows,
          gsize         size,
          guint         n,
          GTestDataFunc test)
{
  for (guint i = 0; i < n; i++)
    {
      const char *row = (const char *) rows + i * size;
      g_autofree char *path = g_strdup_printf ("/edit/%s/%s", what, *(const char * const *) row);

      g_test_add_data_func (path, row, test);
    }
}

static void
add_texts (const char         *what,
           const char * const *texts,
           guint               n,
           GTestDataFunc       test)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *path = g_strdup_printf ("/edit/%s/%s", what, texts[i]);

      g_test_add_data_func (path, texts[i], test);
    }
}

static const char * const fulls[] = { "place oxeye 0 0 0 0", "duplicate x1 1 1", "add-piece fern" };

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("script", scripts, sizeof *scripts, G_N_ELEMENTS (scripts), test_script);
  add_rows ("refused", refuseds, sizeof *refuseds, G_N_ELEMENTS (refuseds), test_refused);
  add_rows ("shared", shareds, sizeof *shareds, G_N_ELEMENTS (shareds), test_shared);
  add_rows ("carried", carrieds, sizeof *carrieds, G_N_ELEMENTS (carrieds), test_carried);
  add_texts ("stack", stacks, G_N_ELEMENTS (stacks), test_stack);
  add_texts ("return", returns, G_N_ELEMENTS (returns), test_return);
  add_texts ("full", fulls, G_N_ELEMENTS (fulls), test_full);
  g_test_add_func ("/edit/turn-back", test_turn_back);
  g_test_add_func ("/edit/copy", test_copy);
  g_test_add_func ("/edit/swap-keeps-pose", test_swap_keeps_pose);
  g_test_add_func ("/edit/group", test_group);
  g_test_add_func ("/edit/pin", test_pin);
  g_test_add_func ("/edit/ids", test_ids);
  g_test_add_func ("/edit/titles", test_titles);
  return g_test_run ();
}
