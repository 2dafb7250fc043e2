/* sample.h: a whole panel as text, and the same with a place changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/panel.h"

#include <gio/gio.h>

/* tests/file/towpath.petalpane, as the program itself would write it. (transfer full) */
char   *sample_new        (void);
/* `text` with its one place `find` become `put`; it must be there exactly once.
 * (transfer full) */
char   *sample_change     (const char *text,
                           const char *find,
                           const char *put);
/* The text without its zero byte. (transfer full) */
GBytes *sample_to_bytes   (const char *text);
/* The panel that it says; it must say one. (transfer full) */
PpPanel *sample_read      (const char *text);
/* Files and folders right in it. */
guint   sample_count      (const char *folder);
/* A panel with `n` placements of one piece on a small background. (transfer full) */
char   *sample_new_crowd  (guint       n);
