/* check-write.c: the check of a panel as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Key by key as the page on the check has it; what a computation does not give is null.
 */
#include "file/check-write.h"

#include "file/concealment-write.h"
#include "file/json-values.h"

static void
write_mass_and_extent (PpJsonWriter  *w,
                       const PpCheck *check)
{
  const PpMass *mass = &check->mass;

  pp_json_write_begin_object (w, "mass");
  pp_json_write_number (w, "total", mass->total);
  pp_json_write_begin_array (w, "centre");
  pp_json_write_number (w, NULL, mass->x);
  pp_json_write_number (w, NULL, mass->y);
  pp_json_write_number (w, NULL, mass->z);
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
  pp_json_write_begin_object (w, "extent");
  pp_json_write_number (w, "width", check->extent.width);
  pp_json_write_number (w, "height", check->extent.height);
  pp_json_write_number (w, "depth", check->extent.depth);
  pp_json_write_end_object (w);
}

static void
write_rests_on (PpJsonWriter  *w,
                const PpCheck *check,
                const PpRest  *rest)
{
  pp_json_write_begin_array (w, "rests_on");
  for (guint i = 0; i < rest->n_rests_on; i++)
    {
      g_autofree char *id = pp_owner_dup_id (check->panel, rest->rests_on[i]);

      pp_json_write_string (w, NULL, id);
    }
  pp_json_write_end_array (w);
}

static void
write_figures (PpJsonWriter *w,
               const PpRest *rest)
{
  const double none = NAN; /* of a floating piece */
  gboolean floats = rest->state == PP_STATE_FLOATS;

  pp_json_write_begin_array (w, "slope");
  pp_json_write_number (w, NULL, rest->plane.a);
  pp_json_write_number (w, NULL, rest->plane.b);
  pp_json_write_end_array (w);
  pp_json_write_number_or_null (w, "base", floats ? none : rest->base);
  pp_json_write_number_or_null (w, "top", floats ? none : rest->top);
  pp_json_write_number_or_null (w, "lowest_centre", floats ? none : rest->plane.c);
  pp_json_write_string (w, "state", pp_state_get_name (rest->state));
  pp_json_write_boolean (w, "hold", rest->hold);
  pp_json_write_number_or_null (w, "margin", floats ? none : rest->margin);
}

static void
write_feet (PpJsonWriter *w,
            const PpRest *rest)
{
  pp_json_write_begin_array (w, "contacts");
  for (guint i = 0; i < rest->n_contacts; i++)
    pp_json_write_point (w, NULL, rest->contacts[i]);
  pp_json_write_end_array (w);
  if (!rest->has_prop)
    {
      pp_json_write_null (w, "prop");
      return;
    }
  pp_json_write_begin_object (w, "prop");
  pp_json_write_number (w, "x", rest->prop.x);
  pp_json_write_number (w, "y", rest->prop.y);
  pp_json_write_number (w, "height", rest->prop_height);
  pp_json_write_end_object (w);
}

