/* test-shade.c: what stays in view, against overlay by GEOS and against looking place by place.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/shade.h"
#include "shape/polygon.h"
#include "shape/region.h"

#include <time.h>

#define EXACT 1e-9 /* mm² */
#define MOST 6     /* panes that overlay parts into all their sets */

typedef struct
{
  PpOutline *outline;
  double     through;
} Pane;

static void
pane_clear (gpointer data)
{
  pp_outline_unref (((Pane *) data)->outline);
}

static GArray *
panes_new (void)
{
  GArray *panes = g_array_new (FALSE, FALSE, sizeof (Pane));

  g_array_set_clear_func (panes, pane_clear);
  return panes;
}

static void
lay (PpShade         *shade,
     const PpOutline *outline,
     double           through)
{
  pp_shade_add_pane (shade, through);
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, r, &n);

      pp_shade_add_ring (shade, ring, n);
    }
}

static double
get_shown (const PpOutline *shape,
           GArray          *panes,
           double           opaque)
{
  g_autoptr (PpShade) shade = pp_shade_new ();

  lay (shade, shape, 1);
  for (guint i = 0; i < panes->len; i++)
    lay (shade, g_array_index (panes, Pane, i).outline, g_array_index (panes, Pane, i).through);
  return pp_shade_get_shown (shade, opaque);
}

/* Of `region`, which lies under the panes before `first` that let `through` come. */
static double
overlay (PpRegion *region,
         GArray   *panes,
         guint     first,
         double    through,
         double    opaque)
{
  const Pane *pane = &g_array_index (panes, Pane, first);
  g_autoptr (PpRegion) over = NULL, under = NULL, beside = NULL;

  if (first == panes->len)
    return through > opaque + 1e-6 ? pp_region_get_area (region) : 0;
  over = pp_region_new (pane->outline);
  under = pp_region_intersection (region, over);
  beside = pp_region_difference (region, over);
  return overlay (under, panes, first + 1, through * pane->through, opaque)
         + overlay (beside, panes, first + 1, through, opaque);
}

/* A star of `n` points about `middle`, its dents at half its reach; of 2: a square. */
static PpOutline *
make_star (PpPoint middle,
           double  reach,
           double  turn,
           guint   n)
{
  guint corners = 2 * n;
  g_autofree PpPoint *p = g_new (PpPoint, corners);

  for (guint i = 0; i < corners; i++)
    {
      double far = n > 2 && i % 2 == 1 ? reach / 2 : reach, t = turn + 2 * G_PI * i / corners;

      p[i] = (PpPoint) { middle.x + far * cos (t), middle.y + far * sin (t) };
    }
  return pp_outline_new_ring (p, corners);
}

static PpOutline *
make_disc (void)
{
  guint n;
  g_autofree PpPoint *ring = pp_circle_make_ring ((PpPoint) { 100, 100 }, 4, &n);

  return pp_outline_new_ring (ring, n);
}

/* Now and then level, upright or lying on the one before, as pieces are laid by hand on a grid. */
static GArray *
throw_panes (GRand *dice)
{
  GArray *panes = panes_new ();
  guint n = (guint) g_rand_int_range (dice, 1, MOST + 1);

  for (guint i = 0; i < n; i++)
    {
      Pane pane = { NULL, g_rand_double_range (dice, 0, 1) };
      PpPoint middle = { g_rand_double_range (dice, 94, 106), g_rand_double_range (dice, 94, 106) };
      double turn = g_rand_boolean (dice) ? G_PI / 4 : g_rand_double_range (dice, 0, 7);

      if (i > 0 && g_rand_int_range (dice, 0, 4) == 0)
        pane.outline = pp_outline_ref (g_array_index (panes, Pane, i - 1).outline);
      else
        pane.outline = make_star (middle, g_rand_double_range (dice, 1, 8), turn,
                                  (guint) g_rand_int_range (dice, 2, 30));
      g_array_append_val (panes, pane);
    }
  return panes;
}

static void
test_overlay (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (11);
  g_autoptr (PpOutline) disc = make_disc ();
  g_autoptr (PpRegion) whole = pp_region_new (disc);

  for (guint run = 0; run < 200; run++)
    {
      g_autoptr (GArray) panes = throw_panes (dice);
      double opaque = g_rand_double_range (dice, 0, 0.7);

      g_assert_cmpfloat_with_epsilon (get_shown (disc, panes, opaque),
                                      overlay (whole, panes, 0, 1, opaque), EXACT);
    }
}

