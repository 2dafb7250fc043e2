/* sheet-choice.h: which sheets, and how.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/sheet-answers.h"

G_BEGIN_DECLS

typedef struct
{
  char          **kinds;  /* ids, ended by NULL, in the order of printing */
  PpPaper         paper;  /* as the sheet is read */
  gboolean        mono;
  gboolean        behind; /* the pattern mirrored */
  double          inset;  /* mm, for the grinder; 0: none */
} PpSheetChoice;

PpSheetChoice *pp_sheet_choice_copy (const PpSheetChoice *self);
/* The job that draws it. All is borrowed. */
PpSheetJob     pp_sheet_choice_job  (const PpSheetChoice *self,
                                     const PpSheetAnswers *answers);
void           pp_sheet_choice_free (PpSheetChoice       *self);

/* The formats, by index. */
typedef struct
{
  PpSheetFormats  format;
  const char     *id;     /* "pdf", by which the settings know it */
  const char     *title;  /* marked for translation, not translated */
} PpSheetFormat;

const PpSheetFormat *pp_sheet_formats (guint *n);

/* The papers, by index. */
typedef struct
{
  const char *id;    /* of pp_paper_parse() */
  const char *title; /* marked for translation, not translated */
} PpSheetPaper;

const PpSheetPaper *pp_sheet_papers (guint *n);
/* What is printed on: the paper kept, or the usual one of the system, as pp_paper_parse() takes it.
 * (transfer full) */
char               *pp_sheet_dup_paper (void);
/* The same as the sheet is read. */
PpPaper             pp_sheet_usual_paper (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSheetChoice, pp_sheet_choice_free)

G_END_DECLS
