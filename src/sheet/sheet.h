/* sheet.h: the printed sheets of a panel, as PDF, SVG and PNG in memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A sheet is a run of pages of one kind (record, glue order, ...). The same job gives the same
 * bytes each time: nothing here asks the clock. To add a kind: write its draw function against
 * book.h in NAME-sheet.c, and a line for it in kinds.list.
 */
#pragma once

#include "art/gallery.h"
#include "glue/plan.h"
#include "sheet/paper.h"

#include <cairo.h>

G_BEGIN_DECLS

typedef struct _PpBook PpBook;

/* What is printed, and how. All is borrowed and must outlive the call. */
typedef struct
{
  const PpCheck *check;   /* nullable, with all that follows from it, for empty sheets alone */
  const PpPlan  *plan;    /* nullable: numbers then go by the stack, and there is no glue order */
  PpGallery     *gallery;
  PpUnits        units;   /* findings keep the unit of the panel that was checked */
  PpPaper        paper;
  gboolean       mono;    /* outlines and hatches instead of colours */
  gboolean       behind;  /* the pattern is mirrored, for work from behind */
  double         inset;   /* mm, of a second line within each outline to be cut, for the grinder;
                           * 0: none */
  const char    *date;    /* nullable: when made, RFC 3339, for the file's own record; without it
                           * SOURCE_DATE_EPOCH, then the panel's `created` */
} PpSheetJob;

typedef struct
{
  const char *id;              /* "record": as on the command line and in names of files */
  const char *title;           /* marked for translation, not translated */
  void      (*draw) (PpBook *book);
} PpSheetKind;

/* All kinds in the order in which they are printed; (transfer none). */
const PpSheetKind * const *pp_sheet_kinds  (guint *n_kinds);
/* The empty sheets, on which pieces are measured and photographed; they need no panel.
 * (transfer none) */
const PpSheetKind * const *pp_sheet_blanks (guint *n_kinds);
/* Of either; NULL if there is none of that id. */
const PpSheetKind *pp_sheet_kind_find (const char *id);

typedef enum
{
  PP_SHEET_PDF = 1 << 0, /* one document of all pages, "sheets.pdf" */
  PP_SHEET_SVG = 1 << 1, /* one a page, "record-1.svg" */
  PP_SHEET_PNG = 1 << 2, /* one a page, "record-1.png", 150 dpi */
} PpSheetFormats;

typedef struct
{
  char   *name;
  GBytes *bytes;
} PpSheetFile;

/* An array of PpSheetFile that owns them. (transfer full) */
GPtrArray *pp_sheet_files_new (void);
void       pp_sheet_files_add (GPtrArray  *files,
                               const char *name,
                               GBytes     *bytes);

/* Draws the sheets in the order given. `kinds` is ended by NULL; an unknown id is a caller's
 * mistake. Returns an array of PpSheetFile (transfer full) to be saved by the caller, or NULL.
 * Errors: G_IO_ERROR_FAILED where cairo fails (a picture too large for memory). */
GPtrArray *pp_sheets_write (const PpSheetJob   *job,
                            const char * const *kinds,
                            PpSheetFormats      formats,
                            GError            **error);

/* How many pages they have together. */
guint      pp_sheets_count     (const PpSheetJob   *job,
                                const char * const *kinds);
/* All pages drawn and kept, for a printer, which asks for them in an order of its own: an array of
 * cairo_surface_t (transfer full), or NULL. Errors: as pp_sheets_write(). */
GPtrArray *pp_sheets_record    (const PpSheetJob   *job,
                                const char * const *kinds,
                                GError            **error);
/* One of them. One unit of `cr` is 1 mm, its origin the paper's top left corner; its state is the
 * same afterwards. */
void       pp_sheets_draw_page (cairo_surface_t    *page,
                                cairo_t            *cr);

G_END_DECLS
