/* set.h: sets of numbers as rows of words, a bit a number.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_WORD_BITS 64

/* Words of a set of numbers below `n`. */
static inline guint
pp_set_count_words (guint n)
{
  return (n + PP_WORD_BITS - 1) / PP_WORD_BITS;
}

static inline gboolean
pp_set_has (const guint64 *set,
            guint          number)
{
  return (set[number / PP_WORD_BITS] >> (number % PP_WORD_BITS) & 1) != 0;
}

static inline void
pp_set_add (guint64 *set,
            guint    number)
{
  set[number / PP_WORD_BITS] |= G_GUINT64_CONSTANT (1) << (number % PP_WORD_BITS);
}

/* Whether all of `a` are in `b`. */
static inline gboolean
pp_set_within (const guint64 *a,
               const guint64 *b,
               guint          n_words)
{
  for (guint i = 0; i < n_words; i++)
    if ((a[i] & ~b[i]) != 0)
      return FALSE;

  return TRUE;
}

G_END_DECLS
