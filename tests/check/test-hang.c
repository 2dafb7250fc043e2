/* test-hang.c: hook, tensions, tilt and lean.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "S" are rows of a collection of published values of loads on two cables; their sources stand
 * beside them. A load on two cables below a hook is the same as a panel that hangs level. What has
 * no published value is held against tests/reference/hang.py.
 */
#include "check/hang.h"
#include "check/questions.h"

#include "stack.h"

/* A panel without pieces, whose holes, wire and centre of mass the test chooses. */
typedef struct
{
  PpPoint from;
  PpPoint to;
  double  length;
  PpPoint centre;
  double  newtons;
} Case;

static TestDraft
draft_of (const Case *c)
{
  TestDraft draft;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_hole (&draft, "a", c->from.x, c->from.y, 6);
  test_draft_add_hole (&draft, "b", c->to.x, c->to.y, 6);
  test_draft_add_wire (&draft, c->length);
  return draft;
}

static PpMass
mass_of (const Case *c)
{
  return (PpMass) { c->newtons * 1000 / PP_GRAVITY, c->centre.x, c->centre.y, -3 };
}

static PpHang
hang (const Case *c)
{
  TestDraft draft = draft_of (c);
  g_autoptr (TestStack) stack = test_stack_new (&draft);
  PpMass mass = mass_of (c);
  PpHang self;

  pp_hang_init (&self, stack->scene, &mass);
  return self;
}

typedef struct
{
  const char *name;
  double      newtons;
  double      angles[2];   /* of the legs from the horizontal, degrees */
  double      tensions[2];
  double      within;
} Cables;

static const Cables cables[] = {
  /* OpenStax College Physics m42075, tightrope walker of 70.0 kg, g = 9.80. */
  { "s01", 686, { 5, 5 }, { 3935.5, 3935.5 }, 0.5 },
  /* The same, spider of 8.00e-5 kg. */
  { "s02", 7.84e-4, { 12, 12 }, { 1.8854e-3, 1.8854e-3 }, 1e-7 },
  /* OpenStax College Physics m42132, traffic light of 15.0 kg. */
  { "s03", 147, { 30, 45 }, { 107.61, 131.80 }, 0.01 },
  /* Answer pages to problems of college physics texts. */
  { "s04", 122, { 37, 53 }, { 73.4, 97.4 }, 0.05 },
  { "s05", 294, { 53, 37 }, { 234.8, 176.9 }, 0.05 },
  { "s06", 16, { 20, 20 }, { 23.39, 23.39 }, 0.01 },
  { "s07", 392, { 35, 40 }, { 310.9, 332.4 }, 0.05 },
  /* "Engineering Statics: Open and Interactive", chapter 3, "Two hanging weights": 80 left and 10
   * above, 50 right and 50 above. */
  { "s08", 100, { 7.125016, 45 }, { 89.58, 125.71 }, 0.01 },
  /* Michigan State University crane and rigging safety page: 60 and 30 degrees from vertical; each
   * leg is said to carry 1000 lb upright, here for each angle alone. */
  { "s16-sixty", 2000, { 60, 60 }, { 1154.7, 1154.7 }, 0.1 },
  { "s16-thirty", 2000, { 30, 30 }, { 2000, 2000 }, 0.1 },
};

