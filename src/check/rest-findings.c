/* rest-findings.c: pieces that do not sit firm where they lie.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/piece-name.h"
#include "check/questions.h"
#include "check/said.h"

#include "panel/i18n.h"
#include "panel/measure.h"

/* A finding about one placement, at its middle; its text is to come. */
static PpFinding
about_piece (const char *code,
             PpLevel     level,
             PpPoint     at,
             double      value,
             double      limit)
{
  return (PpFinding) {
    .code = code, .level = level, .origin = PP_ORIGIN_OWN, .at = at, .value = value, .limit = limit
  };
}

static void
ask_state (PpFindings    *findings,
           const PpScene *scene,
           const PpRest  *rest,
           guint          index)
{
  const PpBody *body = scene->bodies[index];
  g_autofree char *name = NULL;
  PpFinding finding;
  char *text;

  if (rest->state == PP_STATE_STEADY) /* of most, before a name is made */
    return;
  name = pp_findings_name (findings, scene, index);
  switch (rest->state)
    {
    case PP_STATE_STEADY:
      return;
    case PP_STATE_UNSTEADY:
      finding = about_piece ("unsteady", PP_LEVEL_NOTE, body->centroid, rest->margin,
                             fmin (pp_panel_get_limit (scene->panel, PP_LIMIT_STEADY),
                                   body->width / 4));
      text = g_strdup_printf (_("%s needs holding: it rocks where it lies. Hold it, weigh it down "
                                "or prop it until the glue grabs."), name);
      break;
    case PP_STATE_TIPS:
      finding = about_piece ("tips", PP_LEVEL_CAUTION, body->centroid, rest->margin, 0);
      text = g_strdup_printf (_("%s needs a prop: it would tip off what it lies on. Prop it until "
                                "the glue grabs, or move it farther onto the glass."), name);
      break;
    case PP_STATE_FLOATS:
      finding = about_piece ("floats", PP_LEVEL_FAULT, body->centroid, NAN, NAN);
      text = g_strdup_printf (_("%s has nothing under it. Move it onto the glass or take it off."),
                              name);
      break;
    default:
      g_return_if_reached ();
    }
  finding.about = PP_ABOUT (body->placement->id);
  pp_findings_add (findings, finding, text);
}

static void
ask_slope (PpFindings    *findings,
           const PpScene *scene,
           const PpRest  *rest,
           guint          index)
{
  const PpBody *body = scene->bodies[index];
  double limit = pp_panel_get_limit (scene->panel, PP_LIMIT_SLOPE);
  double slope = pp_rest_get_slope (rest);
  g_autofree char *name = NULL;
  g_autofree char *angle = NULL;
  PpFinding finding;

  if (!pp_is_over (slope, limit) || scene->pockets[index] != PP_NO_INDEX)
    return;
  name = pp_findings_name (findings, scene, index);
  angle = pp_angle_format (slope);
  finding = about_piece ("slope", PP_LEVEL_CAUTION, body->centroid, slope, limit);
  finding.about = PP_ABOUT (body->placement->id);
  pp_findings_add (findings, finding,
                   g_strdup_printf (_("%s lies at a slope of %s and would slide on wet glue. Hold "
                                      "or tape it until the glue grabs, or let it lie flatter."),
                                    name, angle));
}

/* Ids of a flat piece and then of the shaped ones that it rests on; borrowed. */
static GPtrArray *
find_shaped_under (const PpScene *scene,
                   const PpRest  *rest,
                   guint          index)
{
  GPtrArray *ids = g_ptr_array_new ();

  g_ptr_array_add (ids, (gpointer) scene->bodies[index]->placement->id);
  for (guint k = 0; k < rest->n_rests_on; k++)
    if (pp_owner_kind (rest->rests_on[k]) == PP_OWNER_PLACEMENT)
      {
        const PpBody *under = scene->bodies[pp_owner_index (rest->rests_on[k])];

        if (!pp_body_is_flat (under))
          g_ptr_array_add (ids, (gpointer) under->placement->id);
      }
  return ids;
}

static void
ask_flat_on_shaped (PpFindings    *findings,
                    const PpScene *scene,
                    const PpRest  *rest,
                    guint          index)
{
  const PpBody *body = scene->bodies[index];
  g_autoptr (GPtrArray) ids = NULL;
  g_autofree char *name = NULL;
  PpFinding finding;

  if (!pp_body_is_flat (body) || scene->pockets[index] != PP_NO_INDEX)
    return;
  ids = find_shaped_under (scene, rest, index);
  if (ids->len == 1)
    return;
  g_ptr_array_add (ids, NULL);
  name = pp_findings_name (findings, scene, index);
  finding = about_piece ("flat-on-shaped", PP_LEVEL_CAUTION, body->centroid, NAN, NAN);
  finding.origin = PP_ORIGIN_PRACTICE;
  finding.about = (const char * const *) ids->pdata;
  pp_findings_add (findings, finding,
                   g_strdup_printf (ngettext ("%s is flat and rests on a shaped piece. Lay flat "
                                              "pieces first: put it lower in the stack.",
                                              "%s is flat and rests on shaped pieces. Lay flat "
                                              "pieces first: put it lower in the stack.",
                                              ids->len - 2), name));
}

void
pp_ask_rest (PpFindings    *findings,
             const PpCheck *check)
{
  const PpScene *scene = check->scene;
  PpRest **rests = check->rests;

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      if (pp_findings_say_again (findings, PP_SAID_OF_REST, i))
        continue;
      ask_state (findings, scene, rests[i], i);
      if (rests[i]->state == PP_STATE_FLOATS)
        continue;
      ask_slope (findings, scene, rests[i], i);
      ask_flat_on_shaped (findings, scene, rests[i], i);
    }
  pp_findings_end_kind (findings, PP_SAID_OF_REST);
}
