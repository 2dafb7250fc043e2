/* angle-entry.c: a field for a turn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/angle-entry.h"

#include "panel/i18n.h"
#include "panel/measure.h"

#define STEP 1.0        /* degrees */
#define LARGE_STEP 15.0
#define MOST_TURNS 10   /* more is a slip of the hand */

struct _PpAngleEntry
{
  PpFigureEntry parent_instance;
};

G_DEFINE_FINAL_TYPE (PpAngleEntry, pp_angle_entry, PP_TYPE_FIGURE_ENTRY)

/* The degree sign may stand behind the figure. */
static gboolean
parse (PpFigureEntry *entry,
       const char    *text,
       double        *value)
{
  g_autofree char *figure = g_strstrip (g_strdup (text));

  if (g_str_has_suffix (figure, "°"))
    figure[strlen (figure) - strlen ("°")] = '\0';
  return pp_figure_parse (figure, value);
}

static char *
format (PpFigureEntry *entry,
        double         value)
{
  return pp_figure_format (value);
}

static char *
spell (PpFigureEntry *entry,
       double         value)
{
  return pp_angle_format (value);
}

static double
get_step (PpFigureEntry *entry,
          gboolean       large)
{
  return large ? LARGE_STEP : STEP;
}

static const char *
get_hint (PpFigureEntry *entry)
{
  return _("Write degrees such as 45 or 12.5.");
}

static void
pp_angle_entry_class_init (PpAngleEntryClass *klass)
{
  PpFigureEntryClass *entry_class = PP_FIGURE_ENTRY_CLASS (klass);

  entry_class->parse = parse;
  entry_class->format = format;
  entry_class->spell = spell;
  entry_class->get_step = get_step;
  entry_class->get_hint = get_hint;
}

static void
pp_angle_entry_init (PpAngleEntry *self)
{
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self), -360.0 * MOST_TURNS, 360.0 * MOST_TURNS);
  pp_figure_entry_set_unit (PP_FIGURE_ENTRY (self), "°", _("in degrees, clockwise"));
}