static void
test_cables (gconstpointer data)
{
  const Cables *row = data;
  const double one = 150, other = 110; /* mm of each leg */
  const PpPoint hook = { 140, -20 };
  const double a = row->angles[0] * G_PI / 180, b = row->angles[1] * G_PI / 180;
  Case c = {
    .from = { hook.x - one * cos (a), hook.y + one * sin (a) },
    .to = { hook.x + other * cos (b), hook.y + other * sin (b) },
    .length = one + other,
    .centre = { hook.x, 250 },
    .newtons = row->newtons,
  };
  PpHang self = hang (&c);

  g_assert_true (self.has_level);
  g_assert_cmpfloat_with_epsilon (self.level_hook.x, hook.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (self.level_hook.y, hook.y, 1e-6);
  g_assert_cmpfloat_with_epsilon (self.level_tension[0], row->tensions[0], row->within);
  g_assert_cmpfloat_with_epsilon (self.level_tension[1], row->tensions[1], row->within);
  g_assert_cmpfloat_with_epsilon (self.wire_angle, fmin (row->angles[0], row->angles[1]), 1e-4);
  /* Euler-Eytelwein: the ratio of pulls is e to friction times angle of wrap. */
  g_assert_cmpfloat_with_epsilon (exp (self.friction_needed * (a + b)),
                                  fmax (row->tensions[0], row->tensions[1])
                                    / fmin (row->tensions[0], row->tensions[1]), 1e-3);
}

/* Angle factors 1/sin as a rigging chart prints them, 90 to 30 degrees from the horizontal. */
static void
test_angle_factors (void)
{
  const double factors[][2] = { { 85, 1.004 }, { 80, 1.015 }, { 75, 1.035 }, { 70, 1.064 },
                                { 65, 1.103 }, { 60, 1.155 }, { 55, 1.221 }, { 50, 1.305 },
                                { 45, 1.414 }, { 40, 1.556 }, { 35, 1.743 }, { 30, 2.000 } };

  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      const double length = 100 / cos (factors[i][0] * G_PI / 180);
      Case c = { { 100, 50 }, { 200, 50 }, length, { 150, 200 }, 2 };
      PpHang self = hang (&c);

      g_assert_cmpfloat_with_epsilon (self.middle_tension[0], factors[i][1], 0.0015);
      g_assert_cmpfloat_with_epsilon (self.level_tension[1], factors[i][1], 0.0015);
      g_assert_cmpfloat_with_epsilon (self.wire_angle, factors[i][0], 1e-6);
    }
}

/* Worked out: 1.8 kg, holes 240 mm apart, hook 60 mm above: leg 134.16 mm, 26.565 degrees, weight over
 * twice the sine 19.74 N; five times that is 98.7 N, and twice that with a knot of half strength. */
static void
test_panel (void)
{
  Case c = { { 30, 50 }, { 270, 50 }, 2 * 134.164, { 150, 200 }, 1.8 * PP_GRAVITY };
  TestDraft draft = draft_of (&c);
  PpMass mass = mass_of (&c);
  g_autoptr (TestStack) stack = NULL;
  PpHang self;

  draft.wire.breaking_load = 197.4;
  stack = test_stack_new (&draft);
  pp_hang_init (&self, stack->scene, &mass);
  g_assert_cmpfloat_with_epsilon (self.sag, 60, 0.001);
  g_assert_cmpfloat_with_epsilon (self.wire_angle, 26.565, 0.001);
  g_assert_cmpfloat_with_epsilon (self.middle_tension[0], 19.74, 0.005);
  g_assert_cmpfloat_with_epsilon (self.greatest_tension, 19.74, 0.005);
  g_assert_cmpfloat_with_epsilon (self.allowed_tension, 19.74, 1e-9);
  g_assert_cmpfloat_with_epsilon (self.wire_use, 1, 0.001);
  g_assert_cmpfloat_with_epsilon (self.drop, 150, 1e-9);
  g_assert_cmpfloat_with_epsilon (self.hook_above_edge, 10, 0.001);
  g_assert_true (self.holds);
}

/* By moments: a bar of 17.65 N on supports 240 apart, its mass 20 right of the middle: 10.30 and 7.35 N.
 * A hook very far up makes the legs upright. */
static void
test_bar (void)
{
  Case c = { { 30, 50 }, { 270, 50 }, 6e4, { 170, 200 }, 17.65 };
  PpHang self = hang (&c);

  g_assert_cmpfloat_with_epsilon (self.level_tension[0], 7.35, 0.01);
  g_assert_cmpfloat_with_epsilon (self.level_tension[1], 10.30, 0.01);
}

/* Rounding does not turn it the other way round. */
static void
test_upside_down (void)
{
  for (guint i = 0; i < 50; i++)
    {
      double left = 30 + i / 7.0;
      Case c = { { left, 401 }, { left + 240, 401 }, 300, { left + 120, 200 }, 17.65 };
      PpHang self = hang (&c);

      g_assert_cmpfloat (self.middle_tilt, ==, 180);
    }
}

