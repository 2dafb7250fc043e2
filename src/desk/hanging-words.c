/* hanging-words.c: how the panel hangs, said in a sentence or two.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/hanging-words.h"

#include "check/finding.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#include <math.h>

char *
pp_hanging_words_pull (double  newtons,
                       PpUnits units)
{
  return isfinite (newtons) ? pp_mass_format (newtons * 1000 / PP_GRAVITY, units)
                            : g_strdup (_("not known"));
}

/* "Each leg of its wire pulls like a weight of 1.4 kg", or the two if they differ on a scale. */
static char *
say_pulls (const double pulls[2],
           PpUnits      units)
{
  g_autofree char *from = pp_hanging_words_pull (pulls[0], units);
  g_autofree char *to = pp_hanging_words_pull (pulls[1], units);

  if (!isfinite (pulls[0]) || !isfinite (pulls[1]))
    return g_strdup ("");
  if (g_str_equal (from, to))
    return g_strdup_printf (_(" Each leg of its wire pulls like a weight of %s."), from);
  return g_strdup_printf (_(" The legs of its wire pull like weights of %s and %s."), from, to);
}

static char *
say_level (const PpHang *hang)
{
  if (!isfinite (hang->friction_needed))
    return g_strdup (_("Hangs level as drawn, but one leg of its wire would be slack."));
  if (hang->holds)
    return g_strdup (_("Hangs level on its hook and stays so."));
  return g_strdup (_("Hangs level once its wire is wound round the hook; on a smooth hook the wire "
                     "slips."));
}

static char *
say_tilt (const PpHang *hang)
{
  g_autofree char *tilt = pp_angle_format (fabs (hang->middle_tilt));

  return g_strdup_printf (hang->middle_tilt > 0
                            ? _("From the middle of its wire it tilts by %s, right side down.")
                            : _("From the middle of its wire it tilts by %s, left side down."),
                          tilt);
}

char *
pp_hanging_words_sentence (const PpPanel *panel,
                           const PpHang  *hang)
{
  g_autofree char *how = NULL;
  g_autofree char *pulls = NULL;

  if (hang == NULL)
    return g_strdup (_("This panel has no wire yet. Put one on, and here stands how it hangs."));
  if (!pp_is_over (hang->drop, 0))
    return g_strdup (_("It would turn over: its weight lies above its holes. Move the holes "
                       "higher."));
  if (hang->is_taut)
    return g_strdup (_("The wire runs straight from hole to hole. Pull its middle up, or type how "
                       "long it is, and here stands how it hangs."));
  how = hang->has_level ? say_level (hang) : say_tilt (hang);
  pulls = say_pulls (hang->has_level ? hang->level_tension : hang->middle_tension, panel->units);
  return g_strconcat (how, pulls, NULL);
}
