/* sheet-choice.c: which sheets, and how.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/sheet-choice.h"

#include "desk/file-words.h"
#include "desk/settings.h"
#include "panel/i18n.h"

#include <gtk/gtk.h>

static const PpSheetFormat formats[] = {
  { PP_SHEET_PDF, "pdf", N_("PDF, all pages in one file") },
  { PP_SHEET_SVG, "svg", N_("SVG drawings, one a page") },
  { PP_SHEET_PNG, "png", N_("PNG pictures, one a page") },
};

static const PpSheetPaper papers[] = {
  { "a4", N_("A4 (210 × 297 mm)") },
  { "a3", N_("A3 (297 × 420 mm)") },
  { "letter", N_("Letter (8 1/2 × 11 in)") },
  { "legal", N_("Legal (8 1/2 × 14 in)") },
  { "tabloid", N_("Tabloid (11 × 17 in)") },
};

PpSheetChoice *
pp_sheet_choice_copy (const PpSheetChoice *self)
{
  PpSheetChoice *copy = g_new (PpSheetChoice, 1);

  *copy = *self;
  copy->kinds = g_strdupv (self->kinds);
  return copy;
}

PpSheetJob
pp_sheet_choice_job (const PpSheetChoice  *self,
                     const PpSheetAnswers *answers)
{
  return (PpSheetJob) {
    .check = answers->check,
    .plan = answers->plan,
    .gallery = answers->gallery,
    .units = answers->check->panel->units,
    .paper = self->paper,
    .mono = self->mono,
    .behind = self->behind,
    .inset = self->inset,
  };
}

void
pp_sheet_choice_free (PpSheetChoice *self)
{
  if (self == NULL)
    return;
  g_strfreev (self->kinds);
  g_free (self);
}

const PpSheetFormat *
pp_sheet_formats (guint *n)
{
  *n = G_N_ELEMENTS (formats);
  return formats;
}

const PpSheetPaper *
pp_sheet_papers (guint *n)
{
  *n = G_N_ELEMENTS (papers);
  return papers;
}

char *
pp_sheet_dup_paper (void)
{
  g_autofree char *kept = pp_settings_dup_text (PP_SETTINGS_PAPER);
  PpPaper paper;

  if (pp_paper_parse (kept, &paper))
    return g_steal_pointer (&kept);
  return g_strdup (pp_file_paper_of (gtk_paper_size_get_default ()));
}

PpPaper
pp_sheet_usual_paper (void)
{
  g_autofree char *id = pp_sheet_dup_paper ();
  PpPaper paper = { 0, 0 };

  pp_paper_parse (id, &paper);
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_str_equal (papers[i].id, id) && pp_settings_get_flag (PP_SETTINGS_SIDEWAYS))
      return (PpPaper) { paper.height, paper.width };
  return paper;
}
