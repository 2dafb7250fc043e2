/* length-entry.c: a field for a length.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/length-entry.h"

#include "panel/i18n.h"
#include "panel/measure.h"

#define STEP_MM 1.0
#define LARGE_STEP_MM 10.0
#define STEP_INCH (1.0 / 16)
#define LARGE_STEP_INCH (1.0 / 2)

struct _PpLengthEntry
{
  PpFigureEntry parent_instance;
  PpUnits       units;
};

G_DEFINE_FINAL_TYPE (PpLengthEntry, pp_length_entry, PP_TYPE_FIGURE_ENTRY)

static gboolean
parse (PpFigureEntry *entry,
       const char    *text,
       double        *value)
{
  return pp_length_parse (text, PP_LENGTH_ENTRY (entry)->units, value);
}

static char *
format (PpFigureEntry *entry,
        double         value)
{
  return pp_length_format_bare (value, PP_LENGTH_ENTRY (entry)->units);
}

static char *
spell (PpFigureEntry *entry,
       double         value)
{
  return pp_length_format (value, PP_LENGTH_ENTRY (entry)->units);
}

static double
get_step (PpFigureEntry *entry,
          gboolean       large)
{
  if (PP_LENGTH_ENTRY (entry)->units == PP_UNITS_INCH)
    return PP_MM_PER_INCH * (large ? LARGE_STEP_INCH : STEP_INCH);
  return large ? LARGE_STEP_MM : STEP_MM;
}

static const char *
get_hint (PpFigureEntry *entry)
{
  return _("Write a length such as 8 1/2 or 216 mm.");
}

static void
pp_length_entry_class_init (PpLengthEntryClass *klass)
{
  PpFigureEntryClass *entry_class = PP_FIGURE_ENTRY_CLASS (klass);

  entry_class->parse = parse;
  entry_class->format = format;
  entry_class->spell = spell;
  entry_class->get_step = get_step;
  entry_class->get_hint = get_hint;
}

static void
show_unit (PpLengthEntry *self)
{
  gboolean is_inch = self->units == PP_UNITS_INCH;

  /* Translators: the unit that stands behind a field. */
  pp_figure_entry_set_unit (PP_FIGURE_ENTRY (self), is_inch ? C_("unit", "in") : C_("unit", "mm"),
                            is_inch ? _("in inches") : _("in millimetres"));
}

static void
pp_length_entry_init (PpLengthEntry *self)
{
  self->units = PP_UNITS_MM;
  show_unit (self);
}

void
pp_length_entry_set_units (PpLengthEntry *self,
                           PpUnits        units)
{
  g_return_if_fail (PP_IS_LENGTH_ENTRY (self));

  if (units == self->units)
    return;
  self->units = units;
  show_unit (self);
}
