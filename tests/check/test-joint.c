/* test-joint.c: glue under a piece: where, how much, how hard it is pulled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "E" are rows of a collection of published values. Stresses are held against the handbook
 * formulas of a solid round section, 32M/(πD³) in bending and 16T/(πD³) in torsion, and against
 * moments of area summed up over a fine grid.
 */
#include "check/questions.h"

#include "stack.h"

#define SQUARE "-20 -20, 20 -20, 20 20, -20 20"
#define NEARLY_FLAT 1e-5 /* mm thick: a piece without height bends nothing */
#define CLOSE 1e-9

/* Area by thickness: 1000 mm² x 0.10 mm is 0.100 ml, 2500 mm² x 0.15 mm is 0.375 ml. */
static void
test_capacity (void)
{
  TestDraft draft;
  g_autoptr (TestStack) thin = NULL;
  g_autoptr (TestStack) thick = NULL;

  test_draft_init (&draft, 300, 300, 6);
  draft.panel.limits.value[PP_LIMIT_BOND] = 0.10;
  test_draft_add_piece (&draft, "leaf", "0 0, 50 0, 50 20, 0 20", 4, 10, NULL);
  test_draft_place (&draft, "p1", "leaf", 100, 100);
  thin = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (thin->joints[0]->area, 1000, CLOSE);
  g_assert_cmpfloat_with_epsilon (thin->joints[0]->capacity, 0.100, CLOSE);

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "leaf", "0 0, 50 0, 50 50, 0 50", 4, 10, NULL);
  test_draft_place (&draft, "p1", "leaf", 100, 100);
  thick = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (thick->joints[0]->capacity, 0.375, CLOSE);
}

/* A dab of 8 mm covers the 197 lattice points within 8 steps of one (Gauss's circle problem,
 * OEIS A000328, and counted), each a cell of 0.25 mm². */
static void
test_dab_volume (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;

  test_draft_init (&draft, 300, 300, 6);
  draft.panel.limits.value[PP_LIMIT_DAB_LEAST] = 0;
  test_draft_add_piece (&draft, "leaf", SQUARE, 4, 10, NULL);
  test_draft_place (&draft, "p1", "leaf", 100.25, 100.25);
  stack = test_stack_new (&draft);
  g_assert_cmpuint (stack->joints[0]->n_dabs, ==, 1);
  g_assert_cmpfloat_with_epsilon (stack->joints[0]->volume, 1.3 * 197 * 0.25 * 0.15 / 1000, CLOSE);
  g_assert_cmpfloat_with_epsilon (stack->joints[0]->places[0].at.x, 100.25, CLOSE);
}

/* Weight by area: a 60 g flower on a round pad of 12 mm shears it with 5.20 kPa. */
static void
test_shear (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  double kilopascals;

  test_draft_init (&draft, 300, 300, 6);
  draft.panel.limits.value[PP_LIMIT_DAB] = 12;
  test_draft_add_piece (&draft, "flower", SQUARE, NEARLY_FLAT, 60, NULL);
  test_draft_place (&draft, "p1", "flower", 100.25, 100.25);
  stack = test_stack_new (&draft);
  kilopascals = stack->joints[0]->utilisation * 0.5 * 1000 / sqrt (3);
  g_assert_cmpfloat_with_epsilon (kilopascals, 5.20, 0.01);
}

/* One on another, the upper 3 mm aside: the lower dab bends and twists under both. */
static void
test_round_section (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  const double d3 = G_PI * 8 * 8 * 8;
  const double lower = 0.100 * 9.80665, upper = 0.040 * 9.80665; /* N */
  double sigma, tau;

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "below", SQUARE, 10, 100, NULL);
  test_draft_add_piece (&draft, "above", "-15 -15, 15 -15, 15 15, -15 15", 4, 40, NULL);
  test_draft_place (&draft, "p1", "below", 100.25, 100.25);
  test_draft_place (&draft, "p2", "above", 103.25, 100.25);
  stack = test_stack_new (&draft);
  sigma = 32 * upper * 2 / d3;
  tau = 4 * upper / (G_PI * 64);
  g_assert_cmpfloat_with_epsilon (stack->joints[1]->utilisation,
                                  sqrt (sigma * sigma + 3 * tau * tau) / 0.5, CLOSE);
  sigma = 32 * (lower * 5 + upper * 12) / d3;
  tau = 4 * (lower + upper) / (G_PI * 64) + 16 * upper * 3 / d3;
  g_assert_cmpfloat_with_epsilon (stack->joints[0]->utilisation,
                                  sqrt (sigma * sigma + 3 * tau * tau) / 0.5, CLOSE);
}

