/* art-numbers.c: how large the figures of a drawing can get.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/art-numbers.h"

#include <math.h>
#include <string.h>

#define SKEW_SCALE 6 /* of 80°; nobody skews farther */

/* Moves to the next number or to the end of the text. */
static gboolean
find_number (const char **at)
{
  for (; **at != '\0'; (*at)++)
    {
      if (**at == '#')
        while (g_ascii_isalnum ((*at)[1]) || ((*at)[1] != '\0' && strchr ("_-.:", (*at)[1])))
          (*at)++;
      else if (g_ascii_isdigit (**at) || (**at == '.' && g_ascii_isdigit ((*at)[1])))
        return TRUE;
    }
  return FALSE;
}

double
pp_art_numbers_greatest (const char *text)
{
  double greatest = 0;

  while (find_number (&text))
    {
      char *end;

      greatest = fmax (greatest, g_ascii_strtod (text, &end));
      text = end;
    }
  return greatest;
}

/* The arguments between `open` and its closing bracket; of a matrix only the first four scale. */
static double
get_function_scale (const char *name,
                    const char *open)
{
  g_autofree char *arguments = g_strndup (open, strcspn (open, ")"));
  const char *at = arguments;
  double greatest = 0;
  double squares = 0;

  if (g_str_has_prefix (name, "skew"))
    return SKEW_SCALE;
  if (!g_str_has_prefix (name, "scale") && !g_str_has_prefix (name, "matrix"))
    return 1;
  for (guint i = 0; i < 4 && find_number (&at); i++)
    {
      char *end;
      double number = g_ascii_strtod (at, &end);

      greatest = fmax (greatest, number);
      squares += number * number;
      at = end;
    }
  return *name == 's' ? greatest : sqrt (squares / 2);
}

double
pp_art_numbers_scale (const char *transforms)
{
  double scale = 1;

  for (const char *open = strchr (transforms, '('); open != NULL; open = strchr (open + 1, '('))
    {
      const char *name = open;

      while (name > transforms && g_ascii_isspace (name[-1]))
        name--;
      while (name > transforms && g_ascii_isalpha (name[-1]))
        name--;
      scale *= get_function_scale (name, open);
    }
  return scale;
}
