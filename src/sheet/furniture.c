/* furniture.c: what every page carries: header, footer, and a line where there is nothing else.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/furniture.h"

#include "panel/i18n.h"
#include "sheet/plain-line.h"
#include "sheet/signs.h"
#include "sheet/text.h"

#include <math.h>

#define SMALL_PAPER 170.0 /* mm; below, margins and heading shrink */
#define MARGIN 13.0       /* mm; what any printer leaves, and a thumb */
#define SMALL_MARGIN 8.0
#define HEADER_UP 3.0     /* mm, of the first line into the margin */
#define KIND_ROOM 6.0
#define HEADING_SPACE 1.5
#define AFTER_HEADER 4.0
#define BEFORE_FOOTER 4.0
#define HEADING_SIZE 20.0 /* pt */
#define SMALL_HEADING_SIZE 14.0
#define MOST_HEADING 4 /* lines */
#define KIND_SIZE 10.5
#define FOOT_SIZE 9.0

static void
draw_rule (PpBook *book,
           double  x0,
           double  x1,
           double  y,
           PpInk   ink,
           double  width)
{
  pp_book_set_ink (book, ink);
  cairo_set_line_width (book->cr, width);
  cairo_move_to (book->cr, x0, y);
  cairo_line_to (book->cr, x1, y);
  cairo_stroke (book->cr);
}

static gboolean
is_small (const PpBook *book)
{
  return fmin (book->paper.x1, book->paper.y1) < SMALL_PAPER;
}

static double
get_margin (const PpBook *book)
{
  return is_small (book) ? SMALL_MARGIN : MARGIN;
}

static PpTextStyle
heading_style_of (const PpBook *book)
{
  return (PpTextStyle) { .size = is_small (book) ? SMALL_HEADING_SIZE : HEADING_SIZE, .bold = TRUE,
                         .max_lines = MOST_HEADING };
}

/* The y of the rule under the heading. */
static double
get_header_foot (const PpBook *book,
                 const char   *heading)
{
  PpTextStyle style = heading_style_of (book);
  double margin = get_margin (book);
  double height;

  if (heading == NULL || *heading == '\0')
    return margin - HEADER_UP + KIND_ROOM;
  pp_text_measure (book, &style, heading, pp_box_width (book->paper) - 2 * margin, NULL,
                   &height);
  return margin - HEADER_UP + KIND_ROOM + height + HEADING_SPACE;
}

static double
get_footer_top (const PpBook *book)
{
  return book->paper.y1 - get_margin (book) - pp_text_line_height (FOOT_SIZE) + 2;
}

PpBox
pp_furniture_get_area (const PpBook *book,
                       const char   *heading)
{
  double margin = get_margin (book);

  return (PpBox) { margin, get_header_foot (book, heading) + AFTER_HEADER,
                   book->paper.x1 - margin, get_footer_top (book) - BEFORE_FOOTER };
}

static char *
heading_new (PpBook *book)
{
  if (book->is_marked || book->heading == NULL)
    return g_strdup (book->heading != NULL ? book->heading : "");
  return g_strdup_printf (_("%s, continued"), book->heading);
}

static void
draw_header (PpBook     *book,
             const char *heading)
{
  const PpTextStyle kind = { .size = KIND_SIZE, .bold = TRUE, .ink = PP_INK_ACCENT };
  const PpTextStyle page = { .size = KIND_SIZE, .ink = PP_INK_SOFT, .align = PP_ALIGN_RIGHT };
  PpTextStyle large = heading_style_of (book);
  g_autofree char *count = g_strdup_printf (_("page %u of %u"), book->page,
                                            MAX (book->n_pages, book->page));
  double margin = get_margin (book);
  double right = book->paper.x1 - margin;
  double y = margin - HEADER_UP;

  pp_signs_draw_petals (book, (PpPoint) { margin + 2.6, y + 2.4 }, 2.7);
  pp_text_draw (book, &kind, _(book->kind->title), (PpPoint) { margin + 7, y }, PP_NO_WIDTH);
  pp_text_draw (book, &page, count, (PpPoint) { right, y }, PP_NO_WIDTH);
  if (*heading != '\0')
    pp_text_draw (book, &large, heading, (PpPoint) { margin, y + KIND_ROOM }, right - margin);
  draw_rule (book, margin, right, get_header_foot (book, heading), PP_INK_ACCENT, PP_LINE_STRONG);
}

static char *
signature_new (const PpPanel *panel)
{
  g_autofree char *maker = pp_plain_line_new (panel->maker);
  g_autofree char *date = pp_plain_line_new_date (panel);

  if (*maker == '\0' || *date == '\0')
    return g_strdup (*maker != '\0' ? maker : date);
  return g_strdup_printf ("%s \302\267 %s", maker, date);
}

/* A title that runs from right to left would stand at the far end of a wider place. */
static void
draw_foot_title (PpBook *book,
                 PpPoint at,
                 double  room)
{
  const PpTextStyle style = { .size = FOOT_SIZE, .ink = PP_INK_SOFT, .max_lines = 1 };
  g_autofree char *title = pp_plain_line_new_title (book->panel);
  double width;

  pp_text_measure (book, &style, title, PP_NO_WIDTH, &width, NULL);
  pp_text_draw (book, &style, title, at, width <= room ? PP_NO_WIDTH : room);
}

static void
draw_footer (PpBook *book)
{
  const PpTextStyle style = { .size = FOOT_SIZE, .ink = PP_INK_SOFT, .align = PP_ALIGN_RIGHT,
                              .max_lines = 1 };
  g_autofree char *signature = book->panel != NULL ? signature_new (book->panel) : g_strdup ("");
  double margin = get_margin (book);
  double right = book->paper.x1 - margin;
  double y = get_footer_top (book);
  double width;

  draw_rule (book, margin, right, y - 1.2, PP_INK_RULE, PP_LINE_THIN);
  pp_text_measure (book, &style, signature, PP_NO_WIDTH, &width, NULL);
  width = fmin (width + 0.5, (right - margin) / 2);
  pp_text_draw (book, &style, signature, (PpPoint) { right - width, y }, width);
  draw_foot_title (book, (PpPoint) { margin, y }, right - margin - width - 2 * PP_GAP);
}

void
pp_furniture_draw (PpBook *book)
{
  g_autofree char *heading = heading_new (book);

  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_paint (book->cr);
  draw_header (book, heading);
  draw_footer (book);
  book->area = pp_furniture_get_area (book, heading);
}

void
pp_furniture_draw_empty (PpBook     *book,
                         const char *text)
{
  const PpTextStyle style = { .size = 14, .ink = PP_INK_SOFT, .align = PP_ALIGN_MIDDLE };
  double width = fmin (pp_box_width (book->area), 130);
  double middle = (book->area.x0 + book->area.x1) / 2;
  double y = book->area.y0 + pp_box_height (book->area) * 0.3;

  pp_signs_draw_petals (book, (PpPoint) { middle, y - 12 }, 7);
  pp_text_tell (book, &style, text, (PpPoint) { middle - width / 2, y }, width);
}
