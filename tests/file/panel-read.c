/* panel-read.c: good files are read, impossible ones refused with the place and the reason.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each row makes one change to a whole sample, so that nothing but the change can be the reason.
 */
#include "file/box-read.h"
#include "file/panel-read.h"
#include "comma-locale.h"
#include "sample.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

#define S PP_FILE_ERROR_SYNTAX
#define F PP_FILE_ERROR_FORMAT
#define N PP_FILE_ERROR_VERSION
#define L PP_FILE_ERROR_LIMIT
#define V PP_FILE_ERROR_VALUE

typedef struct
{
  const char *name;
  const char *find;
  const char *put;
  PpFileError code;
  const char *place; /* the message begins with it and a colon */
} RefusedRow;

#define JUG "[[[90, 260], [210, 260], [225, 400], [75, 400], [90, 260]]]"
#define INSERT "[[[130, 250], [170, 250], [170, 370], [130, 370], [130, 250]]]"

static const RefusedRow refused_rows[] = {
  { "format-other", "petalpane-panel", "petalpane-box", F, "format" },
  { "format-number", "\"petalpane-panel\"", "1", V, "format" },
  { "format-missing", "\"format\": \"petalpane-panel\",", "", F, "format" },
  { "version-later", "\"version\": 1", "\"version\": 2", N, "version" },
  { "version-half", "\"version\": 1", "\"version\": 0.5", V, "version" },
  { "version-text", "\"version\": 1", "\"version\": \"1\"", V, "version" },
  { "version-missing", "\"version\": 1,", "", F, "version" },
  { "title-null", "\"title\": \"Towpath in June\"", "\"title\": null", V, "title" },
  { "created-no-day", "2026-05-02", "2026-02-30", V, "created" },
  { "created-words", "2026-05-02", "May", V, "created" },
  { "units", "\"units\": \"mm\"", "\"units\": \"cm\"", V, "units" },
  { "next-id-negative", "\"next_id\": 41", "\"next_id\": -1", V, "next_id" },
  { "next-id-half", "\"next_id\": 41", "\"next_id\": 1.5", V, "next_id" },

  { "background-missing", "\"background\"", "\"ground\"", F, "background" },
  { "background-list", "\"background\": {", "\"background\": [], \"b\": {", V, "background" },
  { "shape", "\"shape\": \"rectangle\"", "\"shape\": \"star\"", V, "background.shape" },
  { "shape-missing", "\"shape\": \"rectangle\",", "", F, "background.shape" },
  { "shape-free", "\"shape\": \"rectangle\"", "\"shape\": \"free\"", F, "background.outline" },
  { "width-missing", "\"width\": 300,", "", F, "background.width" },
  { "width-zero", "\"width\": 300", "\"width\": 0", V, "background.width" },
  { "width-negative", "\"width\": 300", "\"width\": -300", V, "background.width" },
  { "width-text", "\"width\": 300", "\"width\": \"300\"", V, "background.width" },
  { "width-huge", "\"width\": 300", "\"width\": 3000.5", L, "background.width" },
  { "height-huge", "\"height\": 420", "\"height\": 3001", L, "background.height" },
  { "corner-negative", "\"corner_radius\": 4", "\"corner_radius\": -1", V,
    "background.corner_radius" },
  { "corner-large", "\"corner_radius\": 4", "\"corner_radius\": 151", V,
    "background.corner_radius" },
  { "thickness-zero", "\"thickness\": 6", "\"thickness\": 0", V, "background.thickness" },
  { "thickness-missing", "\"thickness\": 6,", "", F, "background.thickness" },
  { "glass-null-density", "\"glass\": {\n      \"density\": 2500",
    "\"glass\": {\n      \"density\": null", V, "background.glass.density" },
  { "glass-index", "\"refractive_index\": 1.52,\n      \"transmittance\"",
    "\"refractive_index\": 0.9,\n      \"transmittance\"", V, "background.glass.refractive_index" },
  { "glass-transmittance", "\"transmittance\": 0.9", "\"transmittance\": 1.1", V,
    "background.glass.transmittance" },
  { "glass-colour", "#eef4f2", "#eef4g2", V, "background.glass.colour" },
  { "glass-colour-word", "#eef4f2", "white", V, "background.glass.colour" },

  { "fused-role", "\"role\": \"vase\"", "\"role\": \"cup\"", V, "fused[0].role" },
  { "fused-role-empty", "\"role\": \"vase\"", "\"role\": \"\"", V, "fused[0].role" },
  { "fused-id-missing", "\"id\": \"jug\",", "", F, "fused[0].id" },
  { "fused-id-reserved", "\"id\": \"jug\"", "\"id\": \"background\"", V, "fused[0].id" },
  { "fused-thickness", "\"thickness\": 3,\n      \"outline\"",
    "\"thickness\": -3,\n      \"outline\"",
    V, "fused[0].thickness" },
  { "fused-expansion", "\"transmittance\": 0.4,\n        \"expansion\": 9e-06",
    "\"transmittance\": 0.4,\n        \"expansion\": -9e-06", V, "fused[0].glass.expansion" },
  { "outline-missing", JUG, "[]", V, "fused[0].outline.coordinates" },
  { "outline-crosses", JUG, "[[[0, 0], [9, 9], [9, 0], [0, 9], [0, 0]]]", V, "fused[0].outline" },
  { "outline-spike", JUG, "[[[0, 0], [9, 0], [9, 9], [9, 0], [0, 0]]]", V, "fused[0].outline" },
  { "outline-far", "[[[90, 260], [210, 260]", "[[[10001, 260], [10001, 259]", V,
    "fused[0].outline" },
  { "outline-hole-outside", JUG,
    "[[[0, 0], [9, 0], [9, 9], [0, 0]], [[20, 20], [29, 20], [29, 29], [20, 20]]]", V,
    "fused[0].outline" },
  { "outline-open", JUG, "[[[0, 0], [9, 0], [9, 9], [0, 9]]]", V,
    "fused[0].outline.coordinates[0]" },
  { "outline-short", JUG, "[[[0, 0], [9, 0], [0, 0]]]", V, "fused[0].outline.coordinates[0]" },
  { "outline-three-numbers", JUG, "[[[0, 0, 0], [9, 0, 0], [9, 9, 0], [0, 0, 0]]]", V,
    "fused[0].outline" },
  { "outline-text", JUG, "[[[0, 0], [9, \"0\"], [9, 9], [0, 0]]]", V, "fused[0].outline" },
  { "outline-null", JUG, "[[[0, 0], [9, 0], null, [0, 0]]]", V, "fused[0].outline" },
  { "outline-flat-list", JUG, "[0, 0, 9, 9]", V, "fused[0].outline.coordinates[0]" },
  { "pocket-thickness", "\"insert_thickness\": 6", "\"insert_thickness\": 0", V,
    "fused[0].pocket.insert_thickness" },
  { "pocket-thickness-missing", "\"insert_thickness\": 6,", "", F,
    "fused[0].pocket.insert_thickness" },
  { "pocket-gap", "\"gap\": null", "\"gap\": -0.5", V, "fused[0].pocket.gap" },
  { "pocket-insert", INSERT, "[[[0, 0], [9, 9], [9, 0], [0, 9], [0, 0]]]", V,
    "fused[0].pocket.insert" },
  { "pocket-list", "\"pocket\": {", "\"pocket\": [], \"p\": {", V, "fused[0].pocket" },

  { "hole-diameter", "\"x\": 210,\n      \"y\": 45,\n      \"diameter\": 6",
    "\"x\": 210,\n      \"y\": 45,\n      \"diameter\": -6", V, "holes[1].diameter" },
  { "hole-x-missing", "\"x\": 210,", "", F, "holes[1].x" },
  { "hole-drilled", "\"x\": 210,\n      \"y\": 45,\n      \"diameter\": 6,\n"
    "      \"drilled\": false",
    "\"x\": 210, \"y\": 45, \"diameter\": 6, \"drilled\": \"no\"", V, "holes[1].drilled" },
  { "hole-id-long", "\"id\": \"right\"",
    "\"id\": \"r0123456789012345678901234567890123456789012345678901234567890123\"", V,
    "holes[1].id" }, /* 65 characters */
  { "hole-id-empty", "\"id\": \"right\"", "\"id\": \"\"", V, "holes[1].id" },
  { "hole-id-space", "\"id\": \"right\"", "\"id\": \"far right\"", V, "holes[1].id" },
  { "hole-id-hook", "\"id\": \"right\"", "\"id\": \"hook\"", V, "holes[1].id" },

  { "wire-one-hole", "\"to\": \"right\"", "\"to\": \"left\"", V, "wire.to" },
  { "wire-no-hole", "\"to\": \"right\"", "\"to\": \"middle\"", V, "wire.to" },
  { "wire-to-a-piece", "\"to\": \"right\"", "\"to\": \"oxeye\"", V, "wire.to" },
  { "wire-from-missing", "\"from\": \"left\",", "", F, "wire.from" },
  { "wire-length", "\"length\": 150", "\"length\": -1", V, "wire.length" },
  { "wire-length-huge", "\"length\": 150", "\"length\": 60001", V, "wire.length" },
  { "wire-knotted", "\"knotted_at\": null", "\"knotted_at\": \"2026-06-01T10:00:00\"", V,
    "wire.knotted_at" },
  { "wire-diameter", "\"diameter\": 1.2", "\"diameter\": 0", V, "wire.diameter" },
  { "glass-null", "\"glass\": {\n      \"density\": 2500",
    "\"glass\": null, \"was\": {\n      \"density\": 2500", V, "background.glass" },
  { "wire-diameter-null", "\"diameter\": 1.2", "\"diameter\": null", V, "wire.diameter" },
  { "wire-tail", "\"tail\": 40", "\"tail\": -40", V, "wire.tail" },
  { "wire-knot-diameter", "\"knot_diameter\": 8", "\"knot_diameter\": 0", V, "wire.knot_diameter" },
  { "wire-knot-height", "\"knot_height\": 3", "\"knot_height\": -3", V, "wire.knot_height" },
  { "wire-safe-load", "\"safe_load\": null", "\"safe_load\": 0", V, "wire.safe_load" },
  { "wire-breaking-load", "\"breaking_load\": 220", "\"breaking_load\": -1", V,
    "wire.breaking_load" },
  { "wire-friction", "\"friction\": 0.2", "\"friction\": -0.2", V, "wire.friction" },
  { "wire-mass", "\"mass_per_metre\": 4", "\"mass_per_metre\": -4", V, "wire.mass_per_metre" },

  { "display-place", "\"place\": \"wall\"", "\"place\": \"door\"", V, "display.place" },
  { "display-sideways", "\"sideways\": 30", "\"sideways\": 90", V, "display.sideways" },
  { "display-updown", "\"updown\": 15", "\"updown\": -1", V, "display.updown" },
  { "display-rating", "\"hook_rating\": null", "\"hook_rating\": 0", V, "display.hook_rating" },

  { "glue-life", "\"working_life\": 5", "\"working_life\": 1", V, "adhesive.working_life" },
  { "glue-mixing", "\"mixing\": 1", "\"mixing\": 5", V, "adhesive.working_life" },
  { "glue-grab", "\"grab\": 10", "\"grab\": -10", V, "adhesive.grab" },
  { "glue-hard", "\"hard\": 60", "\"hard\": -60", V, "adhesive.hard" },
  { "glue-cure", "\"cure\": 1440", "\"cure\": -1", V, "adhesive.cure" },
  { "glue-sitting", "\"sitting\": null", "\"sitting\": 0", V, "adhesive.sitting" },
  { "glue-ratio-one", "\"ratio\": [1, 1]", "\"ratio\": [1]", V, "adhesive.ratio" },
  { "glue-ratio-zero", "\"ratio\": [1, 1]", "\"ratio\": [1, 0]", V, "adhesive.ratio" },
  { "glue-ratio-text", "\"ratio\": [1, 1]", "\"ratio\": [1, \"1\"]", V, "adhesive.ratio" },
  { "glue-density", "\"density\": 1.15", "\"density\": 0", V, "adhesive.density" },
  { "glue-largest", "\"largest_mix\": 6", "\"largest_mix\": 0", V, "adhesive.largest_mix" },
  { "glue-smallest", "\"smallest_mix\": 2", "\"smallest_mix\": -2", V, "adhesive.smallest_mix" },
  { "glue-gap", "\"fill_gap\": 1.5", "\"fill_gap\": -1", V, "adhesive.fill_gap" },
  { "glue-stress", "\"working_stress\": 0.5", "\"working_stress\": 0", V,
    "adhesive.working_stress" },

  { "piece-kind", "\"kind\": \"flower\"", "\"kind\": \"tree\"", V, "tray[0].kind" },
  { "piece-kind-missing", "\"kind\": \"flower\",", "", F, "tray[0].kind" },
  { "piece-count", "\"count\": 3", "\"count\": -3", V, "tray[0].count" },
  { "piece-count-half", "\"count\": 3", "\"count\": 2.5", V, "tray[0].count" },
  { "piece-thickness", "\"thickness\": 4.1", "\"thickness\": 0", V, "tray[1].thickness" },
  { "piece-mass", "\"mass\": 12.25", "\"mass\": -12", V, "tray[1].mass" },
  { "piece-transmittance", "\"transmittance\": 0.30000000000000004", "\"transmittance\": -0.1", V,
    "tray[1].transmittance" },
  { "piece-colour", "#5E8a7d", "5E8a7d", V, "tray[1].colour" },
  { "piece-art", "\"art\": \"<svg", "\"art\": 7, \"a\": \"<svg", V, "tray[0].art" },
  { "form-type", "\"type\": \"cupped\"", "\"type\": \"bowl\"", V, "tray[0].form.type" },
  { "form-rise-missing", "\"rise\": 12,", "", F, "tray[0].form.rise" },
  { "form-rise", "\"rise\": 12", "\"rise\": -12", V, "tray[0].form.rise" },
  { "form-foot", "\"foot\": 9", "\"foot\": -9", V, "tray[0].form.foot" },
  { "form-step", "\"step\": 10", "\"step\": 0", V, "tray[2].form.step" },
  { "form-rows", "[[0, 1.5, 0], [0, 2, 0.1]]", "[[0, 1.5, 0], [0, 2]]", V, "tray[2].form.heights" },
  { "form-no-rows", "[[0, 1.5, 0], [0, 2, 0.1]]", "[]", V, "tray[2].form" },
  { "form-empty-row", "[[0, 1.5, 0], [0, 2, 0.1]]", "[[]]", V, "tray[2].form.heights" },
  { "form-height-null", "[[0, 1.5, 0], [0, 2, 0.1]]", "[[0, null]]", V, "tray[2].form.heights" },
  { "form-flat", "\"rise\": 5", "\"rise\": 5, \"flat\": -1", V, "tray[3].form.flat" },
  { "crown-height", "\"height\": 4,", "\"height\": -4,", V, "tray[0].crown.height" },
  { "crown-radius", "\"radius\": 7", "\"radius\": 0", V, "tray[0].crown.radius" },
  { "crown-radius-missing", "\"height\": 4,\n        \"radius\": 7", "\"height\": 4", F,
    "tray[0].crown.radius" },

  { "placement-no-piece", "\"piece\": \"sedge\"", "\"piece\": \"mallow\"", V,
    "placements[0].piece" },
  { "placement-of-a-hole", "\"piece\": \"sedge\"", "\"piece\": \"left\"", V,
    "placements[0].piece" },
  { "placement-pocket", "\"pocket\": \"jug\"", "\"pocket\": \"pail\"", V, "placements[0].pocket" },
  { "placement-twice", "\"id\": \"p2\"", "\"id\": \"p1\"", V, "placements[2].id" },
  { "placement-as-a-hole", "\"id\": \"p2\"", "\"id\": \"left\"", V, "placements[2].id" },
  { "placement-x-missing", "\"x\": 180.125,", "", F, "placements[2].x" },
  { "placement-glued", "2026-06-01T10:00:00+02:00", "2026-06-01", V, "placements[0].glued_at" },
  { "placement-pinned", "\"pinned\": true", "\"pinned\": 1", V, "placements[0].pinned" },
  { "placement-rotation", "\"rotation\": -375.5", "\"rotation\": null", V,
    "placements[1].rotation" },

  { "plan-no-jobs", "\"jobs\"", "\"work\"", F, "plan.jobs" },
  { "plan-number", "\"knot:left\"", "1", V, "plan.jobs" },
  { "log-what", "\"what\": \"placed\"", "\"what\": \"sang\"", V, "log[0].what" },
  { "log-at", "2026-06-01T10:00:00Z", "2026-06-01T25:00:00Z", V, "log[0].at" },
  { "limit-negative", "\"dab_every\": 50", "\"dab_every\": -50", V, "limits.dab_every" },
  { "limit-zero", "\"dab_every\": 50", "\"dab_every\": 0", V, "limits.dab_every" },
  { "limit-null", "\"dab_every\": 50", "\"dab_every\": null", V, "limits.dab_every" },
  { "limit-share", "\"opaque\": 0.2", "\"opaque\": 1.2", V, "limits.opaque" },
  { "quiet-code", "\"code\": \"even-group\"", "\"code\": \"\"", V, "quiet[0].code" },
  { "quiet-about", "[\"p1\", \"p2\"]\n    }", "null\n    }", V, "quiet[0].about" },

  /* What the scanner refuses, by line and column. */
  { "nan", "\"x\": 180.125", "\"x\": NaN", S, "Line" },
  { "too-large-number", "\"x\": 180.125", "\"x\": 1e400", V, "Line" },
  { "too-large-whole", "\"next_id\": 41", "\"zeta\": 9223372036854775808", V, "Line" },
  { "half-pair", "\"note\": \"", "\"note\": \"\\ud83c", V, "Line" },
  { "zero-character", "\"note\": \"", "\"note\": \"\\u0000", V, "Line" },
  { "key-twice", "\"maker\"", "\"titl\\u0065\"", V, "Line" },
  { "comment", "\"maker\"", "/* */ \"maker\"", S, "Line" },
  { "after-the-end", "\"next_id\": 41\n}", "\"next_id\": 41\n} {}", S, "Line" },
  { "byte-order-mark", "{\n  \"format\"", "\357\273\277{\n  \"format\"", S, "Line" },
  { "not-utf-8", "\"maker\": \"", "\"maker\": \"\377", S, "Line" },
};

