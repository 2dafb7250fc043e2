/* piece-write.c: a tray piece, with its form, as a JSON object.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/records-write.h"

#include "file/json-values.h"

static void
write_grid (PpJsonWriter       *w,
            const PpHeightGrid *grid)
{
  const double *height = grid->heights;

  pp_json_write_number (w, "x", grid->x0);
  pp_json_write_number (w, "y", grid->y0);
  pp_json_write_number (w, "step", grid->step);
  pp_json_write_begin_array (w, "heights");
  for (guint i = 0; i < grid->n_rows; i++)
    {
      pp_json_write_begin_array (w, NULL);
      for (guint j = 0; j < grid->n_columns; j++)
        pp_json_write_number (w, NULL, *height++);
      pp_json_write_end_array (w);
    }
  pp_json_write_end_array (w);
}

/* Only the keys that its type has: others were not known when the form was read. */
static void
write_form (PpJsonWriter *w,
            const PpForm *form)
{
  pp_json_write_begin_object (w, "form");
  pp_json_write_string (w, "type", pp_form_kind_get_name (form->kind));
  if (form->kind == PP_FORM_MEASURED)
    write_grid (w, form->grid);
  else if (form->kind != PP_FORM_FLAT)
    pp_json_write_number (w, "rise", form->rise);
  if (form->kind == PP_FORM_CUPPED)
    pp_json_write_number (w, "foot", form->foot);
  if (form->kind == PP_FORM_LIFTED)
    pp_json_write_number_if_set (w, "flat", form->flat);
  pp_json_write_members (w, form->extra);
  pp_json_write_end_object (w);
}

static void
write_crown (PpJsonWriter  *w,
             const PpCrown *crown)
{
  if (crown->height == 0 && crown->radius == 0 && crown->extra == NULL)
    {
      pp_json_write_null (w, "crown");
      return;
    }
  pp_json_write_begin_object (w, "crown");
  pp_json_write_number (w, "height", crown->height);
  pp_json_write_number (w, "radius", crown->radius);
  pp_json_write_members (w, crown->extra);
  pp_json_write_end_object (w);
}

static void
write_art (PpJsonWriter *w,
           GBytes       *art)
{
  g_autofree char *text = NULL;
  gconstpointer bytes;
  gsize length;

  if (art == NULL)
    return;
  bytes = g_bytes_get_data (art, &length);
  text = g_strndup (bytes, length);
  pp_json_write_string (w, "art", text);
}

void
pp_write_piece_members (PpJsonWriter  *w,
                        const PpPiece *piece)
{
  pp_json_write_string (w, "id", piece->id);
  pp_json_write_string (w, "name", piece->name);
  pp_json_write_string (w, "kind", pp_kind_get_name (piece->kind));
  pp_json_write_integer (w, "count", piece->count);
  pp_json_write_number (w, "thickness", piece->thickness);
  pp_json_write_number_or_null (w, "mass", piece->mass);
  pp_json_write_number (w, "density", piece->density);
  pp_json_write_number (w, "transmittance", piece->transmittance);
  pp_json_write_string (w, "colour", piece->colour);
  write_form (w, &piece->form);
  write_crown (w, &piece->crown);
  pp_json_write_outline (w, "outline", piece->outline);
  write_art (w, piece->art);
  pp_json_write_string_if_set (w, "box", piece->box);
  pp_json_write_members (w, piece->extra);
}

void
pp_write_piece (PpJsonWriter  *w,
                const char    *name,
                const PpPiece *piece)
{
  pp_json_write_begin_object (w, name);
  pp_write_piece_members (w, piece);
  pp_json_write_end_object (w);
}
