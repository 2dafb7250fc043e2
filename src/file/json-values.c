/* json-values.c: values of a panel as JSON: points, outlines, and what may be null.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/json-values.h"

void
pp_json_write_number_or_null (PpJsonWriter *w,
                              const char   *name,
                              double        number)
{
  if (isnan (number))
    pp_json_write_null (w, name);
  else
    pp_json_write_number (w, name, number);
}

void
pp_json_write_number_if_set (PpJsonWriter *w,
                             const char   *name,
                             double        number)
{
  if (!isnan (number))
    pp_json_write_number (w, name, number);
}

void
pp_json_write_string_or_null (PpJsonWriter *w,
                              const char   *name,
                              const char   *string)
{
  if (string == NULL)
    pp_json_write_null (w, name);
  else
    pp_json_write_string (w, name, string);
}

void
pp_json_write_string_if_set (PpJsonWriter *w,
                             const char   *name,
                             const char   *string)
{
  if (string != NULL)
    pp_json_write_string (w, name, string);
}

void
pp_json_write_strings (PpJsonWriter       *w,
                       const char         *name,
                       const char * const *strings)
{
  pp_json_write_begin_array (w, name);
  for (guint i = 0; strings[i] != NULL; i++)
    pp_json_write_string (w, NULL, strings[i]);
  pp_json_write_end_array (w);
}

void
pp_json_write_point (PpJsonWriter *w,
                     const char   *name,
                     PpPoint       p)
{
  pp_json_write_begin_array (w, name);
  pp_json_write_number (w, NULL, p.x);
  pp_json_write_number (w, NULL, p.y);
  pp_json_write_end_array (w);
}

void
pp_json_write_outline (PpJsonWriter    *w,
                       const char      *name,
                       const PpOutline *outline)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "type", "Polygon");
  pp_json_write_begin_array (w, "coordinates");
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, r, &n);

      pp_json_write_begin_array (w, NULL);
      for (guint i = 0; i < n; i++)
        pp_json_write_point (w, NULL, ring[i]);
      pp_json_write_end_array (w);
    }
  pp_json_write_end_array (w);
  pp_json_write_members (w, pp_outline_get_extra (outline));
  pp_json_write_end_object (w);
}