static void
assert_refused (GBytes     *bytes,
                PpFileError code,
                const char *place)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_read (bytes, &error);

  g_assert_null (panel);
  g_assert_error (error, PP_FILE_ERROR, (int) code);
  g_assert_true (g_str_has_prefix (error->message, place));
  g_assert_nonnull (strchr (":, [.", error->message[strlen (place)]));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
}

static void
test_refused (gconstpointer data)
{
  const RefusedRow *row = data;
  g_autofree char *text = sample_new ();
  g_autofree char *changed = sample_change (text, row->find, row->put);
  g_autoptr (GBytes) bytes = sample_to_bytes (changed);

  g_test_message ("%s", row->name);
  assert_refused (bytes, row->code, row->place);
}

static const char minimal[] =
  "{\"format\":\"petalpane-panel\",\"version\":1,\"background\":{\"shape\":\"rectangle\","
  "\"width\":300,\"height\":420,\"thickness\":6}}";

/* A key left out has the value that the page on the file shows. */
static void
test_minimal (void)
{
  g_autoptr (PpPanel) panel = sample_read (minimal);

  g_assert_cmpstr (panel->title, ==, "");
  g_assert_cmpint (panel->units, ==, PP_UNITS_MM);
  g_assert_cmpfloat (panel->background->corner_radius, ==, 0);
  g_assert_cmpfloat (panel->background->glass.refractive_index, ==, 1.52);
  g_assert_cmpfloat (panel->background->glass.expansion, ==, 9e-6);
  g_assert_null (panel->wire);
  g_assert_cmpint (panel->display->place, ==, PP_PLACE_WALL);
  g_assert_cmpfloat (panel->display->sideways, ==, 30);
  g_assert_true (isnan (panel->display->hook_rating));
  g_assert_cmpfloat (panel->adhesive->working_life, ==, 5);
  g_assert_cmpfloat (panel->adhesive->largest_mix, ==, 6);
  g_assert_cmpuint (panel->fused->len + panel->holes->len + panel->tray->len, ==, 0);
  g_assert_cmpuint (panel->placements->len + panel->log->len + panel->quiet->len, ==, 0);
  g_assert_null (panel->plan);
  g_assert_true (isnan (panel->limits.value[PP_LIMIT_DAB]));
}

