/* book.c: the pages that a sheet is drawn on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/book.h"

#include "sheet/furniture.h"
#include "sheet/plain-line.h"
#include "sheet/text.h"

void
pp_book_note (PpBook        *self,
              cairo_status_t status)
{
  if (self->status == CAIRO_STATUS_SUCCESS)
    self->status = status;
}

/* A cairo_t that failed draws nothing more, and its surface does not know. */
static void
end_page (PpBook *self)
{
  if (self->cr == NULL)
    return;
  pp_book_note (self, cairo_status (self->cr));
  self->output->end (self);
}

void
pp_book_begin_page (PpBook     *self,
                    const char *heading)
{
  end_page (self);
  self->page++;
  self->kind_page++;
  self->is_marked = heading != NULL;
  g_string_truncate (self->words, 0);
  if (heading != NULL && heading != self->heading)
    {
      g_free (self->heading);
      self->heading = pp_plain_line_new (heading);
    }
  self->output->begin (self);
  cairo_set_line_join (self->cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (self->cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_fill_rule (self->cr, CAIRO_FILL_RULE_EVEN_ODD);
  pp_furniture_draw (self);
}

void
pp_book_say (PpBook     *self,
             const char *sentence)
{
  if (self->words->len > 0)
    g_string_append_c (self->words, '\n');
  g_string_append (self->words, sentence);
}

static void
draw_kind (PpBook            *self,
           const PpSheetKind *kind)
{
  self->kind = kind;
  self->kind_page = 0;
  g_clear_pointer (&self->heading, g_free);
  kind->draw (self);
  end_page (self);
}

guint
pp_book_draw (const PpSheetJob   *job,
              const char * const *kinds,
              const PpBookOutput *output,
              gpointer            output_data,
              guint               n_pages,
              cairo_status_t     *status)
{
  PangoContext *pango = pp_text_context_new ();
  g_autoptr (GString) words = g_string_new (NULL);
  PpBook self = {
    .job = job,
    .panel = job->check != NULL ? job->check->panel : NULL,
    .output = output,
    .output_data = output_data,
    .pango = pango,
    .paper = { 0, 0, job->paper.width, job->paper.height },
    .n_pages = n_pages,
    .status = CAIRO_STATUS_SUCCESS,
    .words = words,
  };

  for (guint i = 0; kinds[i] != NULL && self.status == CAIRO_STATUS_SUCCESS; i++)
    draw_kind (&self, pp_sheet_kind_find (kinds[i]));
  g_free (self.heading);
  g_object_unref (pango);
  if (status != NULL)
    *status = self.status;
  return self.page;
}
