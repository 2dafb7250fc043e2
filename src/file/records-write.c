/* records-write.c: background, fused parts, holes, wire, display, adhesive, placements and notes
 * as JSON objects.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/records-write.h"

#include "file/json-values.h"

static void
write_glass (PpJsonWriter  *w,
             const PpGlass *glass)
{
  pp_json_write_begin_object (w, "glass");
  pp_json_write_number_if_set (w, "density", glass->density);
  pp_json_write_number (w, "refractive_index", glass->refractive_index);
  pp_json_write_number (w, "transmittance", glass->transmittance);
  pp_json_write_number_if_set (w, "expansion", glass->expansion);
  pp_json_write_string (w, "colour", glass->colour);
  pp_json_write_members (w, glass->extra);
  pp_json_write_end_object (w);
}

/* A free background is as large as its outline and has no sizes of its own. */
static void
write_sizes (PpJsonWriter       *w,
             const PpBackground *background)
{
  if (background->shape == PP_SHAPE_FREE)
    {
      pp_json_write_outline (w, "outline", background->outline);
      return;
    }
  pp_json_write_number (w, "width", background->width);
  pp_json_write_number (w, "height", background->height);
  pp_json_write_number (w, "corner_radius", background->corner_radius);
}

void
pp_write_background (PpJsonWriter       *w,
                     const char         *name,
                     const PpBackground *background)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "shape", pp_background_shape_get_name (background->shape));
  write_sizes (w, background);
  pp_json_write_number (w, "thickness", background->thickness);
  write_glass (w, &background->glass);
  pp_json_write_members (w, background->extra);
  pp_json_write_end_object (w);
}

static void
write_pocket (PpJsonWriter  *w,
              const PpFused *fused)
{
  if (!fused->has_pocket)
    {
      pp_json_write_null (w, "pocket");
      return;
    }
  pp_json_write_begin_object (w, "pocket");
  pp_json_write_number (w, "insert_thickness", fused->pocket.insert_thickness);
  pp_json_write_number_or_null (w, "gap", fused->pocket.gap);
  pp_json_write_outline (w, "insert", fused->pocket.insert);
  pp_json_write_members (w, fused->pocket.extra);
  pp_json_write_end_object (w);
}

void
pp_write_fused (PpJsonWriter  *w,
                const char    *name,
                const PpFused *fused)
{
  const char *role = fused->role == PP_ROLE_NONE ? NULL : pp_role_get_name (fused->role);

  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "id", fused->id);
  pp_json_write_string (w, "name", fused->name);
  pp_json_write_string_or_null (w, "role", role);
  pp_json_write_number (w, "thickness", fused->thickness);
  pp_json_write_outline (w, "outline", fused->outline);
  write_glass (w, &fused->glass);
  write_pocket (w, fused);
  pp_json_write_members (w, fused->extra);
  pp_json_write_end_object (w);
}

void
pp_write_hole (PpJsonWriter *w,
               const char   *name,
               const PpHole *hole)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "id", hole->id);
  pp_json_write_number (w, "x", hole->x);
  pp_json_write_number (w, "y", hole->y);
  pp_json_write_number (w, "diameter", hole->diameter);
  pp_json_write_boolean (w, "drilled", hole->drilled);
  pp_json_write_members (w, hole->extra);
  pp_json_write_end_object (w);
}

void
pp_write_wire (PpJsonWriter *w,
               const char   *name,
               const PpWire *wire)
{
  if (wire == NULL)
    {
      pp_json_write_null (w, name);
      return;
    }
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "from", wire->from);
  pp_json_write_string (w, "to", wire->to);
  pp_json_write_string_or_null (w, "knotted_at", wire->knotted_at);
  pp_json_write_number_or_null (w, "length", wire->length);
  pp_json_write_number (w, "diameter", wire->diameter);
  pp_json_write_number (w, "tail", wire->tail);
  pp_json_write_number (w, "knot_diameter", wire->knot_diameter);
  pp_json_write_number (w, "knot_height", wire->knot_height);
  pp_json_write_number_or_null (w, "safe_load", wire->safe_load);
  pp_json_write_number_or_null (w, "breaking_load", wire->breaking_load);
  pp_json_write_number (w, "friction", wire->friction);
  pp_json_write_number (w, "mass_per_metre", wire->mass_per_metre);
  pp_json_write_members (w, wire->extra);
  pp_json_write_end_object (w);
}

void
pp_write_display (PpJsonWriter    *w,
                  const char      *name,
                  const PpDisplay *display)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "place", pp_place_get_name (display->place));
  pp_json_write_number (w, "sideways", display->sideways);
  pp_json_write_number (w, "updown", display->updown);
  pp_json_write_number_or_null (w, "hook_rating", display->hook_rating);
  pp_json_write_members (w, display->extra);
  pp_json_write_end_object (w);
}

void
pp_write_adhesive (PpJsonWriter     *w,
                   const char       *name,
                   const PpAdhesive *adhesive)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "name", adhesive->name);
  pp_json_write_number (w, "working_life", adhesive->working_life);
  pp_json_write_number (w, "mixing", adhesive->mixing);
  pp_json_write_number (w, "grab", adhesive->grab);
  pp_json_write_number (w, "hard", adhesive->hard);
  pp_json_write_number (w, "cure", adhesive->cure);
  pp_json_write_number_or_null (w, "sitting", adhesive->sitting);
  pp_json_write_begin_array (w, "ratio");
  pp_json_write_number (w, NULL, adhesive->ratio[0]);
  pp_json_write_number (w, NULL, adhesive->ratio[1]);
  pp_json_write_end_array (w);
  pp_json_write_number (w, "density", adhesive->density);
  pp_json_write_number (w, "largest_mix", adhesive->largest_mix);
  pp_json_write_number (w, "smallest_mix", adhesive->smallest_mix);
  pp_json_write_number (w, "fill_gap", adhesive->fill_gap);
  pp_json_write_number (w, "working_stress", adhesive->working_stress);
  pp_json_write_members (w, adhesive->extra);
  pp_json_write_end_object (w);
}

void
pp_write_placement (PpJsonWriter      *w,
                    const char        *name,
                    const PpPlacement *placement)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "id", placement->id);
  pp_json_write_string (w, "piece", placement->piece);
  pp_json_write_number (w, "x", placement->x);
  pp_json_write_number (w, "y", placement->y);
  pp_json_write_number (w, "rotation", placement->rotation);
  pp_json_write_boolean (w, "mirrored", placement->mirrored);
  pp_json_write_string_or_null (w, "group", placement->group);
  pp_json_write_string_or_null (w, "pocket", placement->pocket);
  pp_json_write_boolean (w, "pinned", placement->pinned);
  pp_json_write_string_or_null (w, "glued_at", placement->glued_at);
  pp_json_write_members (w, placement->extra);
  pp_json_write_end_object (w);
}

void
pp_write_log_entry (PpJsonWriter     *w,
                    const char       *name,
                    const PpLogEntry *entry)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "at", entry->at);
  pp_json_write_string (w, "what", pp_log_what_get_name (entry->what));
  pp_json_write_strings (w, "about", entry->about);
  pp_json_write_members (w, entry->extra);
  pp_json_write_end_object (w);
}

void
pp_write_quiet (PpJsonWriter  *w,
                const char    *name,
                const PpQuiet *quiet)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_string (w, "code", quiet->code);
  pp_json_write_strings (w, "about", quiet->about);
  pp_json_write_members (w, quiet->extra);
  pp_json_write_end_object (w);
}
