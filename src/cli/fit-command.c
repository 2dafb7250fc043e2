/* fit-command.c: petalpane-cli fit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/fit.h"

#include "advise/advise.h"
#include "cli/advice-words.h"
#include "cli/command.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/i18n.h"
#include "panel/measure.h"

static int
fit (const char *file,
     const char *out,
     double      width,
     double      height)
{
  const PpSearchLimits limits = { .steps = PP_FIT_STEPS };
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_load (file, &error);
  g_autoptr (PpPanel) fitted = NULL;
  g_autoptr (PpAdvice) advice = NULL;
  g_autofree char *size = NULL;
  g_autofree char *words = NULL;

  if (panel == NULL)
    return pp_command_fail (file, error->message);
  fitted = pp_fit_new (panel, width, height, &error);
  if (fitted == NULL)
    return pp_command_fail (file, error->message);
  advice = pp_advise_all (fitted, &limits, NULL, NULL, NULL);
  if (!pp_panel_save (advice->panel, out, &error))
    return pp_command_fail (NULL, error->message);
  size = pp_size_format (width, height, panel->units);
  words = pp_words_of_advice (advice);
  g_print (_("The layout is spaced out for glass of %s.\n\n%s"), size, words);
  return PP_EXIT_DONE;
}

int
pp_command_fit (int    argc,
                char **argv)
{
  g_autofree char *out = NULL;
  double width = 0, height = 0;
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("The panel file to write"), N_("OUT") },
    { "width", 0, 0, G_OPTION_ARG_DOUBLE, &width, N_("Width of the glass in mm"), N_("MM") },
    { "height", 0, 0, G_OPTION_ARG_DOUBLE, &height, N_("Height of the glass in mm"), N_("MM") },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *file = NULL;

  if (!pp_command_parse (argc, argv, entries,
                         _("Spaces a layout out anew for another size of glass and puts it right. "
                           "No piece is scaled."), &file))
    return PP_EXIT_UNUSABLE;
  if (!pp_command_check_output (out, file))
    return PP_EXIT_UNUSABLE;
  return fit (file, out, width, height);
}
