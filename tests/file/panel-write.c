/* panel-write.c: what is written reads back as it was, unknown members included.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sample stands in the folder as the program must write it, key for key in the order of the
 * page on the file, so reading and writing it must give the same bytes.
 */
#include "file/panel-write.h"

#include "file/file-error.h"
#include "file/panel-read.h"
#include "panel/edit.h"
#include "comma-locale.h"
#include "sample.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
write_text (const PpPanel *panel)
{
  return g_string_free (pp_panel_write (panel), FALSE);
}

/* Some text from the first place on where the two differ; NULL where they do not. */
static char *
first_difference (const char *written,
                  const char *wanted)
{
  gsize same = 0;

  while (written[same] != '\0' && written[same] == wanted[same])
    same++;
  if (written[same] == wanted[same])
    return NULL;
  return g_strdup_printf ("%.80s instead of %.80s", written + same, wanted + same);
}

static void
assert_same_again (const char *text)
{
  g_autoptr (PpPanel) panel = sample_read (text);
  g_autofree char *written = write_text (panel);
  g_autofree char *at = first_difference (written, text);

  g_assert_cmpstr (at, ==, NULL);
}

static void
test_sample (void)
{
  g_autofree char *text = sample_new ();

  assert_same_again (text);
}

/* Any number is written with a point, also where people write a comma. */
static void
test_comma (void)
{
  comma_locale_run (test_sample);
}

typedef struct
{
  const char *name;
  const char *find;
  const char *put; /* as the program writes it */
} ChangeRow;

static const ChangeRow change_rows[] = {
  { "no-plan", "\"plan\": {\n"
    "    \"jobs\": [\"knot:left\", \"knot:right\", \"p0\", \"p1\", \"p2\"]\n  }",
    "\"plan\": null" },
  { "inches", "\"units\": \"mm\"", "\"units\": \"in\"" },
  { "no-date", "\"2026-05-02\"", "\"\"" },
  { "no-role", "\"role\": \"vase\"", "\"role\": null" },
  { "shape", "\"role\": \"vase\"", "\"role\": \"shape\"" },
  { "window", "\"place\": \"wall\",\n    \"sideways\": 30,\n    \"updown\": 15,\n"
    "    \"hook_rating\": null",
    "\"place\": \"window\",\n    \"sideways\": 0,\n    \"updown\": 89.9,\n"
    "    \"hook_rating\": 2.5" },
  { "ellipse", "\"shape\": \"rectangle\"", "\"shape\": \"ellipse\"" },
  { "arch", "\"shape\": \"rectangle\"", "\"shape\": \"arch\"" },
  { "free", "\"shape\": \"rectangle\",\n    \"width\": 300,\n    \"height\": 420,\n"
    "    \"corner_radius\": 4,",
    "\"shape\": \"free\",\n    \"outline\": {\n      \"type\": \"Polygon\",\n"
    "      \"coordinates\": [[[0, 0], [300, 0], [150, 420], [0, 0]]]\n    }," },
  { "no-wire",
    "\"wire\": {\n"
    "    \"from\": \"left\",\n"
    "    \"to\": \"right\",\n"
    "    \"knotted_at\": null,\n"
    "    \"length\": 150,\n"
    "    \"diameter\": 1.2,\n"
    "    \"tail\": 40,\n"
    "    \"knot_diameter\": 8,\n"
    "    \"knot_height\": 3,\n"
    "    \"safe_load\": null,\n"
    "    \"breaking_load\": 220,\n"
    "    \"friction\": 0.2,\n"
    "    \"mass_per_metre\": 4\n"
    "  }",
    "\"wire\": null" },
  { "taut", "\"length\": 150", "\"length\": null" },
  { "knotted", "\"knotted_at\": null", "\"knotted_at\": \"2026-06-01T09:30:00.5-03:30\"" },
  { "gauged", "\"gap\": null", "\"gap\": 0.1" },
  { "sitting", "\"sitting\": null", "\"sitting\": 90" },
  { "ratio", "\"ratio\": [1, 1]", "\"ratio\": [2, 0.1]" },
  { "fused-density", "\"glass\": {\n        \"refractive_index\"",
    "\"glass\": {\n        \"density\": 2480,\n        \"refractive_index\"" },
  { "fused-expansion-left-out", "\"transmittance\": 0.4,\n        \"expansion\": 9e-06",
    "\"transmittance\": 0.4" },
  { "form-domed", "\"type\": \"cupped\",\n        \"rise\": 12,\n        \"foot\": 9",
    "\"type\": \"domed\",\n        \"rise\": 12" },
  { "form-lifted-flat", "\"type\": \"lifted\",\n        \"rise\": 5",
    "\"type\": \"lifted\",\n        \"rise\": 5,\n        \"flat\": 0" },
  { "no-limits", "\"limits\": {\n    \"dab_every\": 50,\n    \"opaque\": 0.2\n  }",
    "\"limits\": {}" },
  { "log-taken-back", "\"what\": \"placed\"", "\"what\": \"taken-back\"" },
  { "next-id-of-the-file-left-out", ",\n  \"next_id\": 41", "" },
  { "third", "\"x\": 180.125", "\"x\": 0.3333333333333333" },
  { "least", "\"x\": 180.125", "\"x\": 4.94065645841247e-324" },
  { "seventeen-digits", "\"x\": 180.125", "\"x\": 0.30000000000000004" },
  { "greatest", "\"x\": 180.125", "\"x\": 999999999.9999999" },
  /* Members that the program does not know, at every level, in their order. */
  { "unknown-panel", "\"next_id\": 41",
    "\"next_id\": 41,\n  \"zeta\": [1, 2],\n  \"alpha\": 9007199254740993" },
  { "unknown-background", "\"colour\": \"#eef4f2\"\n    }",
    "\"colour\": \"#eef4f2\"\n    },\n    \"supplier\": null" },
  { "unknown-glass", "\"colour\": \"#eef4f2\"",
    "\"colour\": \"#eef4f2\",\n      \"sheet\": \"B \\\"7\\\"\"" },
  { "unknown-fused-glass", "\"colour\": \"#c98a2b\"",
    "\"colour\": \"#c98a2b\",\n        \"tin\": true" },
  { "unknown-pocket", "\"gap\": null,\n        \"insert\": {\n          \"type\": \"Polygon\",\n"
    "          \"coordinates\": [[[130, 250], [170, 250], [170, 370], [130, 370], [130, 250]]]\n"
    "        }",
    "\"gap\": null,\n        \"insert\": {\n          \"type\": \"Polygon\",\n"
    "          \"coordinates\": [[[130, 250], [170, 250], [170, 370], [130, 370], [130, 250]]],\n"
    "          \"bbox\": [130, 250, 170, 370]\n        },\n        \"paper\": 3.5" },
  { "unknown-hole", "\"x\": 210,\n      \"y\": 45,\n      \"diameter\": 6,\n"
    "      \"drilled\": false",
    "\"x\": 210,\n      \"y\": 45,\n      \"diameter\": 6,\n      \"drilled\": false,\n"
    "      \"bit\": 6.35" },
  { "unknown-wire", "\"mass_per_metre\": 4", "\"mass_per_metre\": 4,\n    \"strands\": 7" },
  { "unknown-display", "\"hook_rating\": null", "\"hook_rating\": null,\n    \"room\": \"hall\"" },
  { "unknown-adhesive", "\"working_stress\": 0.5", "\"working_stress\": 0.5,\n    \"batch\": 12" },
  { "unknown-form", "\"foot\": 9", "\"foot\": 9,\n        \"mould\": \"bowl\"" },
  { "unknown-flat-form", "\"type\": \"flat\"", "\"type\": \"flat\",\n        \"rise\": 4" },
  { "unknown-crown", "\"radius\": 7", "\"radius\": 7,\n        \"frit\": []" },
  { "unknown-piece", "\"box\": \"box-sedge\"",
    "\"box\": \"box-sedge\",\n      \"shelf\": {\n        \"row\": 2\n      }" },
  { "unknown-placement", "\"glued_at\": \"2026-06-01T10:00:00+02:00\"",
    "\"glued_at\": \"2026-06-01T10:00:00+02:00\",\n      \"by\": \"hand\"" },
  { "unknown-plan", "\"p1\", \"p2\"]\n  }",
    "\"p1\", \"p2\"],\n    \"why\": \"far edge first\"\n  }" },
  { "unknown-log", "\"about\": [\"p0\"]", "\"about\": [\"p0\"],\n      \"weather\": \"damp\"" },
  { "unknown-limit", "\"opaque\": 0.2", "\"opaque\": 0.2,\n    \"gloss\": 1" },
  { "unknown-quiet", "\"about\": [\"p1\", \"p2\"]\n    }",
    "\"about\": [\"p1\", \"p2\"],\n      \"since\": \"May\"\n    }" },
};

