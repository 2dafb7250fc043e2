/* ink.h: the colours, line widths and hatches of the sheets, in colour and in black and white.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A colour is named by what it says, so that a black and white sheet needs no second drawing.
 * No meaning hangs on a colour alone: marks differ by shape, lines by weight and dash.
 */
#pragma once

#include "art/colour.h"

#include <math.h>

G_BEGIN_DECLS

typedef enum
{
  PP_INK_TEXT,
  PP_INK_SOFT,    /* less important text; 4.5:1 or better on paper */
  PP_INK_RULE,    /* thin rules and rows of tables */
  PP_INK_DOWN,    /* what lies on the glass already */
  PP_INK_ACCENT,
  PP_INK_FAULT,
  PP_INK_CAUTION,
  PP_INK_NOTE,
  PP_INK_DONE,
  PP_INK_PAPER,
  PP_INK_CARD,    /* a breath of bench behind boxes; white where there is no colour */
  PP_INK_GLASS,
} PpInk;

/* mm; steps of 1:1.4 as technical drawings use them. */
#define PP_LINE_THIN 0.25
#define PP_LINE_MIDDLE 0.35
#define PP_LINE_STRONG 0.5
#define PP_LINE_HEAVY 0.7

PpColour pp_ink_colour (PpInk    ink,
                        gboolean mono);
void     pp_ink_set    (cairo_t *cr,
                        PpInk    ink,
                        gboolean mono);
/* Fills the current clip with slanted lines `step` apart, in the source colour; `angle` in degrees
 * clockwise from upright. One unit of `cr` is 1 mm on paper. */
void     pp_ink_hatch  (cairo_t *cr,
                        double   step,
                        double   angle);

G_END_DECLS
