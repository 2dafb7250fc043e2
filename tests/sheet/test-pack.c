/* test-pack.c: outlines laid on pages keep apart, and what does not hang on the turn is asked once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The linker puts the function below in the place of the shape's own (--wrap).
 */
#include "config.h"

#include "sheet/pack.h"

#include "shape/polygon.h"
#include "shape/region.h"

#define MOST_LOOKS (61 * 61) /* for one label */
#define N_CORNERS 400

static guint n_asked;

double __real_pp_outline_border_distance (const PpOutline *outline,
                                          PpPoint          p);
double __wrap_pp_outline_border_distance (const PpOutline *outline,
                                          PpPoint          p);

double
__wrap_pp_outline_border_distance (const PpOutline *outline,
                                   PpPoint          p)
{
  n_asked++;
  return __real_pp_outline_border_distance (outline, p);
}

static PpOutline *
make_disc (double radius)
{
  PpPoint points[N_CORNERS];

  for (guint i = 0; i < N_CORNERS; i++)
    points[i] = (PpPoint) { radius * cos (2 * G_PI * i / N_CORNERS),
                            radius * sin (2 * G_PI * i / N_CORNERS) };
  return pp_outline_new_ring (points, N_CORNERS);
}

/* Too large for the page in all 4 and then all 24 turns. */
static void
test_asked_once (void)
{
  g_autoptr (PpOutline) disc = make_disc (150);
  PpPacked item = { .outline = disc, .label = { 26, 8 } };

  n_asked = 0;
  g_assert_cmpuint (pp_pack (&item, 1, 200, 280), ==, 0);
  g_assert_null (item.laid);
  g_assert_cmpuint (n_asked, >, 0);
  g_assert_cmpuint (n_asked, <=, MOST_LOOKS);
}

static void
test_apart (void)
{
  g_autoptr (PpOutline) large = make_disc (40);
  g_autoptr (PpOutline) small = make_disc (5);
  PpPacked items[] = { { .outline = large, .label = { 26, 8 } },
                       { .outline = small, .label = { 26, 8 } },
                       { .outline = large, .label = { 26, 8 } } };

  g_assert_cmpuint (pp_pack (items, G_N_ELEMENTS (items), 200, 280), ==, 1);
  for (guint i = 0; i < G_N_ELEMENTS (items); i++)
    {
      PpBox box = pp_outline_get_box (items[i].laid);
      g_autoptr (PpRegion) region = pp_region_new (items[i].laid);

      g_assert_true (pp_box_holds ((PpBox) { 0, 0, 200, 280 }, box));
      g_assert_cmpint (pp_box_contains (box, items[i].label_at), ==, i != 1);
      for (guint j = 0; j < i; j++)
        {
          g_autoptr (PpRegion) other = pp_region_new (items[j].laid);

          g_assert_cmpfloat (pp_region_border_distance (region, other), >=, PP_PACK_GAP);
          g_assert_cmpfloat (pp_region_overlap (region, other), ==, 0);
        }
    }
  pp_packed_clear (items, G_N_ELEMENTS (items));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pack/asked-once", test_asked_once);
  g_test_add_func ("/pack/apart", test_apart);
  return g_test_run ();
}
