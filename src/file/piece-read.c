/* piece-read.c: a tray piece, with its form, from its JSON object.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/file-error.h"
#include "file/records-read.h"
#include "panel/i18n.h"

/* Appends one row of measured heights; every row must be as long as the first. */
static void
read_heights_row (PpMembers *form,
                  JsonNode  *node,
                  GArray    *heights,
                  guint     *n_columns)
{
  JsonArray *row = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  guint n = row != NULL ? json_array_get_length (row) : 0;
  g_autofree char *path = pp_members_dup_path (form, "heights");

  if (heights->len == 0)
    *n_columns = n;
  if (n == 0 || n != *n_columns)
    pp_reader_complain (form->reader, PP_FILE_ERROR_VALUE, path,
                        _("must be rows of numbers, all of one length."));
  for (guint j = 0; j < n && !pp_reader_failed (form->reader); j++)
    {
      JsonNode *cell = json_array_get_element (row, j);
      double height;

      if (!pp_json_is_number (cell))
        {
          pp_reader_complain (form->reader, PP_FILE_ERROR_VALUE, path, _("must be numbers."));
          return;
        }
      height = json_node_get_double (cell);
      g_array_append_val (heights, height);
    }
}

static PpHeightGrid *
read_grid (PpMembers *form)
{
  g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (double));
  double x0 = 0, y0 = 0, step = 0;
  JsonArray *rows;
  guint n_columns = 0, n_rows;

  pp_members_get_double (form, "x", PP_MUST_HAVE, &x0);
  pp_members_get_double (form, "y", PP_MUST_HAVE, &y0);
  pp_members_get_double (form, "step", PP_MUST_HAVE, &step);
  rows = pp_members_get_array (form, "heights", PP_MUST_HAVE);
  n_rows = rows != NULL ? json_array_get_length (rows) : 0;
  for (guint i = 0; i < n_rows && !pp_reader_failed (form->reader); i++)
    read_heights_row (form, json_array_get_element (rows, i), heights, &n_columns);
  if (rows != NULL && n_rows == 0)
    pp_reader_complain (form->reader, PP_FILE_ERROR_VALUE, form->path,
                        _("a measured form needs at least one height."));
  if (pp_reader_failed (form->reader))
    return NULL;
  return pp_height_grid_new (x0, y0, step, n_rows, n_columns, (const double *) heights->data);
}

static void
read_form (PpMembers     *members,
           PpForm        *form,
           PpHeightGrid **grid,
           char         **extra)
{
  PpMembers own;
  int kind = PP_FORM_FLAT;

  if (!pp_members_enter (members, "form", PP_MAY_LACK, &own))
    return;
  pp_members_get_name (&own, "type", PP_MUST_HAVE, (PpFromName) pp_form_kind_from_name, &kind);
  form->kind = (PpFormKind) kind;
  if (form->kind == PP_FORM_MEASURED)
    form->grid = *grid = read_grid (&own);
  else if (form->kind != PP_FORM_FLAT)
    pp_members_get_double (&own, "rise", PP_MUST_HAVE, &form->rise);
  if (form->kind == PP_FORM_CUPPED)
    pp_members_get_double (&own, "foot", PP_MAY_LACK, &form->foot);
  if (form->kind == PP_FORM_LIFTED)
    pp_members_get_double (&own, "flat", PP_MAY_LACK, &form->flat);
  form->extra = *extra = pp_members_dup_rest (&own);
  pp_members_clear (&own);
}

static void
read_crown (PpMembers *members,
            PpCrown   *crown,
            char     **extra)
{
  PpMembers own;

  if (!pp_members_enter (members, "crown", PP_MAY_BE_NULL, &own))
    return;
  pp_members_get_double (&own, "height", PP_MUST_HAVE, &crown->height);
  pp_members_get_double (&own, "radius", PP_MUST_HAVE, &crown->radius);
  crown->extra = *extra = pp_members_dup_rest (&own);
  pp_members_clear (&own);
}

static void
read_figures (PpMembers *members,
              PpPiece   *draft)
{
  int kind = PP_KIND_FLOWER;

  pp_members_get_string (members, "id", PP_MUST_HAVE, &draft->id);
  pp_members_get_string (members, "name", PP_MAY_LACK, &draft->name);
  pp_members_get_name (members, "kind", PP_MUST_HAVE, (PpFromName) pp_kind_from_name, &kind);
  draft->kind = (PpKind) kind;
  pp_members_get_count (members, "count", &draft->count);
  pp_members_get_double (members, "thickness", PP_MUST_HAVE, &draft->thickness);
  pp_members_get_double_or_null (members, "mass", &draft->mass);
  pp_members_get_double (members, "density", PP_MAY_LACK, &draft->density);
  pp_members_get_double (members, "transmittance", PP_MAY_LACK, &draft->transmittance);
  pp_members_get_string (members, "colour", PP_MAY_LACK, &draft->colour);
  pp_members_get_string_or_null (members, "box", &draft->box);
}

PpPiece *
pp_read_piece (PpMembers *members)
{
  PpPiece draft = pp_piece_draft ();
  g_autoptr (PpOutline) outline = NULL;
  g_autoptr (PpHeightGrid) grid = NULL;
  g_autoptr (GBytes) art = NULL;
  g_autofree char *form_extra = NULL;
  g_autofree char *crown_extra = NULL;
  g_autofree char *extra = NULL;
  const char *svg = NULL;
  GError *error = NULL;
  PpPiece *piece;

  read_figures (members, &draft);
  read_form (members, &draft.form, &grid, &form_extra);
  read_crown (members, &draft.crown, &crown_extra);
  draft.outline = outline = pp_members_get_outline (members, "outline", PP_MUST_HAVE);
  pp_members_get_string_or_null (members, "art", &svg);
  if (svg != NULL && *svg != '\0')
    draft.art = art = g_bytes_new (svg, strlen (svg));
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  piece = pp_piece_new (&draft, &error);
  pp_reader_take (members->reader, members->path, error);
  return piece;
}
