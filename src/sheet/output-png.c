/* output-png.c: sheets as pictures, one a page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/taken.h"
#include "panel/i18n.h"
#include "sheet/output.h"

#include <math.h>

#define DPI 150.0
#define PIXELS_PER_MM (DPI / PP_MM_PER_INCH)
#define MOST_PIXELS 3e8 /* 1.2 GB; a page of 2.9 by 2.9 m */

static void
begin_page (PpBook *book)
{
  cairo_surface_t *surface;

  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                        (int) lround (book->paper.x1 * PIXELS_PER_MM),
                                        (int) lround (book->paper.y1 * PIXELS_PER_MM));
  book->cr = cairo_create (surface);
  cairo_surface_destroy (surface);
  cairo_scale (book->cr, PIXELS_PER_MM, PIXELS_PER_MM);
}

/* A PNG chunk pHYs of 5906 pixels a metre each way (150 dpi) with its check sum: cairo writes none,
 * and a page without it prints at the printer's whim. */
static const guint8 resolution[] = {
  0x00, 0x00, 0x00, 0x09, 0x70, 0x48, 0x59, 0x73, 0x00, 0x00, 0x17,
  0x12, 0x00, 0x00, 0x17, 0x12, 0x01, 0x67, 0x9f, 0xd2, 0x52,
};

#define HEAD_LENGTH 33 /* bytes: signature and the chunk IHDR, which always come first */

static GBytes *
with_resolution (const GByteArray *png)
{
  GByteArray *whole = g_byte_array_sized_new (png->len + sizeof resolution);

  g_byte_array_append (whole, png->data, HEAD_LENGTH);
  g_byte_array_append (whole, resolution, sizeof resolution);
  g_byte_array_append (whole, png->data + HEAD_LENGTH, png->len - HEAD_LENGTH);
  return g_byte_array_free_to_bytes (whole);
}

static void
add_page (PpBook *book)
{
  g_autoptr (GByteArray) array = g_byte_array_new ();
  g_autoptr (GBytes) bytes = NULL;

  pp_book_note (book, cairo_surface_write_to_png_stream (cairo_get_target (book->cr),
                                                         pp_taken_add, array));
  if (book->status != CAIRO_STATUS_SUCCESS)
    return;
  bytes = with_resolution (array);
  pp_output_add_page (book, book->output_data, "png", bytes);
}

static void
end_page (PpBook *book)
{
  if (book->status == CAIRO_STATUS_SUCCESS)
    add_page (book);
  g_clear_pointer (&book->cr, cairo_destroy);
}

gboolean
pp_output_png (const PpSheetJob   *job,
               const char * const *kinds,
               guint               n_pages,
               GPtrArray          *files,
               GError            **error)
{
  static const PpBookOutput output = { begin_page, end_page };
  cairo_status_t status;

  if (job->paper.width * job->paper.height * PIXELS_PER_MM * PIXELS_PER_MM > MOST_PIXELS)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                           _("The paper is too large for a picture; choose PDF or SVG."));
      return FALSE;
    }
  pp_book_draw (job, kinds, &output, files, n_pages, &status);
  return pp_output_judge (status, error);
}
