/* test-conceal.c: the wire straight on and aslant, knots and holes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/conceal-private.h"
#include "check/questions.h"
#include "shape/refraction.h"

#include "stack.h"

#define EXACT 1e-9
#define RADIANS (G_PI / 180)

/* Refraction: textbook values. "OSC" and "OSU" are open physics textbooks, by module; angles in
 * degrees with the tolerance to which they are printed. */
typedef struct
{
  const char *name;
  double      incidence;
  double      index; /* of the medium entered over that left */
  double      refraction;
  double      tolerance;
} Snell;

static const Snell snells[] = {
  { "osc-m42459/water", 30.0, 1.33, 22.0, 0.1 },
  { "osc-m42459/diamond", 30.0, 2.419, 11.9, 0.05 },
  { "osu-m58510/plastic", 35.0, 1.53, 22.0, 0.05 },
  { "osu-m58510/water", 70.0, 1.333, 45.0, 0.3 },
  { "osu-m58510/out-of-water", 30.0, 1 / 1.333, 42.0, 0.3 },
  { "osu-m58510/glass", 35.0, 1.50, 22.48, 0.01 },
  { "critical-1.50", 41.81, 1 / 1.50, 90.0, 0.3 }, /* Snell, computed */
};

static void
test_snell (gconstpointer data)
{
  const Snell *row = data;
  double sine = pp_refraction_sine (sin (row->incidence * RADIANS), row->index);

  g_assert_cmpfloat_with_epsilon (asin (fmin (1, sine)) / RADIANS, row->refraction, row->tolerance);
}

/* Lateral shift of a ray through a slab, s = t sin i (1 - cos i / sqrt (n² - sin² i)); 10.25 is a
 * worked problem's (printed as 1.03 cm), the others computed from the same formula. */
typedef struct
{
  double thickness;
  double index;
  double incidence;
  double shift;
  double tolerance;
} Slab;

static const Slab slabs[] = {
  { 20, 1.5, 60, 10.25, 0.05 }, { 55.75, 1.6, 45, 20, 0.05 },  { 80, 1.81, 60, 47.49, 0.05 },
  { 6, 1.5, 30, 1.163, 0.002 }, { 6, 1.52, 45, 2.013, 0.002 },
};

static double
lateral_shift (double thickness,
               double index,
               double incidence)
{
  double tangent = tan (incidence * RADIANS);

  return (thickness * tangent - pp_refraction_shift (thickness, tangent, index))
         * cos (incidence * RADIANS);
}

static void
test_slabs (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (slabs); i++)
    g_assert_cmpfloat_with_epsilon (
        lateral_shift (slabs[i].thickness, slabs[i].index, slabs[i].incidence), slabs[i].shift,
        slabs[i].tolerance);
  for (int i = 0; i < 90; i++)
    {
      g_assert_cmpfloat_with_epsilon (lateral_shift (6, 1, i), 0, EXACT);
      g_assert_cmpfloat (lateral_shift (6, 1.52, i + 0.5), >, lateral_shift (6, 1.52, i));
    }
  g_assert_cmpfloat_with_epsilon (lateral_shift (6, 1.52, 89.99), 6, 0.01);
  g_assert_cmpfloat (pp_refraction_shift (6, 0, 1.52), ==, 0);
  /* Seen nearly straight on, 6 mm of 1.52 look like 3.947 (apparent depth, t / n). */
  g_assert_cmpfloat_with_epsilon (pp_refraction_shift (6, 1e-4, 1.52) / 1e-4, 3.947, 0.001);
}

/* A panel of 300 by 400 with holes at (100, 100) and (200, 100). */
static void
begin (TestDraft *draft,
       double     wire_length)
{
  test_draft_init (draft, 300, 400, 6);
  test_draft_add_hole (draft, "a", 100, 100, 6);
  test_draft_add_hole (draft, "b", 200, 100, 6);
  test_draft_add_wire (draft, wire_length);
}

static void
add (TestDraft  *draft,
     const char *id,
     const char *outline,
     double      transmittance)
{
  PpPiece piece = pp_piece_draft ();
  g_autofree char *placed = g_strconcat ("p-", id, NULL);

  piece.transmittance = transmittance;
  piece.kind = PP_KIND_LEAF;
  piece.name = id;
  test_draft_add_piece (draft, id, outline, 4, NAN, &piece);
  test_draft_place (draft, placed, id, 0, 0);
}

