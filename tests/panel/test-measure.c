/* test-measure.c: measures as a maker writes and reads them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values by hand; 1 in = 25.4 mm, 1 oz = 28.349523125 g (international yard and pound
 * agreement of 1959).
 */
#include "panel/measure.h"

#include <glib/gstdio.h>
#include <locale.h>

/* mm: figures by hand are exact to far below this. */
#define EXACT 1e-9

typedef struct
{
  const char *text;
  PpUnits     units;
  double      mm; /* NAN: refused */
} Read;

static const Read reads[] = {
  { "8 1/2", PP_UNITS_INCH, 215.9 },
  { "8-1/2", PP_UNITS_INCH, 215.9 },
  { "8.5", PP_UNITS_INCH, 215.9 },
  { "8,5", PP_UNITS_INCH, 215.9 },
  { "216 mm", PP_UNITS_INCH, 216 },
  { "216mm", PP_UNITS_INCH, 216 },
  { "216", PP_UNITS_MM, 216 },
  { "5/16\"", PP_UNITS_MM, 7.9375 },
  { "5/16", PP_UNITS_INCH, 7.9375 },
  { "8 1/2\"", PP_UNITS_MM, 215.9 },
  { "8½", PP_UNITS_INCH, 215.9 },
  { "8 ½", PP_UNITS_INCH, 215.9 },
  { "8-½″", PP_UNITS_MM, 215.9 },
  { "½", PP_UNITS_INCH, 12.7 },
  { "¼", PP_UNITS_INCH, 6.35 },
  { "¾", PP_UNITS_INCH, 19.05 },
  { "⅛", PP_UNITS_INCH, 3.175 },
  { "⅜", PP_UNITS_INCH, 9.525 },
  { "⅝", PP_UNITS_INCH, 15.875 },
  { "⅞", PP_UNITS_INCH, 22.225 },
  { "1⅞ in", PP_UNITS_MM, 47.625 },
  { "1 5⁄16 in", PP_UNITS_MM, 33.3375 },
  { "21.6 cm", PP_UNITS_INCH, 216 },
  { "21,6cm", PP_UNITS_MM, 216 },
  { "1 ft", PP_UNITS_MM, 304.8 },
  { "1 ft 2 in", PP_UNITS_MM, 355.6 },
  { "1' 2\"", PP_UNITS_MM, 355.6 },
  { "1′2½″", PP_UNITS_MM, 368.3 },
  { "1’ 2”", PP_UNITS_MM, 355.6 },
  { "1' 2''", PP_UNITS_MM, 355.6 },
  { "2 feet 6", PP_UNITS_MM, 762 },
  { "8“", PP_UNITS_MM, 203.2 },
  { "  8\u00a01/2\u202fin  ", PP_UNITS_MM, 215.9 },
  { "8\t1 / 2", PP_UNITS_INCH, 215.9 },
  { "3 Inches", PP_UNITS_MM, 76.2 },
  { "3 in.", PP_UNITS_MM, 76.2 },
  { "3 Zoll", PP_UNITS_MM, 76.2 },
  { "3 1/2 pouces", PP_UNITS_MM, 88.9 },
  { "1 pulgada", PP_UNITS_MM, 25.4 },
  { "12 MM", PP_UNITS_INCH, 12 },
  { ".5", PP_UNITS_INCH, 12.7 },
  { ",5", PP_UNITS_MM, 0.5 },
  { "0", PP_UNITS_MM, 0 },
  { "-4.5", PP_UNITS_MM, -4.5 },
  { "−4,5 mm", PP_UNITS_INCH, -4.5 },
  { "- 1/2", PP_UNITS_INCH, -12.7 },
  { "-8 1/2", PP_UNITS_INCH, -215.9 },
  { "0,125", PP_UNITS_INCH, 3.175 },
  { "8.125", PP_UNITS_INCH, 206.375 },
  { "1000000", PP_UNITS_MM, 1e6 },
  { "", PP_UNITS_MM, NAN },
  { "   ", PP_UNITS_MM, NAN },
  { "mm", PP_UNITS_MM, NAN },
  { "-", PP_UNITS_MM, NAN },
  { "--5", PP_UNITS_MM, NAN },
  { "-−5", PP_UNITS_MM, NAN },
  { "+5", PP_UNITS_MM, NAN },
  { "+-5", PP_UNITS_MM, NAN },
  { "5-", PP_UNITS_MM, NAN },
  { "8 -1/2", PP_UNITS_INCH, NAN },
  { "8--1/2", PP_UNITS_INCH, NAN },
  { "8 - 1/2", PP_UNITS_INCH, NAN },
  { "1 ft -2 in", PP_UNITS_MM, NAN },
  { "1/0", PP_UNITS_INCH, NAN },
  { "8 1/0", PP_UNITS_INCH, NAN },
  { "0/0", PP_UNITS_INCH, NAN },
  { "1/", PP_UNITS_INCH, NAN },
  { "/2", PP_UNITS_INCH, NAN },
  { "1/2/3", PP_UNITS_INCH, NAN },
  { "½8", PP_UNITS_INCH, NAN },
  { "½½", PP_UNITS_INCH, NAN },
  { "½/2", PP_UNITS_INCH, NAN },
  { "8/½", PP_UNITS_INCH, NAN },
  { "8 9/8", PP_UNITS_INCH, NAN },
  { "8.5 1/2", PP_UNITS_INCH, NAN },
  { "8 5", PP_UNITS_INCH, NAN },
  { "1 200", PP_UNITS_MM, NAN },
  { "1,200", PP_UNITS_MM, NAN },
  { "1.2.3", PP_UNITS_MM, NAN },
  { "1.2,3", PP_UNITS_MM, NAN },
  { ".", PP_UNITS_MM, NAN },
  { "8.", PP_UNITS_MM, NAN },
  { "8. mm", PP_UNITS_MM, NAN },
  { "8 mm mm", PP_UNITS_MM, NAN },
  { "8 mm 2 in", PP_UNITS_MM, NAN },
  { "1 ft 2 mm", PP_UNITS_MM, NAN },
  { "1 ft 2 ft", PP_UNITS_MM, NAN },
  { "8 parsecs", PP_UNITS_MM, NAN },
  { "8 m", PP_UNITS_MM, NAN },
  { "1e3", PP_UNITS_MM, NAN },
  { "0x10", PP_UNITS_MM, NAN },
  { "nan", PP_UNITS_MM, NAN },
  { "inf", PP_UNITS_MM, NAN },
  { "1000001", PP_UNITS_MM, NAN },
  { "99999999999999999999999999999999999999999", PP_UNITS_MM, NAN },
  { "1000000000000000000000000000000000000000000000000000000000000000000000", PP_UNITS_MM, NAN },
  { "8\xff", PP_UNITS_MM, NAN },
  { "\xe2\x81", PP_UNITS_MM, NAN },
  { "٣", PP_UNITS_MM, NAN },
  { "flower", PP_UNITS_INCH, NAN },
};

