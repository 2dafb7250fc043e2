/* measure-parse.c: reads a length or a weight as a maker types it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text is first brought to plain ASCII: every kind of space is a space, every quote and
 * prime is ' or ", every dash a hyphen, and "½" is " 1/2 ". Then one walk reads
 * length := ['-'] figure [unit], or ['-'] figure ft [figure [in]]. What could mean two
 * things ("1,200" where the comma may part thousands) is refused and never guessed.
 */
#include "panel/measure.h"

#include <locale.h>

#define MAX_TEXT 64      /* bytes, once plain */
#define MAX_LENGTH 1.0e6 /* mm */
#define MAX_MASS 1.0e6   /* g */
#define OUNCES_PER_POUND 16
#define INCHES_PER_FOOT 12

typedef struct
{
  const char *name;
  double      worth; /* mm or g */
} Unit;

/* The longer of two that begin alike stands first. Words of other languages are read in all: who
 * types one means nothing else by it. */
static const Unit lengths[] = {
  { "mm", 1 },
  { "cm", 10 },
  { "inches", PP_MM_PER_INCH },
  { "inch", PP_MM_PER_INCH },
  { "in.", PP_MM_PER_INCH },
  { "in", PP_MM_PER_INCH },
  { "zoll", PP_MM_PER_INCH },
  { "pouces", PP_MM_PER_INCH },
  { "pouce", PP_MM_PER_INCH },
  { "po", PP_MM_PER_INCH },
  { "pulgadas", PP_MM_PER_INCH },
  { "pulgada", PP_MM_PER_INCH },
  { "pulg", PP_MM_PER_INCH },
  { "\"", PP_MM_PER_INCH },
  { "''", PP_MM_PER_INCH },
  { "feet", PP_MM_PER_INCH * INCHES_PER_FOOT },
  { "foot", PP_MM_PER_INCH * INCHES_PER_FOOT },
  { "ft.", PP_MM_PER_INCH * INCHES_PER_FOOT },
  { "ft", PP_MM_PER_INCH * INCHES_PER_FOOT },
  { "'", PP_MM_PER_INCH * INCHES_PER_FOOT },
};

static const Unit masses[] = {
  { "kg", 1000 },
  { "g", 1 },
  { "oz", PP_GRAMS_PER_OUNCE },
  { "lbs", PP_GRAMS_PER_OUNCE * OUNCES_PER_POUND },
  { "lb", PP_GRAMS_PER_OUNCE * OUNCES_PER_POUND },
};

/* What one character stands for in plain writing, or NULL if it cannot stand in a length. */
static const char *
get_plain (gunichar c)
{
  switch (c)
    {
    case 0x2018: /* ‘ */
    case 0x2019: /* ’ */
    case 0x2032: /* ′ */
      return "'";
    case 0x201c: /* “ */
    case 0x201d: /* ” */
    case 0x2033: /* ″ */
      return "\"";
    case 0x2010: /* ‐ */
    case 0x2011: /* no-break hyphen */
    case 0x2013: /* – */
    case 0x2212: /* − */
      return "-";
    case 0x2044: /* ⁄ */
      return "/";
    default:
      return g_unichar_isspace (c) ? " " : NULL;
    }
}

/* "½" as " 1/2 ": the spaces keep "8½" a mixed number and "½8" none. After a hyphen the first
 * is left out, for "8-½". */
static gboolean
append_fraction (GString *plain,
                 gunichar c)
{
  gunichar parts[G_UNICHAR_MAX_DECOMPOSITION_LENGTH];
  gsize n = g_unichar_fully_decompose (c, TRUE, parts, G_N_ELEMENTS (parts));

  if (n < 3 || parts[1] != 0x2044)
    return FALSE;
  if (plain->len == 0 || plain->str[plain->len - 1] != '-')
    g_string_append_c (plain, ' ');
  for (gsize i = 0; i < n; i++)
    g_string_append_c (plain, parts[i] == 0x2044 ? '/' : (char) parts[i]);
  g_string_append_c (plain, ' ');
  return TRUE;
}

/* NULL for what cannot be a length. */
static char *
make_plain (const char *text)
{
  g_autoptr (GString) plain = g_string_new (NULL);

  if (!g_utf8_validate (text, -1, NULL))
    return NULL;
  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);
      const char *stand_in = get_plain (c);

      if (stand_in != NULL)
        g_string_append (plain, stand_in);
      else if (c < 0x80)
        g_string_append_c (plain, (char) c);
      else if (!append_fraction (plain, c))
        return NULL;
      if (plain->len > MAX_TEXT)
        return NULL;
    }
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

static void
skip_spaces (const char **at)
{
  while (**at == ' ')
    (*at)++;
}

static gboolean
read_whole (const char **at,
            double      *value)
{
  if (!g_ascii_isdigit (**at))
    return FALSE;
  *value = 0;
  for (; g_ascii_isdigit (**at); (*at)++)
    *value = *value * 10 + (**at - '0');
  return TRUE;
}

