/* panel-read.c: a panel from its file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/panel-read.h"

#include "file/head-read.h"
#include "file/json-scan.h"
#include "file/load.h"
#include "file/records-read.h"

/* Log and quieted findings have no limit of their own; the file's size bounds them. */
#define NO_LIMIT G_MAXUINT

static gboolean
units_from_name (const char *name,
                 int        *units)
{
  PpUnits found;

  if (!pp_units_from_name (name, &found))
    return FALSE;
  *units = (int) found;
  return TRUE;
}

static void
read_titles (PpMembers *members,
             PpPanel   *draft)
{
  int units = draft->units;

  pp_members_get_string (members, "title", PP_MAY_LACK, &draft->title);
  pp_members_get_string (members, "maker", PP_MAY_LACK, &draft->maker);
  pp_members_get_string (members, "note", PP_MAY_LACK, &draft->note);
  pp_members_get_string (members, "created", PP_MAY_LACK, &draft->created);
  pp_members_get_name (members, "units", PP_MAY_LACK, units_from_name, &units);
  draft->units = (PpUnits) units;
  pp_members_get_count (members, "next_id", &draft->next_id);
}

static void
read_limits (PpMembers *members,
             PpLimits  *limits,
             char     **extra)
{
  PpMembers own;

  if (!pp_members_enter (members, "limits", PP_MAY_LACK, &own))
    return;
  for (PpLimit limit = 0; limit < PP_N_LIMITS; limit++)
    if (limit == PP_LIMIT_OPAQUE)
      pp_members_get_double_or_null (&own, pp_limit_get_key (limit), &limits->value[limit]);
    else
      pp_members_get_double (&own, pp_limit_get_key (limit), PP_MAY_LACK, &limits->value[limit]);
  *extra = pp_members_dup_rest (&own);
  pp_members_clear (&own);
}

/* (transfer container) of the jobs, NULL without a plan. */
static const char **
read_plan (PpMembers *members,
           char     **extra)
{
  PpMembers own;
  const char **jobs;

  if (!pp_members_enter (members, "plan", PP_MAY_BE_NULL, &own))
    return NULL;
  jobs = pp_members_get_strings (&own, "jobs", PP_MUST_HAVE);
  *extra = pp_members_dup_rest (&own);
  pp_members_clear (&own);
  return jobs;
}

/* What stands under one name and is read by `read`; NULL if it is not there. */
static gpointer
read_one (PpMembers  *members,
          const char *name,
          PpNeed      need,
          PpReadFunc  read)
{
  PpMembers own;
  gpointer record;

  if (!pp_members_enter (members, name, need, &own))
    return NULL;
  record = read (&own);
  pp_members_clear (&own);
  return record;
}

typedef struct
{
  PpPanel draft;
  char   *extra;
  char   *limits_extra;
  char   *plan_extra;
} Reading;

static void
reading_clear (Reading *self)
{
  pp_background_unref (self->draft.background);
  pp_wire_unref (self->draft.wire);
  pp_display_unref (self->draft.display);
  pp_adhesive_unref (self->draft.adhesive);
  g_clear_pointer (&self->draft.fused, g_ptr_array_unref);
  g_clear_pointer (&self->draft.holes, g_ptr_array_unref);
  g_clear_pointer (&self->draft.tray, g_ptr_array_unref);
  g_clear_pointer (&self->draft.placements, g_ptr_array_unref);
  g_clear_pointer (&self->draft.log, g_ptr_array_unref);
  g_clear_pointer (&self->draft.quiet, g_ptr_array_unref);
  g_free ((gpointer) self->draft.plan);
  g_free (self->extra);
  g_free (self->limits_extra);
  g_free (self->plan_extra);
}

static void
read_lists (PpMembers *members,
            PpPanel   *draft)
{
  draft->fused = pp_read_list (members, "fused", PP_PANEL_MAX_FUSED,
                               (PpReadFunc) pp_read_fused, (GDestroyNotify) pp_fused_unref);
  draft->holes = pp_read_list (members, "holes", PP_PANEL_MAX_HOLES,
                               (PpReadFunc) pp_read_hole, (GDestroyNotify) pp_hole_unref);
  draft->tray = pp_read_list (members, "tray", PP_PANEL_MAX_TRAY,
                              (PpReadFunc) pp_read_piece, (GDestroyNotify) pp_piece_unref);
  draft->placements = pp_read_list (members, "placements", PP_PANEL_MAX_PLACEMENTS,
                                    (PpReadFunc) pp_read_placement,
                                    (GDestroyNotify) pp_placement_unref);
  draft->log = pp_read_list (members, "log", NO_LIMIT, (PpReadFunc) pp_read_log_entry,
                             (GDestroyNotify) pp_log_entry_unref);
  draft->quiet = pp_read_list (members, "quiet", NO_LIMIT, (PpReadFunc) pp_read_quiet,
                               (GDestroyNotify) pp_quiet_unref);
}

static void
read_all (PpMembers *members,
          Reading   *reading)
{
  PpPanel *draft = &reading->draft;

  pp_read_head (members, "petalpane-panel");
  read_titles (members, draft);
  draft->background = read_one (members, "background", PP_MUST_HAVE,
                                (PpReadFunc) pp_read_background);
  draft->wire = read_one (members, "wire", PP_MAY_BE_NULL, (PpReadFunc) pp_read_wire);
  draft->display = read_one (members, "display", PP_MAY_LACK, (PpReadFunc) pp_read_display);
  draft->adhesive = read_one (members, "adhesive", PP_MAY_LACK, (PpReadFunc) pp_read_adhesive);
  read_lists (members, draft);
  read_limits (members, &draft->limits, &reading->limits_extra);
  draft->plan = read_plan (members, &reading->plan_extra);
  reading->extra = pp_members_dup_rest (members);
  draft->extra = reading->extra;
  draft->limits_extra = reading->limits_extra;
  draft->plan_extra = reading->plan_extra;
}

static PpPanel *
read_root (JsonNode *root,
           GError  **error)
{
  PpReader reader = { NULL };
  Reading reading = { .draft = pp_panel_draft () };
  PpMembers members;
  PpPanel *panel = NULL;

  pp_members_init (&members, &reader, root, "");
  read_all (&members, &reading);
  if (!pp_reader_failed (&reader))
    {
      GError *broken = NULL;

      panel = pp_panel_new (&reading.draft, &broken);
      pp_reader_take (&reader, "", broken);
    }
  pp_members_clear (&members);
  reading_clear (&reading);
  if (reader.error != NULL)
    g_propagate_error (error, reader.error);
  return panel;
}

PpPanel *
pp_panel_read (GBytes  *bytes,
               GError **error)
{
  g_autoptr (JsonNode) root = pp_json_read (bytes, error);

  return root != NULL ? read_root (root, error) : NULL;
}

PpPanel *
pp_panel_load (const char *path,
               GError    **error)
{
  g_autoptr (GBytes) bytes = NULL;

  if (!pp_file_load (path, PP_JSON_MAX_BYTES, &bytes, error))
    return NULL;
  return pp_panel_read (bytes, error);
}
