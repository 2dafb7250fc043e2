/* order-opening.c: the page before the first mix: what to do, to know and to have ready.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/flow.h"
#include "sheet/order-plan.h"
#include "sheet/supports.h"
#include "sheet/words.h"

static double
draw_reminders (PpBook *book,
                double  y)
{
  const char *const lines[] = {
    _("Gloves on, window open. No epoxy on the skin: wash it off with soap and water at once."),
    _("A large mix runs hot and sets sooner: mix what the page says, no more."),
    _("Clear epoxies yellow in strong sun."),
    _("Where the glue maker\342\200\231s data sheet says otherwise, it is right."),
    NULL
  };
  const PpNotice notice = { PP_LEVEL_CAUTION, _("Epoxy"), lines };

  return pp_flow_notice (book, &notice, y);
}

static void
add_mix (PpBook  *book,
         PpTable *table,
         guint    index)
{
  const PpPlan *plan = book->job->plan;
  const PpMix *mix = &plan->mixes[index];
  PpOrderRun run = pp_order_run_of_mix (plan, index);
  double zero = pp_sitting_start (plan, run.sitting);
  g_autofree char *number = g_strdup_printf ("%u", index + 1);
  g_autofree char *sitting = plan->steps[plan->n_steps - 1].sitting > 1
                             ? g_strdup_printf ("%u", run.sitting) : g_strdup ("");
  g_autofree char *steps = run.end - run.first == 1
                           ? g_strdup_printf ("%u", run.end)
                           : g_strdup_printf (_("%u to %u"), run.first + 1, run.end);
  g_autofree char *start = pp_clock_format (mix->start - zero);
  g_autofree char *a = pp_volume_format (mix->a);
  g_autofree char *b = pp_volume_format (mix->b);
  const char *cells[] = { number, sitting, steps, start, a, b };

  pp_table_add (table, cells, NULL);
}

static double
draw_mixes (PpBook *book,
            double  y)
{
  const PpColumn columns[] = {
    { _("mix"), PP_CELL_NUMBER, PP_ALIGN_RIGHT, FALSE },
    { _("sitting"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("steps"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("start it at"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("part A"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("part B"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < book->job->plan->n_mixes; i++)
    add_mix (book, table, i);
  return pp_flow_two_columns (book, table, 12, y);
}

static double
draw_clock_notice (PpBook *book,
                   double  y)
{
  const char *const lines[] = {
    _("Start it at 0:00 when the two parts of a sitting\342\200\231s first mix touch. All times on "
      "these pages are read on it, in minutes and seconds."),
    _("If you fall behind, keep each wait and each hold as long as it is; only the clock moves."),
    _("From the left and from the top: from the outermost left and top of the glass, seen from the "
      "front. A long piece has its tip and its base, any other its middle."),
    _("Points to: where the top of the piece points, 12 being the top of the page. Mirrored: its "
      "mirror twin, as the outline on the plan shows."),
    pp_stands_over (book->job->check)
      ? _("A minus before a figure means that much beyond the edge of the glass.") : NULL,
    NULL
  };
  const PpNotice notice = { PP_LEVEL_NOTE, _("Clock and places"), lines };

  return pp_flow_notice (book, &notice, y);
}

void
pp_order_opening_draw (PpBook *book)
{
  const char *const lines[] = {
    _("Clean the front of the glass and the back of each piece; let them dry. From now on hold the "
      "glass by its edges."),
    _("Lay the pieces out in the order of their numbers, with props, weights and sticks at hand."),
    _("Put the glass before you as the plans show it, near edge at the foot of the page."),
    NULL
  };
  g_autofree char *overview = pp_words_format_plan (book->job->plan);
  double y;

  pp_book_begin_page (book, _("Before the first mix"));
  y = pp_flow_ticks (book, lines, 13, book->area.y0);
  y = draw_clock_notice (book, y + 1);
  y = draw_reminders (book, y + PP_GAP);
  y = pp_flow_heading (book, overview, y + 2 * PP_GAP, 30);
  y = draw_mixes (book, y);
  /* What holds a piece is cut and laid ready before there is glue on anything. */
  pp_supports_draw (book, _("Props and weights to have ready"), y + 2 * PP_GAP);
}
