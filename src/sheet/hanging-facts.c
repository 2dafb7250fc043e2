/* hanging-facts.c: what is known of how the panel hangs, in figures.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/hanging-facts.h"

#include "panel/i18n.h"
#include "panel/measure.h"

#include <math.h>

#define EYE_HEIGHT_MM 1450.0  /* where galleries hang the middle of a picture: 57 to 60 in */
#define EYE_HEIGHT_INCH (57 * PP_MM_PER_INCH)

/* Newtons as the weight that pulls so: makers have scales. */
static char *
pull_format (double  newtons,
             PpUnits units)
{
  return isfinite (newtons) ? pp_mass_format (newtons / PP_GRAVITY * 1000, units)
                            : g_strdup (_("not known"));
}

static void
add_wire (PpFacts       *facts,
          const PpCheck *check,
          PpUnits        units)
{
  const PpWire *wire = check->panel->wire;
  double between = pp_panel_get_wire_length (check->panel);

  pp_facts_add (facts, _("Cut wire"), pp_length_format (between + 2 * wire->tail, units));
  pp_facts_add (facts, _("of it from hole to hole"), pp_length_format (between, units));
  pp_facts_add (facts, _("at each end, for its knot"), pp_length_format (wire->tail, units));
  pp_facts_add (facts, _("Wire, thick"), pp_length_format (wire->diameter, units));
  pp_facts_add (facts, _("Knots, in front, wide"), pp_length_format (wire->knot_diameter, units));
  if (isfinite (check->hang->greatest_tension))
    pp_facts_add (facts, _("Greatest pull on the wire, as a weight"),
                  pull_format (check->hang->greatest_tension, units));
  pp_facts_add (facts, _("The wire may carry"),
                pull_format (check->hang->allowed_tension, units));
}

static char *
hook_below_top_format (double  below,
                       PpUnits units)
{
  g_autofree char *length = pp_length_format (fabs (below), units);

  return g_strdup_printf (below >= 0 ? _("%s below it") : _("%s above it"), length);
}

static void
add_hook (PpFacts       *facts,
          const PpCheck *check,
          PpUnits        units)
{
  const PpHang *hang = check->hang;
  PpBox glass = pp_background_get_box (check->panel->background);
  double eye = units == PP_UNITS_INCH ? EYE_HEIGHT_INCH : EYE_HEIGHT_MM;
  g_autofree char *eye_text = pp_length_format (eye, units);
  double height = eye + pp_box_middle (glass).y - hang->hook.y;

  if (hang->is_taut)
    return;
  pp_facts_add (facts, _("Hook, from the left of the glass"),
                pp_length_format (hang->hook.x - glass.x0, units));
  pp_facts_add (facts, _("Hook and the top of the glass"),
                hook_below_top_format (hang->hook.y - glass.y0, units));
  pp_facts_take (facts,
                 g_strdup_printf (_("Hook over the floor, for the middle of the glass at %s"),
                                  eye_text),
                 pp_length_format (height, units));
}

void
pp_hanging_facts_add (PpFacts       *facts,
                      const PpCheck *check,
                      PpUnits        units)
{
  g_return_if_fail (facts != NULL && check != NULL);

  pp_facts_add (facts, _("Weight, finished"), pp_mass_format (check->mass.total, units));
  pp_facts_take (facts, g_strdup (_("Hook and fixing rated for at least")),
                 pp_mass_format (check->mass.total, units));
  if (check->hang == NULL)
    return;
  add_wire (facts, check, units);
  add_hook (facts, check, units);
  if (check->panel->display->place == PP_PLACE_WINDOW && isfinite (check->hang->lean))
    pp_facts_add (facts, _("Its top leans forward"), pp_angle_format (check->hang->lean));
}

gboolean
pp_hanging_is_about (const PpFinding *finding)
{
  static const char *const codes[] = { "hole-edge", "hole-wire", "hole-border", "hole-pocket",
                                       "hole-small", "hole-large", "hole-corner", "hole-hole",
                                       "knot-small", "turns-over", "wire-short", "wire-taut",
                                       "not-level", "slips", "wire-load", "leans", "hook-load" };

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    if (g_str_equal (finding->code, codes[i]))
      return TRUE;
  return FALSE;
}
