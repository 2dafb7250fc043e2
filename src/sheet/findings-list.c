/* findings-list.c: findings with their marks, one under another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/findings-list.h"

#include "sheet/flow.h"
#include "sheet/left-out.h"

#define KEEP 25.0 /* mm, that must be free under the heading */

static void
add_findings (PpTable         *table,
              const GPtrArray *findings,
              PpFindingFilter  filter)
{
  for (guint i = 0; i < findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings, i);
      const char *cells[] = { pp_level_get_name (finding->level), finding->text };

      if (filter (finding))
        pp_table_add (table, cells, finding->text);
    }
}

double
pp_findings_list_draw (PpBook          *book,
                       const char      *heading,
                       PpFindingFilter  filter,
                       double           size,
                       double           y)
{
  const PpColumn columns[] = {
    { "", PP_CELL_MARK, PP_ALIGN_LEFT, FALSE },
    { "", PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));
  g_autoptr (GPtrArray) left_out = pp_left_out_findings (book->panel, book->job->gallery);

  add_findings (table, book->job->check->findings, filter);
  add_findings (table, left_out, filter);
  if (book->job->plan != NULL)
    add_findings (table, book->job->plan->findings, filter);
  if (pp_table_get_n_rows (table) == 0)
    return y;
  y = pp_flow_heading (book, heading, y + 2 * PP_GAP, KEEP);
  pp_table_fit (table, pp_box_width (book->area), size, size);
  return pp_flow_table (book, table, y, 1, 0);
}