static void
test_read (gconstpointer data)
{
  const Read *row = data;
  double mm = 77;
  gboolean read = pp_length_parse (row->text, row->units, &mm);

  g_assert_cmpint (read, ==, !isnan (row->mm));
  g_assert_cmpfloat_with_epsilon (mm, read ? row->mm : 77, EXACT);
}

static const Read weights[] = {
  { "32", PP_UNITS_MM, 32 },
  { "32", PP_UNITS_INCH, 32 * PP_GRAMS_PER_OUNCE },
  { "1 1/2 oz", PP_UNITS_MM, 42.5242846875 },
  { "½ OZ", PP_UNITS_MM, 14.1747615625 },
  { "0,4 kg", PP_UNITS_INCH, 400 },
  { "2 lb", PP_UNITS_MM, 907.18474 },
  { "2lbs", PP_UNITS_MM, 907.18474 },
  { "32 g", PP_UNITS_INCH, 32 },
  { "0", PP_UNITS_MM, 0 },
  { "", PP_UNITS_MM, NAN },
  { "g", PP_UNITS_MM, NAN },
  { "-3 g", PP_UNITS_MM, NAN },
  { "3 mm", PP_UNITS_MM, NAN },
  { "3 g 2", PP_UNITS_MM, NAN },
  { "1001 kg", PP_UNITS_MM, NAN },
  { "nan", PP_UNITS_MM, NAN },
};

