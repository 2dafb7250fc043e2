/* bars.c: bars of a known length, across and down, to hold a ruler against.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/bars.h"

#include "panel/i18n.h"
#include "sheet/text.h"

#define LONG_ROOM 122.0 /* mm: a bar of 4 in with its words */
#define SHORT_TICK 1.3
#define LONG_TICK 2.2
#define LETTERS 1.9     /* mm, from the bar to the middle of its words */
#define LEAST_NOTE 28.0 /* mm of width that the reminder needs */

PpBox
pp_bars_inner (PpBox area)
{
  return (PpBox) { area.x0 + PP_BARS_ROOM, area.y0, area.x1, area.y1 - PP_BARS_ROOM };
}

static void
add_ticks (cairo_t *cr,
           double   step,
           guint    n,
           guint    every,
           double   side)
{
  for (guint i = 0; i <= n; i++)
    {
      cairo_move_to (cr, i * step, 0);
      cairo_line_to (cr, i * step, side * (i % every == 0 ? LONG_TICK : SHORT_TICK));
    }
}

static void
draw_word (PpBook     *book,
           const char *text,
           double      x,
           double      y)
{
  const PpTextStyle style = { .size = PP_TEXT_LEAST };
  double width;

  pp_text_measure (book, &style, text, PP_NO_WIDTH, &width, NULL);
  pp_text_draw_centred (book, &style, text, (PpPoint) { x + width / 2, y });
}

/* From the origin along x: millimetres over it, inches under it. */
static void
draw_bar (PpBook  *book,
          gboolean is_long)
{
  cairo_t *cr = book->cr;
  double length = (is_long ? 4 : 2) * PP_MM_PER_INCH;

  cairo_set_line_width (cr, PP_LINE_THIN);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, length, 0);
  add_ticks (cr, 10, is_long ? 10 : 5, 5, -1);
  add_ticks (cr, PP_MM_PER_INCH / 2, is_long ? 8 : 4, 2, 1);
  cairo_stroke (cr);
  draw_word (book, is_long ? _("100 mm") : _("50 mm"), length + 2, -LETTERS);
  draw_word (book, is_long ? _("4 in") : _("2 in"), length + 2, LETTERS);
}

static void
draw_note (PpBook *book,
           PpBox   room)
{
  const PpTextStyle style = { .size = PP_TEXT_LEAST, .ink = PP_INK_SOFT, .max_lines = 2 };
  const char *text = _("Print at 100 %; check both bars.");
  double height;

  pp_book_say (book, text);
  if (pp_box_width (room) < LEAST_NOTE)
    return;
  pp_text_measure (book, &style, text, pp_box_width (room), NULL, &height);
  pp_text_draw (book, &style, text, (PpPoint) { room.x0, pp_box_middle (room).y - height / 2 },
                pp_box_width (room));
}

void
pp_bars_draw (PpBook *book,
              PpBox   area,
              double  keep)
{
  cairo_t *cr = book->cr;
  gboolean is_long = fmin (pp_box_width (area), pp_box_height (area)) >= LONG_ROOM + PP_BARS_ROOM;
  double middle = PP_BARS_ROOM / 2;
  PpBox note = { area.x0 + PP_BARS_ROOM + (is_long ? LONG_ROOM : LONG_ROOM - 2 * PP_MM_PER_INCH),
                 area.y1 - PP_BARS_ROOM, area.x1 - keep, area.y1 };

  cairo_save (cr);
  cairo_translate (cr, area.x0 + PP_BARS_ROOM, area.y1 - middle);
  draw_bar (book, is_long);
  cairo_restore (cr);
  cairo_save (cr);
  cairo_translate (cr, area.x0 + middle - 1.5, area.y0 + 1);
  cairo_rotate (cr, G_PI / 2);
  draw_bar (book, is_long);
  cairo_restore (cr);
  draw_note (book, note);
}
