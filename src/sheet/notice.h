/* notice.h: a box of reminders.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/finding.h"
#include "sheet/book.h"

G_BEGIN_DECLS

/* A heading with the mark of its level, then a line each, wrapped. `lines` is
 * ended by NULL. */
typedef struct
{
  PpLevel             level;
  const char         *heading;
  const char * const *lines;
} PpNotice;

double pp_notice_height (PpBook         *book,
                         const PpNotice *notice,
                         double          width);
/* Returns its height. */
double pp_notice_draw   (PpBook         *book,
                         const PpNotice *notice,
                         PpPoint         at,
                         double          width);

G_END_DECLS
