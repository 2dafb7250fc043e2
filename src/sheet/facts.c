/* facts.c: figures with small headings, that own their words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/facts.h"

void
pp_facts_add (PpFacts    *self,
              const char *label,
              char       *value)
{
  PpFact fact = { label, value };

  if (self->facts == NULL)
    {
      self->facts = g_array_new (FALSE, FALSE, sizeof (PpFact));
      self->strings = g_ptr_array_new_with_free_func (g_free);
    }
  g_ptr_array_add (self->strings, value);
  if (*value != '\0')
    g_array_append_val (self->facts, fact);
}

void
pp_facts_take (PpFacts *self,
               char    *label,
               char    *value)
{
  pp_facts_add (self, label, value);
  g_ptr_array_add (self->strings, label);
}

void
pp_facts_clear (PpFacts *self)
{
  g_clear_pointer (&self->facts, g_array_unref);
  g_clear_pointer (&self->strings, g_ptr_array_unref);
}

void
pp_facts_say (const PpFacts *self,
              PpBook        *book)
{
  for (guint i = 0; self->facts != NULL && i < self->facts->len; i++)
    {
      const PpFact *fact = &g_array_index (self->facts, PpFact, i);
      g_autofree char *line = g_strdup_printf ("%s: %s", fact->label, fact->value);

      pp_book_say (book, line);
    }
}

static double
lay_out (const PpFacts *self,
         PpBook        *book,
         double         y,
         gboolean       draw)
{
  if (self->facts == NULL)
    return 0;
  return pp_flow_facts (book, (const PpFact *) (void *) self->facts->data, self->facts->len,
                        (PpPoint) { book->area.x0, y }, pp_box_width (book->area), draw);
}

double
pp_facts_height (const PpFacts *self,
                 PpBook        *book)
{
  return lay_out (self, book, 0, FALSE);
}

double
pp_facts_draw (const PpFacts *self,
               PpBook        *book,
               double         y)
{
  double height = pp_facts_height (self, book);

  if (height > 0 && y > book->area.y0 && y + height > book->area.y1)
    {
      pp_book_begin_page (book, NULL);
      y = book->area.y0;
    }
  pp_facts_say (self, book);
  return y + lay_out (self, book, y, TRUE);
}
