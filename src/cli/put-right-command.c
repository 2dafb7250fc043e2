/* put-right-command.c: petalpane-cli put-right.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/advise.h"
#include "cli/advice-words.h"
#include "cli/command.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/i18n.h"

#include <math.h>

typedef struct
{
  char          *out;
  char          *only;
  gint64         seed;
  gint64         steps;
  double         seconds;
  gboolean       json;
  PpSearchLimits limits;
} Wish;

static void
wish_clear (Wish *self)
{
  g_free (self->out);
  g_free (self->only);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Wish, wish_clear)

/* What is left of the limits for the next finding; FALSE if nothing is. A limit of 0 is none. */
static gboolean
find_left (const PpSearchLimits *whole,
           guint64               steps,
           double                seconds,
           PpSearchLimits       *left)
{
  *left = *whole;
  if ((whole->steps > 0 && steps >= whole->steps)
      || (whole->seconds > 0 && seconds >= whole->seconds))
    return FALSE;
  if (whole->steps > 0)
    left->steps -= steps;
  if (whole->seconds > 0)
    left->seconds -= seconds;
  return TRUE;
}

/* The findings of one code one by one; what was changed is that of all together. */
static PpAdvice *
put_only_right (const PpPanel *panel,
                const Wish    *wish)
{
  g_autoptr (PpCheck) check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
  g_autoptr (PpPanel) now = pp_panel_ref (panel);
  g_autoptr (GTimer) timer = g_timer_new ();
  PpSearchLimits left;
  guint64 steps = 0;
  PpAdvice *whole;

  for (guint i = 0; i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);
      g_autoptr (PpAdvice) advice = NULL;

      if (g_strcmp0 (finding->code, wish->only) != 0)
        continue;
      if (!find_left (&wish->limits, steps, g_timer_elapsed (timer, NULL), &left))
        break;
      advice = pp_advise_one (now, finding->code, finding->about, &left, NULL, NULL, NULL);
      steps += advice->steps;
      pp_panel_unref (now);
      now = pp_panel_ref (advice->panel);
    }
  whole = pp_advice_new (panel, now);
  whole->seed = wish->limits.seed;
  whole->steps = steps;
  return whole;
}

static int
print (const PpAdvice *advice,
       const Wish     *wish)
{
  g_autoptr (GString) json = NULL;
  g_autofree char *words = NULL;

  if (!wish->json)
    {
      words = pp_words_of_advice (advice);
      g_print ("%s", words);
      return PP_EXIT_DONE;
    }
  json = pp_advice_write (advice);
  return pp_command_print_json (json);
}

static int
put_right (const char *file,
           const Wish *wish)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_load (file, &error);
  g_autoptr (PpAdvice) advice = NULL;

  if (panel == NULL)
    return pp_command_fail (file, error->message);
  advice = wish->only != NULL ? put_only_right (panel, wish)
                              : pp_advise_all (panel, &wish->limits, NULL, NULL, NULL);
  if (!pp_panel_save (advice->panel, wish->out, &error))
    return pp_command_fail (NULL, error->message);
  return print (advice, wish);
}

int
pp_command_put_right (int    argc,
                      char **argv)
{
  g_auto (Wish) wish = { 0 };
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wish.out, N_("The panel file to write"),
      N_("OUT") },
    { "only", 0, 0, G_OPTION_ARG_STRING, &wish.only,
      N_("Put right only the findings of this code"), N_("CODE") },
    { "seed", 0, 0, G_OPTION_ARG_INT64, &wish.seed, N_("The seed of the search, 0 unless said"),
      N_("N") },
    { "steps", 0, 0, G_OPTION_ARG_INT64, &wish.steps, N_("Try at most N changes"), N_("N") },
    { "seconds", 0, 0, G_OPTION_ARG_DOUBLE, &wish.seconds, N_("Search at most S seconds"),
      N_("S") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &wish.json, N_("Say what was changed as JSON"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *file = NULL;

  if (!pp_command_parse (argc, argv, entries,
                         _("Looks for a better panel, writes it and says what to move."), &file))
    return PP_EXIT_UNUSABLE;
  if (!pp_command_check_output (wish.out, file))
    return PP_EXIT_UNUSABLE;
  if (wish.steps < 0 || wish.seconds < 0 || !isfinite (wish.seconds))
    return pp_command_fail (NULL, _("--steps and --seconds must not be negative."));
  if (wish.only != NULL && !pp_finding_is_code (wish.only))
    return pp_command_fail (NULL, _("--only must name the code of a finding, such as wire-shows."));
  wish.limits = (PpSearchLimits) { .seed = (guint64) wish.seed, .steps = (guint64) wish.steps,
                                   .seconds = wish.seconds };
  return put_right (file, &wish);
}
