/* json-scan-number.c: numbers, and whether a double or 64 bits can hold them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/json-scan-private.h"

#include <float.h>
#include <math.h>
#include <string.h>

static gsize
skip_digits (PpJsonScan *scan)
{
  gsize start = scan->at;

  while (g_ascii_isdigit (pp_json_scan_peek (scan, 0)))
    scan->at++;
  return scan->at - start;
}

/* At least one digit must stand here. */
static gboolean
scan_digits (PpJsonScan *scan)
{
  if (skip_digits (scan) > 0)
    return TRUE;
  return pp_json_scan_refuse (scan, scan->at, PP_FILE_ERROR_SYNTAX,
                              _("a digit of a number is missing here."));
}

static gboolean
scan_whole_part (PpJsonScan *scan)
{
  gsize start = scan->at;

  if (!scan_digits (scan))
    return FALSE;
  if (scan->text[start] == '0' && scan->at > start + 1)
    return pp_json_scan_refuse (scan, start, PP_FILE_ERROR_SYNTAX,
                                _("a number begins with a zero too many."));
  return TRUE;
}

static gboolean
scan_fraction (PpJsonScan *scan)
{
  if (pp_json_scan_peek (scan, 0) != '.')
    return TRUE;
  scan->at++;
  return scan_digits (scan);
}

static gboolean
scan_exponent (PpJsonScan *scan)
{
  char sign;

  if (g_ascii_tolower (pp_json_scan_peek (scan, 0)) != 'e')
    return TRUE;
  scan->at++;
  sign = pp_json_scan_peek (scan, 0);
  if (sign == '+' || sign == '-')
    scan->at++;
  return scan_digits (scan);
}

/* json-glib reads whole numbers into 64 bits with a sign and lets them wrap. */
static gboolean
check_whole (PpJsonScan *scan,
             gsize       start)
{
  static const char beyond[] = "9223372036854775808"; /* 2^63 */
  const gsize n_beyond = strlen (beyond);
  gboolean negative = scan->text[start] == '-';
  const char *digits = scan->text + start + (negative ? 1 : 0);
  gsize n = scan->text + scan->at - digits;
  int order = n == n_beyond ? memcmp (digits, beyond, n) : 0;

  if (n < n_beyond || (n == n_beyond && (order < 0 || (order == 0 && negative))))
    return TRUE;
  return pp_json_scan_refuse (scan, start, PP_FILE_ERROR_VALUE,
                              _("a whole number is too large to be kept exactly."));
}

static gboolean
check_finite (PpJsonScan *scan,
              gsize       start)
{
  /* The text need not end in a zero byte, which the conversion wants. */
  g_autofree char *number = g_strndup (scan->text + start, scan->at - start);

  if (isfinite (g_ascii_strtod (number, NULL)))
    return TRUE;
  return pp_json_scan_refuse (scan, start, PP_FILE_ERROR_VALUE,
                              _("a number is too large to be kept."));
}

gboolean
pp_json_scan_number (PpJsonScan *scan)
{
  gsize start = scan->at, whole_end;
  gboolean has_exponent;

  if (pp_json_scan_peek (scan, 0) == '-')
    scan->at++;
  if (!scan_whole_part (scan))
    return FALSE;
  whole_end = scan->at;
  if (!scan_fraction (scan))
    return FALSE;
  has_exponent = g_ascii_tolower (pp_json_scan_peek (scan, 0)) == 'e';
  if (!scan_exponent (scan))
    return FALSE;
  if (scan->at == whole_end)
    return check_whole (scan, start);
  /* Almost every number is short and without an exponent, and then it is finite. */
  return (!has_exponent && whole_end - start < DBL_MAX_10_EXP) || check_finite (scan, start);
}