/* Strips and wedges that make a square smaller on all sides, and cut deep where they overlap. */
static void
test_taken_out (void)
{
  const PpPoint p[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 }, { 0, 0 } };
  const PpPoint inward[] = { { 0, 1 }, { -1, 0 }, { 0, -1 }, { 1, 0 } };

  for (guint reach = 1; reach <= 5; reach++)
    {
      g_autoptr (PpShade) shade = pp_shade_new ();

      pp_shade_add_pane (shade, 1);
      pp_shade_add_ring (shade, p, G_N_ELEMENTS (p));
      pp_shade_add_pane (shade, 0.5);
      pp_shade_add_ring (shade, p, G_N_ELEMENTS (p));
      for (guint i = 0; i < G_N_ELEMENTS (inward); i++)
        {
          PpPoint by = { reach * inward[i].x, reach * inward[i].y };
          PpPoint strip[] = { p[i], p[i + 1], { p[i + 1].x + by.x, p[i + 1].y + by.y },
                              { p[i].x + by.x, p[i].y + by.y }, p[i] };

          pp_shade_take_out (shade, strip, G_N_ELEMENTS (strip), p[i], p[i + 1], reach);
        }
      g_assert_cmpfloat_with_epsilon (pp_shade_get_shown (shade, 0.6),
                                      100 - (10 - 2.0 * reach) * (10 - 2.0 * reach), EXACT);
    }
}

/* Squares each with a side across the disc, near its middle. */
static GArray *
throw_crossing (guint n)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (3);
  GArray *panes = panes_new ();

  for (guint i = 0; i < n; i++)
    {
      double turn = g_rand_double_range (dice, 0, 2 * G_PI);
      double far = 50 + g_rand_double_range (dice, -2, 2);
      Pane pane = { make_star ((PpPoint) { 100 + far * cos (turn), 100 + far * sin (turn) },
                               50 * G_SQRT2, turn + G_PI / 4, 2),
                    pow (0.34, 2.0 / n) - i * 1e-6 };

      g_array_append_val (panes, pane);
    }
  return panes;
}

static gboolean
is_in (const PpOutline *square,
       PpPoint          p)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (square, 0, &n);
  gboolean left = FALSE, right = FALSE;

  for (guint i = 0; i + 1 < n; i++)
    {
      left = left || pp_point_cross (ring[i], ring[i + 1], p) < 0;
      right = right || pp_point_cross (ring[i], ring[i + 1], p) > 0;
    }
  return !left || !right;
}

#define PLACES 200 /* each way */

static double
look_place_by_place (GArray *panes,
                     double  opaque)
{
  guint shown = 0;

  for (guint k = 0; k < PLACES * PLACES; k++)
    {
      PpPoint p = { 96 + 8 * (k % PLACES + 0.5) / PLACES, 96 + 8 * (k / PLACES + 0.5) / PLACES };
      double through = 1;

      if (hypot (p.x - 100, p.y - 100) > 4)
        continue;
      for (guint i = 0; i < panes->len; i++)
        if (is_in (g_array_index (panes, Pane, i).outline, p))
          through *= g_array_index (panes, Pane, i).through;
      shown += through > opaque;
    }
  return 64.0 * shown / (PLACES * PLACES);
}

/* Hundreds of clear panes, each of other glass, all of whose borders cross: they part the disc into
 * some ten thousand faces, which must not be held against each pane. */
static void
test_many (void)
{
  g_autoptr (GArray) panes = throw_crossing (400);
  g_autoptr (PpOutline) disc = make_disc ();
  clock_t start = clock ();
  double shown = get_shown (disc, panes, 0.34);
  double seconds = (double) (clock () - start) / CLOCKS_PER_SEC;

  g_test_message ("400 panes over one disc: %.3f s", seconds);
  g_assert_cmpfloat (seconds, <, 20);
  g_assert_cmpfloat_with_epsilon (shown, look_place_by_place (panes, 0.34), 0.5);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/shade/overlay", test_overlay);
  g_test_add_func ("/shade/taken-out", test_taken_out);
  g_test_add_func ("/shade/many", test_many);
  return g_test_run ();
}
