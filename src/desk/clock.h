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

/* "2026-06-14", by the system. (transfer full) */
static inline char *
pp_clock_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

G_END_DECLS