/* Moments of area of all dabs about their common centroid, over squares of `step`. */
static void
sum_up_squares (const PpJoint *joint,
                double         step,
                PpPoint        about,
                double        *second,
                double        *polar)
{
  *second = *polar = 0;
  for (guint i = 0; i < joint->n_dabs; i++)
    {
      double radius = joint->places[i].diameter / 2;

      for (double y = step / 2 - radius; y < radius; y += step)
        for (double x = step / 2 - radius; x < radius; x += step)
          if (x * x + y * y < radius * radius)
            {
              double dx = joint->places[i].at.x + x - about.x;
              double dy = joint->places[i].at.y + y - about.y;

              *second += dy * dy * step * step;
              *polar += (dx * dx + dy * dy) * step * step;
            }
    }
}

/* A long upright piece has a dab in the middle and one at each end; stresses by sums. */
static void
test_several_dabs (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  const PpJoint *joint;
  const double force = 0.300 * 9.80665;
  PpPoint middle = { 0, 0 };
  double second, polar, edge = 0, reach = 0, sigma, tau;

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "stem", "-10 -90, 10 -90, 10 90, -10 90", 6, 300, NULL);
  test_draft_place (&draft, "p1", "stem", 100.25, 150.25);
  stack = test_stack_new (&draft);
  joint = stack->joints[0];
  g_assert_cmpuint (joint->n_dabs, ==, 3); /* one every 60 mm of 180 */
  g_assert_cmpfloat_with_epsilon (joint->places[0].at.y, 150.25, CLOSE);
  /* The two far corners of the place for dabs, whose left is 3.5 mm in: least y, least x. */
  g_assert_cmpfloat_with_epsilon (joint->places[1].at.x, 100.25 - 10 + 3.5, CLOSE);
  g_assert_cmpfloat_with_epsilon (joint->places[1].at.y, 60.25 + 3.5, CLOSE);
  g_assert_cmpfloat (joint->places[2].at.y, >, 230);

  for (guint i = 0; i < 3; i++)
    {
      middle.x += joint->places[i].at.x / 3;
      middle.y += joint->places[i].at.y / 3;
    }
  for (guint i = 0; i < 3; i++)
    {
      edge = fmax (edge, fabs (joint->places[i].at.y - middle.y) + 4);
      reach = fmax (reach, pp_point_distance (joint->places[i].at, middle) + 4);
    }
  sum_up_squares (joint, 0.01, middle, &second, &polar);
  sigma = force * 3 * edge / second;
  tau = force / (3 * G_PI * 16) + force * fabs (100.25 - middle.x) * reach / polar;
  g_assert_cmpfloat_with_epsilon (joint->utilisation, sqrt (sigma * sigma + 3 * tau * tau) / 0.5,
                                  1e-6);
}

/* A heavy piece takes more dabs than its length asks for, as far as it has room. */
static void
test_strain_asks_for_dabs (void)
{
  double greatest = 0;
  guint n_before = 0;

  for (double grams = 100; grams < 1e6; grams *= 3)
    {
      TestDraft draft;
      g_autoptr (TestStack) stack = NULL;
      const PpJoint *joint;

      test_draft_init (&draft, 300, 300, 6);
      test_draft_add_piece (&draft, "block", SQUARE, 20, grams, NULL);
      test_draft_place (&draft, "p1", "block", 100, 100);
      stack = test_stack_new (&draft);
      joint = stack->joints[0];
      g_assert_cmpuint (joint->n_dabs, >=, n_before);
      g_assert_true (joint->utilisation <= 0.5 || joint->n_dabs == joint->n_places);
      n_before = joint->n_dabs;
      greatest = joint->utilisation;
    }
  g_assert_cmpuint (n_before, ==, PP_MAX_DABS);
  g_assert_cmpfloat (greatest, >, 1);
}

/* Dabs lie apart, inside the piece, and never over a knot. */
static void
test_dabs_keep_apart (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  const PpJoint *joint;

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_hole (&draft, "a", 80, 100, 6);
  test_draft_add_hole (&draft, "b", 220, 100, 6);
  test_draft_add_wire (&draft, 200);
  draft.wire.knot_height = 0.5;
  test_draft_add_piece (&draft, "leaf", "-20 -12, 30 -12, 20 12, -20 12", 4, 60, NULL);
  test_draft_place (&draft, "p1", "leaf", 80, 105);
  stack = test_stack_new (&draft);
  joint = stack->joints[0];
  g_assert_cmpuint (joint->n_places, >, 2);
  g_assert_cmpfloat (joint->area, <, stack->scene->bodies[0]->area - G_PI * 15);
  for (guint i = 0; i < joint->n_places; i++)
    {
      g_assert_cmpfloat (pp_point_distance (joint->places[i].at, (PpPoint) { 80, 100 }), >=,
                         4 + joint->places[i].diameter / 2 - PP_CELL);
      for (guint k = 0; k < i; k++)
        g_assert_cmpfloat (pp_point_distance (joint->places[i].at, joint->places[k].at), >=,
                           (joint->places[i].diameter + joint->places[k].diameter) / 2 - 1e-6);
    }
}

