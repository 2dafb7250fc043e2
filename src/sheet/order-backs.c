/* order-backs.c: the backs of the pieces with their dabs, as they lie in the hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Glue goes on the back, and there left is right: each piece is shown as it looks when it is lifted
 * from its place and turned over like a page. Each is as large as its cell lets it be.
 */
#include "config.h"

#include "sheet/order-plan.h"

#include "panel/i18n.h"
#include "sheet/map.h"
#include "sheet/marks.h"
#include "sheet/signs.h"
#include "sheet/text.h"
#include "sheet/words.h"

#include <math.h>

#define CELL_WIDTH 44.0 /* mm, at least */
#define CELL_HEIGHT 52.0
#define PADDING 3.0
#define WORDS_ROOM 9.0  /* mm, at the foot of a cell: two lines */
#define NUMBER_ROOM 8.0
#define NUMBER_SIZE 13.0
#define MARK 9.0        /* mm, of the mark of what is mirrored */

/* Two triangles, one the mirror of the other. */
static void
draw_mirror_mark (PpBook *book,
                  PpPoint at)
{
  cairo_t *cr = book->cr;

  pp_book_set_ink (book, PP_INK_CAUTION);
  cairo_set_line_width (cr, PP_LINE_STRONG);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, at.x + side * 0.1 * MARK, at.y);
      cairo_line_to (cr, at.x + side * 0.5 * MARK, at.y - 0.3 * MARK);
      cairo_line_to (cr, at.x + side * 0.5 * MARK, at.y + 0.3 * MARK);
      cairo_close_path (cr);
      if (side < 0)
        cairo_fill_preserve (cr);
      cairo_stroke (cr);
    }
}

/* Returns the y below. */
static double
draw_words (PpBook *book)
{
  const PpTextStyle style = { .size = 12 };
  const char *words = _("From behind: each piece lifted from its place and turned over like a "
                        "page, so left is right. The top is the top of the panel.");
  PpPoint at = { book->area.x0 + MARK + PP_GAP, book->area.y0 };
  double height = pp_text_tell (book, &style, words, at, book->area.x1 - at.x);

  draw_mirror_mark (book, (PpPoint) { book->area.x0 + MARK / 2, at.y + height / 2 });
  return at.y + fmax (height, 0.7 * MARK) + PP_GAP;
}

static void
draw_back (PpBook *book,
           guint   body_index,
           PpBox   room)
{
  const PpCheck *check = book->job->check;
  const PpBody *body = check->scene->bodies[body_index];
  const PpJoint *joint = check->joints[body_index];
  double width = pp_box_width (body->box), height = pp_box_height (body->box);
  PpPoint middle = pp_box_middle (room);
  PpMap map = { .box = body->box, .is_mirrored = TRUE };

  map.scale = fmin (fmin (pp_box_width (room) / width, pp_box_height (room) / height), 1);
  map.place = (PpBox) { middle.x - width * map.scale / 2, middle.y - height * map.scale / 2,
                        middle.x + width * map.scale / 2, middle.y + height * map.scale / 2 };
  pp_map_draw_body (&map, book, body, PP_LOOK_PLAIN);
  for (guint i = 0; i < joint->n_dabs; i++)
    pp_dab_draw (book, pp_map_to_page (&map, joint->places[i].at),
                 joint->places[i].diameter / 2 * map.scale);
}

static void
draw_cell (PpBook *book,
           guint   step,
           guint   body_index,
           PpBox   cell)
{
  const PpTextStyle style = { .size = PP_TEXT_LEAST, .align = PP_ALIGN_MIDDLE, .max_lines = 2 };
  const PpJoint *joint = book->job->check->joints[body_index];
  g_autoptr (PpJobWords) words = pp_job_words_new (book->job, book->job->plan->steps[step].job);
  g_autofree char *dabs = g_strdup_printf (ngettext ("%u dab", "%u dabs", joint->n_dabs),
                                           joint->n_dabs);
  g_autofree char *line = g_strdup_printf ("%s, %s", words->name, dabs);
  g_autofree char *sentence = g_strdup_printf ("%u. %s.", step + 1, line);
  PpPoint badge = pp_signs_measure_badge (book, step + 1, NUMBER_SIZE);

  pp_book_set_ink (book, PP_INK_RULE);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_rectangle (book->cr, cell.x0, cell.y0, pp_box_width (cell), pp_box_height (cell));
  cairo_stroke (book->cr);
  pp_signs_draw_badge (book, (PpPoint) { cell.x0 + 1.5 + badge.x / 2, cell.y0 + 1.5 + badge.y / 2 },
                 step + 1, NUMBER_SIZE, TRUE);
  draw_back (book, body_index,
             (PpBox) { cell.x0 + PADDING, cell.y0 + NUMBER_ROOM, cell.x1 - PADDING,
                       cell.y1 - WORDS_ROOM - 1 });
  pp_text_draw (book, &style, line, (PpPoint) { cell.x0 + 1, cell.y1 - WORDS_ROOM },
                pp_box_width (cell) - 2);
  pp_book_say (book, sentence);
}

/* Of the pieces that a step glues; knots have no back. */
static GArray *
find_glued (const PpSheetJob *job)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n_knots = job->check->scene->n_knots;

  for (guint i = 0; i < job->plan->n_steps; i++)
    {
      guint of_job = job->plan->steps[i].job;

      if (of_job >= n_knots && job->check->joints[of_job - n_knots]->n_dabs > 0)
        g_array_append_val (steps, i);
    }
  return steps;
}

void
pp_order_backs_draw (PpBook *book)
{
  g_autoptr (GArray) steps = find_glued (book->job);
  guint n_knots = book->job->check->scene->n_knots;
  guint across = 1, down = 1;

  for (guint i = 0; i < steps->len; i++)
    {
      guint step = g_array_index (steps, guint, i);
      guint place = i % (across * down);
      double width, height, x, y;

      if (place == 0 || i == 0)
        {
          pp_book_begin_page (book, i == 0 ? _("Dabs, on the backs") : NULL);
          book->area.y0 = draw_words (book);
          across = MAX (1, (guint) floor (pp_box_width (book->area) / CELL_WIDTH));
          down = MAX (1, (guint) floor (pp_box_height (book->area) / CELL_HEIGHT));
          place = 0;
        }
      width = pp_box_width (book->area) / across;
      height = fmin (pp_box_height (book->area) / down, CELL_HEIGHT * 1.2);
      x = book->area.x0 + place % across * width;
      y = book->area.y0 + place / across * height;
      draw_cell (book, step, book->job->plan->steps[step].job - n_knots,
                 (PpBox) { x, y, x + width, y + height });
    }
}
