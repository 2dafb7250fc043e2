/* hang-findings.c: what the way the panel hangs calls for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/questions.h"

#include "panel/i18n.h"
#include "panel/measure.h"

/* The wire, as it hangs, with all that its findings are made of. */
typedef struct
{
  PpFindings    *findings;
  const PpPanel *panel;
  const PpHang  *hang;
  PpPoint        hook; /* the middle of the holes if there is none */
} Question;

static void
say (const Question *self,
     const char     *code,
     PpLevel         level,
     double          value,
     double          limit,
     char           *text)
{
  PpFinding finding = {
    .code = code,
    .level = level,
    .origin = PP_ORIGIN_OWN,
    .at = self->hook,
    .about = PP_ABOUT ("wire"),
    .value = value,
    .limit = limit,
  };

  pp_findings_add (self->findings, finding, text);
}

static void
ask_drop (const Question *self)
{
  if (!pp_is_over (self->hang->drop, 0))
    say (self, "turns-over", PP_LEVEL_FAULT, self->hang->drop, 0,
         g_strdup (_("The panel would turn over: its weight lies above its holes. Move the holes "
                     "higher, or heavy pieces lower.")));
}

static void
ask_length (const Question *self)
{
  double length = self->panel->wire->length, distance = self->hang->hole_distance;
  g_autofree char *apart = pp_length_format (distance, self->panel->units);

  if (!isnan (length) && pp_is_under (length, distance))
    {
      g_autofree char *given = pp_length_format (length, self->panel->units);

      say (self, "wire-short", PP_LEVEL_FAULT, length, distance,
           g_strdup_printf (_("The wire is %s long, but its holes are %s apart. Make it longer."),
                            given, apart));
    }
  else if (self->hang->is_taut)
    say (self, "wire-taut", PP_LEVEL_CAUTION, NAN, NAN,
         g_strdup_printf (_("The wire runs straight from hole to hole and its pull is not known. "
                            "Make it longer than %s, so that it can hang from a hook."), apart));
}

static void
ask_level (const Question *self)
{
  const PpHang *hang = self->hang;
  g_autofree char *tilt = NULL;

  if (hang->is_taut || hang->has_level)
    return;
  tilt = pp_angle_format (fabs (hang->middle_tilt));
  say (self, "not-level", PP_LEVEL_CAUTION, hang->middle_tilt, NAN,
       g_strdup_printf (_("The panel cannot hang level on this wire: its weight lies too far to "
                          "one side. From the middle of the wire it would tilt by %s. Move the "
                          "holes to either side of the weight."), tilt));
}

static void
ask_slip (const Question *self)
{
  double limit = pp_panel_get_limit (self->panel, PP_LIMIT_TILT);
  double greatest = 0;
  g_autofree char *tilt = NULL;

  for (guint i = 0; i < self->hang->n_slips_to; i++)
    greatest = fmax (greatest, fabs (self->hang->slips_to[i]));
  if (!pp_is_over (greatest, limit))
    return;
  tilt = pp_angle_format (greatest);
  say (self, "slips", PP_LEVEL_NOTE, greatest, limit,
       g_strdup_printf (_("If the wire slips on its hook, the panel tilts by %s. Wind the wire "
                          "once round the hook, make it longer or move the holes closer together."),
                        tilt));
}

/* A pull as the weight that would pull as much. (transfer full) */
static char *
format_pull (const Question *self,
             double          newtons)
{
  return pp_mass_format (newtons * 1000 / PP_GRAVITY, self->panel->units);
}

static void
ask_load (const Question *self)
{
  double greatest = self->hang->greatest_tension, allowed = self->hang->allowed_tension;
  g_autofree char *pull = NULL;
  g_autofree char *most = NULL;
  PpFinding finding;

  /* Both are NAN where they are not known, and then neither is over the other. */
  if (!pp_is_over (greatest, allowed))
    return;
  pull = format_pull (self, greatest);
  most = format_pull (self, allowed);
  finding = (PpFinding) {
    .code = "wire-load",
    .level = PP_LEVEL_FAULT,
    .origin = PP_ORIGIN_STANDARD,
    .at = self->hook,
    .about = PP_ABOUT ("wire"),
    .value = greatest,
    .limit = allowed,
  };
  pp_findings_add (self->findings, finding,
                   g_strdup_printf (_("A leg of the wire pulls like a weight of %s, more than the "
                                      "%s it may safely carry. Use a stronger wire or a longer "
                                      "one."), pull, most));
}

static void
ask_lean (const Question *self)
{
  double limit = pp_panel_get_limit (self->panel, PP_LIMIT_LEAN);
  g_autofree char *lean = NULL;

  if (self->panel->display->place != PP_PLACE_WINDOW || !pp_is_over (self->hang->lean, limit))
    return;
  lean = pp_angle_format (self->hang->lean);
  say (self, "leans", PP_LEVEL_NOTE, self->hang->lean, limit,
       g_strdup_printf (_("Hung free in the window, the panel leans forward by %s. Holes farther "
                          "above its weight make it lean less."), lean));
}

static void
ask_hook (PpFindings   *findings,
          PpPoint       at,
          const PpMass *mass)
{
  const PpPanel *panel = findings->panel;
  double kilograms = mass->total / 1000, rating = panel->display->hook_rating;
  g_autofree char *weight = NULL;
  g_autofree char *most = NULL;
  PpFinding finding = {
    .code = "hook-load",
    .level = PP_LEVEL_FAULT,
    .origin = PP_ORIGIN_STANDARD,
    .at = at,
    .about = PP_ABOUT ("hook"),
    .value = kilograms,
    .limit = rating,
  };

  if (!pp_is_over (kilograms, rating)) /* NAN: not known */
    return;
  weight = pp_mass_format (mass->total, panel->units);
  most = pp_mass_format (rating * 1000, panel->units);
  pp_findings_add (findings, finding,
                   g_strdup_printf (_("The panel weighs %s, but its hook is made for %s. Use a "
                                      "stronger hook."), weight, most));
}

/* Where nothing hangs, the middle of the upper edge stands for the hook. */
static PpPoint
find_edge (const PpScene *scene)
{
  PpBox box = pp_background_get_box (scene->panel->background);

  return (PpPoint) { (box.x0 + box.x1) / 2, box.y0 };
}

void
pp_ask_hang (PpFindings    *findings,
             const PpCheck *check)
{
  const PpScene *scene = check->scene;
  const PpHang *hang = check->hang;
  Question self = { .findings = findings, .panel = scene->panel, .hang = hang };

  if (hang == NULL)
    {
      ask_hook (findings, find_edge (scene), &check->mass);
      return;
    }
  self.hook = hang->is_taut ? pp_panel_get_hole_middle (scene->panel) : hang->hook;
  ask_drop (&self);
  ask_length (&self);
  ask_level (&self);
  ask_slip (&self);
  ask_load (&self);
  ask_lean (&self);
  ask_hook (findings, self.hook, &check->mass);
}