static void
test_weigh (gconstpointer data)
{
  const Read *row = data;
  double g = 77;
  gboolean read = pp_mass_parse (row->text, row->units, &g);

  g_assert_cmpint (read, ==, !isnan (row->mm));
  g_assert_cmpfloat_with_epsilon (g, read ? row->mm : 77, EXACT);
}

typedef struct
{
  double      value;
  PpUnits     units;
  const char *text;
} Shown;

static const Shown lengths[] = {
  { 216, PP_UNITS_MM, "216 mm" },
  { 215.6, PP_UNITS_MM, "216 mm" },
  { 4.5, PP_UNITS_MM, "4.5 mm" },
  { 4, PP_UNITS_MM, "4 mm" },
  { 4.02, PP_UNITS_MM, "4 mm" },
  { 9.97, PP_UNITS_MM, "10 mm" },
  { 0, PP_UNITS_MM, "0 mm" },
  { 0.04, PP_UNITS_MM, "under 0.1 mm" },
  { 0.06, PP_UNITS_MM, "0.1 mm" },
  { 1e-9, PP_UNITS_MM, "0 mm" },
  { -1e-9, PP_UNITS_MM, "0 mm" },
  { -4.5, PP_UNITS_MM, "-4.5 mm" },
  { 3000, PP_UNITS_MM, "3000 mm" },
  { 215.9, PP_UNITS_INCH, "8 1/2 in" },
  { 0, PP_UNITS_INCH, "0 in" },
  { 12.7, PP_UNITS_INCH, "1/2 in" },
  { 25.4, PP_UNITS_INCH, "1 in" },
  { 25.3, PP_UNITS_INCH, "1 in" },
  { 0.5, PP_UNITS_INCH, "under 1/16 in" },
  { 0.8, PP_UNITS_INCH, "1/16 in" },
  { -215.9, PP_UNITS_INCH, "-8 1/2 in" },
  { -1e-9, PP_UNITS_INCH, "0 in" },
  { 7.9375, PP_UNITS_INCH, "5/16 in" },
  { 61.9125, PP_UNITS_INCH, "2 7/16 in" },
  { 123.825, PP_UNITS_INCH, "4 7/8 in" },
  { 82.55, PP_UNITS_INCH, "3 1/4 in" },
};

static void
test_lengths (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_autofree char *text = pp_length_format (lengths[i].value, lengths[i].units);

      g_assert_cmpstr (text, ==, lengths[i].text);
    }
}

static void
test_sizes (void)
{
  g_autofree char *metric = pp_size_format (300, 420, PP_UNITS_MM);
  g_autofree char *inches = pp_size_format (300, 420, PP_UNITS_INCH);
  g_autofree char *bare = pp_length_format_bare (215.9, PP_UNITS_INCH);

  g_assert_cmpstr (metric, ==, "300 × 420 mm");
  g_assert_cmpstr (inches, ==, "11 13/16 × 16 9/16 in");
  g_assert_cmpstr (bare, ==, "8 1/2");
}

static const Shown masses[] = {
  { 412, PP_UNITS_MM, "412 g" },
  { 4.52, PP_UNITS_MM, "4.5 g" },
  { 0, PP_UNITS_MM, "0 g" },
  { 0.01, PP_UNITS_MM, "under 0.1 g" },
  { 999.6, PP_UNITS_MM, "1 kg" },
  { 2412.5, PP_UNITS_MM, "2.41 kg" },
  { 2400, PP_UNITS_MM, "2.4 kg" },
  { 411, PP_UNITS_INCH, "14.5 oz" },
  { 2410, PP_UNITS_INCH, "5 lb 5 oz" },
  { 453.59237, PP_UNITS_INCH, "1 lb" },
  { 452.9, PP_UNITS_INCH, "1 lb" },
  { 906, PP_UNITS_INCH, "2 lb" },
  { 1, PP_UNITS_INCH, "0.04 oz" },
  { 2.8, PP_UNITS_INCH, "0.1 oz" },
  { 0.1, PP_UNITS_INCH, "under 0.01 oz" },
};

