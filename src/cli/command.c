/* command.c: what the commands of petalpane-cli share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/command.h"

#include "panel/i18n.h"

#include <glib/gstdio.h>

int
pp_command_fail (const char *file,
                 const char *sentence)
{
  if (file != NULL)
    g_printerr ("petalpane-cli: %s: %s\n", file, sentence);
  else
    g_printerr ("petalpane-cli: %s\n", sentence);
  return PP_EXIT_UNUSABLE;
}

int
pp_command_print_json (const GString *json)
{
  if (json == NULL || fwrite (json->str, 1, json->len, stdout) != json->len || fflush (stdout) != 0)
    return pp_command_fail (NULL, _("the answers could not be written out."));
  return PP_EXIT_DONE;
}

gboolean
pp_command_is_same_file (const char *a,
                         const char *b)
{
  GStatBuf one, other;

  return g_stat (a, &one) == 0 && g_stat (b, &other) == 0 && one.st_dev == other.st_dev
         && one.st_ino == other.st_ino;
}

gboolean
pp_command_check_output (const char *out,
                         const char *file)
{
  if (out == NULL)
    pp_command_fail (NULL, _("-o must name the panel file to write."));
  else if (pp_command_is_same_file (out, file))
    pp_command_fail (out, _("the new panel needs a file of its own."));
  else
    return TRUE;
  return FALSE;
}

gboolean
pp_command_parse_options (int                 argc,
                          char              **argv,
                          const char         *usage,
                          const char         *summary,
                          const GOptionEntry *entries,
                          const GOptionEntry *others,
                          char             ***words)
{
  g_autoptr (GOptionContext) context = g_option_context_new (usage);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) args = g_new0 (char *, (gsize) argc + 1);

  for (int i = 0; i < argc; i++)
    args[i] = g_strdup (argv[i]);
  g_option_context_set_summary (context, summary);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (others != NULL)
    g_option_context_add_main_entries (context, others, GETTEXT_PACKAGE);
  if (!g_option_context_parse_strv (context, &args, &error))
    {
      pp_command_fail (NULL, error->message);
      return FALSE;
    }
  *words = g_strdupv (args + 1);
  return TRUE;
}

gboolean
pp_command_parse_words (int                 argc,
                        char              **argv,
                        const GOptionEntry *entries,
                        const char         *summary,
                        char             ***words)
{
  g_autofree char *usage = g_strdup_printf ("%s %s", argv[0], _("FILE"));

  return pp_command_parse_options (argc, argv, usage, summary, entries, NULL, words);
}

gboolean
pp_command_parse (int                 argc,
                  char              **argv,
                  const GOptionEntry *entries,
                  const char         *summary,
                  char              **file)
{
  g_auto (GStrv) words = NULL;

  if (!pp_command_parse_words (argc, argv, entries, summary, &words))
    return FALSE;
  if (g_strv_length (words) != 1)
    {
      pp_command_fail (NULL, _("one panel file must be named; --help tells more."));
      return FALSE;
    }
  *file = g_strdup (words[0]);
  return TRUE;
}
