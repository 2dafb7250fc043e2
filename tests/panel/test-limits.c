/* test-limits.c: keys, defaults and ranges of the limits, as the format's page lists them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/limits.h"
#include "panel/panel-error.h"

#include "small-panel.h"

/* What a limit may not be. */
typedef enum
{
  ANY,     /* 0 or more */
  DIVIDES, /* more than 0 */
  SHARE,   /* 0 to 1 */
  PART,    /* more than 0, to 1 */
} Range;

typedef struct
{
  PpLimit     limit;
  const char *key;
  double      standard;
  Range       range;
} Row;

static const Row rows[] = {
  { PP_LIMIT_CONTACT, "contact", 0.05, ANY },
  { PP_LIMIT_STEADY, "steady", 3, ANY },
  { PP_LIMIT_SLOPE, "slope", 15, ANY },
  { PP_LIMIT_DAB, "dab", 8, DIVIDES },
  { PP_LIMIT_DAB_EVERY, "dab_every", 60, DIVIDES },
  { PP_LIMIT_DAB_LEAST, "dab_least", 0.05, ANY },
  { PP_LIMIT_BOND, "bond", 0.15, ANY },
  { PP_LIMIT_WASTE, "waste", 1.3, ANY },
  { PP_LIMIT_KNOT_GLUE, "knot_glue", 0.15, ANY },
  { PP_LIMIT_STRAIN, "strain", 0.5, ANY },
  { PP_LIMIT_JOINT_SHARE, "joint_share", 0.02, ANY },
  { PP_LIMIT_SQUEEZE, "squeeze", 1, ANY },
  { PP_LIMIT_OVERLAP, "overlap", 1, ANY },
  { PP_LIMIT_TUCK, "tuck", 2, ANY },
  { PP_LIMIT_PIECE_MINUTES, "piece_minutes", 1, ANY },
  { PP_LIMIT_KNOT_MINUTES, "knot_minutes", 0.5, ANY },
  { PP_LIMIT_STEM_MINUTES, "stem_minutes", 0.5, ANY },
  { PP_LIMIT_DAB_MINUTES, "dab_minutes", 0.25, ANY },
  { PP_LIMIT_OPAQUE, "opaque", NAN, SHARE },
  { PP_LIMIT_EXPOSED_CAUTION, "exposed_caution", 0.3, ANY },
  { PP_LIMIT_EXPOSED_FAULT, "exposed_fault", 3, ANY },
  { PP_LIMIT_KNOT_SHARE, "knot_share", 0.95, SHARE },
  { PP_LIMIT_PLACE, "place", 3, ANY },
  { PP_LIMIT_KNOT_EFFICIENCY, "knot_efficiency", 0.5, PART },
  { PP_LIMIT_DESIGN_FACTOR, "design_factor", 5, DIVIDES },
  { PP_LIMIT_TILT, "tilt", 2, ANY },
  { PP_LIMIT_LEAN, "lean", 5, ANY },
  { PP_LIMIT_GROUP, "group", 15, ANY },
  { PP_LIMIT_SEAM, "seam", 10, ANY },
  { PP_LIMIT_DAB_SMALL, "dab_small", 2, ANY },
};

G_STATIC_ASSERT (G_N_ELEMENTS (rows) == PP_N_LIMITS);

static void
test_names (gconstpointer data)
{
  const Row *row = data;
  double standard = pp_limit_get_default (row->limit);

  g_assert_cmpstr (pp_limit_get_key (row->limit), ==, row->key);
  g_assert_true (isnan (row->standard) ? isnan (standard) : standard == row->standard);
}

static void
check_value (const Row *row,
             double     value,
             gboolean   allowed)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *begins = g_strdup_printf ("%s: ", row->key);
  PpLimits limits;

  pp_limits_init (&limits);
  limits.value[row->limit] = value;
  g_assert_cmpint (pp_limits_check (&limits, &error), ==, allowed);
  if (allowed)
    g_assert_no_error (error);
  else
    small_assert_error (error, PP_PANEL_ERROR_VALUE, begins);
}

static void
test_range (gconstpointer data)
{
  const Row *row = data;
  gboolean ends_at_one = row->range == SHARE || row->range == PART;

  check_value (row, NAN, TRUE);
  check_value (row, 1, TRUE);
  check_value (row, 0, row->range != DIVIDES && row->range != PART);
  check_value (row, 1e-9, TRUE);
  check_value (row, 1.000001, !ends_at_one);
  check_value (row, 1e9, !ends_at_one);
  check_value (row, 1.000001e9, FALSE);
  check_value (row, -1e-9, FALSE);
  check_value (row, INFINITY, FALSE);
  check_value (row, -INFINITY, FALSE);
}

static void
test_init (void)
{
  PpLimits limits = { { 0 } };

  pp_limits_init (&limits);
  for (guint i = 0; i < PP_N_LIMITS; i++)
    g_assert_true (isnan (limits.value[i]));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *names = g_strdup_printf ("/limits/names/%s", rows[i].key);
      g_autofree char *range = g_strdup_printf ("/limits/range/%s", rows[i].key);

      g_test_add_data_func (names, &rows[i], test_names);
      g_test_add_data_func (range, &rows[i], test_range);
    }
  g_test_add_func ("/limits/init", test_init);
  return g_test_run ();
}
