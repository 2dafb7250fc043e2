/* ring-sheet.c: rings and spokes to lay a piece on and read its outline from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A spoke every half hour of a clock, the hours in figures, and a ring every 5 mm or 1/4 in: what
 * turns are called on every sheet.
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bars.h"
#include "sheet/kinds.h"
#include "sheet/text.h"

#include <math.h>

#define N_SPOKES 24
#define HOUR_ROOM 8.0 /* mm around the last ring */
#define HOUR_SIZE 14.0
#define RING_SIZE 9.0
#define FINE 0.13     /* mm: the eye passes over it to the piece */
#define CROWDED 10.0  /* mm from the middle, where half hours would run together */
#define WORDS_GAP 2.0

/* Every n-th ring is strong and has a figure. */
typedef struct
{
  double step;  /* mm */
  guint  every;
  guint  n;
} Rings;

static Rings
get_rings (PpUnits units,
           double  room)
{
  Rings rings = units == PP_UNITS_INCH ? (Rings) { PP_MM_PER_INCH / 4, 4, 0 } : (Rings) { 5, 2, 0 };

  rings.n = (guint) floor (room / rings.step);
  return rings;
}

static void
draw_rings (PpBook      *book,
            PpPoint      middle,
            const Rings *rings)
{
  pp_book_set_ink (book, PP_INK_DOWN);
  for (guint i = 1; i <= rings->n; i++)
    {
      cairo_new_sub_path (book->cr);
      cairo_arc (book->cr, middle.x, middle.y, i * rings->step, 0, 2 * G_PI);
      cairo_set_line_width (book->cr, i % rings->every == 0 ? PP_LINE_MIDDLE : FINE);
      cairo_stroke (book->cr);
    }
}

static PpPoint
point_on (PpPoint middle,
          guint   spoke,
          double  radius)
{
  double angle = spoke * 2 * G_PI / N_SPOKES;

  return (PpPoint) { middle.x + radius * sin (angle), middle.y - radius * cos (angle) };
}

static void
draw_spokes (PpBook      *book,
             PpPoint      middle,
             const Rings *rings)
{
  const PpTextStyle style = { .size = HOUR_SIZE, .bold = TRUE };
  double reach = rings->n * rings->step;

  for (guint i = 0; i < N_SPOKES; i++)
    {
      PpPoint from = point_on (middle, i, i % 2 == 0 ? 0 : CROWDED);
      PpPoint to = point_on (middle, i, reach);
      g_autofree char *hour = g_strdup_printf ("%u", i == 0 ? 12 : i / 2);

      pp_book_set_ink (book, PP_INK_DOWN);
      cairo_set_line_width (book->cr, i % 2 == 0 ? PP_LINE_MIDDLE : FINE);
      cairo_move_to (book->cr, from.x, from.y);
      cairo_line_to (book->cr, to.x, to.y);
      cairo_stroke (book->cr);
      if (i % 2 == 0)
        pp_text_draw_centred (book, &style, hour, point_on (middle, i, reach + HOUR_ROOM / 2));
    }
}

/* On white, up, down, left and right of the middle, so that some stay free of any piece. */
static void
draw_figures (PpBook      *book,
              PpPoint      middle,
              const Rings *rings)
{
  const PpTextStyle style = { .size = RING_SIZE };

  for (guint i = rings->every; i <= rings->n; i += rings->every)
    {
      g_autofree char *figure = pp_length_format_bare (i * rings->step, book->job->units);
      double width;

      pp_text_measure (book, &style, figure, PP_NO_WIDTH, &width, NULL);
      for (guint spoke = 0; spoke < N_SPOKES; spoke += N_SPOKES / 4)
        {
          PpPoint at = point_on (middle, spoke, i * rings->step);

          pp_book_set_ink (book, PP_INK_PAPER);
          cairo_rectangle (book->cr, at.x - width / 2 - 0.4, at.y - 1.6, width + 0.8, 3.2);
          cairo_fill (book->cr);
          pp_text_draw_centred (book, &style, figure, at);
        }
    }
}

/* Returns the y below. */
static double
draw_words (PpBook *book)
{
  const PpTextStyle style = { .size = 12 };
  const char *words = book->job->units == PP_UNITS_INCH
    ? _("Lay the piece with its middle on the middle, front up, its longest petal toward 12. Look "
        "straight down and note on each spoke how far out its edge lies. A ring every 1/4 in, a "
        "figure every inch.")
    : _("Lay the piece with its middle on the middle, front up, its longest petal toward 12. Look "
        "straight down and note on each spoke how far out its edge lies. A ring every 5 mm, a "
        "figure every 10 mm.");

  return book->area.y0 + WORDS_GAP
         + pp_text_tell (book, &style, words, (PpPoint) { book->area.x0, book->area.y0 },
                         pp_box_width (book->area));
}

static void
draw_sheet (PpBook *book)
{
  PpBox room;
  PpPoint middle;
  Rings rings;

  pp_book_begin_page (book, _("Rings and spokes, true to size"));
  book->area.y0 = draw_words (book);
  room = pp_bars_inner (book->area);
  middle = pp_box_middle (room);
  rings = get_rings (book->job->units,
                     fmin (pp_box_width (room), pp_box_height (room)) / 2 - HOUR_ROOM);
  draw_rings (book, middle, &rings);
  draw_spokes (book, middle, &rings);
  draw_figures (book, middle, &rings);
  pp_bars_draw (book, book->area, 0);
}

const PpSheetKind pp_ring_sheet = { "ring", N_("Ring sheet"), draw_sheet };
