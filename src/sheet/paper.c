/* paper.c: the sizes of paper that sheets are laid out for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/paper.h"

#include <math.h>

static const struct
{
  const char *name;
  PpPaper     paper;
} papers[] = {
  { "a4", { 210, 297 } },
  { "a3", { 297, 420 } },
  { "letter", { 215.9, 279.4 } },
  { "legal", { 215.9, 355.6 } },
  { "tabloid", { 279.4, 431.8 } },
};

static gboolean
is_side (double mm)
{
  return mm >= PP_PAPER_MIN_SIDE && mm <= PP_PAPER_MAX_SIDE;
}

/* g_ascii_strtod() alone would take "inf", "0x10" and leading space. */
static gboolean
parse_side (const char **text,
            double      *mm)
{
  char *end;

  if (!g_ascii_isdigit (**text) || (*text)[1] == 'x' || (*text)[1] == 'X')
    return FALSE;
  *mm = g_ascii_strtod (*text, &end);
  *text = end;
  return is_side (*mm);
}

gboolean
pp_paper_parse (const char *text,
                PpPaper    *paper)
{
  PpPaper own;

  g_return_val_if_fail (text != NULL && paper != NULL, FALSE);

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_ascii_strcasecmp (text, papers[i].name) == 0)
      {
        *paper = papers[i].paper;
        return TRUE;
      }
  if (!parse_side (&text, &own.width) || (*text != 'x' && *text != 'X'))
    return FALSE;
  text++;
  if (!parse_side (&text, &own.height) || *text != '\0')
    return FALSE;
  *paper = own;
  return TRUE;
}

double
pp_paper_fit (PpPaper *paper)
{
  PpPaper old;
  double factor;

  g_return_val_if_fail (paper != NULL && paper->width > 0 && paper->height > 0, 1);

  old = *paper;
  factor = fmax (1, PP_PAPER_MIN_SIDE / fmin (old.width, old.height));
  factor = fmin (factor, PP_PAPER_MAX_SIDE / fmax (old.width, old.height));
  paper->width = fmax (old.width * factor, PP_PAPER_MIN_SIDE);
  paper->height = fmax (old.height * factor, PP_PAPER_MIN_SIDE);
  return fmin (old.width / paper->width, old.height / paper->height);
}