typedef struct
{
  TestStack *stack;
  PpHang     hang;
  PpConceal *conceal;
} Look;

static void
look_init (Look      *self,
           TestDraft *draft)
{
  self->stack = test_stack_new (draft);
  if (self->stack->panel->wire != NULL)
    pp_hang_init (&self->hang, self->stack->scene, &self->stack->mass);
  self->conceal = pp_conceal_new (&(PpSettled) { self->stack->scene, self->stack->rests },
                                  self->stack->panel->wire != NULL ? &self->hang : NULL, NULL, NULL);
}

static void
look_clear (Look *self)
{
  pp_conceal_free (self->conceal);
  test_stack_free (self->stack);
}

static void
test_bare (void)
{
  TestDraft draft;
  Look look;

  begin (&draft, NAN);
  look_init (&look, &draft);
  g_assert_cmpfloat (look.conceal->lying.length, ==, 100);
  g_assert_cmpfloat (look.conceal->lying.share, ==, 0);
  g_assert_cmpuint (look.conceal->lying.n_exposed, ==, 1);
  g_assert_cmpfloat (look.conceal->lying.exposed[0].length, ==, 100);
  g_assert_cmpfloat (look.conceal->knots[0].share, ==, 0);
  g_assert_cmpfloat (look.conceal->worst.share, ==, 0);
  g_assert_cmpfloat (look.conceal->worst.sideways, ==, -30);
  g_assert_cmpfloat (look.conceal->worst.updown, ==, -15);
  look_clear (&look);
}

/* A leaf from 120 to 160 straight across, drawn in by 3 mm from 123 to 157. */
static void
test_stretches (void)
{
  TestDraft draft;
  Look look;
  const PpPath *path;

  begin (&draft, NAN);
  add (&draft, "leaf", "120 80, 160 80, 160 120, 120 120", 0);
  look_init (&look, &draft);
  path = &look.conceal->hung;
  g_assert_cmpuint (path->n_exposed, ==, 2);
  g_assert_cmpfloat_with_epsilon (path->exposed[0].length, 20, EXACT);
  g_assert_cmpfloat_with_epsilon (path->exposed[0].to.x, 120, EXACT);
  g_assert_cmpfloat_with_epsilon (path->exposed[1].from.x, 160, EXACT);
  g_assert_cmpfloat_with_epsilon (path->exposed[1].length, 40, EXACT);
  g_assert_cmpfloat_with_epsilon (path->share, 0.4, EXACT);
  g_assert_cmpfloat (path->beyond, ==, 0);
  g_assert_cmpfloat_with_epsilon (look.conceal->barely, 66, EXACT);
  look_clear (&look);
}

/* A notch whose tip stands 1.4 mm before the wire's near edge comes within 3 mm of it by the tip
 * alone: over twice sqrt (3² - 1.4²). */
static void
test_notch (void)
{
  TestDraft draft;
  Look look;

  begin (&draft, NAN);
  add (&draft, "leaf", "90 80, 149 80, 150 98, 151 80, 210 80, 210 120, 90 120", 0);
  look_init (&look, &draft);
  g_assert_cmpfloat (look.conceal->hung.share, ==, 1);
  g_assert_cmpfloat_with_epsilon (look.conceal->barely, 2 * sqrt (9 - 1.4 * 1.4), EXACT);
  look_clear (&look);
}

/* A side at 45° is met by the edges 0.6 mm before and after the centre line: all three are hidden
 * from 120.6 on. Touching pieces, a side along the wire's edge and repeated positions do no harm:
 * the wire reaches from y = 99.4 to 100.6. */
