/* mass-entry.c: a field for what a piece weighs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/mass-entry.h"

#include "panel/i18n.h"
#include "panel/measure.h"

struct _PpMassEntry
{
  PpFigureEntry parent_instance;
  PpUnits       units;
};

G_DEFINE_FINAL_TYPE (PpMassEntry, pp_mass_entry, PP_TYPE_FIGURE_ENTRY)

static double
own_unit (PpMassEntry *self)
{
  return self->units == PP_UNITS_INCH ? PP_GRAMS_PER_OUNCE : 1;
}

static gboolean
parse (PpFigureEntry *entry,
       const char    *text,
       double        *value)
{
  return pp_mass_parse (text, PP_MASS_ENTRY (entry)->units, value);
}

static char *
format (PpFigureEntry *entry,
        double         value)
{
  return pp_figure_format (value / own_unit (PP_MASS_ENTRY (entry)));
}

static char *
spell (PpFigureEntry *entry,
       double         value)
{
  return pp_mass_format (value, PP_MASS_ENTRY (entry)->units);
}

static double
get_step (PpFigureEntry *entry,
          gboolean       large)
{
  return PP_MASS_ENTRY (entry)->units == PP_UNITS_INCH ? PP_GRAMS_PER_OUNCE * (large ? 1 : 0.1)
                                                       : (large ? 10 : 1);
}

static const char *
get_hint (PpFigureEntry *entry)
{
  return _("Write a weight such as 32 g or 1.2 oz.");
}

static void
pp_mass_entry_class_init (PpMassEntryClass *klass)
{
  PpFigureEntryClass *entry_class = PP_FIGURE_ENTRY_CLASS (klass);

  entry_class->parse = parse;
  entry_class->format = format;
  entry_class->spell = spell;
  entry_class->get_step = get_step;
  entry_class->get_hint = get_hint;
}

static void
show_unit (PpMassEntry *self)
{
  gboolean is_inch = self->units == PP_UNITS_INCH;

  pp_figure_entry_set_unit (PP_FIGURE_ENTRY (self), is_inch ? C_("unit", "oz") : C_("unit", "g"),
                            is_inch ? _("in ounces") : _("in grams"));
}

static void
pp_mass_entry_init (PpMassEntry *self)
{
  self->units = PP_UNITS_MM;
  show_unit (self);
}

void
pp_mass_entry_set_units (PpMassEntry *self,
                         PpUnits      units)
{
  g_return_if_fail (PP_IS_MASS_ENTRY (self));

  if (units == self->units)
    return;
  self->units = units;
  show_unit (self);
}
