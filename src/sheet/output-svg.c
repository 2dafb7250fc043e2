/* output-svg.c: sheets as drawings in mm, one a page, with the steps in words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cairo writes text as shapes, so <title> and <desc> say what the page says. It also names its
 * parts by a counter that runs on through the life of the program; they are named anew, in the
 * order in which they come, so that the same job gives the same file.
 */
#include "config.h"

#include "sheet/output.h"

#include "art/taken.h"
#include "sheet/plain-line.h"

#include <cairo-svg.h>

typedef struct
{
  GPtrArray  *files;
  GByteArray *bytes; /* of the page in hand */
} Svg;

static void
begin_page (PpBook *book)
{
  Svg *svg = book->output_data;
  cairo_surface_t *surface;

  svg->bytes = g_byte_array_new ();
  surface = cairo_svg_surface_create_for_stream (pp_taken_add, svg->bytes, book->paper.x1,
                                                 book->paper.y1);
  cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_MM);
  book->cr = cairo_create (surface);
  cairo_surface_destroy (surface);
}

static gboolean
rename_cb (const GMatchInfo *match,
           GString          *result,
           gpointer          data)
{
  GHashTable *names = data;
  g_autofree char *before = g_match_info_fetch (match, 1);
  g_autofree char *old = g_match_info_fetch (match, 2);
  guint number = GPOINTER_TO_UINT (g_hash_table_lookup (names, old));

  if (number == 0)
    {
      number = g_hash_table_size (names) + 1;
      g_hash_table_insert (names, g_steal_pointer (&old), GUINT_TO_POINTER (number));
    }
  g_string_append_printf (result, "%sp%u", before, number);
  return FALSE;
}

static char *
rename_parts (const char *text,
              gsize       length)
{
  g_autoptr (GRegex) regex = g_regex_new ("(\\bid=\"|url\\(#|href=\"#)([^\")]+)", G_REGEX_OPTIMIZE,
                                          0, NULL);
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  return g_regex_replace_eval (regex, text, (gssize) length, 0, 0, rename_cb, names, NULL);
}

static char *
words_new (PpBook *book)
{
  g_autofree char *panel = pp_plain_line_new_title (book->panel);
  g_autofree char *title = g_markup_printf_escaped ("%s: %s", panel, book->heading != NULL
                                                                     ? book->heading : "");
  g_autofree char *plain = pp_plain_line_new_lines (book->words->str);
  g_autofree char *words = g_markup_escape_text (plain, -1);

  return g_strdup_printf ("\n<title>%s</title>\n<desc>%s</desc>", title, words);
}

/* Right after the start tag of the root, which cairo writes without > in its attributes. */
static GBytes *
with_words (PpBook     *book,
            const char *text)
{
  g_autofree char *words = words_new (book);
  const char *root = strstr (text, "<svg");
  const char *end = root != NULL ? strchr (root, '>') : NULL;
  GString *whole;

  if (end == NULL)
    return g_bytes_new (text, strlen (text));
  whole = g_string_new_len (text, end + 1 - text);
  g_string_append (whole, words);
  g_string_append (whole, end + 1);
  return g_string_free_to_bytes (whole);
}

static void
add_page (PpBook *book,
          Svg    *svg)
{
  g_autofree char *text = rename_parts ((const char *) svg->bytes->data, svg->bytes->len);
  g_autoptr (GBytes) bytes = with_words (book, text);

  pp_output_add_page (book, svg->files, "svg", bytes);
}

static void
end_page (PpBook *book)
{
  Svg *svg = book->output_data;
  cairo_surface_t *surface = cairo_surface_reference (cairo_get_target (book->cr));

  g_clear_pointer (&book->cr, cairo_destroy);
  cairo_surface_finish (surface);
  pp_book_note (book, cairo_surface_status (surface));
  cairo_surface_destroy (surface);
  if (book->status == CAIRO_STATUS_SUCCESS)
    add_page (book, svg);
  g_clear_pointer (&svg->bytes, g_byte_array_unref);
}

gboolean
pp_output_svg (const PpSheetJob   *job,
               const char * const *kinds,
               guint               n_pages,
               GPtrArray          *files,
               GError            **error)
{
  static const PpBookOutput output = { begin_page, end_page };
  Svg svg = { .files = files };
  cairo_status_t status;

  pp_book_draw (job, kinds, &output, &svg, n_pages, &status);
  return pp_output_judge (status, error);
}