static void
test_edges (void)
{
  static const struct
  {
    const char *outline;
    double      hidden;
  } rows[] = {
    { "100 80, 140 120, 220 120, 220 80", 79.4 },
    { "90 99.4, 210 99.4, 210 100.6, 90 100.6", 100 },
    { "90 99.5, 210 99.5, 210 100.6, 90 100.6", 0 },
    { "90 100, 210 100, 210 120, 90 120", 0 },
    { "120 80, 150 80, 180 80, 180 120, 150 120, 120 120", 60 },
    { "120 80, 180 80, 180 120, 150 100.6, 120 120", 60 },
    { "120 80, 180 80, 180 120, 150 100, 120 120", 60 - 1.8 },
    { "90 90, 210 90, 210 110, 90 110; 140 95, 160 95, 160 105, 140 105", 80 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Look look;

      begin (&draft, NAN);
      add (&draft, "leaf", rows[i].outline, 0);
      look_init (&look, &draft);
      g_assert_cmpfloat_with_epsilon (look.conceal->lying.hidden, rows[i].hidden, EXACT);
      look_clear (&look);
    }
}

/* Background 0.9: one piece of 0.38 lets 0.342 through, under the 0.35 of a wall but not the 0.15
 * of a window; two of 0.4 make 0.144. */
static void
test_transmittance (void)
{
  static const struct
  {
    double  through;
    guint   pieces;
    PpPlace place;
    double  hidden;
  } rows[] = {
    { 0.38, 1, PP_PLACE_WALL, 60 },   { 0.39, 1, PP_PLACE_WALL, 0 },
    { 0.38, 1, PP_PLACE_WINDOW, 0 },  { 0.4, 2, PP_PLACE_WINDOW, 60 },
    { 0.42, 2, PP_PLACE_WINDOW, 0 },  { 0.35 / 0.9, 1, PP_PLACE_WALL, 60 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *ids[] = { "one", "two" };
      TestDraft draft;
      Look look;

      begin (&draft, NAN);
      draft.display.place = rows[i].place;
      for (guint k = 0; k < rows[i].pieces; k++)
        add (&draft, ids[k], "120 80, 180 80, 180 120, 120 120", rows[i].through);
      look_init (&look, &draft);
      g_assert_cmpfloat_with_epsilon (look.conceal->lying.hidden, rows[i].hidden, EXACT);
      look_clear (&look);
    }
}

/* Holes 100 apart and 20 under the edge, a wire of 130: the hook stands sqrt(65² - 50²) =
 * 41.533 over the holes, and each leg leaves the glass 20 up. */
static void
test_beyond (void)
{
  double sag = sqrt (65.0 * 65 - 50 * 50);
  double inside = 65 * 20 / sag;
  TestDraft draft;
  Look look;
  const PpPath *path;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_hole (&draft, "a", 100, 20, 6);
  test_draft_add_hole (&draft, "b", 200, 20, 6);
  test_draft_add_wire (&draft, 130);
  look_init (&look, &draft);
  path = &look.conceal->hung;
  g_assert_cmpfloat_with_epsilon (path->length, 130, PP_TIE);
  g_assert_cmpuint (path->n_exposed, ==, 3);
  g_assert_false (path->exposed[0].beyond);
  g_assert_true (path->exposed[1].beyond);
  g_assert_cmpfloat_with_epsilon (path->exposed[0].length, inside, PP_TIE);
  g_assert_cmpfloat_with_epsilon (path->beyond, 130 - 2 * inside, PP_TIE);
  g_assert_cmpfloat_with_epsilon (pp_path_get_exposed (path), 2 * inside, PP_TIE);
  look_clear (&look);
}

/* Pieces everywhere: hidden to the last figure, from every side. */
static void
test_all_hidden (void)
{
  TestDraft draft;
  Look look;

  begin (&draft, 130);
  add (&draft, "leaf", "10 10, 290 10, 290 300, 10 300", 0);
  look_init (&look, &draft);
  g_assert_cmpfloat (look.conceal->hung.share, ==, 1);
  g_assert_cmpfloat (look.conceal->barely, ==, 0);
  g_assert_cmpfloat (look.conceal->worst.share, ==, 1);
  g_assert_cmpfloat (look.conceal->knots[0].share, ==, 1);
  g_assert_cmpfloat (look.conceal->knots[1].barely, ==, 1);
  g_assert_cmpfloat (look.conceal->holes[1].share, ==, 1);
  look_clear (&look);
}

static void
test_discs (void)
{
  static const struct
  {
    const char *one;
    const char *two;
    double      through;
    double      share;
    double      open; /* mm² of the disc's quarter that a notch leaves open */
  } rows[] = {
    { "100 50, 150 50, 150 150, 100 150", NULL, 0, 0.5 },
    { "100 50, 150 50, 150 150, 100 150", NULL, 0.5, 0 },
    { "100 50, 150 50, 150 150, 100 150", "50 100, 150 100, 150 150, 50 150", 0, 0.75 },
    { "100 50, 150 50, 150 150, 100 150", "50 100, 150 100, 150 150, 50 150", 0.5, 0.25 },
    { "100 50, 150 50, 150 150, 100 150", "50 50, 100 50, 100 150, 50 150", 0, 1 },
    { "100 50, 150 50, 150 150, 100 150", "50 50, 100 50, 100 150, 50 150", 0.5, 0 },
    /* The second shares a side with what the first leaves, and reaches over it elsewhere. */
    { "100 50, 150 50, 150 150, 100 150",
      "50 50, 110 50, 110 98, 100 98, 100 99, 98 99, 98 100, 50 100", 0.3, 0.75, 2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Look look;

      begin (&draft, NAN);
      add (&draft, "one", rows[i].one, rows[i].through);
      if (rows[i].two != NULL)
        add (&draft, "two", rows[i].two, rows[i].through);
      look_init (&look, &draft);
      /* The disc is a polygon, whose area is known to 1e-4 or so of the circle's. */
      g_assert_cmpfloat_with_epsilon (look.conceal->knots[0].share,
                                      rows[i].share - rows[i].open / (16 * G_PI),
                                      rows[i].open > 0 ? 1e-4 : EXACT);
      g_assert_cmpfloat_with_epsilon (look.conceal->holes[0].share,
                                      rows[i].share - rows[i].open / (9 * G_PI),
                                      rows[i].open > 0 ? 1e-4 : EXACT);
      g_assert_cmpfloat (look.conceal->knots[1].share, ==, 0);
      g_assert_true (isnan (look.conceal->holes[0].barely));
      look_clear (&look);
    }
}

/* The second piece overlaps what the first leaves and touches it along a line besides, the third
 * lies over all: lines and points that overlay gives beside areas do no harm. */
static void
test_touching (void)
{
  TestDraft draft;
  Look look;

  begin (&draft, NAN);
  add (&draft, "right", "100 50, 150 50, 150 150, 100 150", 0);
  add (&draft, "tongue", "100 97, 110 97, 110 103, 98 103, 98 100, 100 100", 0.6);
  add (&draft, "all", "50 50, 150 50, 150 150, 50 150", 0.61);
  look_init (&look, &draft);
  g_assert_cmpfloat_with_epsilon (look.conceal->knots[0].share, 0.5, EXACT);
  look_clear (&look);
}

/* Many translucent pieces over one knot, each with its own share of light: faces are as many as
 * there are in the plane, not as there are sets of pieces. */
static void
test_heap (void)
{
  TestDraft draft;
  Look look;
  gint64 start;

  begin (&draft, NAN);
  for (guint i = 0; i < 200; i++)
    {
      g_autofree char *id = g_strdup_printf ("g%u", i);
      double x = 90 + i * 0.1;
      char outline[128];

      g_snprintf (outline, sizeof outline, "%g 50, %g 55, %g 150, 40 150, 40 50", x, x + 0.3,
                  x - 1);
      add (&draft, id, outline, 0.995 - i * 1e-5);
    }
  look.stack = test_stack_new (&draft);
  pp_hang_init (&look.hang, look.stack->scene, &look.stack->mass);
  start = g_get_monotonic_time ();
  look.conceal = pp_conceal_new (&(PpSettled) { look.stack->scene, look.stack->rests }, &look.hang,
                                 NULL, NULL);
  g_test_message ("200 pieces over one knot: %.3f s", 1e-6 * (g_get_monotonic_time () - start));
  g_assert_cmpfloat (look.conceal->knots[0].share, >=, 0);
  g_assert_cmpfloat (look.conceal->knots[0].share, <=, 1);
  look_clear (&look);
}

/* A flat leaf 4 mm thick on the glass: its middle is 2 mm over the front. Seen from 30° to the
 * right the wire behind 6 mm of glass looks shifted to the right by the law of refraction. */
static void
test_aslant_flat (void)
{
  double i = 30 * RADIANS, r = asin (sin (i) / 1.52);
  double shift = 0.6 * tan (i) + 6 * tan (r) + 2 * tan (i);
  TestDraft draft;
  Look look;
  guint hidden = 0;

  begin (&draft, NAN);
  draft.display.updown = 0;
  add (&draft, "leaf", "120 80, 160 80, 160 120, 120 120", 0);
  look_init (&look, &draft);
  for (guint k = 0; k < 200; k++)
    {
      double x = 100 + 0.5 * (k + 0.5) + shift;

      hidden += x > 120 && x < 160;
    }
  g_assert_cmpuint (hidden, ==, 80);
  g_assert_cmpfloat (look.conceal->views[19].sideways, ==, 30);
  g_assert_cmpfloat_with_epsilon (look.conceal->views[19].share, hidden / 200.0, EXACT);
  look_clear (&look);
  /* At the end of the wire the shift carries the part that is hidden off it. */
  begin (&draft, NAN);
  draft.display.updown = 0;
  draft.wire.knot_diameter = 0.1; /* so that the leaf does not stand on the knot */
  add (&draft, "leaf", "180 80, 220 80, 220 120, 180 120", 0);
  look_init (&look, &draft);
  hidden = 0;
  for (guint k = 0; k < 200; k++)
    hidden += 100 + 0.5 * (k + 0.5) + shift > 180;
  g_assert_cmpfloat_with_epsilon (look.conceal->views[19].share, hidden / 200.0, EXACT);
  g_assert_cmpuint (hidden, ==, 40 + (guint) floor (2 * shift + 0.5));
  look_clear (&look);
}

/* Views stand in order, and without any angle all are the one straight on. */
static void
test_views (void)
{
  TestDraft draft;
  Look look;

  begin (&draft, 130);
  add (&draft, "leaf", "120 60, 160 60, 160 120, 120 120", 0);
  look_init (&look, &draft);
  for (guint k = 0; k < PP_N_VIEWS; k++)
    {
      g_assert_cmpfloat_with_epsilon (look.conceal->views[k].sideways, -30 + 10.0 * (k / 3), EXACT);
      g_assert_cmpfloat_with_epsilon (look.conceal->views[k].updown, -15 + 15.0 * (k % 3), EXACT);
      g_assert_cmpfloat (look.conceal->views[k].share, >=, look.conceal->worst.share);
    }
  g_assert_cmpfloat_with_epsilon (look.conceal->views[10].share, look.conceal->hung.share, 0.02);
  look_clear (&look);
  begin (&draft, 130);
  draft.display.sideways = draft.display.updown = 0;
  add (&draft, "leaf", "120 60, 160 60, 160 120, 120 120", 0);
  look_init (&look, &draft);
  for (guint k = 0; k < PP_N_VIEWS; k++)
    {
      g_assert_false (signbit (look.conceal->views[k].sideways));
      g_assert_cmpfloat (look.conceal->views[k].share, ==, look.conceal->views[10].share);
    }
  look_clear (&look);
}

/* A seeded layout of ragged leaves about the wire; mirrored about x = 150 if asked. */
static void
scatter (TestDraft *draft,
         GRand     *random,
         guint      n,
         gboolean   mirrored,
         PpForm     form)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("leaf%u", i);
      g_autofree char *placed = g_strdup_printf ("p%u", i);
      g_autoptr (GString) outline = g_string_new (NULL);
      PpPiece piece = pp_piece_draft ();
      double x = g_rand_double_range (random, 90, 210), y = g_rand_double_range (random, 50, 110);
      guint corners = g_rand_int_range (random, 3, 12);
      const double shares[] = { 0, 0, 0.2, 0.5, 0.7 };

      for (guint k = 0; k < corners; k++)
        {
          double r = g_rand_double_range (random, 6, 18), t = 2 * G_PI * k / corners;

          g_string_append_printf (outline, "%s%.6f %.6f", k > 0 ? ", " : "",
                                  (mirrored ? -1 : 1) * r * cos (t), r * sin (t));
        }
      piece.transmittance = shares[g_rand_int_range (random, 0, G_N_ELEMENTS (shares))];
      piece.form = form;
      test_draft_add_piece (draft, id, outline->str, 4, NAN, &piece);
      test_draft_place (draft, placed, id, mirrored ? 300 - x : x, y);
    }
}

static void
look_at_scattered (Look    *look,
                   guint32  seed,
                   guint    n,
                   gboolean mirrored,
                   PpForm   form)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  TestDraft draft;

  begin (&draft, 150);
  scatter (&draft, random, n, mirrored, form);
  look_init (look, &draft);
}

