/* joint-findings.c: pieces that glue cannot hold well, or where it will be seen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/piece-name.h"
#include "check/questions.h"
#include "check/said.h"

#include "panel/i18n.h"

#define ALL_IT_BEARS 1.0 /* utilisation at the working stress */

/* One placement with all that its findings are made of. */
typedef struct
{
  PpFindings    *findings;
  const PpScene *scene;
  guint          index;
  const PpPanel *panel;
  const PpBody  *body;
  const PpJoint *joint;
  char          *name; /* once it is asked for: most placements have nothing said of them */
} Question;

static const char *
get_name (Question *self)
{
  if (self->name == NULL)
    self->name = pp_findings_name (self->findings, self->scene, self->index);
  return self->name;
}

static void
say (Question   *self,
     const char *code,
     PpLevel     level,
     double      value,
     double      limit,
     char       *text)
{
  PpFinding finding = {
    .code = code,
    .level = level,
    .origin = PP_ORIGIN_OWN,
    .at = self->body->centroid,
    .about = PP_ABOUT (self->body->placement->id),
    .value = value,
    .limit = limit,
  };

  pp_findings_add (self->findings, finding, text);
}

static void
say_no_joint (Question *self)
{
  say (self, "no-joint", PP_LEVEL_FAULT, self->joint->area, NAN,
       g_strdup_printf (_("%s has no room for glue under it. Let it lie closer to what is beneath, "
                          "or choose a glue that fills wider gaps."), get_name (self)));
}

static void
ask_strain (Question *self)
{
  double limit = pp_panel_get_limit (self->panel, PP_LIMIT_STRAIN);
  double utilisation = self->joint->utilisation;

  if (pp_is_over (utilisation, ALL_IT_BEARS))
    say (self, "strain", PP_LEVEL_FAULT, utilisation, ALL_IT_BEARS,
         g_strdup_printf (_("The glue under %s would not hold for years: it carries too much on "
                            "too little. Let more of it touch, or take weight off it."),
                          get_name (self)));
  else if (pp_is_over (utilisation, limit))
    say (self, "strain", PP_LEVEL_CAUTION, utilisation, limit,
         g_strdup_printf (_("The glue under %s carries more than is wise. Let more of it touch, or "
                            "take weight off it."), get_name (self)));
}

static void
ask_size (Question *self)
{
  double limit = pp_panel_get_limit (self->panel, PP_LIMIT_JOINT_SHARE);
  double share = self->joint->area / self->body->area;

  if (pp_is_under (share, limit))
    say (self, "joint-small", PP_LEVEL_CAUTION, share, limit,
         g_strdup_printf (_("Glue reaches only %.1f %% of the underside of %s. Let it lie flatter "
                            "or on more pieces."), 100 * share, get_name (self)));
}

static void
ask_squeeze (Question *self)
{
  double limit = pp_panel_get_limit (self->panel, PP_LIMIT_SQUEEZE);
  double capacity = self->joint->capacity;
  double ratio;

  if (!pp_is_over (capacity, 0))
    capacity = 0; /* or rounding would be a capacity, or less than none */
  ratio = self->joint->volume / capacity;
  if (pp_is_over (ratio, limit))
    say (self, "squeeze", PP_LEVEL_NOTE, isfinite (ratio) ? ratio : (double) NAN, limit,
         g_strdup_printf (_("Glue will come out at the rim of %s: the gap under it holds less than "
                            "its dabs. Wipe the rim before the glue grabs."), get_name (self)));
}

static void
ask_glue_seen (Question *self)
{
  double limit = pp_panel_get_limit (self->panel, PP_LIMIT_OPAQUE);
  double transmittance = self->body->piece->transmittance;

  if (self->panel->display->place == PP_PLACE_WINDOW && pp_is_over (transmittance, limit))
    say (self, "glue-shows", PP_LEVEL_NOTE, transmittance, limit,
         g_strdup_printf (_("Light comes through %s, so its glue will be seen in the window. Set "
                            "its dabs neatly, or put a denser piece there."), get_name (self)));
}

static void
ask_joint (Question *self)
{
  if (self->joint->n_dabs == 0)
    {
      say_no_joint (self);
      return;
    }
  ask_strain (self);
  ask_size (self);
  ask_squeeze (self);
  ask_glue_seen (self);
}

void
pp_ask_joint (PpFindings    *findings,
              const PpCheck *check)
{
  const PpScene *scene = check->scene;
  PpRest **rests = check->rests;
  PpJoint **joints = check->joints;

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      Question question = { findings, scene, i, scene->panel, scene->bodies[i], joints[i], NULL };

      if (pp_findings_say_again (findings, PP_SAID_OF_JOINT, i)
          || rests[i]->state == PP_STATE_FLOATS)
        continue;
      ask_joint (&question);
      g_free (question.name);
    }
  pp_findings_end_kind (findings, PP_SAID_OF_JOINT);
}