static const Shown estimated_masses[] = {
  { 14, PP_UNITS_MM, "about 14 g" },
  { 0.04, PP_UNITS_MM, "under 0.1 g" },
  { 1, PP_UNITS_INCH, "about 0.04 oz" },
  { 0.1, PP_UNITS_INCH, "under 0.01 oz" },
};

static void
test_masses (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (estimated_masses); i++)
    {
      g_autofree char *text = pp_mass_format_about (estimated_masses[i].value,
                                                    estimated_masses[i].units);

      g_assert_cmpstr (text, ==, estimated_masses[i].text);
    }
  for (guint i = 0; i < G_N_ELEMENTS (masses); i++)
    {
      g_autofree char *text = pp_mass_format (masses[i].value, masses[i].units);

      g_assert_cmpstr (text, ==, masses[i].text);
    }
}

static const Shown volumes[] = {
  { 0.8, PP_UNITS_MM, "0.8 ml" },    { 0.05, PP_UNITS_MM, "0.05 ml" },
  { 0.096, PP_UNITS_MM, "0.1 ml" },  { 6, PP_UNITS_MM, "6 ml" },
  { 12.34, PP_UNITS_MM, "12.3 ml" }, { 0.001, PP_UNITS_MM, "under 0.01 ml" },
  { 0, PP_UNITS_MM, "0 ml" },
};

static const Shown times[] = {
  { 1, PP_UNITS_MM, "1 min" },       { 2.5, PP_UNITS_MM, "2 min 30 s" },
  { 0.25, PP_UNITS_MM, "15 s" },     { 60, PP_UNITS_MM, "1 h" },
  { 65, PP_UNITS_MM, "1 h 5 min" },  { 1440, PP_UNITS_MM, "24 h" },
  { 59.95, PP_UNITS_MM, "1 h" },     { 0, PP_UNITS_MM, "0 min" },
  { 0.1, PP_UNITS_MM, "under 15 s" }, { 119.7, PP_UNITS_MM, "2 h" },
};

static const Shown angles[] = {
  { 12, PP_UNITS_MM, "12°" },   { 12.4, PP_UNITS_MM, "12°" },   { 1.24, PP_UNITS_MM, "1.2°" },
  { -3.5, PP_UNITS_MM, "-3.5°" }, { 9.99, PP_UNITS_MM, "10°" }, { 0, PP_UNITS_MM, "0°" },
};

static void
check_rows (const Shown *rows,
            guint        n_rows,
            char      *(*format) (double))
{
  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *text = format (rows[i].value);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

static void
test_others (void)
{
  check_rows (volumes, G_N_ELEMENTS (volumes), pp_volume_format);
  check_rows (times, G_N_ELEMENTS (times), pp_time_format);
  check_rows (angles, G_N_ELEMENTS (angles), pp_angle_format);
}

/* What is shown reads back within half a step, in the unit itself and from the other one. */
static void
check_round_trips (void)
{
  for (int i = -40; i < 12000; i++)
    {
      double mm = i * 0.27;

      for (PpUnits units = PP_UNITS_MM; units <= PP_UNITS_INCH; units++)
        {
          PpUnits other = units == PP_UNITS_MM ? PP_UNITS_INCH : PP_UNITS_MM;
          double half_step = units == PP_UNITS_INCH ? 25.4 / 32 : fabs (mm) < 9.95 ? 0.05 : 0.5;
          g_autofree char *text = pp_length_format (mm, units);
          g_autofree char *bare = pp_length_format_bare (mm, units);
          double back, bare_back;

          if (g_str_has_prefix (text, "under"))
            continue;
          g_assert_true (pp_length_parse (text, other, &back));
          g_assert_true (pp_length_parse (bare, units, &bare_back));
          g_assert_cmpfloat_with_epsilon (back, mm, half_step + EXACT);
          g_assert_cmpfloat (back, ==, bare_back);
        }
    }
}

static void
test_place (void)
{
  const PpPoint ring[] = { { 20, 30 }, { 320, 30 }, { 320, 330 } };
  g_autoptr (PpOutline) outline = pp_outline_new_ring (ring, G_N_ELEMENTS (ring));
  PpBackground background = { .shape = PP_SHAPE_RECTANGLE };
  PpPanel panel = { .units = PP_UNITS_MM, .background = &background };
  g_autofree char *inside = pp_place_format (&panel, (PpPoint) { 120, 45 });
  g_autofree char *left = pp_place_format (&panel, (PpPoint) { -5, 45 });
  g_autofree char *above = pp_place_format (&panel, (PpPoint) { 120, -5 });
  g_autofree char *both = pp_place_format (&panel, (PpPoint) { -7, -5 });
  g_autofree char *in_free = NULL;

  g_assert_cmpstr (inside, ==, "120 mm from the left and 45 mm from the top");
  g_assert_cmpstr (left, ==, "5 mm beyond the left edge and 45 mm from the top");
  g_assert_cmpstr (above, ==, "120 mm from the left and 5 mm above the top");
  g_assert_cmpstr (both, ==, "7 mm beyond the left edge and 5 mm above the top");

  background.shape = PP_SHAPE_FREE;
  background.outline = outline;
  in_free = pp_place_format (&panel, (PpPoint) { 120, 45 });
  g_assert_cmpstr (in_free, ==, "100 mm from the left and 15 mm from the top");
}

/* Makes a locale with a decimal comma in a folder of its own; few systems have one installed. */
static gboolean
set_comma_locale (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "comma", NULL);
  const char *command[] = { "localedef", "-c", "-i", "de_DE", "-f", "UTF-8", path, NULL };

  if (!g_spawn_sync (NULL, (char **) command, NULL,
                     G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                     NULL, NULL, NULL, NULL, NULL, NULL))
    return FALSE;
  g_setenv ("LOCPATH", folder, TRUE);
  return setlocale (LC_NUMERIC, "comma") != NULL;
}