/* How far above the centre of mass, along a line turned by `tilt` radians from the plumb, the legs
 * are as long as the wire. */
static PpPoint
find_hook (const Case *c,
           double      tilt)
{
  double near = 0, far = 1000;
  PpPoint hook = c->centre;

  while (far - near > 1e-9)
    {
      double s = (near + far) / 2;

      hook = (PpPoint) { c->centre.x - s * sin (tilt), c->centre.y - s * cos (tilt) };
      if (pp_point_distance (hook, c->from) + pp_point_distance (hook, c->to) < c->length)
        near = s;
      else
        far = s;
    }
  return hook;
}

/* Cosine of the angle between the leg from `hook` to `hole` and the plumb line. */
static double
lean_of_leg (PpPoint hook,
             PpPoint hole,
             double  tilt)
{
  double along = (hole.x - hook.x) * sin (tilt) + (hole.y - hook.y) * cos (tilt);

  return along / pp_point_distance (hook, hole);
}

/* Freely sliding, the hook is a pulley: both legs pull alike, so at rest they lean alike from the
 * plumb line through the hook and the centre of mass. */
static void
test_slips (void)
{
  Case c = { { 100, 50 }, { 200, 50 }, 110, { 150, 90 }, 10 };
  PpHang self = hang (&c);
  double tilt = self.slips_to[1] * G_PI / 180;
  PpPoint hook = find_hook (&c, tilt);

  /* b·D = 22.9 · 40 < 50²: it does not level itself. */
  g_assert_false (self.self_levelling);
  g_assert_cmpuint (self.n_slips_to, ==, 2);
  g_assert_cmpfloat_with_epsilon (self.slips_to[0], -self.slips_to[1], 1e-6);
  g_assert_cmpfloat (self.slips_to[1], >, 5);
  g_assert_cmpfloat_with_epsilon (lean_of_leg (hook, c.from, tilt), lean_of_leg (hook, c.to, tilt),
                                  1e-6);
  c.length = 220; /* b·D = 98 · 40 > 50² */
  self = hang (&c);
  g_assert_true (self.self_levelling);
  g_assert_cmpuint (self.n_slips_to, ==, 1);
  g_assert_cmpfloat_with_epsilon (self.slips_to[0], 0, 1e-9);
}

static void
test_lean (void)
{
  Case c = { { 100, 50 }, { 200, 50 }, NAN, { 150, 150 }, 20 };
  PpHang self = hang (&c);

  /* Of 6 mm of glass and 1.2 mm of wire the mass is 3.6 mm before the wire. */
  g_assert_true (self.is_taut);
  g_assert_cmpfloat_with_epsilon (tan (self.lean * G_PI / 180), 0.036, 1e-12);
  /* Moments about the holes: 350 mm down to the lower edge. */
  g_assert_cmpfloat_with_epsilon (self.wall_push * 350, 20 * 3.6, 1e-9);
  g_assert_true (isnan (self.middle_tilt));
  g_assert_true (isnan (self.greatest_tension));
  g_assert_true (isnan (self.hook.x));
  c.centre.y = 30;
  self = hang (&c);
  g_assert_cmpfloat_with_epsilon (self.drop, -20, 1e-9);
  g_assert_true (isnan (self.lean));
}