/* By winding number, so not the rule of the program. */
static gboolean
winds_round (const PpOutline *outline,
             PpPoint          p)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  int winding = 0;

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint a = ring[i], b = ring[i + 1];
      double cross = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

      if (a.y <= p.y && b.y > p.y && cross > 0)
        winding++;
      else if (a.y > p.y && b.y <= p.y && cross < 0)
        winding--;
    }
  return winding != 0;
}

static gboolean
is_dark (const PpScene *scene,
         PpPoint        p)
{
  double through = p.y >= 0 ? 0.9 : 1;

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];

      if (p.x >= body->box.x0 && p.x <= body->box.x1 && p.y >= body->box.y0 && p.y <= body->box.y1
          && winds_round (body->outline, p))
        through *= body->piece->transmittance;
    }
  return through <= 0.35;
}

#define SAMPLE 0.001 /* mm */

/* Every thousandth of a millimetre of the wire looked at by itself; an end of a stretch is then
 * known to a sample, and there are few dozen. */
static void
test_samples (void)
{
  for (guint32 seed = 1; seed <= 4; seed++)
    {
      Look look;
      PpRun run;
      double exposed = 0;

      look_at_scattered (&look, seed, 10, FALSE, pp_piece_draft ().form);
      run = pp_run_hung (look.stack->scene, &look.hang);
      for (guint k = 0; k < run.n_legs; k++)
        {
          PpLeg leg = pp_run_get_leg (&run, k);
          guint n = (guint) ceil (leg.length / SAMPLE);

          for (guint i = 0; i < n; i++)
            {
              double along = leg.length * (i + 0.5) / n;

              if (!is_dark (look.stack->scene, pp_leg_point (&leg, along, 0))
                  || !is_dark (look.stack->scene, pp_leg_point (&leg, along, 0.6))
                  || !is_dark (look.stack->scene, pp_leg_point (&leg, along, -0.6)))
                exposed += leg.length / n;
            }
        }
      g_assert_cmpfloat (exposed, >, 1);
      g_assert_cmpfloat_with_epsilon (look.conceal->hung.length - look.conceal->hung.hidden,
                                      exposed, 20 * SAMPLE);
      look_clear (&look);
    }
}

