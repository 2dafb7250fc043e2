/* measure.c: lengths, weights, volumes and times as a maker writes and reads them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A figure is rounded to its last shown step first and only then cut into its parts, so that
 * 9.97 mm becomes "10 mm" and never "10.0 mm", and 15.97 oz "1 lb". What rounds away but is
 * not zero says "under" that step. Reading is in measure-parse.c.
 */
#include "config.h"

#include "panel/measure.h"

#include "panel/i18n.h"
#include "panel/tolerance.h"

#define INCH_STEPS 16     /* shown to a sixteenth */
#define SMALL_FIGURE 10.0 /* mm, g and degrees under this are shown to a tenth */
#define OUNCES_PER_POUND 16
#define G_PER_KG 1000
#define MINUTES_PER_HOUR 60
#define SECONDS_PER_MINUTE 60
#define QUARTERS 4 /* a minute */

static double
round_to (double value,
          int    steps)
{
  return round (value * steps) / steps;
}

/* At most `places` decimals, without trailing zeros, with the locale's decimal point. */
static char *
figure_new (double value,
            int    places)
{
  g_autofree char *text = g_strdup_printf ("%.*f", places, value);
  gsize length = strlen (text);

  if (places > 0)
    {
      while (text[length - 1] == '0')
        length--;
      if (!g_ascii_isdigit (text[length - 1]))
        length--;
      /* A decimal point of more than one byte leaves bytes that are no digit either. */
      while (!g_ascii_isdigit (text[length - 1]))
        length--;
    }
  if (length == 2 && g_str_has_prefix (text, "-0"))
    return g_strdup ("0");
  return g_strndup (text, length);
}

/* TRUE if `value` would be shown as zero although it is none. */
static gboolean
rounds_away (double value,
             int    steps)
{
  return fabs (value) > PP_TIE && round (fabs (value) * steps) < 1;
}

/* To a tenth under 10, else whole. */
static char *
tenth_figure_new (double value)
{
  if (rounds_away (value, 10))
    {
      g_autofree char *least = figure_new (0.1, 1);

      return g_strdup_printf (_("under %s"), least);
    }
  return figure_new (value, fabs (round_to (value, 10)) < SMALL_FIGURE ? 1 : 0);
}

static guint
greatest_divisor (guint a,
                  guint b)
{
  return b == 0 ? a : greatest_divisor (b, a % b);
}

static char *
inch_figure_new (double inches)
{
  double sixteenths = round (fabs (inches) * INCH_STEPS);
  double whole = floor (sixteenths / INCH_STEPS);
  guint rest = (guint) (sixteenths - whole * INCH_STEPS);
  guint divisor = greatest_divisor (INCH_STEPS, rest);
  const char *sign = inches < 0 && sixteenths > 0 ? "-" : "";

  if (rounds_away (inches, INCH_STEPS))
    return g_strdup_printf (_("under %s"), "1/16");
  if (rest == 0)
    return g_strdup_printf ("%s%.0f", sign, whole);
  if (whole < 1)
    return g_strdup_printf ("%s%u/%u", sign, rest / divisor, INCH_STEPS / divisor);
  return g_strdup_printf ("%s%.0f %u/%u", sign, whole, rest / divisor, INCH_STEPS / divisor);
}

static char *
with_length_unit (const char *figure,
                  PpUnits     units)
{
  if (units == PP_UNITS_INCH)
    return g_strdup_printf (_("%s in"), figure);
  return g_strdup_printf (_("%s mm"), figure);
}

char *
pp_length_format (double  mm,
                  PpUnits units)
{
  g_autofree char *figure = pp_length_format_bare (mm, units);

  return with_length_unit (figure, units);
}

char *
pp_length_format_bare (double  mm,
                       PpUnits units)
{
  g_return_val_if_fail (isfinite (mm), g_strdup (""));

  return units == PP_UNITS_INCH ? inch_figure_new (mm / PP_MM_PER_INCH) : tenth_figure_new (mm);
}

char *
pp_size_format (double  width,
                double  height,
                PpUnits units)
{
  g_autofree char *across = pp_length_format_bare (width, units);
  g_autofree char *down = pp_length_format_bare (height, units);
  /* Translators: width by height, without the unit. */
  g_autofree char *figures = g_strdup_printf (_("%s × %s"), across, down);

  return with_length_unit (figures, units);
}

/* To a tenth; what is less, as a bead, to a hundredth. */
static char *
ounce_figure_new (double ounces)
{
  g_autofree char *least = NULL;

  if (!rounds_away (ounces, 100))
    return figure_new (ounces, round_to (ounces, 100) < 0.1 ? 2 : 1);
  least = figure_new (0.01, 2);
  return g_strdup_printf (_("under %s"), least);
}

