/* signs.c: petals, cards, marks and badges.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/signs.h"

#include "sheet/text.h"

#include <math.h>

#define CORNER 2.0 /* mm, of cards */

void
pp_signs_draw_petals (PpBook *book,
                      PpPoint at,
                      double  radius)
{
  cairo_t *cr = book->cr;

  pp_book_set_ink (book, PP_INK_ACCENT);
  cairo_set_line_width (cr, PP_LINE_MIDDLE);
  for (int i = 0; i < 5; i++)
    {
      cairo_save (cr);
      cairo_translate (cr, at.x, at.y);
      cairo_rotate (cr, i * 2 * G_PI / 5);
      cairo_move_to (cr, 0, -radius * 0.18);
      cairo_curve_to (cr, -radius * 0.62, -radius * 0.45, -radius * 0.42, -radius, 0, -radius);
      cairo_curve_to (cr, radius * 0.42, -radius, radius * 0.62, -radius * 0.45, 0, -radius * 0.18);
      cairo_restore (cr);
      cairo_stroke (cr);
    }
}

static void
add_round_box (cairo_t *cr,
               PpBox    box)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, box.x1 - CORNER, box.y0 + CORNER, CORNER, -G_PI / 2, 0);
  cairo_arc (cr, box.x1 - CORNER, box.y1 - CORNER, CORNER, 0, G_PI / 2);
  cairo_arc (cr, box.x0 + CORNER, box.y1 - CORNER, CORNER, G_PI / 2, G_PI);
  cairo_arc (cr, box.x0 + CORNER, box.y0 + CORNER, CORNER, G_PI, 3 * G_PI / 2);
  cairo_close_path (cr);
}

void
pp_signs_draw_card (PpBook *book,
                    PpBox   box)
{
  add_round_box (book->cr, box);
  pp_book_set_ink (book, PP_INK_CARD);
  cairo_fill_preserve (book->cr);
  pp_book_set_ink (book, PP_INK_RULE);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_stroke (book->cr);
}

static void
add_corners (cairo_t *cr,
             PpPoint  at,
             double   radius,
             int      n)
{
  for (int i = 0; i < n; i++)
    {
      double angle = i * 2 * G_PI / n;

      cairo_line_to (cr, at.x + radius * sin (angle), at.y - radius * cos (angle));
    }
  cairo_close_path (cr);
}

void
pp_signs_draw_mark (PpBook *book,
                    PpLevel level,
                    PpPoint at,
                    double  size)
{
  static const PpInk inks[] = {
    [PP_LEVEL_FAULT] = PP_INK_FAULT,
    [PP_LEVEL_CAUTION] = PP_INK_CAUTION,
    [PP_LEVEL_NOTE] = PP_INK_NOTE,
  };
  cairo_t *cr = book->cr;

  cairo_new_path (cr);
  switch (level)
    {
    case PP_LEVEL_FAULT:
      add_corners (cr, (PpPoint) { at.x, at.y + size * 0.08 }, size * 0.58, 3);
      break;
    case PP_LEVEL_CAUTION:
      add_corners (cr, at, size * 0.56, 4);
      break;
    case PP_LEVEL_NOTE:
      cairo_arc (cr, at.x, at.y, size * 0.44, 0, 2 * G_PI);
      break;
    }
  pp_book_set_ink (book, inks[level]);
  if (level == PP_LEVEL_NOTE)
    {
      cairo_set_line_width (cr, PP_LINE_STRONG);
      cairo_stroke (cr);
    }
  else
    cairo_fill (cr);
}

PpPoint
pp_signs_measure_badge (PpBook *book,
                        guint   number,
                        double  size)
{
  const PpTextStyle style = { .size = size, .bold = TRUE };
  g_autofree char *text = g_strdup_printf ("%u", number);
  double height = size * PP_MM_PER_POINT * 1.24;
  double width;

  pp_text_measure (book, &style, text, PP_NO_WIDTH, &width, NULL);
  return (PpPoint) { fmax (height, width + height * 0.42), height };
}

static void
add_pill (cairo_t *cr,
          PpPoint  at,
          PpPoint  size)
{
  double radius = size.y / 2;
  double half = size.x / 2 - radius;

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x + half, at.y, radius, -G_PI / 2, G_PI / 2);
  cairo_arc (cr, at.x - half, at.y, radius, G_PI / 2, 3 * G_PI / 2);
  cairo_close_path (cr);
}

void
pp_signs_draw_badge (PpBook  *book,
                     PpPoint  at,
                     guint    number,
                     double   size,
                     gboolean is_step)
{
  const PpTextStyle style = { .size = size, .bold = TRUE,
                              .ink = is_step ? PP_INK_PAPER : PP_INK_TEXT };
  g_autofree char *text = g_strdup_printf ("%u", number);
  PpPoint measure = pp_signs_measure_badge (book, number, size);

  add_pill (book->cr, at, measure);
  pp_book_set_ink (book, is_step ? PP_INK_TEXT : PP_INK_PAPER);
  cairo_fill_preserve (book->cr);
  pp_book_set_ink (book, is_step ? PP_INK_PAPER : PP_INK_TEXT);
  cairo_set_line_width (book->cr, is_step ? PP_LINE_STRONG : PP_LINE_THIN);
  cairo_stroke (book->cr);
  pp_text_draw_centred (book, &style, text, at);
}
