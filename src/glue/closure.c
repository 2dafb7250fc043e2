/* closure.c: one row of bits a thing: all that comes before it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/closure.h"

#include "glue/set.h"

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
  self->n_words = pp_set_count_words (n);
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
  pp_set_add (to, first);

  return TRUE;
}

gboolean
pp_closure_before (const PpClosure *self,
                   guint            a,
                   guint            b)
{
  g_return_val_if_fail (a < self->n && b < self->n, FALSE);

  return pp_set_has (self->bits + b * self->n_words, a);
}
