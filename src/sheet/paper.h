/* paper.h: the sizes of paper that sheets are laid out for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A series sizes by ISO 216, the others the customary ones of North America.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A size of one's own keeps room for the furniture of a page and stays within what a PDF page
 * may measure (14400 units, 5080 mm). */
#define PP_PAPER_MIN_SIDE 120.0  /* mm */
#define PP_PAPER_MAX_SIDE 5000.0 /* mm */

#define PP_MM_PER_POINT (PP_MM_PER_INCH / 72)

typedef struct
{
  double width;  /* mm, as the sheet is read */
  double height;
} PpPaper;

/* "a4", "A3", "letter", "legal", "tabloid", or width and height in mm as "300x420" or
 * "297.5x420"; FALSE, and `paper` untouched, for anything else or a side out of range. */
gboolean pp_paper_parse (const char *text,
                         PpPaper    *paper);
/* Takes any size that a printer may have into the range above, in proportion where that is
 * possible. Returns by how much a drawing for the new size is to be scaled so that it lies on the
 * old one whole: 1 for a usual paper. */
double   pp_paper_fit   (PpPaper    *paper);

G_END_DECLS
