/* notice.c: a box of reminders.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/notice.h"

#include "sheet/signs.h"
#include "sheet/text.h"

#define PADDING 4.0 /* mm */

static const PpTextStyle heading_style = { .size = 12, .bold = TRUE };
static const PpTextStyle text_style = { .size = 11 };

/* Measures, and draws if it is told to, so that the two cannot differ. */
static double
lay (PpBook         *book,
     const PpNotice *notice,
     PpPoint         at,
     double          width,
     gboolean        draw)
{
  double indent = 6;
  double inner = width - 2 * PADDING - indent;
  double x = at.x + PADDING + indent;
  double y = at.y + PADDING - 0.8;
  double height;

  pp_text_measure (book, &heading_style, notice->heading, inner, NULL, &height);
  if (draw)
    {
      pp_signs_draw_mark (book, notice->level, (PpPoint) { at.x + PADDING + 1.6, y + 2.5 }, 4);
      pp_text_draw (book, &heading_style, notice->heading, (PpPoint) { x, y }, inner);
    }
  y += height + 1;
  for (guint i = 0; notice->lines[i] != NULL; i++)
    {
      pp_text_measure (book, &text_style, notice->lines[i], inner, NULL, &height);
      if (draw)
        pp_text_draw (book, &text_style, notice->lines[i], (PpPoint) { x, y }, inner);
      y += height + 1;
    }
  return y - 1 + PADDING - at.y;
}

double
pp_notice_height (PpBook         *book,
                  const PpNotice *notice,
                  double          width)
{
  return lay (book, notice, (PpPoint) { 0, 0 }, width, FALSE);
}

double
pp_notice_draw (PpBook         *book,
                const PpNotice *notice,
                PpPoint         at,
                double          width)
{
  double height = pp_notice_height (book, notice, width);

  pp_signs_draw_card (book, (PpBox) { at.x, at.y, at.x + width, at.y + height });
  lay (book, notice, at, width, TRUE);
  pp_book_say (book, notice->heading);
  for (guint i = 0; notice->lines[i] != NULL; i++)
    pp_book_say (book, notice->lines[i]);
  return height;
}
