/* clock.h: what time it is: that of the system, or what a test says.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  GDateTime *(*now) (gpointer data); /* (transfer full), with its offset; NULL: the system's */
  gpointer     data;
} PpClock;

static inline GDateTime *
pp_clock_now (const PpClock *self)
{
  return self->now != NULL ? self->now (self->data) : g_date_time_new_now_local ();
}

G_END_DECLS
