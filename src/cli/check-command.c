/* check-command.c: petalpane-cli check.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/command.h"
#include "cli/panel-answers.h"
#include "cli/words.h"
#include "file/check-write.h"
#include "panel/i18n.h"

#include <math.h>

/* That a maker waits for the proof that no glue-up is shorter. */
#define SECONDS 10.0

static int
print_json (const PpPanelAnswers *answers)
{
  g_autoptr (GString) json = pp_check_write (answers->check, answers->plan, answers->left_out);

  return pp_command_print_json (json);
}

static int
print_words (const PpPanelAnswers *answers)
{
  g_autofree char *words = pp_words_of_answers (answers);

  g_print ("%s", words);
  return PP_EXIT_DONE;
}

static gboolean
has_faults (const PpPanelAnswers *answers)
{
  return pp_check_count (answers->check, PP_LEVEL_FAULT) > 0 || answers->plan->findings->len > 0;
}

int
pp_command_check (int    argc,
                  char **argv)
{
  gboolean json = FALSE, strict = FALSE;
  gint64 steps = 0;
  double seconds = SECONDS;
  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_("Print every answer as JSON"), NULL },
    { "strict", 0, 0, G_OPTION_ARG_NONE, &strict, N_("Exit with 1 if the panel has faults"), NULL },
    { "steps", 0, 0, G_OPTION_ARG_INT64, &steps,
      N_("Try at most N steps in looking for the shortest glue-up"), N_("N") },
    { "seconds", 0, 0, G_OPTION_ARG_DOUBLE, &seconds,
      N_("Look for the shortest glue-up for at most S seconds, 10 unless said"), N_("S") },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *file = NULL;
  g_auto (PpPanelAnswers) answers = { NULL };
  g_autoptr (GError) error = NULL;
  int status;

  if (!pp_command_parse (argc, argv, entries, _("Says what would go wrong with a panel, and in "
                                                "which order to glue it."), &file))
    return PP_EXIT_UNUSABLE;
  if (steps < 0 || seconds < 0 || !isfinite (seconds))
    return pp_command_fail (NULL, _("--steps and --seconds must not be negative."));
  if (!pp_panel_answers_init (&answers, file, NULL, &(PpEffort) { (guint64) steps, seconds },
                              &error))
    return pp_command_fail (file, error->message);
  status = json ? print_json (&answers) : print_words (&answers);
  if (status == PP_EXIT_DONE && strict && has_faults (&answers))
    return PP_EXIT_FAULTS;
  return status;
}
