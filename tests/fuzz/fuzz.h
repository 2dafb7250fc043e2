/* fuzz.h: what a harness is: any bytes in, and nothing may go wrong.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A harness is one file with the function that libFuzzer asks for. In a build of clang's with
 * -fsanitize=fuzzer-no-link it is linked with libFuzzer (guided.py makes such a build); in every
 * other with replay.c, which tries the corpus and a few thousand changes of it.
 */
#pragma once

#include <glib.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

/* Returns 0. Whatever is wrong ends the program. */
int LLVMFuzzerTestOneInput (const uint8_t *data,
                            size_t         size);

/* Warnings and criticals of a library end the program too. (transfer full) */
static inline GBytes *
fuzz_take (const uint8_t *data,
           size_t         size)
{
  g_log_set_always_fatal (G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING | G_LOG_FATAL_MASK);
  return g_bytes_new (data, size);
}

/* What is refused is refused with one sentence, in a line of its own that can be read. */
static inline void
fuzz_expect_sentence (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_cmpuint (strlen (error->message), >, 0);
  g_assert_cmpuint (strlen (error->message), <, 1000);
}
