/* supports.c: the list of props and weights that steps of the plan need.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/supports.h"

#include "panel/i18n.h"
#include "sheet/flow.h"
#include "sheet/words.h"

#define SIZE 12.0 /* pt */
#define KEEP 30.0 /* mm under the heading */

static void
add_step (PpTable          *table,
          const PpSheetJob *job,
          guint             index)
{
  g_autoptr (PpStepWords) step = pp_step_words_new (job, index);
  g_autoptr (PpJobWords) words = pp_job_words_new (job, job->plan->steps[index].job);
  g_autofree char *number = g_strdup_printf ("%u", index + 1);
  const char *cells[] = { "", number, words->name, step->support };

  if (*step->support != '\0')
    pp_table_add (table, cells, NULL);
}

double
pp_supports_draw (PpBook     *book,
                  const char *heading,
                  double      y)
{
  const PpColumn columns[] = {
    { "", PP_CELL_TICK, PP_ALIGN_LEFT, FALSE },
    { _("step"), PP_CELL_NUMBER, PP_ALIGN_RIGHT, FALSE },
    { _("piece"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { _("needs"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));
  const PpPlan *plan = book->job->plan;

  for (guint i = 0; plan != NULL && i < plan->n_steps; i++)
    add_step (table, book->job, i);
  if (pp_table_get_n_rows (table) == 0)
    return y;
  y = pp_flow_heading (book, heading, y, KEEP);
  return pp_flow_two_columns (book, table, SIZE, y);
}