/* "5/16", spaces around the stroke allowed; `at` stays where it was if it is none. */
static gboolean
read_fraction (const char **at,
               double      *value)
{
  const char *t = *at;
  double above, below;

  if (!read_whole (&t, &above))
    return FALSE;
  skip_spaces (&t);
  if (*t++ != '/')
    return FALSE;
  skip_spaces (&t);
  if (!read_whole (&t, &below) || below < 1)
    return FALSE;
  *value = above / below;
  *at = t;
  return TRUE;
}

/* "1,200" and "1.200" may be twelve hundred where that mark is not the decimal point. */
static gboolean
may_part_thousands (const char *start,
                    const char *mark,
                    const char *end)
{
  return *mark != *localeconv ()->decimal_point
         && end - mark == 4 && mark - start >= 1 && mark - start <= 3 && *start != '0';
}

/* Digits, with a point or comma and more digits or without. */
static gboolean
read_decimal (const char **at,
              double      *value,
              gboolean    *is_whole)
{
  const char *start = *at;
  g_autofree char *digits = NULL;
  const char *mark;

  while (g_ascii_isdigit (**at))
    (*at)++;
  mark = *at;
  *is_whole = *mark != '.' && *mark != ',';
  if (!*is_whole)
    {
      do
        (*at)++;
      while (g_ascii_isdigit (**at));
      if (*at - mark < 2 || may_part_thousands (start, mark, *at))
        return FALSE;
    }
  if (*at == start)
    return FALSE;
  digits = g_strndup (start, (gsize) (*at - start));
  if (!*is_whole)
    digits[mark - start] = '.';
  *value = g_ascii_strtod (digits, NULL);
  return TRUE;
}

/* "8.5", "5/16", "8 5/16" or "8-5/16". */
static gboolean
read_figure (const char **at,
             double      *value)
{
  gboolean is_whole;
  double part;
  const char *tail;

  skip_spaces (at);
  if (read_fraction (at, value))
    return TRUE;
  if (!read_decimal (at, value, &is_whole))
    return FALSE;
  tail = *at;
  if (*tail == '-')
    tail++;
  else
    skip_spaces (&tail);
  if (is_whole && tail != *at && read_fraction (&tail, &part))
    {
      if (part >= 1)
        return FALSE;
      *value += part;
      *at = tail;
    }
  return TRUE;
}

/* What one of a unit is worth, or `otherwise` if none is written here. */
static double
read_unit (const char **at,
           const Unit  *units,
           guint        n_units,
           double       otherwise)
{
  skip_spaces (at);
  for (guint i = 0; i < n_units; i++)
    {
      gsize length = strlen (units[i].name);

      if (g_ascii_strncasecmp (*at, units[i].name, length) == 0)
        {
          *at += length;
          return units[i].worth;
        }
    }
  return otherwise;
}

static double
read_length_unit (const char **at,
                  double       otherwise)
{
  return read_unit (at, lengths, G_N_ELEMENTS (lengths), otherwise);
}

static gboolean
read_length (const char **at,
             double       own_unit,
             double      *mm)
{
  const double foot = PP_MM_PER_INCH * INCHES_PER_FOOT;
  double figure, unit, inches;

  if (!read_figure (at, &figure))
    return FALSE;
  unit = read_length_unit (at, own_unit);
  *mm = figure * unit;
  skip_spaces (at);
  if (unit >= foot && **at != '\0')
    {
      if (!read_figure (at, &inches) || read_length_unit (at, PP_MM_PER_INCH) != PP_MM_PER_INCH)
        return FALSE;
      *mm += inches * PP_MM_PER_INCH;
      skip_spaces (at);
    }
  return **at == '\0' && *mm <= MAX_LENGTH;
}

gboolean
pp_length_parse (const char *text,
                 PpUnits     units,
                 double     *mm)
{
  g_autofree char *plain = NULL;
  const char *at;
  gboolean below_zero;
  double length;

  g_return_val_if_fail (text != NULL && mm != NULL, FALSE);

  plain = make_plain (text);
  if (plain == NULL)
    return FALSE;
  at = plain;
  skip_spaces (&at);
  below_zero = *at == '-';
  if (below_zero)
    at++;
  if (!read_length (&at, units == PP_UNITS_INCH ? PP_MM_PER_INCH : 1, &length))
    return FALSE;
  *mm = below_zero ? -length : length;
  return TRUE;
}

gboolean
pp_mass_parse (const char *text,
               PpUnits     units,
               double     *g)
{
  g_autofree char *plain = NULL;
  const char *at;
  double figure, mass;

  g_return_val_if_fail (text != NULL && g != NULL, FALSE);

  plain = make_plain (text);
  if (plain == NULL)
    return FALSE;
  at = plain;
  if (!read_figure (&at, &figure))
    return FALSE;
  mass = figure * read_unit (&at, masses, G_N_ELEMENTS (masses),
                             units == PP_UNITS_INCH ? PP_GRAMS_PER_OUNCE : 1);
  skip_spaces (&at);
  if (*at != '\0' || mass > MAX_MASS)
    return FALSE;
  *g = mass;
  return TRUE;
}
