/* load-entry.c: a field for a load.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/load-entry.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"

#define KG_PER_POUND 0.45359237 /* international pound, exact since 1959 */

struct _PpLoadEntry
{
  PpFigureEntry parent_instance;
  PpUnits       units;
};

G_DEFINE_FINAL_TYPE (PpLoadEntry, pp_load_entry, PP_TYPE_FIGURE_ENTRY)

static double
own_unit (PpLoadEntry *self)
{
  return PP_GRAVITY * (self->units == PP_UNITS_INCH ? KG_PER_POUND : 1);
}

/* Cuts a unit off the end of `text`; N a unit, or `otherwise` if none is written. */
static double
cut_unit (char  *text,
          double otherwise)
{
  static const struct
  {
    const char *name;
    double      newtons;
  } known[] = {
    { "kg", PP_GRAVITY },
    { "lbs", PP_GRAVITY * KG_PER_POUND },
    { "lb", PP_GRAVITY * KG_PER_POUND },
    { "n", 1 },
  };
  gsize length = strlen (text);

  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      gsize cut = strlen (known[i].name);

      if (length >= cut && g_ascii_strcasecmp (text + length - cut, known[i].name) == 0)
        {
          text[length - cut] = '\0';
          return known[i].newtons;
        }
    }
  return otherwise;
}

static gboolean
parse (PpFigureEntry *entry,
       const char    *text,
       double        *value)
{
  g_autofree char *figure = g_strstrip (g_strdup (text));
  double unit = cut_unit (figure, own_unit (PP_LOAD_ENTRY (entry)));
  double count;

  if (!pp_figure_parse (figure, &count))
    return FALSE;
  *value = count * unit;
  return TRUE;
}

static char *
format (PpFigureEntry *entry,
        double         value)
{
  return pp_figure_format (value / own_unit (PP_LOAD_ENTRY (entry)));
}

static char *
spell (PpFigureEntry *entry,
       double         value)
{
  return pp_mass_format (value / PP_GRAVITY * 1000, PP_LOAD_ENTRY (entry)->units);
}

static double
get_step (PpFigureEntry *entry,
          gboolean       large)
{
  return own_unit (PP_LOAD_ENTRY (entry)) * (large ? 10 : 1);
}

static const char *
get_hint (PpFigureEntry *entry)
{
  return _("Write a load such as 9 kg or 20 lb.");
}

static void
pp_load_entry_class_init (PpLoadEntryClass *klass)
{
  PpFigureEntryClass *entry_class = PP_FIGURE_ENTRY_CLASS (klass);

  entry_class->parse = parse;
  entry_class->format = format;
  entry_class->spell = spell;
  entry_class->get_step = get_step;
  entry_class->get_hint = get_hint;
}

static void
show_unit (PpLoadEntry *self)
{
  gboolean is_inch = self->units == PP_UNITS_INCH;

  pp_figure_entry_set_unit (PP_FIGURE_ENTRY (self), is_inch ? C_("unit", "lb") : C_("unit", "kg"),
                            is_inch ? _("in pounds") : _("in kilograms"));
}

static void
pp_load_entry_init (PpLoadEntry *self)
{
  self->units = PP_UNITS_MM;
  show_unit (self);
}

void
pp_load_entry_set_units (PpLoadEntry *self,
                         PpUnits      units)
{
  g_return_if_fail (PP_IS_LOAD_ENTRY (self));

  if (units == self->units)
    return;
  self->units = units;
  show_unit (self);
}
