/* ink.c: the colours, line widths and hatches of the sheets, in colour and in black and white.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/ink.h"

/* In black and white a grey would be broken into dots by the printer: text and lines are black. */
static const struct
{
  const char *colour;
  const char *mono;
} inks[] = {
  [PP_INK_TEXT] = { "#26292c", "#000000" },
  [PP_INK_SOFT] = { "#5a5f62", "#000000" },
  [PP_INK_RULE] = { "#cbc3b4", "#000000" },
  [PP_INK_DOWN] = { "#9a9890", "#000000" },
  [PP_INK_ACCENT] = { "#1f6f78", "#000000" },
  [PP_INK_FAULT] = { "#a63a2b", "#000000" },
  [PP_INK_CAUTION] = { "#7d5700", "#000000" },
  [PP_INK_NOTE] = { "#4f6472", "#000000" },
  [PP_INK_DONE] = { "#456635", "#000000" },
  [PP_INK_PAPER] = { "#ffffff", "#ffffff" },
  [PP_INK_CARD] = { "#f6f2ea", "#ffffff" },
  [PP_INK_GLASS] = { "#f1f6f3", "#ffffff" },
};

PpColour
pp_ink_colour (PpInk    ink,
               gboolean mono)
{
  return pp_colour_parse (mono ? inks[ink].mono : inks[ink].colour);
}

void
pp_ink_set (cairo_t *cr,
            PpInk    ink,
            gboolean mono)
{
  pp_colour_set (cr, pp_ink_colour (ink, mono), 1);
}

void
pp_ink_hatch (cairo_t *cr,
              double   step,
              double   angle)
{
  double x0, y0, x1, y1, reach;
  int n;

  cairo_clip_extents (cr, &x0, &y0, &x1, &y1);
  reach = hypot (x1 - x0, y1 - y0) / 2;
  n = (int) ceil (reach / step);
  cairo_save (cr);
  cairo_translate (cr, (x0 + x1) / 2, (y0 + y1) / 2);
  cairo_rotate (cr, angle * G_PI / 180);
  for (int i = -n; i <= n; i++)
    {
      cairo_move_to (cr, i * step, -reach);
      cairo_line_to (cr, i * step, reach);
    }
  cairo_restore (cr);
  cairo_stroke (cr);
}