static void
test_mirror (void)
{
  for (guint32 seed = 20; seed < 26; seed++)
    {
      PpForm form = { .kind = PP_FORM_DOMED, .rise = 6, .foot = 10, .flat = NAN };
      Look look, mirrored;

      look_at_scattered (&look, seed, 9, FALSE, form);
      look_at_scattered (&mirrored, seed, 9, TRUE, form);
      g_assert_cmpfloat_with_epsilon (look.conceal->lying.hidden, mirrored.conceal->lying.hidden,
                                      PP_TIE);
      g_assert_cmpfloat_with_epsilon (look.conceal->knots[0].share,
                                      mirrored.conceal->knots[1].share, PP_TIE);
      g_assert_cmpfloat_with_epsilon (look.conceal->knots[0].barely,
                                      mirrored.conceal->knots[1].barely, PP_TIE);
      look_clear (&look);
      look_clear (&mirrored);
    }
}

/* One more opaque piece on top never shows more of the wire, from wherever. */
static void
test_more_hides_more (void)
{
  for (guint32 seed = 40; seed < 50; seed++)
    {
      PpForm flat = pp_piece_draft ().form;
      Look fewer, more;

      look_at_scattered (&fewer, seed, 6, FALSE, flat);
      look_at_scattered (&more, seed, 7, FALSE, flat);
      more.hang = fewer.hang; /* the same wire, though one more piece pulls at it */
      pp_conceal_free (more.conceal);
      more.conceal = pp_conceal_new (&(PpSettled) { more.stack->scene, more.stack->rests }, &more.hang,
                                     NULL, NULL);
      g_assert_cmpfloat (more.conceal->lying.share, >=, fewer.conceal->lying.share - EXACT);
      g_assert_cmpfloat (more.conceal->hung.share, >=, fewer.conceal->hung.share - EXACT);
      g_assert_cmpfloat (more.conceal->barely, <=, fewer.conceal->barely + EXACT);
      for (guint k = 0; k < PP_N_VIEWS; k++)
        g_assert_cmpfloat (more.conceal->views[k].share, >=, fewer.conceal->views[k].share - EXACT);
      look_clear (&fewer);
      look_clear (&more);
    }
}

