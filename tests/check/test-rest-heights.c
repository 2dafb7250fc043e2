/* test-rest-heights.c: how low and how high a piece at rest reaches, against every cell of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "stack.h"

#define OUTLINE "-25 -30, 22 -28, 30 10, 5 33, -28 12"
#define SAME 1e-9

typedef struct
{
  const char *name;
  PpForm      form;
  PpCrown     crown;
} Case;

static const Case cases[] = {
  { "flat", { .kind = PP_FORM_FLAT }, { 0 } },
  { "flat-crown", { .kind = PP_FORM_FLAT }, { .height = 6, .radius = 14 } },
  { "cupped", { .kind = PP_FORM_CUPPED, .rise = 12, .foot = 10 }, { 0 } },
  { "cupped-crown", { .kind = PP_FORM_CUPPED, .rise = 5, .foot = 4 }, { .height = 9, .radius = 20 } },
  { "domed-crown", { .kind = PP_FORM_DOMED, .rise = 8 }, { .height = 3, .radius = 8 } },
  { "arched", { .kind = PP_FORM_ARCHED, .rise = 4 }, { 0 } },
  { "curled-crown", { .kind = PP_FORM_CURLED, .rise = 4 }, { .height = 6, .radius = 14 } },
  { "lifted", { .kind = PP_FORM_LIFTED, .rise = 9, .flat = 10 }, { 0 } },
};

/* One laid over the edge of a block, so that it tilts; `x`: how far to the side. */
static TestStack *
stack_of (const Case *of,
          double      x)
{
  PpPiece shaped = pp_piece_draft ();
  TestDraft draft;

  shaped.form = of->form;
  shaped.crown = of->crown;
  test_draft_init (&draft, 300, 400, 6);
  test_draft_add_piece (&draft, "block", "-9 -9, 9 -9, 9 9, -9 9", 7, 20, NULL);
  test_draft_add_piece (&draft, "shaped", OUTLINE, 5, 40, &shaped);
  test_draft_place (&draft, "p0", "block", 150 + x, 190);
  test_draft_place (&draft, "p1", "shaped", 150.1, 200.2);
  return test_stack_new (&draft);
}

static void
compare (const TestStack *stack)
{
  const PpBody *body = stack->scene->bodies[1];
  const PpRest *rest = stack->rests[1];
  double base = INFINITY, top = -INFINITY, sum = 0;

  for (guint k = 0; k < body->cells->n_spans; k++)
    for (int i = body->cells->spans[k].i0; i < body->cells->spans[k].i1; i++)
      {
        PpPoint at = { pp_cell_centre (i), pp_cell_centre (body->cells->spans[k].j) };

        base = fmin (base, pp_rest_underside_at (rest, body, at));
        top = fmax (top, pp_rest_top_at (rest, body, at));
        sum += pp_heights_underside (&body->heights, pp_frame_to_piece (&body->frame, at));
      }
  g_assert_cmpfloat_with_epsilon (rest->base, base, SAME);
  g_assert_cmpfloat_with_epsilon (rest->top, top, SAME);
  g_assert_cmpfloat (rest->raised, ==, rest->top);
  g_assert_cmpfloat_with_epsilon (rest->middle,
                                  rest->plane.c + sum / body->cells->n_cells
                                      + body->piece->thickness / 2, SAME);
}

static void
test_case (gconstpointer data)
{
  gboolean tilted = FALSE;

  for (double x = -40; x <= 40; x += 8)
    {
      g_autoptr (TestStack) stack = stack_of (data, x);

      compare (stack);
      tilted = tilted || pp_rest_get_slope (stack->rests[1]) > 3;
    }
  g_assert_true (tilted);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/rest-heights/", cases[i].name, NULL);

      g_test_add_data_func (path, &cases[i], test_case);
    }
  return g_test_run ();
}
