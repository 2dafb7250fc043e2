/* words.c: the answers about a panel as text for a terminal.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/words.h"

#include "cli/wrap.h"
#include "panel/hole-name.h"
#include "panel/i18n.h"
#include "panel/measure.h"

static void
say_panel (GString              *text,
           const PpPanelAnswers *answers)
{
  const PpPanel *panel = answers->panel;
  const PpExtent *extent = &answers->check->extent;
  g_autofree char *size
      = pp_size_format (panel->background->width, panel->background->height, panel->units);
  g_autofree char *whole = pp_size_format (extent->width, extent->height, panel->units);
  g_autofree char *depth = pp_length_format (extent->depth, panel->units);
  g_autofree char *mass = pp_mass_format (answers->check->mass.total, panel->units);

  g_string_append_printf (text, "%s\n", *panel->title != '\0' ? panel->title : _("Untitled panel"));
  if (g_str_equal (size, whole))
    g_string_append_printf (text, _("Glass %s, standing out %s; weight %s.\n"), size, depth, mass);
  else
    g_string_append_printf (text, _("Glass %s; with all pieces %s, standing out %s; weight %s.\n"),
                            size, whole, depth, mass);
}

static const char *
level_heading (PpLevel level)
{
  switch (level)
    {
    case PP_LEVEL_FAULT:
      return _("Put right before gluing");
    case PP_LEVEL_CAUTION:
      return _("Look again");
    case PP_LEVEL_NOTE:
      return _("Good to know");
    }
  g_return_val_if_reached (NULL);
}

static guint
say_level (GString   *text,
           GPtrArray *findings,
           PpLevel    level,
           guint      said)
{
  gboolean any = FALSE;

  for (guint i = 0; i < findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings, i);
      g_autofree char *number = NULL;

      if (finding->level != level || finding->quiet)
        continue;
      if (!any)
        g_string_append_printf (text, "\n%s\n", level_heading (level));
      any = TRUE;
      number = g_strdup_printf ("%4u  ", ++said);
      pp_append_wrapped (text, number, finding->text);
    }
  return said;
}

static GPtrArray *
gather (const PpPanelAnswers *answers)
{
  GPtrArray *all = g_ptr_array_new ();

  g_ptr_array_extend (all, answers->check->findings, NULL, NULL);
  g_ptr_array_extend (all, answers->plan->findings, NULL, NULL);
  g_ptr_array_extend (all, answers->left_out, NULL, NULL);
  return all;
}

static void
say_findings (GString              *text,
              const PpPanelAnswers *answers)
{
  g_autoptr (GPtrArray) all = gather (answers);
  guint said = 0, quiet = 0;

  for (guint i = 0; i < all->len; i++)
    quiet += ((const PpFinding *) g_ptr_array_index (all, i))->quiet;
  said = say_level (text, all, PP_LEVEL_FAULT, said);
  said = say_level (text, all, PP_LEVEL_CAUTION, said);
  said = say_level (text, all, PP_LEVEL_NOTE, said);
  if (said == 0)
    g_string_append_printf (text, "\n%s\n", _("Nothing to put right."));
  if (quiet > 0)
    g_string_append_printf (text,
                            ngettext ("\n%u more you said you know of.\n",
                                      "\n%u more you said you know of.\n", quiet),
                            quiet);
}

static char *
job_name (const PpPanelAnswers *answers,
          guint                 job)
{
  const PpPanel *panel = answers->panel;
  guint n_knots = answers->plan->order->n_knots;
  const PpPiece *piece;

  if (job < n_knots)
    return g_strdup_printf (_("Knot at the %s hole"),
                            pp_hole_name (job == 0 ? panel->wire->from : panel->wire->to));
  piece = pp_panel_get_piece_of (panel, pp_panel_placement (panel, job - n_knots));
  return g_strdup (pp_piece_get_title (piece));
}

static void
say_mix (GString              *text,
         const PpPanelAnswers *answers,
         guint                 mix)
{
  const PpPlan *plan = answers->plan;
  g_autofree char *start = pp_time_format (plan->mixes[mix].start);
  g_autofree char *a = pp_volume_format (plan->mixes[mix].a);
  g_autofree char *b = pp_volume_format (plan->mixes[mix].b);
  g_autoptr (GString) jobs = g_string_new (NULL);

  for (guint i = 0; i < plan->n_steps; i++)
    if (plan->steps[i].mix == mix + 1)
      {
        g_autofree char *name = job_name (answers, plan->steps[i].job);

        g_string_append_printf (jobs, "%s%u\302\240%s", jobs->len > 0 ? ", " : "", i + 1, name);
      }
  g_string_append_printf (text, _("\nMix %u, after %s: %s of part A and %s of part B\n"), mix + 1,
                          start, a, b);
  pp_append_wrapped (text, "      ", jobs->str);
}

static void
say_glue_up (GString              *text,
             const PpPanelAnswers *answers)
{
  const PpPlan *plan = answers->plan;
  const PpAdhesive *adhesive = answers->panel->adhesive;
  g_autofree char *end = NULL;
  g_autofree char *hard = pp_time_format (adhesive->hard);
  g_autofree char *cure = pp_time_format (adhesive->cure);

  if (!plan->exists || plan->n_steps == 0)
    return;
  end = pp_time_format (plan->placed_by);
  g_string_append_printf (text, ngettext ("\nGlue-up: %u step, all placed after %s.\n",
                                          "\nGlue-up: %u steps, all placed after %s.\n",
                                          plan->n_steps),
                          plan->n_steps, end);
  for (guint m = 0; m < plan->n_mixes; m++)
    say_mix (text, answers, m);
  g_string_append_printf (text, _("\nLet it harden %s before it is moved, and %s before it hangs; "
                                  "the glue's data sheet wins.\n"), hard, cure);
}

char *
pp_words_of_answers (const PpPanelAnswers *answers)
{
  g_autoptr (GString) text = g_string_new (NULL);

  say_panel (text, answers);
  say_findings (text, answers);
  say_glue_up (text, answers);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