static void
assert_same_wire (const PpConceal *a,
                  const PpConceal *b)
{
  g_assert_cmpfloat (a->hung.hidden, ==, b->hung.hidden);
  g_assert_cmpuint (a->hung.n_exposed, ==, b->hung.n_exposed);
  g_assert_cmpfloat (a->barely, ==, b->barely);
  for (guint k = 0; k < PP_N_VIEWS; k++)
    g_assert_cmpfloat (a->views[k].share, ==, b->views[k].share);
}

/* While the hook goes about, now by a hair and now farther, what is kept of the wire makes no
 * difference, to the last figure. */
static void
test_hook_wanders (void)
{
  for (guint32 seed = 70; seed < 74; seed++)
    {
      PpForm form = { .kind = PP_FORM_DOMED, .rise = 6, .foot = 10, .flat = NAN };
      g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
      Look look;

      look_at_scattered (&look, seed, 12, FALSE, form);
      for (guint step = 0; step < 60; step++)
        {
          const PpSettled settled = { look.stack->scene, look.stack->rests };
          double far = step % 5 == 4 ? 5 : 0.02;
          g_autoptr (PpConceal) before = look.conceal;
          g_autoptr (PpConceal) anew = NULL;

          look.hang.hook.x += g_rand_double_range (dice, -far, far);
          look.hang.hook.y += g_rand_double_range (dice, -far, far);
          anew = pp_conceal_new (&settled, &look.hang, NULL, NULL);
          look.conceal = pp_conceal_new (&settled, &look.hang, before, &settled);
          assert_same_wire (look.conceal, anew);
        }
      look_clear (&look);
    }
}