static void
test_short_records (void)
{
  g_autofree char *text = sample_change (
      minimal, "\"thickness\":6}",
      "\"thickness\":6},\"holes\":[{\"id\":\"a\",\"x\":1,\"y\":2,\"diameter\":6},"
      "{\"id\":\"b\",\"x\":9,\"y\":2,\"diameter\":6}],\"wire\":{\"from\":\"a\",\"to\":\"b\"},"
      "\"fused\":[{\"id\":\"pail\",\"thickness\":3,\"outline\":{\"type\":\"Polygon\","
      "\"coordinates\":[[[0,0],[9,0],[9,9],[0,0]]]}}]");
  g_autoptr (PpPanel) panel = sample_read (text);
  const PpFused *pail = pp_panel_fused (panel, 0);

  g_assert_true (isnan (panel->wire->length));
  g_assert_true (isnan (panel->wire->breaking_load));
  g_assert_cmpfloat (panel->wire->friction, ==, 0.2);
  g_assert_false (pp_panel_hole (panel, 0)->drilled);
  g_assert_cmpint (pail->role, ==, PP_ROLE_NONE);
  g_assert_false (pail->has_pocket);
  g_assert_true (isnan (pail->glass.density));
  g_assert_true (isnan (pail->glass.expansion));
  g_assert_cmpfloat (pail->glass.transmittance, ==, 0.9);
}

