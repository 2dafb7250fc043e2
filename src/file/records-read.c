/* records-read.c: background, fused parts, holes, wire, display, adhesive, placements and notes
 * from their JSON objects.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/records-read.h"

#include "file/file-error.h"
#include "panel/i18n.h"
#include "panel/panel.h"
#include "panel/shown.h"

/* What pp_X_new() answered, its complaint taken up. By address, since `record` is made, and
 * `error` set, while the arguments are. */
static gpointer
finish (PpMembers *members,
        gpointer   record,
        GError   **error)
{
  pp_reader_take (members->reader, members->path, *error);
  return record;
}

static void
read_glass (PpMembers *members,
            PpGlass   *glass,
            char     **extra)
{
  PpMembers own;

  if (!pp_members_enter (members, "glass", PP_MAY_LACK, &own))
    return;
  pp_members_get_double (&own, "density", PP_MAY_LACK, &glass->density);
  pp_members_get_double (&own, "refractive_index", PP_MAY_LACK, &glass->refractive_index);
  pp_members_get_double (&own, "transmittance", PP_MAY_LACK, &glass->transmittance);
  pp_members_get_double (&own, "expansion", PP_MAY_LACK, &glass->expansion);
  pp_members_get_string (&own, "colour", PP_MAY_LACK, &glass->colour);
  *extra = pp_members_dup_rest (&own);
  glass->extra = *extra;
  pp_members_clear (&own);
}

PpBackground *
pp_read_background (PpMembers *members)
{
  PpBackground draft = pp_background_draft ();
  g_autoptr (PpOutline) outline = NULL;
  g_autofree char *glass_extra = NULL;
  g_autofree char *extra = NULL;
  GError *error = NULL;
  int shape = PP_SHAPE_RECTANGLE;
  PpNeed sizes;

  pp_members_get_name (members, "shape", PP_MUST_HAVE,
                       (PpFromName) pp_background_shape_from_name, &shape);
  draft.shape = (PpBackgroundShape) shape;
  sizes = draft.shape == PP_SHAPE_FREE ? PP_MAY_LACK : PP_MUST_HAVE;
  pp_members_get_double (members, "width", sizes, &draft.width);
  pp_members_get_double (members, "height", sizes, &draft.height);
  pp_members_get_double (members, "corner_radius", PP_MAY_LACK, &draft.corner_radius);
  pp_members_get_double (members, "thickness", PP_MUST_HAVE, &draft.thickness);
  if (draft.shape == PP_SHAPE_FREE)
    draft.outline = outline = pp_members_get_outline (members, "outline", PP_MUST_HAVE);
  read_glass (members, &draft.glass, &glass_extra);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_background_new (&draft, &error), &error);
}

static void
read_pocket (PpMembers  *members,
             PpFused    *draft,
             PpOutline **insert,
             char      **extra)
{
  PpMembers own;

  draft->has_pocket = pp_members_enter (members, "pocket", PP_MAY_BE_NULL, &own);
  if (!draft->has_pocket)
    return;
  pp_members_get_double (&own, "insert_thickness", PP_MUST_HAVE, &draft->pocket.insert_thickness);
  draft->pocket.gap = NAN;
  pp_members_get_double_or_null (&own, "gap", &draft->pocket.gap);
  draft->pocket.insert = *insert = pp_members_get_outline (&own, "insert", PP_MUST_HAVE);
  draft->pocket.extra = *extra = pp_members_dup_rest (&own);
  pp_members_clear (&own);
}

static void
read_role (PpMembers *members,
           PpFused   *draft)
{
  const char *name = NULL;

  pp_members_get_string_or_null (members, "role", &name);
  if (name != NULL && (*name == '\0' || !pp_role_from_name (name, &draft->role)))
    {
      g_autofree char *path = pp_members_dup_path (members, "role");
      g_autofree char *shown = pp_shown (name);

      pp_reader_complain (members->reader, PP_FILE_ERROR_VALUE, path,
                          _("“%s” is not one of the words that may stand here."), shown);
    }
}

