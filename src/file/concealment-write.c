/* concealment-write.c: concealment and hanging as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/concealment-write.h"

#include "file/json-values.h"

/* The inside of an object about one path of the wire. */
static void
write_path (PpJsonWriter *w,
            const PpPath *path)
{
  pp_json_write_number (w, "length", path->length);
  pp_json_write_number (w, "hidden", path->hidden);
  pp_json_write_number (w, "share", path->share);
  pp_json_write_number (w, "beyond", path->beyond);
  pp_json_write_begin_array (w, "exposed");
  for (guint i = 0; i < path->n_exposed; i++)
    {
      pp_json_write_begin_object (w, NULL);
      pp_json_write_point (w, "from", path->exposed[i].from);
      pp_json_write_point (w, "to", path->exposed[i].to);
      pp_json_write_number (w, "length", path->exposed[i].length);
      pp_json_write_boolean (w, "beyond", path->exposed[i].beyond);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
}

static void
write_view (PpJsonWriter *w,
            const char   *name,
            const PpView *view)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_number (w, "sideways", view->sideways);
  pp_json_write_number (w, "updown", view->updown);
  pp_json_write_number (w, "share", view->share);
  pp_json_write_end_object (w);
}

static void
write_knots (PpJsonWriter    *w,
             const PpScene   *scene,
             const PpConceal *conceal)
{
  pp_json_write_begin_array (w, "knots");
  for (guint i = 0; i < scene->n_knots; i++)
    {
      pp_json_write_begin_object (w, NULL);
      pp_json_write_string (w, "hole", pp_scene_knot_hole (scene, i)->id);
      pp_json_write_number (w, "share", conceal->knots[i].share);
      pp_json_write_number (w, "barely", conceal->knots[i].barely);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
}

static void
write_wire (PpJsonWriter  *w,
            const PpCheck *check)
{
  const PpConceal *conceal = check->conceal;

  pp_json_write_begin_object (w, "lying");
  write_path (w, &conceal->lying);
  pp_json_write_end_object (w);
  pp_json_write_begin_object (w, "hung");
  write_path (w, &conceal->hung);
  if (check->hang->is_taut)
    pp_json_write_null (w, "hook");
  else
    pp_json_write_point (w, "hook", check->hang->hook);
  pp_json_write_end_object (w);
  pp_json_write_number (w, "barely", conceal->barely);
  write_view (w, "worst", &conceal->worst);
  pp_json_write_begin_array (w, "views");
  for (guint i = 0; i < PP_N_VIEWS; i++)
    write_view (w, NULL, &conceal->views[i]);
  pp_json_write_end_array (w);
  write_knots (w, check->scene, conceal);
}

void
pp_write_concealment (PpJsonWriter  *w,
                      const PpCheck *check)
{
  const PpConceal *conceal = check->conceal;

  if (conceal == NULL)
    return;
  pp_json_write_begin_object (w, "concealment");
  if (conceal->has_wire)
    write_wire (w, check);
  pp_json_write_begin_array (w, "holes");
  for (guint i = 0; i < conceal->n_holes; i++)
    {
      pp_json_write_begin_object (w, NULL);
      pp_json_write_string (w, "hole", pp_panel_hole (check->panel, i)->id);
      pp_json_write_number (w, "share", conceal->holes[i].share);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
}

static void
write_pair (PpJsonWriter *w,
            const char   *name,
            const double  pair[2])
{
  if (isnan (pair[0]) || isnan (pair[1]))
    {
      pp_json_write_null (w, name);
      return;
    }
  pp_json_write_begin_array (w, name);
  pp_json_write_number (w, NULL, pair[0]);
  pp_json_write_number (w, NULL, pair[1]);
  pp_json_write_end_array (w);
}

static void
write_level (PpJsonWriter *w,
             const PpHang *hang)
{
  if (!hang->has_level)
    {
      pp_json_write_null (w, "level");
      return;
    }
  pp_json_write_begin_object (w, "level");
  pp_json_write_point (w, "hook", hang->level_hook);
  write_pair (w, "tension", hang->level_tension);
  pp_json_write_number_or_null (w, "friction_needed", hang->friction_needed);
  if (isnan (hang->friction_needed))
    pp_json_write_null (w, "holds");
  else
    pp_json_write_boolean (w, "holds", hang->holds);
  pp_json_write_end_object (w);
}

static void
write_slips (PpJsonWriter *w,
             const PpHang *hang)
{
  pp_json_write_begin_array (w, "slips_to");
  for (guint i = 0; i < hang->n_slips_to; i++)
    pp_json_write_number (w, NULL, hang->slips_to[i]);
  pp_json_write_end_array (w);
  pp_json_write_boolean (w, "self_levelling", hang->self_levelling);
}

/* A taut wire gives neither. */
static void
write_no_slips (PpJsonWriter *w)
{
  pp_json_write_null (w, "slips_to");
  pp_json_write_null (w, "self_levelling");
}

void
pp_write_hanging (PpJsonWriter *w,
                  const PpHang *hang)
{
  if (hang == NULL)
    {
      pp_json_write_null (w, "hanging");
      return;
    }
  pp_json_write_begin_object (w, "hanging");
  pp_json_write_number_or_null (w, "sag", hang->sag);
  pp_json_write_number_or_null (w, "drop", hang->drop);
  pp_json_write_number_or_null (w, "middle_tilt", hang->middle_tilt);
  write_pair (w, "middle_tension", hang->middle_tension);
  write_level (w, hang);
  if (hang->is_taut)
    write_no_slips (w);
  else
    write_slips (w, hang);
  pp_json_write_number_or_null (w, "greatest_tension", hang->greatest_tension);
  pp_json_write_number_or_null (w, "allowed_tension", hang->allowed_tension);
  pp_json_write_number_or_null (w, "wire_use", hang->wire_use);
  pp_json_write_number_or_null (w, "wire_angle", hang->wire_angle);
  pp_json_write_number_or_null (w, "hook_above_edge", hang->hook_above_edge);
  pp_json_write_number_or_null (w, "lean", hang->lean);
  pp_json_write_number_or_null (w, "wall_push", hang->wall_push);
  pp_json_write_end_object (w);
}