/* Values of the whole sample that stand for the rest. */
static void
test_whole (void)
{
  g_autofree char *text = sample_new ();
  g_autoptr (PpPanel) panel = sample_read (text);
  const PpPiece *fern = pp_panel_piece (panel, 2);

  g_assert_cmpstr (panel->note, ==, "für die „Brücke“ 🌼");
  g_assert_cmpstr (panel->plan[0], ==, "knot:left");
  g_assert_cmpfloat (pp_panel_piece (panel, 1)->transmittance, ==, 0.1 + 0.2);
  g_assert_cmpuint (fern->form.grid->n_rows, ==, 2);
  g_assert_cmpuint (fern->form.grid->n_columns, ==, 3);
  g_assert_cmpfloat (fern->form.grid->heights[5], ==, 0.1);
  g_assert_true (isnan (pp_panel_piece (panel, 3)->form.flat));
  g_assert_cmpfloat (panel->limits.value[PP_LIMIT_DAB_EVERY], ==, 50);
  g_assert_cmpfloat (pp_panel_placement (panel, 1)->rotation, ==, -375.5);
  g_assert_true (pp_panel_placement (panel, 0)->pinned);
  g_assert_cmpuint (panel->next_id, ==, 41);
}

/* Complaints carry numbers with a point too. */
static void
check_point (void)
{
  g_autofree char *text = sample_new ();
  g_autofree char *changed = sample_change (text, "\"tail\": 40", "\"tail\": -40.5");
  g_autoptr (GBytes) bytes = sample_to_bytes (changed);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) refused = pp_panel_read (bytes, &error);

  g_assert_null (refused);
  g_assert_nonnull (strstr (error->message, "-40.5"));
  test_whole ();
}