PpFused *
pp_read_fused (PpMembers *members)
{
  PpFused draft = pp_fused_draft ();
  g_autoptr (PpOutline) outline = NULL;
  g_autoptr (PpOutline) insert = NULL;
  g_autofree char *glass_extra = NULL;
  g_autofree char *pocket_extra = NULL;
  g_autofree char *extra = NULL;
  GError *error = NULL;

  pp_members_get_string (members, "id", PP_MUST_HAVE, &draft.id);
  pp_members_get_string (members, "name", PP_MAY_LACK, &draft.name);
  read_role (members, &draft);
  pp_members_get_double (members, "thickness", PP_MUST_HAVE, &draft.thickness);
  draft.outline = outline = pp_members_get_outline (members, "outline", PP_MUST_HAVE);
  read_glass (members, &draft.glass, &glass_extra);
  read_pocket (members, &draft, &insert, &pocket_extra);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_fused_new (&draft, &error), &error);
}

PpHole *
pp_read_hole (PpMembers *members)
{
  PpHole draft = pp_hole_draft ();
  g_autofree char *extra = NULL;
  GError *error = NULL;

  pp_members_get_string (members, "id", PP_MUST_HAVE, &draft.id);
  pp_members_get_double (members, "x", PP_MUST_HAVE, &draft.x);
  pp_members_get_double (members, "y", PP_MUST_HAVE, &draft.y);
  pp_members_get_double (members, "diameter", PP_MUST_HAVE, &draft.diameter);
  pp_members_get_boolean (members, "drilled", &draft.drilled);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_hole_new (&draft, &error), &error);
}

PpWire *
pp_read_wire (PpMembers *members)
{
  PpWire draft = pp_wire_draft ();
  g_autofree char *extra = NULL;
  GError *error = NULL;

  pp_members_get_string (members, "from", PP_MUST_HAVE, &draft.from);
  pp_members_get_string (members, "to", PP_MUST_HAVE, &draft.to);
  pp_members_get_string_or_null (members, "knotted_at", &draft.knotted_at);
  pp_members_get_double_or_null (members, "length", &draft.length);
  pp_members_get_double (members, "diameter", PP_MAY_LACK, &draft.diameter);
  pp_members_get_double (members, "tail", PP_MAY_LACK, &draft.tail);
  pp_members_get_double (members, "knot_diameter", PP_MAY_LACK, &draft.knot_diameter);
  pp_members_get_double (members, "knot_height", PP_MAY_LACK, &draft.knot_height);
  pp_members_get_double_or_null (members, "safe_load", &draft.safe_load);
  pp_members_get_double_or_null (members, "breaking_load", &draft.breaking_load);
  pp_members_get_double (members, "friction", PP_MAY_LACK, &draft.friction);
  pp_members_get_double (members, "mass_per_metre", PP_MAY_LACK, &draft.mass_per_metre);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_wire_new (&draft, &error), &error);
}

PpDisplay *
pp_read_display (PpMembers *members)
{
  PpDisplay draft = pp_display_draft ();
  g_autofree char *extra = NULL;
  GError *error = NULL;
  int place = draft.place;

  pp_members_get_name (members, "place", PP_MAY_LACK, (PpFromName) pp_place_from_name, &place);
  draft.place = (PpPlace) place;
  pp_members_get_double (members, "sideways", PP_MAY_LACK, &draft.sideways);
  pp_members_get_double (members, "updown", PP_MAY_LACK, &draft.updown);
  pp_members_get_double_or_null (members, "hook_rating", &draft.hook_rating);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_display_new (&draft, &error), &error);
}

static void
read_ratio (PpMembers *members,
            double     ratio[2])
{
  JsonArray *array = pp_members_get_array (members, "ratio", PP_MAY_LACK);
  gboolean good = array != NULL && json_array_get_length (array) == 2;

  for (guint i = 0; good && i < 2; i++)
    {
      JsonNode *node = json_array_get_element (array, i);

      good = pp_json_is_number (node);
      ratio[i] = good ? json_node_get_double (node) : 0;
    }
  if (array != NULL && !good)
    {
      g_autofree char *path = pp_members_dup_path (members, "ratio");

      pp_reader_complain (members->reader, PP_FILE_ERROR_VALUE, path, _("must be two numbers."));
    }
}

