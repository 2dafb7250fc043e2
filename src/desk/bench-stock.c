/* bench-stock.c: what is glued or broken at the bench leaves the maker's box.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A box that cannot be counted stops no glue-up: epoxy does not wait. The box says so itself when
 * it is opened.
 */
#include "config.h"

#include "desk/bench-stock.h"

#include "file/box.h"

static int
count_glued (const PpPanel *panel,
             const char    *piece)
{
  int n = 0;

  for (guint i = 0; i < panel->placements->len; i++)
    n += pp_panel_placement (panel, i)->glued_at != NULL
         && g_str_equal (pp_panel_placement (panel, i)->piece, piece);
  return n;
}

static int
count_broken (const PpPanel      *before,
              const char         *piece,
              const char * const *broke)
{
  int n = 0;

  for (guint i = 0; broke != NULL && broke[i] != NULL; i++)
    {
      const PpPlacement *placement = pp_panel_find_placement (before, broke[i], NULL);

      n += placement != NULL && g_str_equal (placement->piece, piece);
    }
  return n;
}

void
pp_bench_stock_follow (const PpPanel      *before,
                       const PpPanel      *after,
                       const char * const *broke)
{
  g_autofree char *path = pp_box_get_path ();

  for (guint i = 0; i < before->tray->len; i++)
    {
      const PpPiece *piece = pp_panel_piece (before, i);
      int by = count_glued (before, piece->id) - count_glued (after, piece->id)
               - count_broken (before, piece->id, broke);

      if (piece->box != NULL && by != 0)
        pp_box_count (path, piece->box, by, NULL);
    }
}
