/* outline-read.c: an outline from a GeoJSON Polygon.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/members.h"

#include "file/file-error.h"
#include "panel/i18n.h"
#include "panel/shown.h"
#include "shape/polygon.h"

static gboolean
read_position (JsonNode *node,
               PpPoint  *p)
{
  JsonArray *pair = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (pair == NULL || json_array_get_length (pair) != 2
      || !pp_json_is_number (json_array_get_element (pair, 0))
      || !pp_json_is_number (json_array_get_element (pair, 1)))
    return FALSE;
  p->x = json_array_get_double_element (pair, 0);
  p->y = json_array_get_double_element (pair, 1);
  return TRUE;
}

/* Appends the positions of one ring. */
static void
read_ring (PpMembers *polygon,
           JsonArray *rings,
           guint      r,
           GArray    *lengths,
           GArray    *points)
{
  JsonNode *node = json_array_get_element (rings, r);
  JsonArray *ring = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  guint n = ring != NULL ? json_array_get_length (ring) : 0;

  if (n > PP_OUTLINE_MAX_POSITIONS)
    {
      pp_reader_complain (polygon->reader, PP_FILE_ERROR_LIMIT, polygon->path,
                          _("a ring may have at most %d positions, not %u."),
                          PP_OUTLINE_MAX_POSITIONS, n);
      return;
    }
  for (guint i = 0; i < n; i++)
    {
      PpPoint p;

      if (!read_position (json_array_get_element (ring, i), &p))
        {
          pp_reader_complain (polygon->reader, PP_FILE_ERROR_VALUE, polygon->path,
                              _("position %u of ring %u must be two numbers."), i, r);
          return;
        }
      g_array_append_val (points, p);
    }
  g_array_append_val (lengths, n);
}

/* Crossing rings are asked of GEOS only here: what is in a panel never crosses. */
static PpOutline *
refuse_crossing (PpMembers *polygon,
                 PpOutline *outline)
{
  char x[G_ASCII_DTOSTR_BUF_SIZE], y[G_ASCII_DTOSTR_BUF_SIZE];
  PpPoint at;

  if (outline == NULL || pp_outline_is_simple (outline, NULL, &at))
    return outline;
  g_ascii_formatd (x, sizeof x, "%.6g", at.x);
  g_ascii_formatd (y, sizeof y, "%.6g", at.y);
  pp_reader_complain (polygon->reader, PP_FILE_ERROR_VALUE, polygon->path,
                      _("the outline crosses or touches itself near (%s, %s)."), x, y);
  pp_outline_unref (outline);
  return NULL;
}

static PpOutline *
read_polygon (PpMembers *polygon)
{
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  g_autofree char *extra = NULL;
  g_autoptr (GError) error = NULL;
  const char *type = NULL;
  JsonArray *rings;
  PpOutline *outline;

  pp_members_get_string (polygon, "type", PP_MUST_HAVE, &type);
  rings = pp_members_get_array (polygon, "coordinates", PP_MUST_HAVE);
  if (type != NULL && strcmp (type, "Polygon") != 0)
    {
      g_autofree char *path = pp_members_dup_path (polygon, "type");
      g_autofree char *shown = pp_shown (type);

      pp_reader_complain (polygon->reader, PP_FILE_ERROR_VALUE, path,
                          _("an outline must be a Polygon, not a “%s”."), shown);
    }
  for (guint r = 0; rings != NULL && r < json_array_get_length (rings); r++)
    if (!pp_reader_failed (polygon->reader))
      read_ring (polygon, rings, r, lengths, points);
  if (pp_reader_failed (polygon->reader))
    return NULL;
  extra = pp_members_dup_rest (polygon);
  outline = pp_outline_new ((const guint *) lengths->data, lengths->len,
                            (const PpPoint *) points->data, extra, &error);
  pp_reader_take (polygon->reader, polygon->path, g_steal_pointer (&error));
  return refuse_crossing (polygon, outline);
}

PpOutline *
pp_members_get_outline (PpMembers  *self,
                        const char *name,
                        PpNeed      need)
{
  PpMembers polygon;
  PpOutline *outline;

  if (!pp_members_enter (self, name, need, &polygon))
    return NULL;
  outline = read_polygon (&polygon);
  pp_members_clear (&polygon);
  return outline;
}
