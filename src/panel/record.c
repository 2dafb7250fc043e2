/* record.c: hole, wire, display, adhesive, placement and notes: records without shared parts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/record.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/record-private.h"
#include "panel/rules-private.h"

PpHole
pp_hole_draft (void)
{
  return (PpHole) { .id = "", .diameter = 6 };
}

PpHole *
pp_hole_new (const PpHole *draft,
             GError      **error)
{
  PpHole *self;

  if (!pp_rule_id (draft->id, "id", error) || !pp_rule_coordinate (draft->x, "x", error)
      || !pp_rule_coordinate (draft->y, "y", error)
      || !pp_rule_positive (draft->diameter, "diameter", error)
      || !pp_rule_between (draft->diameter, 0, PP_BACKGROUND_MAX_SIDE, "diameter", error))
    return NULL;
  self = pp_record_copy (PpHole, draft);
  self->id = g_strdup (draft->id);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
hole_clear (gpointer data)
{
  PpHole *self = data;

  pp_record_free_string (self->id);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpHole, pp_hole, hole_clear)

PpWire
pp_wire_draft (void)
{
  return (PpWire) {
    .from = "", .to = "", .length = NAN, .diameter = 1.2, .tail = 40, .knot_diameter = 8,
    .knot_height = 3, .safe_load = NAN, .breaking_load = NAN, .friction = 0.2,
    .mass_per_metre = 4,
  };
}

static gboolean
check_wire (const PpWire *draft,
            GError      **error)
{
  if (!pp_rule_id (draft->from, "from", error) || !pp_rule_id (draft->to, "to", error))
    return FALSE;
  if (g_str_equal (draft->from, draft->to))
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("to: the wire cannot have both ends in the hole “%s”."), draft->to);
      return FALSE;
    }
  return pp_rule_time_or_null (draft->knotted_at, "knotted_at", error)
         && pp_rule_not_negative_or_null (draft->length, "length", error)
         && (isnan (draft->length)
             || pp_rule_between (draft->length, 0, PP_WIRE_MAX_LENGTH, "length", error))
         && pp_rule_positive (draft->diameter, "diameter", error)
         && pp_rule_not_negative (draft->tail, "tail", error)
         && pp_rule_positive (draft->knot_diameter, "knot_diameter", error)
         && pp_rule_between (draft->knot_diameter, 0, PP_BACKGROUND_MAX_SIDE, "knot_diameter",
                             error)
         && pp_rule_not_negative (draft->knot_height, "knot_height", error)
         && pp_rule_positive_or_null (draft->safe_load, "safe_load", error)
         && pp_rule_positive_or_null (draft->breaking_load, "breaking_load", error)
         && pp_rule_not_negative (draft->friction, "friction", error)
         && pp_rule_not_negative (draft->mass_per_metre, "mass_per_metre", error);
}

PpWire *
pp_wire_new (const PpWire *draft,
             GError      **error)
{
  PpWire *self;

  if (!check_wire (draft, error))
    return NULL;
  self = pp_record_copy (PpWire, draft);
  self->from = g_strdup (draft->from);
  self->to = g_strdup (draft->to);
  self->knotted_at = g_strdup (draft->knotted_at);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
wire_clear (gpointer data)
{
  PpWire *self = data;

  pp_record_free_string (self->from);
  pp_record_free_string (self->to);
  pp_record_free_string (self->knotted_at);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpWire, pp_wire, wire_clear)

PpDisplay
pp_display_draft (void)
{
  return (PpDisplay) { .place = PP_PLACE_WALL, .sideways = 30, .updown = 15, .hook_rating = NAN };
}

PpDisplay *
pp_display_new (const PpDisplay *draft,
                GError         **error)
{
  PpDisplay *self;

  if (!pp_rule_view (draft->sideways, "sideways", error)
      || !pp_rule_view (draft->updown, "updown", error)
      || !pp_rule_positive_or_null (draft->hook_rating, "hook_rating", error))
    return NULL;
  self = pp_record_copy (PpDisplay, draft);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
display_clear (gpointer data)
{
  PpDisplay *self = data;

  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpDisplay, pp_display, display_clear)

PpAdhesive
pp_adhesive_draft (void)
{
  return (PpAdhesive) {
    .name = "", .working_life = 5, .mixing = 1, .grab = 10, .hard = 60, .cure = 1440,
    .sitting = NAN, .ratio = { 1, 1 }, .density = 1.15, .largest_mix = 6, .smallest_mix = 2,
    .fill_gap = 1.5, .working_stress = 0.5,
  };
}

static gboolean
check_adhesive (const PpAdhesive *draft,
                GError          **error)
{
  if (!pp_rule_positive (draft->working_life, "working_life", error)
      || !pp_rule_not_negative (draft->mixing, "mixing", error))
    return FALSE;
  if (draft->working_life <= draft->mixing)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("working_life: must be longer than the mixing takes."));
      return FALSE;
    }
  return pp_rule_not_negative (draft->grab, "grab", error)
         && pp_rule_not_negative (draft->hard, "hard", error)
         && pp_rule_not_negative (draft->cure, "cure", error)
         && pp_rule_positive_or_null (draft->sitting, "sitting", error)
         && pp_rule_positive (draft->ratio[0], "ratio", error)
         && pp_rule_positive (draft->ratio[1], "ratio", error)
         && pp_rule_positive (draft->density, "density", error)
         && pp_rule_positive (draft->largest_mix, "largest_mix", error)
         && pp_rule_not_negative (draft->smallest_mix, "smallest_mix", error)
         && pp_rule_not_negative (draft->fill_gap, "fill_gap", error)
         && pp_rule_positive (draft->working_stress, "working_stress", error);
}

PpAdhesive *
pp_adhesive_new (const PpAdhesive *draft,
                 GError          **error)
{
  PpAdhesive *self;

  if (!check_adhesive (draft, error))
    return NULL;
  self = pp_record_copy (PpAdhesive, draft);
  self->name = g_strdup (draft->name);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
adhesive_clear (gpointer data)
{
  PpAdhesive *self = data;

  pp_record_free_string (self->name);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpAdhesive, pp_adhesive, adhesive_clear)

PpPlacement
pp_placement_draft (void)
{
  return (PpPlacement) { .id = "", .piece = "" };
}

PpPlacement *
pp_placement_new (const PpPlacement *draft,
                  GError           **error)
{
  PpPlacement *self;

  if (!pp_rule_id (draft->id, "id", error) || !pp_rule_id (draft->piece, "piece", error)
      || !pp_rule_finite (draft->x, "x", error) || !pp_rule_finite (draft->y, "y", error)
      || !pp_rule_finite (draft->rotation, "rotation", error)
      || !pp_rule_time_or_null (draft->glued_at, "glued_at", error))
    return NULL;
  self = pp_record_copy (PpPlacement, draft);
  self->id = g_strdup (draft->id);
  self->piece = g_strdup (draft->piece);
  self->group = g_strdup (draft->group);
  self->pocket = g_strdup (draft->pocket);
  self->glued_at = g_strdup (draft->glued_at);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
placement_clear (gpointer data)
{
  PpPlacement *self = data;

  pp_record_free_string (self->id);
  pp_record_free_string (self->piece);
  pp_record_free_string (self->group);
  pp_record_free_string (self->pocket);
  pp_record_free_string (self->glued_at);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpPlacement, pp_placement, placement_clear)

static const char * const no_ids[] = { NULL };

PpLogEntry
pp_log_entry_draft (void)
{
  return (PpLogEntry) { .at = "", .about = no_ids };
}

PpLogEntry *
pp_log_entry_new (const PpLogEntry *draft,
                  GError          **error)
{
  PpLogEntry *self;

  if (!pp_rule_time (draft->at, "at", error))
    return NULL;
  self = pp_record_copy (PpLogEntry, draft);
  self->at = g_strdup (draft->at);
  self->about = (const char * const *) g_strdupv ((char **) draft->about);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
log_entry_clear (gpointer data)
{
  PpLogEntry *self = data;

  pp_record_free_string (self->at);
  g_strfreev ((char **) self->about);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpLogEntry, pp_log_entry, log_entry_clear)

PpQuiet
pp_quiet_draft (void)
{
  return (PpQuiet) { .code = "", .about = no_ids };
}

PpQuiet *
pp_quiet_new (const PpQuiet *draft,
              GError       **error)
{
  PpQuiet *self;

  if (*draft->code == '\0')
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("code: must name a finding, such as even-group."));
      return NULL;
    }
  self = pp_record_copy (PpQuiet, draft);
  self->code = g_strdup (draft->code);
  self->about = (const char * const *) g_strdupv ((char **) draft->about);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
quiet_clear (gpointer data)
{
  PpQuiet *self = data;

  pp_record_free_string (self->code);
  g_strfreev ((char **) self->about);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpQuiet, pp_quiet, quiet_clear)

static gboolean
contains_all (const char * const *set,
              const char * const *ids)
{
  for (guint i = 0; ids[i] != NULL; i++)
    if (!g_strv_contains (set, ids[i]))
      return FALSE;
  return TRUE;
}

gboolean
pp_quiet_is_of (const PpQuiet      *self,
                const char         *code,
                const char * const *about)
{
  return g_str_equal (self->code, code) && contains_all (self->about, about)
         && contains_all (about, self->about);
}

GPtrArray *
pp_records_copy (const GPtrArray *list,
                 PpRecordRef      ref,
                 GDestroyNotify   unref)
{
  GPtrArray *copy = g_ptr_array_new_full (list->len + 1, unref);

  for (guint i = 0; i < list->len; i++)
    g_ptr_array_add (copy, ref (g_ptr_array_index (list, i)));
  return copy;
}
