/* workers.h: what the work in threads has in common.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>
#include <pthread.h>

/* A file of the fuzzers' corpus. (transfer full) */
GBytes   *load         (const char  *name);
pthread_t start        (void      *(*work) (void *data),
                        void        *data);
void      join         (pthread_t    thread);

void      test_picture (void);
void      test_sheets  (void);