static void
write_joint (PpJsonWriter  *w,
             const PpJoint *joint)
{
  pp_json_write_begin_object (w, "joint");
  pp_json_write_number (w, "area", joint->area);
  pp_json_write_number (w, "volume", joint->volume);
  pp_json_write_number_or_null (w, "utilisation", joint->utilisation);
  pp_json_write_begin_array (w, "dabs");
  for (guint i = 0; i < joint->n_dabs; i++)
    {
      const PpDab *dab = &joint->places[i];

      pp_json_write_begin_object (w, NULL);
      pp_json_write_number (w, "x", dab->at.x);
      pp_json_write_number (w, "y", dab->at.y);
      pp_json_write_number (w, "diameter", dab->diameter);
      pp_json_write_number (w, "volume", dab->volume);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
}

static void
write_below (PpJsonWriter  *w,
             const PpCheck *check,
             const PpOrder *order,
             guint          index)
{
  pp_json_write_begin_array (w, "below");
  for (guint i = 0; i < order->n_below[index]; i++)
    pp_json_write_string (w, NULL, pp_panel_placement (check->panel, order->below[index][i])->id);
  pp_json_write_end_array (w);
}

static void
write_placements (PpJsonWriter  *w,
                  const PpCheck *check,
                  const PpOrder *order)
{
  pp_json_write_begin_array (w, "placements");
  for (guint i = 0; i < check->n; i++)
    {
      pp_json_write_begin_object (w, NULL);
      pp_json_write_string (w, "id", pp_panel_placement (check->panel, i)->id);
      write_rests_on (w, check, check->rests[i]);
      write_figures (w, check->rests[i]);
      write_feet (w, check->rests[i]);
      write_joint (w, check->joints[i]);
      write_below (w, check, order, i);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
}

static void
write_composition (PpJsonWriter        *w,
                   const PpCheck       *check,
                   const PpComposition *composition)
{
  pp_json_write_begin_array (w, "groups");
  for (guint i = 0; i < composition->n_groups; i++)
    {
      const PpGroup *group = &composition->groups[i];

      pp_json_write_begin_object (w, NULL);
      pp_json_write_string_or_null (w, "name", group->name);
      pp_json_write_begin_array (w, "placements");
      for (guint k = 0; k < group->n_members; k++)
        pp_json_write_string (w, NULL, pp_panel_placement (check->panel, group->members[k])->id);
      pp_json_write_end_array (w);
      pp_json_write_integer (w, "flowers", group->flowers);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
  pp_json_write_begin_object (w, "composition");
  pp_json_write_number (w, "left", composition->left);
  pp_json_write_number (w, "right", composition->right);
  pp_json_write_number_or_null (w, "vase_ratio", composition->vase_ratio);
  pp_json_write_end_object (w);
}

static void
write_edges (PpJsonWriter  *w,
             const char    *name,
             const PpCheck *check,
             const PpOrder *order,
             const PpEdge  *edges,
             guint          n)
{
  pp_json_write_begin_array (w, name);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *first = pp_job_dup_id (check->panel, order->n_knots, edges[i].first);
      g_autofree char *second = pp_job_dup_id (check->panel, order->n_knots, edges[i].second);

      pp_json_write_begin_array (w, NULL);
      pp_json_write_string (w, NULL, first);
      pp_json_write_string (w, NULL, second);
      pp_json_write_end_array (w);
    }
  pp_json_write_end_array (w);
}

static void
write_steps (PpJsonWriter *w,
             const PpPlan *plan)
{
  pp_json_write_begin_array (w, "steps");
  for (guint i = 0; i < plan->n_steps; i++)
    {
      const PpStep *step = &plan->steps[i];
      g_autofree char *job = pp_job_dup_id (plan->check->panel, plan->order->n_knots, step->job);

      pp_json_write_begin_object (w, NULL);
      pp_json_write_integer (w, "n", i + 1);
      pp_json_write_string (w, "job", job);
      pp_json_write_integer (w, "mix", step->mix);
      pp_json_write_integer (w, "sitting", step->sitting);
      pp_json_write_number (w, "start", step->start);
      pp_json_write_number (w, "minutes", step->minutes);
      pp_json_write_boolean (w, "hold", step->hold);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
}

static void
write_order (PpJsonWriter *w,
             const PpPlan *plan)
{
  const PpOrder *order = plan->order;

  pp_json_write_begin_object (w, "order");
  write_edges (w, "edges", plan->check, order, order->drawn, order->n_drawn);
  write_edges (w, "tucks", plan->check, order, order->tucks, order->n_tucks);
  write_steps (w, plan);
  pp_json_write_begin_array (w, "mixes");
  for (guint i = 0; i < plan->n_mixes; i++)
    {
      pp_json_write_begin_object (w, NULL);
      pp_json_write_integer (w, "n", i + 1);
      pp_json_write_number (w, "need", plan->mixes[i].need);
      pp_json_write_number (w, "a", plan->mixes[i].a);
      pp_json_write_number (w, "b", plan->mixes[i].b);
      pp_json_write_number (w, "start", plan->mixes[i].start);
      pp_json_write_end_object (w);
    }
  pp_json_write_end_array (w);
  pp_json_write_number_or_null (w, "placed_by", plan->placed_by);
  pp_json_write_number_or_null (w, "lower_bound", plan->lower_bound);
  pp_json_write_boolean (w, "optimal", plan->optimal);
  pp_json_write_end_object (w);
}

static void
write_findings (PpJsonWriter *w,
                GPtrArray    *findings)
{
  for (guint i = 0; findings != NULL && i < findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings, i);

      pp_json_write_begin_object (w, NULL);
      pp_json_write_string (w, "code", finding->code);
      pp_json_write_string (w, "level", pp_level_get_name (finding->level));
      pp_json_write_string (w, "text", finding->text);
      pp_json_write_point (w, "at", finding->at);
      pp_json_write_strings (w, "about", finding->about);
      pp_json_write_number_or_null (w, "value", finding->value);
      pp_json_write_number_or_null (w, "limit", finding->limit);
      pp_json_write_string (w, "origin", pp_origin_get_name (finding->origin));
      pp_json_write_boolean (w, "quiet", finding->quiet);
      pp_json_write_end_object (w);
    }
}

GString *
pp_check_write (const PpCheck *check,
                const PpPlan  *plan,
                GPtrArray     *more)
{
  g_autoptr (PpJsonWriter) w = pp_json_writer_new ();
  g_autoptr (PpOrder) own = plan == NULL ? pp_order_new (check) : NULL;

  pp_json_write_begin_object (w, NULL);
  pp_json_write_string (w, "format", "petalpane-check");
  pp_json_write_integer (w, "version", 1);
  pp_json_write_string (w, "panel", check->panel->title);
  write_mass_and_extent (w, check);
  write_placements (w, check, plan != NULL ? plan->order : own);
  pp_write_concealment (w, check);
  pp_write_hanging (w, check->hang);
  write_composition (w, check, check->composition);
  if (plan != NULL)
    write_order (w, plan);
  pp_json_write_begin_array (w, "findings");
  write_findings (w, check->findings);
  write_findings (w, plan != NULL ? plan->findings : NULL);
  write_findings (w, more);
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
  return pp_json_writer_finish (w);
}
