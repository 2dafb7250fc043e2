/* mix-clock.h: the working life of one mix, with what is done in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "glue/plan.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_MIX_CLOCK (pp_mix_clock_get_type ())
G_DECLARE_FINAL_TYPE (PpMixClock, pp_mix_clock, PP, MIX_CLOCK, GtkWidget)

/* `mix` counts from 0. */
GtkWidget *pp_mix_clock_new (const PpPlan *plan,
                             guint         mix);

G_END_DECLS