/* Mirrored in an upright, everything is mirrored; half again as heavy, half again as tight. */
static void
test_mirrored_and_heavier (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (24);

  for (int run = 0; run < 80; run++)
    {
      Case c = {
        .from = { g_rand_double_range (random, 0, 300), g_rand_double_range (random, 0, 300) },
        .to = { g_rand_double_range (random, 0, 300), g_rand_double_range (random, 0, 300) },
        .centre = { g_rand_double_range (random, 0, 300), g_rand_double_range (random, 0, 400) },
        .newtons = g_rand_double_range (random, 1, 40),
      };
      Case image, heavy;
      PpHang self, mirrored, heavier;

      if (run % 7 == 0)
        c.to.x = c.from.x; /* one above the other */
      c.length = pp_point_distance (c.from, c.to) * g_rand_double_range (random, 1.01, 3);
      image = heavy = c;
      image.from.x = 300 - c.from.x;
      image.to.x = 300 - c.to.x;
      image.centre.x = 300 - c.centre.x;
      heavy.newtons *= 1.5;
      self = hang (&c);
      mirrored = hang (&image);
      heavier = hang (&heavy);
      g_assert_cmpfloat_with_epsilon (self.middle_tilt, -mirrored.middle_tilt, 1e-6);
      g_assert_cmpfloat_with_epsilon (self.drop, mirrored.drop, 1e-9);
      g_assert_cmpint (self.has_level, ==, mirrored.has_level);
      g_assert_cmpuint (self.n_slips_to, ==, mirrored.n_slips_to);
      for (guint i = 0; i < self.n_slips_to; i++)
        g_assert_cmpfloat_with_epsilon (self.slips_to[i],
                                        -mirrored.slips_to[self.n_slips_to - 1 - i], 1e-4);
      for (guint i = 0; i < 2; i++)
        if (!isnan (self.level_tension[i]))
          {
            g_assert_cmpfloat_with_epsilon (self.level_tension[i] / mirrored.level_tension[i], 1,
                                            1e-6);
            g_assert_cmpfloat_with_epsilon (heavier.level_tension[i] / self.level_tension[i], 1.5,
                                            1e-6);
          }
    }
}

/* Two holes in one place: a circle, on which the hook goes straight above the mass. */
static void
test_one_place (void)
{
  Case c = { { 150, 50 }, { 150, 50 }, 100, { 165, 170 }, 10 };
  PpHang self = hang (&c);

  g_assert_cmpfloat_with_epsilon (self.sag, 50, 1e-9);
  g_assert_cmpuint (self.n_slips_to, ==, 1);
  g_assert_cmpfloat_with_epsilon (tan (self.slips_to[0] * G_PI / 180), 15.0 / 120, 1e-9);
  g_assert_true (isnan (self.middle_tension[0]));
}

/* Legs along one line: how they share the weight is nobody's to say, least of all rounding's. */
static void
test_one_line (void)
{
  static const double aside[] = { 0, 7e-15, 1.5e-14, 1e-12, 1e-9 };

  for (guint i = 0; i < G_N_ELEMENTS (aside); i++)
    {
      Case together = { { 150, 50 }, { 150 + aside[i], 50 }, 100, { 150 + aside[i] / 2, 170 }, 10 };
      Case above = { { 20, 60 }, { 20 + aside[i], 74 }, 52, { 20 + aside[i] / 2, 150 }, 10 };
      PpHang circle = hang (&together), column = hang (&above);

      g_assert_true (isnan (circle.middle_tension[0]));
      g_assert_true (isnan (circle.level_tension[0]));
      g_assert_true (column.has_level);
      g_assert_true (isnan (column.level_tension[0]));
      g_assert_true (isnan (column.friction_needed));
    }
}

typedef struct
{
  const char *name;
  Case        c;
  PpPlace     place;
  double      safe_load;
  double      hook_rating;
  const char *codes[4];
  PpLevel     level; /* of the first */
  double      value;
  double      limit;
} Row;

