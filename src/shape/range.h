/* range.h: the least and the greatest of numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double least;
  double greatest;
} PpRange;

/* Of `n` >= 1 finite numbers. */
PpRange pp_range_of    (const double *x,
                        guint         n);

static inline PpRange
pp_range_widen (PpRange self,
                PpRange by)
{
  return (PpRange) { MIN (self.least, by.least), MAX (self.greatest, by.greatest) };
}

G_END_DECLS