PpAdhesive *
pp_read_adhesive (PpMembers *members)
{
  PpAdhesive draft = pp_adhesive_draft ();
  g_autofree char *extra = NULL;
  GError *error = NULL;

  pp_members_get_string (members, "name", PP_MAY_LACK, &draft.name);
  pp_members_get_double (members, "working_life", PP_MAY_LACK, &draft.working_life);
  pp_members_get_double (members, "mixing", PP_MAY_LACK, &draft.mixing);
  pp_members_get_double (members, "grab", PP_MAY_LACK, &draft.grab);
  pp_members_get_double (members, "hard", PP_MAY_LACK, &draft.hard);
  pp_members_get_double (members, "cure", PP_MAY_LACK, &draft.cure);
  pp_members_get_double_or_null (members, "sitting", &draft.sitting);
  read_ratio (members, draft.ratio);
  pp_members_get_double (members, "density", PP_MAY_LACK, &draft.density);
  pp_members_get_double (members, "largest_mix", PP_MAY_LACK, &draft.largest_mix);
  pp_members_get_double (members, "smallest_mix", PP_MAY_LACK, &draft.smallest_mix);
  pp_members_get_double (members, "fill_gap", PP_MAY_LACK, &draft.fill_gap);
  pp_members_get_double (members, "working_stress", PP_MAY_LACK, &draft.working_stress);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_adhesive_new (&draft, &error), &error);
}

PpPlacement *
pp_read_placement (PpMembers *members)
{
  PpPlacement draft = pp_placement_draft ();
  g_autofree char *extra = NULL;
  GError *error = NULL;

  pp_members_get_string (members, "id", PP_MUST_HAVE, &draft.id);
  pp_members_get_string (members, "piece", PP_MUST_HAVE, &draft.piece);
  pp_members_get_double (members, "x", PP_MUST_HAVE, &draft.x);
  pp_members_get_double (members, "y", PP_MUST_HAVE, &draft.y);
  pp_members_get_double (members, "rotation", PP_MAY_LACK, &draft.rotation);
  pp_members_get_boolean (members, "mirrored", &draft.mirrored);
  pp_members_get_string_or_null (members, "group", &draft.group);
  pp_members_get_string_or_null (members, "pocket", &draft.pocket);
  pp_members_get_boolean (members, "pinned", &draft.pinned);
  pp_members_get_string_or_null (members, "glued_at", &draft.glued_at);
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_placement_new (&draft, &error), &error);
}

PpLogEntry *
pp_read_log_entry (PpMembers *members)
{
  PpLogEntry draft = pp_log_entry_draft ();
  g_autofree const char **about = NULL;
  g_autofree char *extra = NULL;
  GError *error = NULL;
  int what = draft.what;

  pp_members_get_string (members, "at", PP_MUST_HAVE, &draft.at);
  pp_members_get_name (members, "what", PP_MUST_HAVE, (PpFromName) pp_log_what_from_name, &what);
  draft.what = (PpLogWhat) what;
  about = pp_members_get_strings (members, "about", PP_MAY_LACK);
  draft.about = about;
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_log_entry_new (&draft, &error), &error);
}

PpQuiet *
pp_read_quiet (PpMembers *members)
{
  PpQuiet draft = pp_quiet_draft ();
  g_autofree const char **about = NULL;
  g_autofree char *extra = NULL;
  GError *error = NULL;

  pp_members_get_string (members, "code", PP_MUST_HAVE, &draft.code);
  about = pp_members_get_strings (members, "about", PP_MUST_HAVE);
  draft.about = about;
  draft.extra = extra = pp_members_dup_rest (members);
  if (pp_reader_failed (members->reader))
    return NULL;
  return finish (members, pp_quiet_new (&draft, &error), &error);
}

GPtrArray *
pp_read_list (PpMembers     *members,
              const char    *name,
              guint          most,
              PpReadFunc     read,
              GDestroyNotify unref)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (unref);
  JsonArray *array = pp_members_get_array (members, name, PP_MAY_LACK);
  g_autofree char *list_path = pp_members_dup_path (members, name);
  guint n = array != NULL ? json_array_get_length (array) : 0;

  if (n > most)
    pp_reader_complain (members->reader, PP_FILE_ERROR_LIMIT, list_path,
                        _("there may be at most %u of them, not %u."), most, n);
  for (guint i = 0; i < n && !pp_reader_failed (members->reader); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s[%u]", list_path, i);
      PpMembers item;
      gpointer record;

      pp_members_init (&item, members->reader, json_array_get_element (array, i), path);
      record = read (&item);
      if (record != NULL)
        g_ptr_array_add (list, record);
      pp_members_clear (&item);
    }
  return list;
}
