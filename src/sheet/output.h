/* output.h: a book of sheets as PDF, SVG or PNG.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/book.h"

G_BEGIN_DECLS

/* Each adds its files to `files` (PpSheetFile). `n_pages` as counted.
 * Errors: G_IO_ERROR_FAILED. */
gboolean pp_output_pdf   (const PpSheetJob   *job,
                          const char * const *kinds,
                          guint               n_pages,
                          GPtrArray          *files,
                          GError            **error);
gboolean pp_output_svg   (const PpSheetJob   *job,
                          const char * const *kinds,
                          guint               n_pages,
                          GPtrArray          *files,
                          GError            **error);
gboolean pp_output_png   (const PpSheetJob   *job,
                          const char * const *kinds,
                          guint               n_pages,
                          GPtrArray          *files,
                          GError            **error);
guint    pp_output_count (const PpSheetJob   *job,
                          const char * const *kinds);
/* Each page a recording surface, one unit 1 point. (transfer full), or NULL.
 * Errors: G_IO_ERROR_FAILED. */
GPtrArray *pp_output_record (const PpSheetJob   *job,
                             const char * const *kinds,
                             guint               n_pages,
                             GError            **error);

/* "record-2.svg". */
void     pp_output_add_page (PpBook          *book,
                             GPtrArray       *files,
                             const char      *ending,
                             GBytes          *bytes);
/* FALSE with an error unless all went well. */
gboolean pp_output_judge (cairo_status_t      status,
                          GError            **error);

G_END_DECLS