/* A dab is no wider than what it lies on, and where no region reaches dab_small (2 mm) the widest
 * still takes some. */
static void
test_narrow (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "strip", "0 0, 30 0, 30 3, 0 3", 3, 5, NULL);
  test_draft_add_piece (&draft, "thread", "0 0, 30 0, 30 1, 0 1", 3, 1, NULL);
  test_draft_place (&draft, "p1", "strip", 100, 100);
  test_draft_place (&draft, "p2", "thread", 100, 150);
  stack = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (stack->joints[0]->places[0].diameter, 3, CLOSE);
  g_assert_cmpfloat_with_epsilon (stack->joints[1]->places[0].diameter, 1, CLOSE);
}

/* A panel and its mirror image, neither on the middle of its cells: the same glue. */
static void
test_mirrored (void)
{
  TestDraft draft;
  g_autoptr (TestStack) one = NULL;
  g_autoptr (TestStack) other = NULL;

  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "leaf", "-15 -10, 25 -8, 20 14, -20 9", 4, 60, NULL);
  test_draft_add_piece (&draft, "bar", "-15 -20, 15 -20, 15 20, -15 20", 2, 20, NULL);
  test_draft_place (&draft, "p1", "bar", 100, 100);
  test_draft_place (&draft, "p2", "leaf", 100.1, 105);
  one = test_stack_new (&draft);
  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "leaf", "15 -10, -25 -8, -20 14, 20 9", 4, 60, NULL);
  test_draft_add_piece (&draft, "bar", "-15 -20, 15 -20, 15 20, -15 20", 2, 20, NULL);
  test_draft_place (&draft, "p1", "bar", 200, 100);
  test_draft_place (&draft, "p2", "leaf", 199.9, 105);
  other = test_stack_new (&draft);
  g_assert_cmpfloat_with_epsilon (one->joints[1]->area, other->joints[1]->area, CLOSE);
  g_assert_cmpfloat_with_epsilon (one->joints[1]->capacity, other->joints[1]->capacity, CLOSE);
  g_assert_cmpfloat_with_epsilon (one->joints[1]->places[0].at.x,
                                  300 - other->joints[1]->places[0].at.x, CLOSE);
  g_assert_cmpfloat_with_epsilon (one->joints[1]->places[0].at.y,
                                  other->joints[1]->places[0].at.y, CLOSE);
}

typedef struct
{
  const char *name;
  double      grams;
  double      transmittance;
  double      knot_height; /* of a knot under its middle; 0: none */
  double      fill_gap;
  double      dab_least;   /* ml */
  const char *codes[3];
  PpLevel     level;       /* of the first */
} Row;

static const Row rows[] = {
  { "all-well", 40, 0, 0, 1.5, 0, { NULL }, PP_LEVEL_NOTE },
  { "strain-caution", 700, 0, 0, 1.5, 0, { "strain" }, PP_LEVEL_CAUTION },
  { "strain-fault", 60000, 0, 0, 1.5, 0, { "strain" }, PP_LEVEL_FAULT },
  { "glue-shows", 40, 0.5, 0, 1.5, 0, { "glue-shows" }, PP_LEVEL_NOTE },
  { "squeeze", 40, 0, 0, 1.5, 0.05, { "squeeze" }, PP_LEVEL_NOTE },
  { "two", 700, 0, 0, 1.5, 0.05, { "strain", "squeeze" }, PP_LEVEL_CAUTION },
  { "no-joint", 40, 0, 3, 0.2, 0, { "no-joint" }, PP_LEVEL_FAULT },
};

