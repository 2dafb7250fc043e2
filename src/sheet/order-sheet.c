/* order-sheet.c: the glue order, a plan and a table for each mix.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Picture and words stand together on each page: a mix too long for one page is parted, and each
 * part has its own picture, in which what the parts before placed lies there already. All is drawn
 * as it lies on the bench, near edge down.
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/furniture.h"
#include "sheet/kinds.h"
#include "sheet/notice.h"
#include "sheet/order-plan.h"
#include "sheet/table.h"
#include "sheet/words.h"

#include <math.h>

#define NUMBER_SIZE 18.0  /* pt */
#define WIDE 1.15         /* a page this many times as wide as high has the table at the side */
#define PLAN_SHARE 0.46   /* of the page, that the picture keeps */
#define GOOD_SIZE 13.0    /* pt, read at arm's length */
#define MOST_LINES 3      /* of a row in letters larger than that */

static const double sizes[] = { 15, 14, 13, 12, 11.2, 10.5 }; /* pt, of the table */

static PpTable *
make_table (PpBook     *book,
            PpOrderRun  run)
{
  const PpColumn columns[] = {
    { "", PP_CELL_TICK, PP_ALIGN_LEFT, FALSE },
    { "", PP_CELL_NUMBER, PP_ALIGN_RIGHT, FALSE },
    { _("piece"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { pp_from_left_heading (book->job->units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { pp_from_top_heading (book->job->units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("points to, o\342\200\231clock"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("dabs"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("prop or weight"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { _("clock"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
  };
  PpTable *table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  for (guint i = run.first; i < run.end; i++)
    {
      g_autoptr (PpJobWords) words = pp_job_words_new (book->job, book->job->plan->steps[i].job);
      g_autoptr (PpStepWords) step = pp_step_words_new (book->job, i);
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      const char *cells[] = { "", number, words->act, words->from_left, words->from_top,
                              words->turn, step->dabs, step->support, step->clock };

      pp_table_add (table, cells, step->sentence);
    }
  return table;
}

/* Where a page is too narrow for a column each, what is done stands under the piece's name. */
static PpTable *
make_narrow_table (PpBook     *book,
                   PpOrderRun  run)
{
  const PpColumn columns[] = {
    { "", PP_CELL_TICK, PP_ALIGN_LEFT, FALSE },
    { "", PP_CELL_NUMBER, PP_ALIGN_RIGHT, FALSE },
    { _("piece, dabs, prop or weight, clock"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { pp_from_left_heading (book->job->units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { pp_from_top_heading (book->job->units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("points to, o\342\200\231clock"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
  };
  PpTable *table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  for (guint i = run.first; i < run.end; i++)
    {
      g_autoptr (PpJobWords) words = pp_job_words_new (book->job, book->job->plan->steps[i].job);
      g_autoptr (PpStepWords) step = pp_step_words_new (book->job, i);
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      g_autofree char *act = pp_step_act_format (words, step);
      const char *cells[] = { "", number, act, words->from_left, words->from_top, words->turn };

      pp_table_add (table, cells, step->sentence);
    }
  return table;
}

static gboolean
is_wide (const PpBook *book)
{
  return pp_box_width (book->area) > WIDE * pp_box_height (book->area);
}

/* Height for the table on a page whose foot keeps `reserve` free: all of it beside the picture of
 * a wide page, else what the picture leaves below. */
static double
get_table_room (PpBook *book,
                guint   mix,
                double  reserve)
{
  double height = pp_box_height (book->area) - reserve;
  double least = pp_order_plan_least_height (book, mix, pp_box_width (book->area));

  return is_wide (book) ? height : height - 2 * PP_GAP - fmax (least, height * PLAN_SHARE);
}

static double
get_table_width (const PpBook *book)
{
  return pp_box_width (book->area) * (is_wide (book) ? 0.5 : 1);
}

/* The largest letters with which all rows have room and none is broken too often; FALSE where even
 * the smallest need more. */
static gboolean
fit_table (PpBook  *book,
           PpTable *table,
           guint    mix,
           double   reserve)
{
  double width = get_table_width (book);
  double height = get_table_room (book, mix, reserve);
  guint n = pp_table_get_n_rows (table);

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    if (pp_table_fit (table, width, sizes[i], NUMBER_SIZE)
        && pp_table_get_height (table, 0, n) <= height
        && (sizes[i] <= GOOD_SIZE || pp_table_get_most_lines (table) <= MOST_LINES))
      return TRUE;
  return FALSE;
}

static PpTable *
make_fitting_table (PpBook     *book,
                    PpOrderRun  run)
{
  PpTable *table = make_table (book, run);

  if (pp_table_fit (table, get_table_width (book), sizes[G_N_ELEMENTS (sizes) - 1], NUMBER_SIZE))
    return table;
  pp_table_free (table);
  return make_narrow_table (book, run);
}

/* Picture and rows `first` to `end` - 1 of the table of a mix; returns the y below. */
static double
draw_part (PpBook  *book,
           guint    mix,
           PpTable *table,
           guint    first,
           guint    end,
           double   reserve)
{
  PpOrderRun whole = pp_order_run_of_mix (book->job->plan, mix);
  PpOrderRun part = { whole.first + first, whole.first + end, whole.sitting };
  double height = pp_table_get_height (table, first, end);
  PpBox area = book->area;
  double below;

  area.y1 -= reserve;
  if (is_wide (book))
    area.x1 = area.x0 + pp_box_width (area) * 0.5 - 2 * PP_GAP;
  else
    area.y1 -= height + 2 * PP_GAP;
  below = pp_order_plan_draw (book, mix, part, area);
  if (is_wide (book))
    return fmax (below, pp_table_draw (table, (PpPoint) { area.x1 + 2 * PP_GAP, area.y0 }, first,
                                       end));
  return pp_table_draw (table, (PpPoint) { area.x0, fmin (below, area.y1) + 2 * PP_GAP }, first,
                        end);
}

/* Draws a mix on as many pages as it takes; returns the y below. `reserve` is kept free at the
 * foot of its page if one page will do. */
static double
draw_mix (PpBook *book,
          guint   index,
          double  reserve)
{
  const PpPlan *plan = book->job->plan;
  g_autofree char *heading = g_strdup_printf (_("Mix %u of %u"), index + 1, plan->n_mixes);
  g_autoptr (PpTable) table = NULL;
  guint n_rows;
  double y = 0;

  pp_book_begin_page (book, heading);
  table = make_fitting_table (book, pp_order_run_of_mix (plan, index));
  n_rows = pp_table_get_n_rows (table);
  if (!fit_table (book, table, index, reserve))
    {
      reserve = 0;
      fit_table (book, table, index, reserve);
    }
  for (guint first = 0; first < n_rows;)
    {
      double room = get_table_room (book, index, reserve);
      guint count = MAX (1, pp_table_count_fit (table, first, room));

      if (first > 0)
        pp_book_begin_page (book, NULL);
      y = draw_part (book, index, table, first, first + count, reserve);
      first += count;
    }
  return y;
}

/* The words after the last piece. */
typedef struct
{
  char       *move;
  char       *hang;
  const char *lines[4];
  PpNotice    notice;
} Closing;

static void
closing_init (Closing *self,
              PpBook  *book)
{
  const PpPlan *plan = book->job->plan;
  const PpAdhesive *glue = book->panel->adhesive;
  guint last = plan->steps[plan->n_steps - 1].sitting;
  g_autofree char *still = pp_clock_format (plan->placed_by + glue->hard
                                            - pp_sitting_start (plan, last));
  g_autofree char *hard = pp_time_format (glue->hard);
  g_autofree char *cure = pp_time_format (glue->cure);

  self->move = g_strdup_printf (
    _("Leave it flat and still until %s on the clock: %s after the last piece."), still, hard);
  self->hang = g_strdup_printf (
    _("Hang it no sooner than %s after the last piece: until then the glue cures."), cure);
  self->lines[0] = self->move;
  self->lines[1] = self->hang;
  self->lines[2] = _("Take the props away and trim the rims before the glue is fully hard.");
  self->lines[3] = NULL;
  self->notice = (PpNotice) { PP_LEVEL_NOTE, _("After the last piece"), self->lines };
}

static void
closing_clear (Closing *self)
{
  g_free (self->move);
  g_free (self->hang);
}

static void
draw_mixes_and_closing (PpBook *book)
{
  double width = pp_box_width (book->area);
  Closing closing;
  double height, y;
  guint n_mixes = book->job->plan->n_mixes;

  closing_init (&closing, book);
  height = pp_notice_height (book, &closing.notice, width) + 2 * PP_GAP;
  for (guint i = 0; i + 1 < n_mixes; i++)
    draw_mix (book, i, 0);
  y = draw_mix (book, n_mixes - 1, height);
  if (y + height > book->area.y1)
    {
      pp_book_begin_page (book, closing.notice.heading);
      y = book->area.y0 - 2 * PP_GAP;
    }
  pp_notice_draw (book, &closing.notice, (PpPoint) { book->area.x0, y + 2 * PP_GAP }, width);
  closing_clear (&closing);
}

static void
draw_sheet (PpBook *book)
{
  const PpPlan *plan = book->job->plan;

  if (plan == NULL || !plan->exists || plan->n_steps == 0)
    {
      pp_book_begin_page (book, _("Nothing to glue"));
      pp_furniture_draw_empty (book, pp_no_order_words (book->job));
      return;
    }
  pp_order_opening_draw (book);
  draw_mixes_and_closing (book);
  pp_order_backs_draw (book);
}

const PpSheetKind pp_order_sheet = { "order", N_("Glue order"), draw_sheet };
