/* marks.c: the small marks of a plan: glue, props, knots.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/marks.h"

#define DAB_LEAST 0.9  /* mm, radius of the smallest dab on paper */
#define KNOT_LEAST 1.2
#define PROP 1.9       /* mm, radius of the mark of a prop */

void
pp_dab_draw (PpBook  *book,
             PpPoint  at,
             double   radius)
{
  cairo_t *cr = book->cr;

  radius = fmax (radius, DAB_LEAST);
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_fill_preserve (cr);
  pp_book_set_ink (book, PP_INK_ACCENT);
  cairo_set_line_width (cr, PP_LINE_MIDDLE);
  cairo_stroke (cr);
  cairo_arc (cr, at.x, at.y, radius * 0.4, 0, 2 * G_PI);
  cairo_fill (cr);
}

void
pp_dab_draw_covered (PpBook *book,
                     PpPoint at,
                     double  radius)
{
  const double dash[] = { 0.7, 0.7 };
  cairo_t *cr = book->cr;

  cairo_save (cr);
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, fmax (radius, DAB_LEAST), 0, 2 * G_PI);
  pp_book_set_ink (book, PP_INK_SOFT);
  cairo_set_line_width (cr, PP_LINE_THIN);
  cairo_set_dash (cr, dash, G_N_ELEMENTS (dash), 0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
pp_prop_draw (PpBook  *book,
              PpPoint  at)
{
  cairo_t *cr = book->cr;

  cairo_move_to (cr, at.x, at.y - PROP);
  cairo_line_to (cr, at.x + PROP * 0.95, at.y + PROP * 0.7);
  cairo_line_to (cr, at.x - PROP * 0.95, at.y + PROP * 0.7);
  cairo_close_path (cr);
  pp_book_set_ink (book, PP_INK_CAUTION);
  cairo_fill_preserve (cr);
  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_set_line_width (cr, PP_LINE_THIN);
  cairo_stroke (cr);
}

void
pp_knot_draw (PpBook   *book,
              PpPoint   at,
              double    radius,
              gboolean  is_heavy,
              PpInk     ink)
{
  cairo_t *cr = book->cr;
  double arm;

  radius = fmax (radius, KNOT_LEAST);
  arm = radius / 2;
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_fill_preserve (cr);
  pp_book_set_ink (book, ink);
  cairo_set_line_width (cr, is_heavy ? PP_LINE_HEAVY : PP_LINE_THIN);
  cairo_stroke (cr);
  cairo_move_to (cr, at.x - arm, at.y - arm);
  cairo_line_to (cr, at.x + arm, at.y + arm);
  cairo_move_to (cr, at.x + arm, at.y - arm);
  cairo_line_to (cr, at.x - arm, at.y + arm);
  cairo_set_line_width (cr, PP_LINE_MIDDLE);
  cairo_stroke (cr);
}
