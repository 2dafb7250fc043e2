/* frame-sheet.c: four discs at known distances, to photograph pieces within.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Black discs, the top left one with a white hole, as piece/discs.h looks for. As far apart as the
 * paper lets them in steps of 10 mm, which on A4 is 180 by 240 mm.
 */
#include "config.h"

#include "sheet/frame-sheet.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "piece/discs.h"
#include "sheet/furniture.h"
#include "sheet/kinds.h"
#include "sheet/text.h"

#include <math.h>

#define STEP 10.0        /* mm */
#define LEAST_MARGIN 8.0 /* mm of paper left and right of the discs */
#define WORDS_SIZE 9.5
#define WORDS_LINES 4

static void
draw_disc (PpBook  *book,
           PpPoint  at,
           gboolean has_hole)
{
  cairo_new_sub_path (book->cr);
  cairo_arc (book->cr, at.x, at.y, PP_DISCS_ACROSS / 2, 0, 2 * G_PI);
  if (has_hole)
    {
      cairo_new_sub_path (book->cr);
      cairo_arc (book->cr, at.x, at.y, PP_DISCS_HOLE / 2, 0, 2 * G_PI);
    }
  cairo_set_source_rgb (book->cr, 0, 0, 0);
  cairo_fill (book->cr);
}

/* Between two discs, where no piece should lie. */
static void
draw_words (PpBook     *book,
            const char *words,
            PpBox       frame,
            double      y)
{
  const PpTextStyle style = { .size = WORDS_SIZE, .align = PP_ALIGN_MIDDLE,
                              .max_lines = WORDS_LINES };
  double x = frame.x0 + PP_DISCS_ACROSS, width = pp_box_width (frame) - 2 * PP_DISCS_ACROSS;
  double height;

  pp_text_measure (book, &style, words, width, NULL, &height);
  pp_text_tell (book, &style, words, (PpPoint) { x, y - height / 2 }, width);
}

static char *
words_new (PpBook *book,
           PpBox   frame)
{
  g_autofree char *across = pp_length_format (pp_box_width (frame), PP_UNITS_MM);
  g_autofree char *down = pp_length_format (pp_box_height (frame), PP_UNITS_MM);

  if (book->job->units == PP_UNITS_INCH)
    {
      g_autofree char *inches = pp_size_format (pp_box_width (frame), pp_box_height (frame),
                                                PP_UNITS_INCH);

      return g_strdup_printf (_("Frame %s by %s (%s), from middle to middle. Print at 100 %%, not "
                                "fitted to the page; measure both ways before you trust it."),
                              across, down, inches);
    }
  return g_strdup_printf (_("Frame %s by %s, from middle to middle. Print at 100 %%, not fitted to "
                            "the page; measure both ways before you trust it."), across, down);
}

static PpPoint
measure (PpBox paper,
         PpBox area)
{
  double across = pp_box_width (paper) - PP_DISCS_ACROSS - 2 * LEAST_MARGIN;
  double down = pp_box_height (area) - PP_DISCS_ACROSS;

  return (PpPoint) { floor (across / STEP) * STEP, floor (down / STEP) * STEP };
}

PpPoint
pp_frame_sheet_measure (const PpPaper *paper)
{
  const PpBook book = { .paper = { 0, 0, paper->width, paper->height } };

  return measure (book.paper, pp_furniture_get_area (&book, NULL));
}

static void
draw_sheet (PpBook *book)
{
  PpPoint size, middle;
  PpBox frame;
  g_autofree char *words = NULL;

  /* A heading would cost 10 mm of frame. */
  pp_book_begin_page (book, NULL);
  size = measure (book->paper, book->area);
  middle = (PpPoint) { pp_box_middle (book->paper).x, pp_box_middle (book->area).y };
  frame = (PpBox) { middle.x - size.x / 2, middle.y - size.y / 2, middle.x + size.x / 2,
                    middle.y + size.y / 2 };
  draw_disc (book, (PpPoint) { frame.x0, frame.y0 }, TRUE);
  draw_disc (book, (PpPoint) { frame.x1, frame.y0 }, FALSE);
  draw_disc (book, (PpPoint) { frame.x0, frame.y1 }, FALSE);
  draw_disc (book, (PpPoint) { frame.x1, frame.y1 }, FALSE);
  draw_words (book, _("Lay the pieces apart from each other inside the four discs, front up. Light "
                      "from all sides, the camera straight above and far, all four discs in the "
                      "picture."), frame, frame.y0);
  words = words_new (book, frame);
  draw_words (book, words, frame, frame.y1);
}

const PpSheetKind pp_frame_sheet = { "frame", N_("Photo frame"), draw_sheet };
