/* advice-words.c: what was put right, as text for a terminal and as JSON.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/advice-words.h"

#include "cli/wrap.h"
#include "file/json-write.h"
#include "panel/i18n.h"

static void
say_list (GString    *text,
          const char *heading,
          GPtrArray  *findings)
{
  if (findings->len == 0)
    return;
  g_string_append_printf (text, "\n%s\n", heading);
  for (guint i = 0; i < findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (findings, i);

      pp_append_wrapped (text, "    - ", finding->text);
    }
}

static void
say_changes (GString        *text,
             const PpAdvice *advice)
{
  g_string_append_printf (text, "%s\n", _("What to change"));
  for (guint i = 0; i < advice->changes->len; i++)
    {
      const PpChange *change = g_ptr_array_index (advice->changes, i);
      g_autofree char *number = g_strdup_printf ("%4u  ", i + 1);
      g_autofree char *sentence = g_strconcat (change->text, ".", NULL);

      pp_append_wrapped (text, number, sentence);
    }
}

char *
pp_words_of_advice (const PpAdvice *advice)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (advice->changes->len == 0 && advice->after.faults == 0 && advice->after.cautions == 0
      && advice->after.worst <= 0)
    g_string_append_printf (text, "%s\n", _("Nothing to put right."));
  else if (advice->changes->len == 0)
    g_string_append_printf (text, "%s\n",
                            _("Nothing better was found; the panel stays as it was."));
  else
    say_changes (text, advice);
  say_list (text, _("That puts right"), advice->cured);
  say_list (text, _("That leaves"), advice->left);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
write_figures (PpJsonWriter    *w,
               const char      *name,
               const PpFigures *figures)
{
  pp_json_write_begin_object (w, name);
  pp_json_write_integer (w, "faults", figures->faults);
  pp_json_write_number (w, "exposed", figures->exposed);
  pp_json_write_number (w, "worst", figures->worst);
  pp_json_write_integer (w, "cautions", figures->cautions);
  pp_json_write_end_object (w);
}

static void
write_change (PpJsonWriter   *w,
              const PpChange *change)
{
  pp_json_write_begin_object (w, NULL);
  pp_json_write_string (w, "kind", pp_change_kind_get_name (change->kind));
  pp_json_write_string (w, "about", change->about);
  pp_json_write_begin_array (w, "by");
  pp_json_write_number (w, NULL, change->by.x);
  pp_json_write_number (w, NULL, change->by.y);
  pp_json_write_end_array (w);
  pp_json_write_number (w, "turn", change->turn);
  pp_json_write_string (w, "text", change->text);
  pp_json_write_end_object (w);
}

GString *
pp_advice_write (const PpAdvice *advice)
{
  g_autoptr (PpJsonWriter) w = pp_json_writer_new ();

  pp_json_write_begin_object (w, NULL);
  pp_json_write_string (w, "format", "petalpane-put-right");
  pp_json_write_integer (w, "version", 1);
  pp_json_write_integer (w, "seed", (gint64) advice->seed);
  pp_json_write_integer (w, "steps", (gint64) advice->steps);
  pp_json_write_number (w, "cost", advice->cost);
  write_figures (w, "before", &advice->before);
  write_figures (w, "after", &advice->after);
  pp_json_write_begin_array (w, "changes");
  for (guint i = 0; i < advice->changes->len; i++)
    write_change (w, g_ptr_array_index (advice->changes, i));
  pp_json_write_end_array (w);
  pp_json_write_end_object (w);
  return pp_json_writer_finish (w);
}
