/* fuzz-panel.c: any bytes as a panel file: read, written, read again, checked, planned.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/check-write.h"
#include "file/json-scan.h"
#include "file/panel-read.h"
#include "file/panel-write.h"

#include "fuzz.h"

/* What is larger is right, but so slow under the fuzzer that nothing else would be tried. */
#define MOST_PLACEMENTS 12
#define MOST_SIDE 700.0 /* mm, of all that lies there */
#define PLAN_STEPS 500

static void
expect_kept (const PpPanel *panel)
{
  g_autoptr (GString) text = pp_panel_write (panel);
  g_autoptr (GBytes) bytes = g_bytes_new (text->str, text->len);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) again = pp_panel_read (bytes, &error);
  g_autoptr (GString) once_more = NULL;

  g_assert_no_error (error);
  once_more = pp_panel_write (again);
  g_assert_cmpstr (text->str, ==, once_more->str);
}

static gboolean
is_small (const PpPanel *panel)
{
  PpBox box = { 0, 0, panel->background->width, panel->background->height };

  if (panel->placements->len > MOST_PLACEMENTS)
    return FALSE;
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);
      const PpPiece *piece = pp_panel_find_piece (panel, placement->piece, NULL);
      PpBox own = pp_outline_get_box (piece->outline);
      double reach = MAX (pp_box_width (own), pp_box_height (own));

      box = pp_box_union (box, pp_box_grow ((PpBox) { placement->x, placement->y, placement->x,
                                                      placement->y }, reach));
    }
  return pp_box_width (box) < MOST_SIDE && pp_box_height (box) < MOST_SIDE;
}

static void
check (const PpPanel *panel)
{
  g_autoptr (PpCheck) answers = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  g_autoptr (PpPlan) plan = pp_plan_new (answers, PLAN_STEPS, NULL, NULL, NULL, NULL);
  g_autoptr (GString) text = pp_check_write (answers, plan, NULL);
  g_autoptr (GError) error = NULL;

  pp_json_scan (text->str, text->len, &error);
  g_assert_no_error (error);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autoptr (GBytes) bytes = fuzz_take (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_read (bytes, &error);

  if (panel == NULL)
    {
      fuzz_expect_sentence (error);
      return 0;
    }
  expect_kept (panel);
  if (is_small (panel))
    check (panel);
  return 0;
}