static const Row rows[] = {
  { "all-well", { { 100, 50 }, { 200, 50 }, 240, { 150, 200 }, 18 }, PP_PLACE_WALL, 30, 3,
    { NULL } },
  { "turns-over", { { 100, 250 }, { 200, 250 }, 240, { 150, 200 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { "turns-over" }, PP_LEVEL_FAULT, -50, 0 },
  { "wire-short", { { 100, 50 }, { 200, 50 }, 90, { 150, 200 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { "wire-short" }, PP_LEVEL_FAULT, 90, 100 },
  { "wire-taut", { { 100, 50 }, { 200, 50 }, NAN, { 150, 200 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { "wire-taut" }, PP_LEVEL_CAUTION, NAN, NAN },
  { "wire-just-taut", { { 100, 50 }, { 200, 50 }, 100, { 150, 200 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { "wire-taut" }, PP_LEVEL_CAUTION, NAN, NAN },
  { "not-level", { { 20, 50 }, { 60, 50 }, 60, { 200, 200 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { "not-level", "slips" }, PP_LEVEL_CAUTION, 42.870, NAN },
  /* By numpy, 2 000 000 points of the ellipse. */
  { "slips", { { 30, 50 }, { 270, 50 }, 260, { 150, 200 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { "slips" }, PP_LEVEL_NOTE, 32.2271, 2 },
  { "wire-load", { { 100, 50 }, { 200, 50 }, 240, { 150, 200 }, 18 }, PP_PLACE_WALL, 9, NAN,
    { "wire-load" }, PP_LEVEL_FAULT, 9.901, 9 },
  { "leans", { { 100, 50 }, { 200, 50 }, 240, { 150, 80 }, 18 }, PP_PLACE_WINDOW, NAN, NAN,
    { "leans" }, PP_LEVEL_NOTE, 6.8428, 5 },
  { "leans-on-a-wall", { { 100, 50 }, { 200, 50 }, 240, { 150, 80 }, 18 }, PP_PLACE_WALL, NAN, NAN,
    { NULL } },
  { "hook-load", { { 100, 50 }, { 200, 50 }, 240, { 150, 200 }, 2 * PP_GRAVITY }, PP_PLACE_WALL,
    NAN, 1.5, { "hook-load" }, PP_LEVEL_FAULT, 2, 1.5 },
};

static void
compare (const PpFinding *finding,
         const Row       *row)
{
  g_assert_cmpint (finding->level, ==, row->level);
  g_assert_cmpint (isnan (finding->value) != 0, ==, isnan (row->value) != 0);
  g_assert_cmpint (isnan (finding->limit) != 0, ==, isnan (row->limit) != 0);
  if (!isnan (row->value))
    g_assert_cmpfloat_with_epsilon (finding->value, row->value, 0.01);
  if (!isnan (row->limit))
    g_assert_cmpfloat_with_epsilon (finding->limit, row->limit, 1e-9);
}

static void
test_findings (gconstpointer data)
{
  const Row *row = data;
  TestDraft draft = draft_of (&row->c);
  PpMass mass = mass_of (&row->c);
  g_autoptr (TestStack) stack = NULL;
  PpFindings findings;
  PpHang self;
  guint n = 0;

  draft.display.place = row->place;
  draft.display.hook_rating = row->hook_rating;
  draft.wire.safe_load = row->safe_load;
  stack = test_stack_new (&draft);
  pp_hang_init (&self, stack->scene, &mass);
  pp_findings_init (&findings, stack->panel);
  pp_ask_hang (&findings, &(PpCheck) { .scene = stack->scene, .hang = &self, .mass = mass });
  for (; row->codes[n] != NULL; n++)
    {
      const PpFinding *finding;

      g_assert_cmpuint (findings.list->len, >, n);
      finding = g_ptr_array_index (findings.list, n);
      g_assert_cmpstr (finding->code, ==, row->codes[n]);
      g_assert_cmpstr (finding->about[0], ==,
                       g_str_equal (finding->code, "hook-load") ? "hook" : "wire");
      g_assert_true (isfinite (finding->at.x) && isfinite (finding->at.y));
      if (n == 0)
        compare (finding, row);
    }
  g_assert_cmpuint (findings.list->len, ==, n);
  pp_findings_clear (&findings);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cables); i++)
    {
      g_autofree char *path = g_strconcat ("/hang/cables/", cables[i].name, NULL);

      g_test_add_data_func (path, &cables[i], test_cables);
    }
  g_test_add_func ("/hang/angle-factors", test_angle_factors);
  g_test_add_func ("/hang/panel", test_panel);
  g_test_add_func ("/hang/bar", test_bar);
  g_test_add_func ("/hang/upside-down", test_upside_down);
  g_test_add_func ("/hang/slips", test_slips);
  g_test_add_func ("/hang/lean", test_lean);
  g_test_add_func ("/hang/mirrored-and-heavier", test_mirrored_and_heavier);
  g_test_add_func ("/hang/one-place", test_one_place);
  g_test_add_func ("/hang/one-line", test_one_line);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/hang/findings/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_findings);
    }
  return g_test_run ();
}
