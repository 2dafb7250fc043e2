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
#include <stdlib.h>
#include <string.h>

/* Returns 0. Whatever is wrong ends the program. */
int LLVMFuzzerTestOneInput (const uint8_t *data,
                            size_t         size);

/* Warnings and criticals of a library end the program too, by an abort, as libFuzzer keeps the input
 * of that. Only that Pango finds no letters 4 m high is no fault: they are drawn as boxes. */
static inline GLogWriterOutput
fuzz_heed (GLogLevelFlags   level,
           const GLogField *fields,
           gsize            n_fields,
           gpointer         data)
{
  gboolean is_fault = (level & (G_LOG_LEVEL_WARNING | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_ERROR)) != 0;

  for (gsize i = 0; i < n_fields; i++)
    if (strcmp (fields[i].key, "GLIB_DOMAIN") == 0 && strcmp (fields[i].value, "Pango") == 0)
      is_fault = FALSE;
  if (!is_fault)
    return G_LOG_WRITER_HANDLED;
  g_log_writer_default (level, fields, n_fields, NULL);
  abort ();
}

/* (transfer full) */
static inline GBytes *
fuzz_take (const uint8_t *data,
           size_t         size)
{
  static gboolean heeds;

  if (!heeds)
    g_log_set_writer_func (fuzz_heed, NULL, NULL);
  heeds = TRUE;
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
