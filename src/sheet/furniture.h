/* furniture.h: what every page carries, and its boxes of reminders.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/finding.h"
#include "sheet/book.h"

G_BEGIN_DECLS

#define PP_GAP 3.0 /* mm, between things that belong together; twice that between others */

/* Header (sheet, heading, page 2 of 5) and footer (panel, maker, date); sets book->area. */
void   pp_furniture_draw (PpBook             *book);

/* What header and footer of a page with that heading (nullable: none) leave. */
PpBox  pp_furniture_get_area (const PpBook       *book,
                              const char         *heading);

/* The panel's title on one line, or words for a panel without one, or for none (NULL).
 * (transfer full) */
char  *pp_title_new      (const PpPanel      *panel);
/* The day on which the panel was begun, or "". (transfer full) */
char  *pp_date_new       (const PpPanel      *panel);
/* `text` on one line, without what no XML file may hold. (transfer full) */
char  *pp_plain_line_new (const char         *text);

/* A box of reminders: a heading with the mark of its level, then a line each, wrapped. `lines`
 * is ended by NULL. */
typedef struct
{
  PpLevel             level;
  const char         *heading;
  const char * const *lines;
} PpNotice;

double pp_notice_height  (PpBook             *book,
                          const PpNotice     *notice,
                          double              width);
/* Returns its height. */
double pp_notice_draw    (PpBook             *book,
                          const PpNotice     *notice,
                          PpPoint             at,
                          double              width);

/* A friendly line on a page that has nothing else to show. */
void   pp_empty_draw     (PpBook             *book,
                          const char         *text);

G_END_DECLS
