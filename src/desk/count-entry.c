/* count-entry.c: a field for a whole number.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/count-entry.h"

#include "panel/i18n.h"

#define LARGE_STEP 10

struct _PpCountEntry
{
  PpFigureEntry parent_instance;
};

G_DEFINE_FINAL_TYPE (PpCountEntry, pp_count_entry, PP_TYPE_FIGURE_ENTRY)

static gboolean
parse (PpFigureEntry *entry,
       const char    *text,
       double        *value)
{
  g_autofree char *figure = g_strstrip (g_strdup (text));
  guint64 count;

  if (!g_ascii_string_to_unsigned (figure, 10, 0, G_MAXUINT, &count, NULL))
    return FALSE;
  *value = (double) count;
  return TRUE;
}

static char *
format (PpFigureEntry *entry,
        double         value)
{
  return g_strdup_printf ("%.0f", value);
}

static double
get_step (PpFigureEntry *entry,
          gboolean       large)
{
  return large ? LARGE_STEP : 1;
}

static const char *
get_hint (PpFigureEntry *entry)
{
  return _("Write a whole number such as 3.");
}

static void
pp_count_entry_class_init (PpCountEntryClass *klass)
{
  PpFigureEntryClass *entry_class = PP_FIGURE_ENTRY_CLASS (klass);

  entry_class->parse = parse;
  entry_class->format = format;
  entry_class->spell = format;
  entry_class->get_step = get_step;
  entry_class->get_hint = get_hint;
}

static void
pp_count_entry_init (PpCountEntry *self)
{
}