static void
test_comma (void)
{
  comma_locale_run (check_point);
}

/* Any first part of a file is refused, whatever byte it ends at. */
static void
test_truncated (void)
{
  g_autofree char *text = sample_new ();
  gsize whole = strlen (text) - 1; /* without the last line break */

  for (gsize length = 0; length < whole; length++)
    {
      g_autofree char *part = g_memdup2 (text, length);
      g_autoptr (GBytes) bytes = g_bytes_new (part, length);
      g_autoptr (GError) error = NULL;

      g_assert_null (pp_panel_read (bytes, &error));
      g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_SYNTAX);
    }
}

/* Any byte turned into another: read or refused, never worse. */
static void
test_damaged (void)
{
  g_autofree char *text = sample_new ();
  gsize length = strlen (text);
  static const char bytes_put[] = { '\0', '"', '-', '9', '{', ']', '\377' };

  for (gsize i = 0; i < length; i++)
    {
      g_autoptr (GBytes) bytes = NULL;
      g_autoptr (GError) error = NULL;
      g_autoptr (PpPanel) panel = NULL;
      char kept = text[i];

      text[i] = bytes_put[i % G_N_ELEMENTS (bytes_put)];
      bytes = g_bytes_new (text, length);
      panel = pp_panel_read (bytes, &error);
      g_assert_true ((panel == NULL) == (error != NULL));
      text[i] = kept;
    }
}