static void
test_change (gconstpointer data)
{
  const ChangeRow *row = data;
  g_autofree char *text = sample_new ();
  g_autofree char *changed = sample_change (text, row->find, row->put);

  assert_same_again (changed);
}

/* An id whose record is gone is not given again after saving and opening. */
static void
test_next_id (void)
{
  g_autofree char *text = sample_new_crowd (2);
  g_autoptr (PpPanel) two = sample_read (text);
  const char *last[] = { "p1", NULL };
  g_autoptr (PpPanel) one = pp_edit_remove (two, last, NULL);
  g_autofree char *written = write_text (one);
  g_autoptr (PpPanel) again = sample_read (written);

  g_assert_cmpuint (again->next_id, ==, two->next_id);
  g_assert_nonnull (strstr (written, "\"next_id\": 2"));
}

static void
test_save (void)
{
  g_autofree char *text = sample_new ();
  g_autoptr (PpPanel) panel = sample_read (text);
  g_autofree char *folder = g_dir_make_tmp ("petalpane-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "towpath.petalpane", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "towpath.petalpane", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) loaded = NULL;
  g_autofree char *again = NULL;

  g_assert_true (pp_panel_save (panel, path, &error));
  g_assert_no_error (error);
  loaded = pp_panel_load (path, &error);
  g_assert_no_error (error);
  again = write_text (loaded);
  g_assert_cmpstr (again, ==, text);
  g_assert_false (pp_panel_save (panel, nowhere, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_IO);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (change_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/panel-write/again/", change_rows[i].name, NULL);

      g_test_add_data_func (path, &change_rows[i], test_change);
    }
  g_test_add_func ("/panel-write/sample", test_sample);
  g_test_add_func ("/panel-write/comma", test_comma);
  g_test_add_func ("/panel-write/next-id", test_next_id);
  g_test_add_func ("/panel-write/save", test_save);
  return g_test_run ();
}
