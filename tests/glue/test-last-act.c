/* test-last-act.c: what a log lets be taken back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/last-act.h"

#include "small-panel.h"

typedef struct
{
  const char *log;
  const char *last;
} Row;

static const Row rows[] = {
  { "", NULL },
  { "mixed", "" },
  { "mixed|placed p1", "p1" },
  { "mixed|placed p1|taken-back p1", "" },
  { "mixed|placed p1|placed p2|taken-back p2", "p1" },
  { "mixed|placed p1|mixed|taken-back", "p1" },
  { "mixed|placed p1|placed p2|fell p1", "p2" },
  { "mixed|placed p1|moved p1", "p1" },
  { "mixed|placed p1|paused", NULL },
  { "mixed|placed p1|paused|mixed", "" },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  const SmallPanel words = { .tray = "oxeye", .placements = "p1 p2", .log = row->log };
  g_autoptr (PpPanel) panel = small_panel_good (&words);
  g_autofree char *last = pp_last_act_find (panel);

  g_assert_cmpstr (last, ==, row->last);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/last-act/%u: %s", i, rows[i].log);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  return g_test_run ();
}
