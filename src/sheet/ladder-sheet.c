/* ladder-sheet.c: rungs along a middle line, to read the widths of a long piece from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Counted from the foot of the page up. A second page goes on where the first ends, for what is
 * longer than the page.
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bars.h"
#include "sheet/kinds.h"
#include "sheet/text.h"

#include <math.h>

#define N_PAGES 2
#define HALF_WIDTH 60.0   /* mm each side of the middle line, at most */
#define FIGURE_ROOM 14.0  /* mm, left of the rungs */
#define FIGURE_SIZE 12.0
#define SIDE_SIZE 9.0
#define SIDE_ROOM 5.0     /* mm under the lowest rung */
#define TOP_ROOM 3.0      /* mm over the highest */
#define FINE 0.13
#define WORDS_GAP 2.0

typedef struct
{
  double  rung;     /* mm, from one to the next */
  double  rail;
  guint   strong;   /* every n-th rail is strong and has a figure */
  guint   n_rungs;  /* on a page, the first not counted */
  guint   n_rails;  /* each side */
  guint   first;    /* the lowest rung of this page */
  PpPoint foot;     /* where the middle line meets it */
} Ladder;

static void
draw_line (PpBook *book,
           PpPoint from,
           PpPoint to,
           double  width)
{
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (book->cr, width);
  cairo_move_to (book->cr, from.x, from.y);
  cairo_line_to (book->cr, to.x, to.y);
  cairo_stroke (book->cr);
}

static void
draw_rungs (PpBook       *book,
            const Ladder *self)
{
  const PpTextStyle style = { .size = FIGURE_SIZE };
  double reach = self->n_rails * self->rail;

  for (guint i = 0; i <= self->n_rungs; i++)
    {
      double y = self->foot.y - i * self->rung;
      g_autofree char *figure = self->first + i == 0
                                ? g_strdup ("0")
                                : pp_length_format_bare ((self->first + i) * self->rung,
                                                         book->job->units);

      draw_line (book, (PpPoint) { self->foot.x - reach, y }, (PpPoint) { self->foot.x + reach, y },
                 PP_LINE_MIDDLE);
      pp_text_draw_centred (book, &style, figure,
                            (PpPoint) { self->foot.x - reach - FIGURE_ROOM / 2, y });
    }
}

static void
draw_rail (PpBook       *book,
           const Ladder *self,
           int           index)
{
  const PpTextStyle style = { .size = SIDE_SIZE };
  guint from_middle = (guint) ABS (index);
  double x = self->foot.x + index * self->rail;
  double width = from_middle % self->strong == 0 ? PP_LINE_MIDDLE : FINE;

  draw_line (book, (PpPoint) { x, self->foot.y },
             (PpPoint) { x, self->foot.y - self->n_rungs * self->rung },
             index == 0 ? 2 * PP_LINE_HEAVY : width);
  if (from_middle % self->strong == 0)
    {
      g_autofree char *figure = index == 0
                                ? g_strdup ("0")
                                : pp_length_format_bare (from_middle * self->rail,
                                                         book->job->units);

      pp_text_draw_centred (book, &style, figure,
                            (PpPoint) { x, self->foot.y + SIDE_ROOM / 2 + 0.5 });
    }
}

/* Returns the y below. */
static double
draw_words (PpBook *book,
            guint   page)
{
  const PpTextStyle style = { .size = 12 };
  const char *words = page == 0
    ? _("Lay the piece along the heavy line, front up, its base on 0, its tip up. Look straight "
        "down and note at each rung how far its edges lie to the left and to the right.")
    : _("For what is longer: cut along the lowest rung and lay it on the highest of the page "
        "before, the heavy lines in one; tape.");

  return book->area.y0 + WORDS_GAP
         + pp_text_tell (book, &style, words, (PpPoint) { book->area.x0, book->area.y0 },
                         pp_box_width (book->area));
}

static Ladder
make_ladder (PpUnits units,
             PpBox   room,
             guint   first)
{
  Ladder self = units == PP_UNITS_INCH
                ? (Ladder) { .rung = PP_MM_PER_INCH / 2, .rail = PP_MM_PER_INCH / 8, .strong = 4 }
                : (Ladder) { .rung = 10, .rail = 5, .strong = 2 };
  double half = fmin ((pp_box_width (room) - FIGURE_ROOM) / 2 - 2, HALF_WIDTH);

  self.n_rails = (guint) floor (half / self.rail);
  self.n_rungs = (guint) floor ((pp_box_height (room) - SIDE_ROOM - TOP_ROOM) / self.rung);
  self.first = first;
  self.foot = (PpPoint) { pp_box_middle (room).x + FIGURE_ROOM / 2, room.y1 - SIDE_ROOM };
  return self;
}

static void
draw_sheet (PpBook *book)
{
  guint first = 0;

  for (guint page = 0; page < N_PAGES; page++)
    {
      g_autofree char *heading = g_strdup_printf (_("Ladder, true to size: %u of %u"), page + 1,
                                                  N_PAGES);
      Ladder ladder;

      pp_book_begin_page (book, heading);
      book->area.y0 = draw_words (book, page);
      ladder = make_ladder (book->job->units, pp_bars_inner (book->area), first);
      draw_rungs (book, &ladder);
      for (int i = -(int) ladder.n_rails; i <= (int) ladder.n_rails; i++)
        draw_rail (book, &ladder, i);
      pp_bars_draw (book, book->area, 0);
      first += ladder.n_rungs;
    }
}

const PpSheetKind pp_ladder_sheet = { "ladder", N_("Ladder sheet"), draw_sheet };
