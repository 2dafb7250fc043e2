/* rings.c: outlines for tests, written as a line of text.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "rings.h"

static guint
add_ring (GArray     *points,
          const char *text)
{
  g_auto (GStrv) positions = g_strsplit (text, ",", -1);
  guint start = points->len;
  PpPoint first, last;

  for (guint i = 0; positions[i] != NULL; i++)
    {
      char *end;
      PpPoint p;

      p.x = g_ascii_strtod (positions[i], &end);
      p.y = g_ascii_strtod (end, NULL);
      g_array_append_val (points, p);
    }
  first = g_array_index (points, PpPoint, start);
  last = g_array_index (points, PpPoint, points->len - 1);
  if (first.x != last.x || first.y != last.y)
    g_array_append_val (points, first);
  return points->len - start;
}

PpOutline *
test_outline (const char *text)
{
  g_auto (GStrv) rings = g_strsplit (text, ";", -1);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GError) error = NULL;
  PpOutline *outline;

  for (guint i = 0; rings[i] != NULL; i++)
    {
      guint n = add_ring (points, rings[i]);

      g_array_append_val (lengths, n);
    }
  outline = pp_outline_new ((const guint *) lengths->data, lengths->len,
                            (const PpPoint *) points->data, NULL, &error);
  g_assert_no_error (error);
  return outline;
}