/* A shaped piece without any rise is a flat one, though it is walked along. */
static void
test_flat_as_shaped (void)
{
  for (guint32 seed = 60; seed < 64; seed++)
    {
      PpForm risen = { .kind = PP_FORM_CUPPED, .rise = 0, .foot = 1, .flat = NAN };
      Look flat, shaped;

      look_at_scattered (&flat, seed, 8, FALSE, pp_piece_draft ().form);
      look_at_scattered (&shaped, seed, 8, FALSE, risen);
      for (guint k = 0; k < PP_N_VIEWS; k++)
        g_assert_cmpfloat_with_epsilon (flat.conceal->views[k].share,
                                        shaped.conceal->views[k].share, EXACT);
      look_clear (&flat);
      look_clear (&shaped);
    }
}

static const PpFinding *
find (const PpFindings *findings,
      const char       *code)
{
  for (guint i = 0; i < findings->list->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings->list, i);

      if (g_str_equal (finding->code, code))
        return finding;
    }
  return NULL;
}

/* The codes that are said of a leaf of one size, and the level of the first. */
static void
test_findings (void)
{
  static const struct
  {
    const char *outline;
    const char *said;
    const char *unsaid;
    PpLevel     level;
    double      value;
    const char *words;
  } rows[] = {
    { "97 80, 150 80, 150 120, 97 120", "wire-shows", "hidden-barely", PP_LEVEL_FAULT, 50,
      "50 mm of wire shows, right of leaf. Move a piece over it." },
    { "90 80, 199 80, 199 120, 90 120", "wire-shows", "hidden-barely", PP_LEVEL_CAUTION, 1,
      "1 mm of wire shows, right of leaf. Move a piece over it." },
    { "90 80, 201 80, 201 120, 90 120", "hidden-barely", "wire-shows", PP_LEVEL_CAUTION, 2, NULL },
    { "90 80, 203 80, 203 120, 90 120", "knot-shows", "knot-barely", PP_LEVEL_FAULT, NAN, NULL },
    { "90 80, 206 80, 206 120, 90 120", "knot-barely", "knot-shows", PP_LEVEL_CAUTION, NAN, NULL },
    { "80 80, 220 80, 220 120, 80 120", "hole-shows", "knot-barely", PP_LEVEL_CAUTION, 0, NULL },
    { "94 80, 206 80, 206 120, 94 120", "shows-aslant", "wire-shows", PP_LEVEL_NOTE, NAN, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TestDraft draft;
      Look look;
      PpFindings findings;
      const PpFinding *finding;

      begin (&draft, NAN);
      draft.display.sideways = 60;
      test_draft_add_hole (&draft, "spare", 150, 300, 6);
      add (&draft, "leaf", rows[i].outline, 0);
      look_init (&look, &draft);
      pp_findings_init (&findings, look.stack->panel);
      pp_ask_conceal (&findings, &(PpCheck) { .scene = look.stack->scene,
                                              .conceal = look.conceal });
      finding = find (&findings, rows[i].said);
      g_assert_nonnull (finding);
      g_assert_null (find (&findings, rows[i].unsaid));
      g_assert_cmpint (finding->level, ==, rows[i].level);
      if (!isnan (rows[i].value))
        g_assert_cmpfloat_with_epsilon (finding->value, rows[i].value, PP_TIE);
      if (g_str_equal (rows[i].said, "wire-shows"))
        g_assert_cmpfloat (finding->limit, ==, rows[i].level == PP_LEVEL_FAULT ? 3 : 0.3);
      if (rows[i].words != NULL)
        g_assert_cmpstr (finding->text, ==, rows[i].words);
      pp_findings_clear (&findings);
      look_clear (&look);
    }
}

/* A piece with nothing under it hides nothing. */
static void
test_floating (void)
{
  TestDraft draft;
  Look look;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_hole (&draft, "a", 100, 20, 6);
  test_draft_add_hole (&draft, "b", 200, 20, 6);
  test_draft_add_wire (&draft, 130);
  add (&draft, "cloud", "90 -60, 210 -60, 210 -1, 90 -1", 0);
  look_init (&look, &draft);
  g_assert_cmpint (look.stack->rests[0]->state, ==, PP_STATE_FLOATS);
  g_assert_cmpfloat (look.conceal->hung.hidden, ==, 0);
  g_assert_cmpfloat (look.conceal->worst.share, ==, 0);
  look_clear (&look);
}

/* Without a wire the holes are still looked at. */
static void
test_no_wire (void)
{
  TestDraft draft;
  Look look;

  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_hole (&draft, "a", 100, 100, 6);
  add (&draft, "leaf", "100 50, 150 50, 150 150, 100 150", 0);
  look_init (&look, &draft);
  g_assert_false (look.conceal->has_wire);
  g_assert_cmpuint (look.conceal->n_holes, ==, 1);
  g_assert_cmpfloat_with_epsilon (look.conceal->holes[0].share, 0.5, EXACT);
  look_clear (&look);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (snells); i++)
    {
      g_autofree char *path = g_strconcat ("/conceal/snell/", snells[i].name, NULL);

      g_test_add_data_func (path, &snells[i], test_snell);
    }
  g_test_add_func ("/conceal/slabs", test_slabs);
  g_test_add_func ("/conceal/bare", test_bare);
  g_test_add_func ("/conceal/stretches", test_stretches);
  g_test_add_func ("/conceal/notch", test_notch);
  g_test_add_func ("/conceal/edges", test_edges);
  g_test_add_func ("/conceal/transmittance", test_transmittance);
  g_test_add_func ("/conceal/beyond", test_beyond);
  g_test_add_func ("/conceal/all-hidden", test_all_hidden);
  g_test_add_func ("/conceal/discs", test_discs);
  g_test_add_func ("/conceal/touching", test_touching);
  g_test_add_func ("/conceal/heap", test_heap);
  g_test_add_func ("/conceal/aslant-flat", test_aslant_flat);
  g_test_add_func ("/conceal/views", test_views);
  g_test_add_func ("/conceal/samples", test_samples);
  g_test_add_func ("/conceal/mirror", test_mirror);
  g_test_add_func ("/conceal/more-hides-more", test_more_hides_more);
  g_test_add_func ("/conceal/hook-wanders", test_hook_wanders);
  g_test_add_func ("/conceal/flat-as-shaped", test_flat_as_shaped);
  g_test_add_func ("/conceal/findings", test_findings);
  g_test_add_func ("/conceal/floating", test_floating);
  g_test_add_func ("/conceal/no-wire", test_no_wire);
  return g_test_run ();
}