static char *
pounds_format (double g)
{
  double ounces = g / PP_GRAMS_PER_OUNCE;
  double whole = round (ounces);
  int pounds = (int) floor (whole / OUNCES_PER_POUND);
  int rest = (int) (whole - (double) pounds * OUNCES_PER_POUND);

  if (round_to (ounces, 10) < OUNCES_PER_POUND)
    {
      g_autofree char *figure = ounce_figure_new (ounces);

      return g_strdup_printf (_("%s oz"), figure);
    }
  if (rest == 0)
    return g_strdup_printf (_("%d lb"), pounds);
  return g_strdup_printf (_("%d lb %d oz"), pounds, rest);
}

char *
pp_mass_format (double  g,
                PpUnits units)
{
  g_autofree char *figure = NULL;

  g_return_val_if_fail (isfinite (g) && g >= 0 && g < (double) G_MAXINT, g_strdup (""));

  if (units == PP_UNITS_INCH)
    return pounds_format (g);
  if (round (g) < G_PER_KG)
    {
      figure = tenth_figure_new (g);
      return g_strdup_printf (_("%s g"), figure);
    }
  figure = figure_new (g / G_PER_KG, 2);
  return g_strdup_printf (_("%s kg"), figure);
}

char *
pp_mass_format_about (double  g,
                      PpUnits units)
{
  g_autofree char *mass = pp_mass_format (g, units);
  double own = units == PP_UNITS_INCH ? g / PP_GRAMS_PER_OUNCE : g;

  if (rounds_away (own, units == PP_UNITS_INCH ? 100 : 10))
    return g_steal_pointer (&mass);
  return g_strdup_printf (_("about %s"), mass);
}

char *
pp_volume_format (double ml)
{
  g_autofree char *figure = NULL;

  g_return_val_if_fail (isfinite (ml), g_strdup (""));

  if (rounds_away (ml, 100))
    {
      g_autofree char *least = figure_new (0.01, 2);

      figure = g_strdup_printf (_("under %s"), least);
    }
  else
    figure = figure_new (ml, fabs (round_to (ml, 100)) < 0.1 ? 2 : 1);
  return g_strdup_printf (_("%s ml"), figure);
}

static char *
hours_format (double minutes)
{
  int whole = (int) round (minutes);
  int hours = whole / MINUTES_PER_HOUR;
  int rest = whole % MINUTES_PER_HOUR;

  return rest == 0 ? g_strdup_printf (_("%d h"), hours)
                   : g_strdup_printf (_("%d h %d min"), hours, rest);
}

char *
pp_time_format (double minutes)
{
  double quarters = round (minutes * QUARTERS);
  int whole, seconds;

  g_return_val_if_fail (minutes >= 0 && minutes < (double) G_MAXINT, g_strdup (""));

  if (rounds_away (minutes, QUARTERS))
    return g_strdup_printf (_("under %d s"), SECONDS_PER_MINUTE / QUARTERS);
  if (quarters >= MINUTES_PER_HOUR * QUARTERS)
    return hours_format (minutes);
  whole = (int) floor (quarters / QUARTERS);
  seconds = ((int) quarters % QUARTERS) * SECONDS_PER_MINUTE / QUARTERS;
  if (seconds == 0)
    return g_strdup_printf (_("%d min"), whole);
  if (whole == 0)
    return g_strdup_printf (_("%d s"), seconds);
  return g_strdup_printf (_("%d min %d s"), whole, seconds);
}

char *
pp_angle_format (double degrees)
{
  g_autofree char *figure = NULL;

  g_return_val_if_fail (isfinite (degrees), g_strdup (""));

  figure = tenth_figure_new (degrees);
  return g_strdup_printf (_("%s°"), figure);
}

char *
pp_place_format (const PpPanel *panel,
                 PpPoint        p)
{
  PpBox glass = pp_background_get_box (panel->background);
  double x = p.x - glass.x0;
  double y = p.y - glass.y0;
  g_autofree char *across = pp_length_format (fabs (x), panel->units);
  g_autofree char *down = pp_length_format (fabs (y), panel->units);

  if (x < -PP_TIE && y < -PP_TIE)
    return g_strdup_printf (_("%s beyond the left edge and %s above the top"), across, down);
  if (x < -PP_TIE)
    return g_strdup_printf (_("%s beyond the left edge and %s from the top"), across, down);
  if (y < -PP_TIE)
    return g_strdup_printf (_("%s from the left and %s above the top"), across, down);
  return g_strdup_printf (_("%s from the left and %s from the top"), across, down);
}
