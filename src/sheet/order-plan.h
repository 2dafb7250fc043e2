/* order-plan.h: the parts of the glue order: its opening page, a mix with its card, the backs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* Steps first to end - 1 of the plan, all of one mix. */
typedef struct
{
  guint first;
  guint end;
  guint sitting;
} PpOrderRun;

/* `mix` counts from 0. */
PpOrderRun pp_order_run_of_mix (const PpPlan *plan,
                                guint         mix);
/* mm: the least height of an area `width` wide for pp_order_plan_draw(). */
double     pp_order_plan_least_height (PpBook *book,
                                guint         mix,
                                double        width);
/* The picture in `area`, and at its right the card of the mix: parts to measure, times, and how
 * the picture is read. Returns the y below. */
double     pp_order_plan_draw  (PpBook       *book,
                                guint         mix,
                                PpOrderRun    run,
                                PpBox         area);
/* The card alone, at the top of `box`; returns the y below. */
double     pp_order_card_draw  (PpBook       *book,
                                guint         mix,
                                PpOrderRun    run,
                                PpBox         box);
/* mm: its height when it is `width` wide. */
double     pp_order_card_measure (PpBook     *book,
                                guint         mix,
                                PpOrderRun    run,
                                double        width);
/* The page before the first mix. */
void       pp_order_opening_draw (PpBook     *book);

/* The pages after the last mix: where the dabs go, seen from behind. */
void       pp_order_backs_draw (PpBook       *book);

G_END_DECLS
