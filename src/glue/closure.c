/* closure.c: one row of bits a thing: all that comes before it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/closure.h"

#define WORD_BITS 64

struct _PpClosure
{
  guint    n;
  gsize    n_words; /* a row */
  guint64 *bits;
};

PpClosure *
pp_closure_new (guint n)
{
  PpClosure *self = g_new (PpClosure, 1);

  self->n = n;
  self->n_words = (n + WORD_BITS - 1) / WORD_BITS;
  self->bits = g_new0 (guint64, self->n_words * n);

  return self;
}

void
pp_closure_free (PpClosure *self)
{
  if (self == NULL)
    return;

  g_free (self->bits);
  g_free (self);
}

gboolean
pp_closure_add (PpClosure *self,
                guint      first,
                guint      second)
{
  g_return_val_if_fail (first < second && second < self->n, FALSE);

  /* A longer way leads through something greater than `first`. */
  if (pp_closure_before (self, first, second))
    return FALSE;

  const guint64 *from = self->bits + first * self->n_words;
  guint64 *to = self->bits + second * self->n_words;

  for (gsize i = 0; i < self->n_words; i++)
    to[i] |= from[i];
  to[first / WORD_BITS] |= G_GUINT64_CONSTANT (1) << (first % WORD_BITS);

  return TRUE;
}

gboolean
pp_closure_before (const PpClosure *self,
                   guint            a,
                   guint            b)
{
  g_return_val_if_fail (a < self->n && b < self->n, FALSE);

  return (self->bits[b * self->n_words + a / WORD_BITS] >> (a % WORD_BITS) & 1) != 0;
}
