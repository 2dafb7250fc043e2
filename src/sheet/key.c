/* key.c: how the picture of a mix is read.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/key.h"

#include "panel/i18n.h"
#include "sheet/marks.h"
#include "sheet/text.h"

#define KEY_STEP 6.5 /* mm */
#define KEY_GAP 1.5  /* mm under words of more than one line */

typedef enum
{
  KEY_DOWN,
  KEY_NOW,
  KEY_DAB,
  KEY_COVERED_DAB,
  KEY_PROP,
  KEY_KNOT,
  N_KEYS
} Key;

static void
draw_key_mark (PpBook  *book,
               Key      key,
               PpPoint  at)
{
  cairo_t *cr = book->cr;

  switch (key)
    {
    case KEY_DOWN:
    case KEY_NOW:
      cairo_rectangle (cr, at.x - 4, at.y - 1.9, 8, 3.8);
      pp_book_set_ink (book, key == KEY_NOW ? PP_INK_TEXT : PP_INK_DOWN);
      cairo_set_line_width (cr, key == KEY_NOW ? PP_LINE_HEAVY : PP_LINE_THIN);
      cairo_stroke (cr);
      break;
    case KEY_DAB:
      pp_dab_draw (book, at, 1.5);
      break;
    case KEY_COVERED_DAB:
      pp_dab_draw_covered (book, at, 1.5);
      break;
    case KEY_PROP:
      pp_prop_draw (book, at);
      break;
    case KEY_KNOT:
      pp_knot_draw (book, at, 1.6, FALSE, PP_INK_TEXT);
      break;
    case N_KEYS:
      break;
    }
}

double
pp_key_draw (PpBook *book,
             PpBox   box)
{
  static const char *const words[N_KEYS] = {
    N_("lies there already"), N_("place it now"), N_("dab of glue"),
    N_("dab, covered later"), N_("prop"),
    N_("knot of the wire"),
  };
  const PpTextStyle style = { .size = 10.5, .ink = PP_INK_SOFT };

  for (Key key = KEY_DOWN; key < N_KEYS && box.y0 + KEY_STEP < box.y1; key++)
    {
      PpPoint at = { box.x0 + 11, box.y0 };

      draw_key_mark (book, key, (PpPoint) { box.x0 + 4, box.y0 + 2.2 });
      box.y0 += fmax (KEY_STEP, KEY_GAP + pp_text_draw (book, &style, _(words[key]), at,
                                                        box.x1 - at.x));
    }
  return box.y0;
}
