/* flow.h: things one under another, on as many pages as they need.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/notice.h"
#include "sheet/table.h"

G_BEGIN_DECLS

/* Draws all rows of a fitted table from `y` down in `n_columns` columns side by side `space` mm
 * apart (the table was fitted to one), evenly filled on its last page. Returns the y below. */
double pp_flow_table       (PpBook             *book,
                            PpTable            *table,
                            double              y,
                            guint               n_columns,
                            double              space);
/* Fits a table of letters of `size` pt to the page, in two columns where there is width for them,
 * and draws it. Returns the y below. */
double pp_flow_two_columns (PpBook             *book,
                            PpTable            *table,
                            double              size,
                            double              y);
/* A heading over what follows, on a new page unless `keep` mm are free below it. Returns the y
 * below. */
double pp_flow_heading     (PpBook             *book,
                            const char         *text,
                            double              y,
                            double              keep);
/* Tick boxes with a sentence each; `lines` is ended by NULL. Returns the y below. */
double pp_flow_ticks       (PpBook             *book,
                            const char * const *lines,
                            double              size,
                            double              y);

/* A box of reminders, on a new page where this one has no room. Returns the y below. */
double pp_flow_notice      (PpBook             *book,
                            const PpNotice     *notice,
                            double              y);

/* A small heading over a figure, as on a label. */
typedef struct
{
  const char *label;
  const char *value;
} PpFact;

/* Measures the facts laid out in columns over `width`; with `draw` draws them too. Returns their
 * height. */
double pp_flow_facts       (PpBook             *book,
                            const PpFact       *facts,
                            guint               n_facts,
                            PpPoint             at,
                            double              width,
                            gboolean            draw);

G_END_DECLS