static void
remove_folder (const char *folder)
{
  const char *command[] = { "rm", "-rf", folder, NULL };

  g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, NULL,
                NULL);
}

static void
check_comma (void)
{
  g_autofree char *length = pp_length_format (4.5, PP_UNITS_MM);
  g_autofree char *whole = pp_length_format (4, PP_UNITS_MM);
  g_autofree char *mass = pp_mass_format (2412.5, PP_UNITS_MM);
  g_autofree char *under = pp_length_format (0.04, PP_UNITS_MM);
  double mm;

  g_assert_cmpstr (length, ==, "4,5 mm");
  g_assert_cmpstr (whole, ==, "4 mm");
  g_assert_cmpstr (mass, ==, "2,41 kg");
  g_assert_cmpstr (under, ==, "under 0,1 mm");
  g_assert_true (pp_length_parse ("8.5", PP_UNITS_MM, &mm));
  g_assert_cmpfloat (mm, ==, 8.5);
  g_assert_true (pp_length_parse ("8,5", PP_UNITS_MM, &mm));
  g_assert_cmpfloat (mm, ==, 8.5);
  g_assert_true (pp_length_parse ("8,125", PP_UNITS_MM, &mm));
  g_assert_false (pp_length_parse ("1.200", PP_UNITS_MM, &mm));
  check_round_trips ();
}

static void
test_comma (void)
{
  g_autofree char *folder = g_dir_make_tmp ("petalpane-XXXXXX", NULL);

  if (set_comma_locale (folder))
    check_comma ();
  else
    g_test_skip ("localedef cannot make a locale with a decimal comma here");
  setlocale (LC_NUMERIC, "C");
  remove_folder (folder);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (reads); i++)
    {
      g_autofree char *path = g_strdup_printf ("/measure/read/%u", i);

      g_test_add_data_func (path, &reads[i], test_read);
    }
  for (guint i = 0; i < G_N_ELEMENTS (weights); i++)
    {
      g_autofree char *path = g_strdup_printf ("/measure/weigh/%u", i);

      g_test_add_data_func (path, &weights[i], test_weigh);
    }
  g_test_add_func ("/measure/lengths", test_lengths);
  g_test_add_func ("/measure/sizes", test_sizes);
  g_test_add_func ("/measure/masses", test_masses);
  g_test_add_func ("/measure/others", test_others);
  g_test_add_func ("/measure/place", test_place);
  g_test_add_func ("/measure/round-trip", check_round_trips);
  g_test_add_func ("/measure/comma", test_comma);
  return g_test_run ();
}
