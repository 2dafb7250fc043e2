/* text.h: words on a page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pango with a font map of its own at 72 dpi without hinting, so that lines break the same on
 * paper, in a picture and on every screen. Sizes in points, places and widths in mm.
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

#define PP_TEXT_LEAST 9.0 /* pt, nothing is smaller */

typedef enum
{
  PP_ALIGN_LEFT,
  PP_ALIGN_MIDDLE,
  PP_ALIGN_RIGHT,
} PpAlign;

typedef struct
{
  double   size; /* pt */
  gboolean bold;
  PpInk    ink;
  PpAlign  align;
  int      max_lines; /* 0: as many as it takes; else the last ends in an ellipsis */
} PpTextStyle;

#define PP_NO_WIDTH (-1.0)

/* mm, from the baseline of one line to the next, about. */
static inline double
pp_text_line_height (double size)
{
  return size * PP_MM_PER_POINT * 1.2;
}

/* (transfer full) */
PangoContext *pp_text_context_new (void);
/* Wrapped to `width`, or on as many lines as it has (PP_NO_WIDTH). (transfer full) */
PangoLayout  *pp_text_layout       (const PpBook      *book,
                                    const PpTextStyle *style,
                                    const char        *text,
                                    double             width);
/* `width` and `height` are nullable. */
void          pp_text_measure      (const PpBook      *book,
                                    const PpTextStyle *style,
                                    const char        *text,
                                    double             wrap_width,
                                    double            *width,
                                    double            *height);
/* With its top at y. Without a width x is the left, middle or right of the text by its alignment.
 * Returns its height. */
double        pp_text_draw         (PpBook            *book,
                                    const PpTextStyle *style,
                                    const char        *text,
                                    PpPoint            at,
                                    double             width);
/* As pp_text_draw(), and adds it to the page's words: so that what is drawn as a sentence is told
 * to those who cannot see it. */
double        pp_text_tell         (PpBook            *book,
                                    const PpTextStyle *style,
                                    const char        *text,
                                    PpPoint            at,
                                    double             width);
/* One line with its middle at `at`, both ways, capitals taken as its height. */
void          pp_text_draw_centred (PpBook            *book,
                                    const PpTextStyle *style,
                                    const char        *text,
                                    PpPoint            at);

G_END_DECLS