/* `item` so many times, its # a number. */
static char *
repeat (const char *item,
        guint       n)
{
  g_autoptr (GString) text = g_string_new (NULL);
  int before = (int) (strchr (item, '#') - item);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s%.*s%u%s", i > 0 ? "," : "", before, item, i,
                            item + before + 1);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

#define RING "{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[9,0],[9,9],[0,0]]]}"

typedef struct
{
  const char *list;
  const char *item;
  guint       most;
} CountRow;

static const CountRow count_rows[] = {
  { "fused", "{\"id\":\"f#\",\"thickness\":3,\"outline\":" RING "}", 64 },
  { "holes", "{\"id\":\"h#\",\"x\":0,\"y\":0,\"diameter\":6}", 64 },
  { "tray", "{\"id\":\"t#\",\"kind\":\"bud\",\"thickness\":3,\"outline\":" RING "}", 2000 },
};

static void
test_count (gconstpointer data)
{
  const CountRow *row = data;

  for (guint over = 0; over <= 1; over++)
    {
      g_autofree char *items = repeat (row->item, row->most + over);
      g_autofree char *put = g_strdup_printf ("\"version\":1,\"%s\":[%s]", row->list, items);
      g_autofree char *text = sample_change (minimal, "\"version\":1", put);
      g_autoptr (GBytes) bytes = sample_to_bytes (text);

      if (over)
        assert_refused (bytes, L, row->list);
      else
        pp_panel_unref (sample_read (text));
    }
}

