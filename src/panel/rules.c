/* rules.c: what a value of a panel must be.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/rules-private.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/record.h"
#include "panel/shown.h"

#include <math.h>
#include <string.h>

/* Numbers in complaints are written as in the file, with a point whatever the locale. */
static gboolean
refuse_number (double      value,
               const char *member,
               const char *must,
               GError    **error)
{
  char figure[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (figure, sizeof figure, "%.6g", value);
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, _("%s: %s, not %s."), member, must,
               figure);
  return FALSE;
}

static gboolean
refuse_text (const char *value,
             const char *member,
             const char *must,
             GError    **error)
{
  g_autofree char *shown = pp_shown (value);

  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, _("%s: %s, not “%s”."), member, must,
               shown);
  return FALSE;
}

/* So that no sum or product of figures is beyond what a double holds. */
static gboolean
is_bearable (double      value,
             const char *member,
             GError    **error)
{
  char most[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *must = NULL;

  if (fabs (value) <= PP_FIGURE_MAX)
    return TRUE;
  g_ascii_formatd (most, sizeof most, "%.10g", PP_FIGURE_MAX);
  must = g_strdup_printf (_("must be at most %s"), most);
  return refuse_number (value, member, must, error);
}

gboolean
pp_rule_finite (double      value,
                const char *member,
                GError    **error)
{
  return (isfinite (value) || refuse_number (value, member, _("must be a number"), error))
         && is_bearable (value, member, error);
}

gboolean
pp_rule_positive (double      value,
                  const char *member,
                  GError    **error)
{
  return ((isfinite (value) && value > 0)
          || refuse_number (value, member, _("must be more than 0"), error))
         && is_bearable (value, member, error);
}

gboolean
pp_rule_positive_or_null (double      value,
                          const char *member,
                          GError    **error)
{
  return isnan (value) || pp_rule_positive (value, member, error);
}

gboolean
pp_rule_not_negative (double      value,
                      const char *member,
                      GError    **error)
{
  return ((isfinite (value) && value >= 0)
          || refuse_number (value, member, _("must be 0 or more"), error))
         && is_bearable (value, member, error);
}

gboolean
pp_rule_not_negative_or_null (double      value,
                              const char *member,
                              GError    **error)
{
  return isnan (value) || pp_rule_not_negative (value, member, error);
}

gboolean
pp_rule_between (double      value,
                 double      least,
                 double      most,
                 const char *member,
                 GError    **error)
{
  char low[G_ASCII_DTOSTR_BUF_SIZE], high[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *must = NULL;

  if (value >= least && value <= most)
    return TRUE;
  g_ascii_formatd (low, sizeof low, "%.6g", least);
  g_ascii_formatd (high, sizeof high, "%.6g", most);
  must = g_strdup_printf (_("must be from %s to %s"), low, high);
  return refuse_number (value, member, must, error);
}

gboolean
pp_rule_coordinate (double      value,
                    const char *member,
                    GError    **error)
{
  return pp_rule_between (value, -PP_FARTHEST, PP_FARTHEST, member, error);
}

gboolean
pp_rule_view (double      value,
              const char *member,
              GError    **error)
{
  return (value >= 0 && value < 90)
         || refuse_number (value, member, _("must be from 0 to under 90 degrees"), error);
}

gboolean
pp_rule_colour (const char *value,
                const char *member,
                GError    **error)
{
  gboolean good = value != NULL && strlen (value) == strlen ("#rrggbb") && value[0] == '#';

  for (guint i = 1; good && value[i] != '\0'; i++)
    good = g_ascii_isxdigit (value[i]);
  return good || refuse_text (value, member, _("must be a colour such as #5e8a7d"), error);
}

gboolean
pp_rule_id (const char *value,
            const char *member,
            GError    **error)
{
  static const char * const reserved[] = { "background", "wire", "hook", "adhesive", NULL };
  gsize length = value != NULL ? strlen (value) : 0;
  gboolean good = length >= 1 && length <= PP_ID_MAX_LENGTH && !g_strv_contains (reserved, value);

  for (gsize i = 0; good && i < length; i++)
    good = g_ascii_isalnum (value[i]) || value[i] == '_' || value[i] == '-';
  return good
         || refuse_text (value, member, _("must be 1 to 64 letters, digits, _ or -, and none of "
                                          "the program’s own words"), error);
}

/* "2026-05-02": figures where `d` stands, and a day that the month has. */
static gboolean
is_date (const char *text)
{
  guint day, month, year;

  for (guint i = 0; i < 10; i++)
    if ((i == 4 || i == 7) ? text[i] != '-' : !g_ascii_isdigit (text[i]))
      return FALSE;
  year = (guint) g_ascii_strtoull (text, NULL, 10);
  month = (guint) g_ascii_strtoull (text + 5, NULL, 10);
  day = (guint) g_ascii_strtoull (text + 8, NULL, 10);
  return year > 0 && g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year);
}

/* Two figures, at most `most`. */
static gboolean
is_pair (const char *text,
         int         most)
{
  return g_ascii_isdigit (text[0]) && g_ascii_isdigit (text[1])
         && 10 * (text[0] - '0') + text[1] - '0' <= most;
}

/* "Z", "+01:30". */
static gboolean
is_offset (const char *text)
{
  if (g_ascii_toupper (text[0]) == 'Z')
    return text[1] == '\0';
  return (text[0] == '+' || text[0] == '-') && is_pair (text + 1, 23) && text[3] == ':'
         && is_pair (text + 4, 59) && text[6] == '\0';
}

/* RFC 3339, section 5.6; a second 60 is a leap second. */
static gboolean
is_time (const char *text)
{
  const char *p;

  if (!is_date (text) || g_ascii_toupper (text[10]) != 'T')
    return FALSE;
  p = text + 11;
  if (!is_pair (p, 23) || p[2] != ':' || !is_pair (p + 3, 59) || p[5] != ':'
      || !is_pair (p + 6, 60))
    return FALSE;
  p += 8;
  if (*p == '.')
    {
      if (!g_ascii_isdigit (*++p))
        return FALSE;
      while (g_ascii_isdigit (*p))
        p++;
    }
  return is_offset (p);
}

gboolean
pp_rule_time (const char *value,
              const char *member,
              GError    **error)
{
  return (value != NULL && is_time (value))
         || refuse_text (value, member,
                         _("must be a date and time such as 2026-05-02T14:30:00+02:00"), error);
}

gboolean
pp_rule_time_or_null (const char *value,
                      const char *member,
                      GError    **error)
{
  return value == NULL || pp_rule_time (value, member, error);
}

gboolean
pp_rule_date (const char *value,
              const char *member,
              GError    **error)
{
  if (*value == '\0' || (is_date (value) && value[10] == '\0') || is_time (value))
    return TRUE;
  return refuse_text (value, member, _("must be a date such as 2026-05-02"), error);
}