/* One dab fits under it; its edges stay off the glass where a knot lifts it. */
static void
test_findings (gconstpointer data)
{
  const Row *row = data;
  PpPiece piece = pp_piece_draft ();
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;
  guint n = 0;

  test_draft_init (&draft, 300, 300, 6);
  draft.display.place = PP_PLACE_WINDOW;
  draft.adhesive.fill_gap = row->fill_gap;
  draft.panel.limits.value[PP_LIMIT_DAB_LEAST] = row->dab_least;
  test_draft_add_hole (&draft, "a", 100, 100, 6);
  test_draft_add_hole (&draft, "b", 200, 100, 6);
  test_draft_add_wire (&draft, 200);
  piece.transmittance = row->transmittance;
  piece.name = "Mallow";
  if (row->knot_height > 0)
    draft.wire.knot_height = row->knot_height;
  draft.wire.knot_diameter = 14;
  test_draft_add_piece (&draft, "mallow", "-6 -6, 6 -6, 6 6, -6 6", 4, row->grams, &piece);
  test_draft_place (&draft, "p1", "mallow", 100.25, row->knot_height > 0 ? 100.25 : 160.25);
  stack = test_stack_new (&draft);
  pp_findings_init (&findings, stack->panel);
  pp_ask_joint (&findings, &(PpCheck) { .scene = stack->scene, .rests = stack->rests,
                                        .joints = stack->joints });
  while (row->codes[n] != NULL)
    n++;
  g_assert_cmpuint (findings.list->len, ==, n);
  for (guint i = 0; i < n; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings.list, i);

      g_assert_cmpstr (finding->code, ==, row->codes[i]);
      g_assert_cmpstr (finding->about[0], ==, "p1");
      g_assert_null (finding->about[1]);
      g_assert_nonnull (g_strstr_len (finding->text, -1, "Mallow"));
      if (i == 0)
        g_assert_cmpint (finding->level, ==, row->level);
    }
  pp_findings_clear (&findings);
}

/* A high dome meets the glass with the tips of its corners alone. */
static void
test_joint_small (void)
{
  PpPiece dome = pp_piece_draft ();
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;
  const PpFinding *small = NULL;

  dome.form.kind = PP_FORM_DOMED;
  dome.form.rise = 40;
  test_draft_init (&draft, 300, 300, 6);
  test_draft_add_piece (&draft, "dome", SQUARE, 4, 10, &dome);
  test_draft_place (&draft, "p1", "dome", 100, 100);
  stack = test_stack_new (&draft);
  g_assert_cmpuint (stack->joints[0]->n_dabs, >, 0);
  pp_findings_init (&findings, stack->panel);
  pp_ask_joint (&findings, &(PpCheck) { .scene = stack->scene, .rests = stack->rests,
                                        .joints = stack->joints });
  for (guint i = 0; i < findings.list->len; i++)
    if (g_str_equal (((PpFinding *) g_ptr_array_index (findings.list, i))->code, "joint-small"))
      small = g_ptr_array_index (findings.list, i);
  g_assert_nonnull (small);
  g_assert_cmpint (small->level, ==, PP_LEVEL_CAUTION);
  g_assert_cmpfloat_with_epsilon (small->value, stack->joints[0]->area / 1600, CLOSE);
  g_assert_cmpfloat (small->limit, ==, 0.02);
  pp_findings_clear (&findings);
}

/* Leant on a bar, in touch along two lines, with neither gap nor bond: what rounding leaves there
 * holds no glue. */
static void
test_no_room (void)
{
  TestDraft draft;
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;
  const PpFinding *squeeze = NULL;

  test_draft_init (&draft, 300, 300, 6);
  draft.adhesive.fill_gap = 0;
  draft.panel.limits.value[PP_LIMIT_BOND] = 0;
  test_draft_add_piece (&draft, "bar", "-3 -20, 3 -20, 3 20, -3 20", 3, 10, NULL);
  test_draft_add_piece (&draft, "leaf", SQUARE, 4, 40, NULL);
  test_draft_place (&draft, "p1", "bar", 100, 100);
  test_draft_place (&draft, "p2", "leaf", 107.3, 100);
  stack = test_stack_new (&draft);
  g_assert_cmpuint (stack->joints[1]->n_dabs, >, 0);
  g_assert_cmpfloat (stack->joints[1]->capacity, !=, 0);
  pp_findings_init (&findings, stack->panel);
  pp_ask_joint (&findings, &(PpCheck) { .scene = stack->scene, .rests = stack->rests,
                                        .joints = stack->joints });
  for (guint i = 0; i < findings.list->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings.list, i);

      if (g_str_equal (finding->code, "squeeze") && g_str_equal (finding->about[0], "p2"))
        squeeze = finding;
    }
  g_assert_nonnull (squeeze);
  g_assert_true (isnan (squeeze->value));
  pp_findings_clear (&findings);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/joint/capacity", test_capacity);
  g_test_add_func ("/joint/dab-volume", test_dab_volume);
  g_test_add_func ("/joint/shear", test_shear);
  g_test_add_func ("/joint/round-section", test_round_section);
  g_test_add_func ("/joint/several-dabs", test_several_dabs);
  g_test_add_func ("/joint/strain-asks-for-dabs", test_strain_asks_for_dabs);
  g_test_add_func ("/joint/dabs-keep-apart", test_dabs_keep_apart);
  g_test_add_func ("/joint/narrow", test_narrow);
  g_test_add_func ("/joint/mirrored", test_mirrored);
  g_test_add_func ("/joint/small", test_joint_small);
  g_test_add_func ("/joint/no-room", test_no_room);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/joint/findings/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_findings);
    }
  return g_test_run ();
}