static void
test_crowd (void)
{
  g_autofree char *most = sample_new_crowd (PP_PANEL_MAX_PLACEMENTS);
  g_autofree char *over = sample_new_crowd (PP_PANEL_MAX_PLACEMENTS + 1);
  g_autoptr (GBytes) bytes = sample_to_bytes (over);
  gint64 start = g_get_monotonic_time ();
  g_autoptr (PpPanel) panel = sample_read (most);
  double seconds = (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;

  g_test_message ("%u placements in %.3f s", panel->placements->len, seconds);
  g_assert_cmpfloat (seconds, <, 1);
  assert_refused (bytes, L, "placements");
}

/* A comb of as many positions as asked, closed. */
static char *
ring_of (guint n)
{
  g_autoptr (GString) text = g_string_new ("[[");

  for (guint i = 0; i + 2 < n; i++)
    g_string_append_printf (text, "[%u.%02u,%u],", i / 4, 25 * (i % 4), i % 2);
  g_string_append_printf (text, "[%u,-9],[0,0]]]", n / 4);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
test_positions (void)
{
  g_autofree char *sample = sample_new ();

  for (guint over = 0; over <= 1; over++)
    {
      g_autofree char *ring = ring_of (PP_OUTLINE_MAX_POSITIONS + over);
      g_autofree char *text = sample_change (sample, JUG, ring);
      g_autoptr (GBytes) bytes = sample_to_bytes (text);

      if (over)
        assert_refused (bytes, L, "fused[0].outline");
      else
        pp_panel_unref (sample_read (text));
    }
}

static void
test_art_size (void)
{
  g_autofree char *sample = sample_new ();

  for (guint over = 0; over <= 1; over++)
    {
      g_autofree char *art = g_strnfill (PP_PIECE_MAX_ART + over, 'a');
      g_autofree char *put = g_strdup_printf ("\"box\": \"box-sedge\", \"art\": \"%s\"", art);
      g_autofree char *text = sample_change (sample, "\"box\": \"box-sedge\"", put);
      g_autoptr (GBytes) bytes = sample_to_bytes (text);

      if (over)
        assert_refused (bytes, L, "tray[1].art");
      else
        pp_panel_unref (sample_read (text));
    }
}

/* What is no drawing is kept byte for byte all the same. */
static void
test_art_kept (void)
{
  static const char art[] = "<svg onload='x()'><!DOCTYPE not even>";
  g_autofree char *sample = sample_new ();
  g_autofree char *put = g_strdup_printf ("\"box\": \"box-sedge\", \"art\": \"%s\"", art);
  g_autofree char *text = sample_change (sample, "\"box\": \"box-sedge\"", put);
  g_autoptr (PpPanel) panel = sample_read (text);
  gsize length;
  const char *kept = g_bytes_get_data (pp_panel_piece (panel, 1)->art, &length);

  g_assert_cmpmem (kept, length, art, strlen (art));
}

/* 64 levels are read, as an unknown member, and no more. */
static void
test_depth (void)
{
  for (guint over = 0; over <= 1; over++)
    {
      g_autofree char *open = g_strnfill (63 + over, '[');
      g_autofree char *close = g_strnfill (63 + over, ']');
      g_autofree char *put = g_strdup_printf ("\"version\":1,\"deep\":%s%s", open, close);
      g_autofree char *text = sample_change (minimal, "\"version\":1", put);
      g_autoptr (GBytes) bytes = sample_to_bytes (text);

      if (over)
        assert_refused (bytes, L, "Line");
      else
        pp_panel_unref (sample_read (text));
    }
}

/* A file with a hole in it takes no room on the disk, but is as long. */
static void
test_huge (void)
{
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  int fd = g_file_open_tmp ("petalpane-XXXXXX", &path, NULL);

  g_assert_cmpint (ftruncate (fd, 64 * 1024 * 1024 + 1), ==, 0);
  close (fd);
  g_assert_null (pp_panel_load (path, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT);
  g_unlink (path);
  g_clear_error (&error);
  g_assert_null (pp_panel_load (path, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
}

static const char * const strangers[] = { "", "null", "[]", "7", "\"petalpane-panel\"", "{}" };

static void
test_strangers (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (strangers); i++)
    {
      g_autoptr (GBytes) bytes = sample_to_bytes (strangers[i]);
      PpFileError code = *strangers[i] == '\0' ? PP_FILE_ERROR_SYNTAX : PP_FILE_ERROR_FORMAT;
      g_autoptr (GError) error = NULL;

      g_assert_null (pp_panel_read (bytes, &error));
      g_assert_error (error, PP_FILE_ERROR, (int) code);
    }
}

#define BOX "{\"format\":\"petalpane-box\",\"version\":1,\"pieces\":[%s]}"
#define BOXED "{\"id\":\"%s\",\"kind\":\"bud\",\"thickness\":3,\"outline\":" RING "}"

static GPtrArray *
read_box (const char *pieces,
          GError    **error)
{
  g_autofree char *text = g_strdup_printf (BOX, pieces);
  g_autoptr (GBytes) bytes = sample_to_bytes (text);

  return pp_box_read (bytes, error);
}

static void
test_box (void)
{
  g_autofree char *two = g_strdup_printf (BOXED "," BOXED, "mallow", "campion");
  g_autofree char *twice = g_strdup_printf (BOXED "," BOXED, "mallow", "mallow");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pieces = read_box (two, &error);
  g_autoptr (GBytes) panel = g_bytes_new_static (minimal, strlen (minimal));

  g_assert_no_error (error);
  g_assert_cmpuint (pieces->len, ==, 2);
  g_assert_cmpstr (((const PpPiece *) g_ptr_array_index (pieces, 1))->id, ==, "campion");
  g_assert_null (read_box (twice, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, "pieces[1].id: "));
  g_clear_error (&error);
  g_assert_null (read_box ("{\"id\":\"fern\"}", &error));
  g_assert_true (g_str_has_prefix (error->message, "pieces[0].kind: "));
  g_clear_error (&error);
  g_assert_null (pp_box_read (panel, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_FORMAT);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (refused_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/panel-read/refused/", refused_rows[i].name, NULL);

      g_test_add_data_func (path, &refused_rows[i], test_refused);
    }
  for (guint i = 0; i < G_N_ELEMENTS (count_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/panel-read/count/", count_rows[i].list, NULL);

      g_test_add_data_func (path, &count_rows[i], test_count);
    }
  g_test_add_func ("/panel-read/minimal", test_minimal);
  g_test_add_func ("/panel-read/short-records", test_short_records);
  g_test_add_func ("/panel-read/whole", test_whole);
  g_test_add_func ("/panel-read/comma", test_comma);
  g_test_add_func ("/panel-read/truncated", test_truncated);
  g_test_add_func ("/panel-read/damaged", test_damaged);
  g_test_add_func ("/panel-read/crowd", test_crowd);
  g_test_add_func ("/panel-read/positions", test_positions);
  g_test_add_func ("/panel-read/art-size", test_art_size);
  g_test_add_func ("/panel-read/art-kept", test_art_kept);
  g_test_add_func ("/panel-read/depth", test_depth);
  g_test_add_func ("/panel-read/huge", test_huge);
  g_test_add_func ("/panel-read/strangers", test_strangers);
  g_test_add_func ("/panel-read/box", test_box);
  return g_test_run ();
}
