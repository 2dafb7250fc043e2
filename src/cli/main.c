/* main.c: petalpane-cli, everything that needs no window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/command.h"

#include "panel/i18n.h"

#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

static const struct
{
  const char *name;
  int       (*run) (int argc, char **argv);
  const char *what;
} commands[] = {
  { "check", pp_command_check, N_("check FILE: say what would go wrong, and in which order to glue") },
  { "put-right", pp_command_put_right,
    N_("put-right FILE -o OUT: write a better panel and say what to move") },
  { "fit", pp_command_fit,
    N_("fit FILE -o OUT --width MM --height MM: space the layout out for another size") },
  { "again", pp_command_again, N_("again FILE -o OUT: write another panel like this one") },
  { "sheets", pp_command_sheets, N_("sheets FILE -o FOLDER: write the sheets for the bench") },
  { "picture", pp_command_picture, N_("picture FILE -o OUT.png: write the arrangement as a picture") },
  { "piece", pp_command_piece, N_("piece measures|ring|ladder|picture|drawing …: make a piece") },
};

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
  if (fwrite (json->str, 1, json->len, stdout) != json->len || fflush (stdout) != 0)
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
pp_command_parse_words (int                 argc,
                        char              **argv,
                        const GOptionEntry *entries,
                        const char         *summary,
                        char             ***words)
{
  g_autofree char *usage = g_strdup_printf ("%s %s", argv[0], _("FILE"));
  g_autoptr (GOptionContext) context = g_option_context_new (usage);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) args = g_new0 (char *, (gsize) argc + 1);

  for (int i = 0; i < argc; i++)
    args[i] = g_strdup (argv[i]);
  g_option_context_set_summary (context, summary);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (!g_option_context_parse_strv (context, &args, &error))
    {
      pp_command_fail (NULL, error->message);
      return FALSE;
    }
  *words = g_strdupv (args + 1);
  return TRUE;
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

static void
print_help (void)
{
  g_print (_("Usage: petalpane-cli COMMAND [OPTION…] FILE\n\nCommands:\n"));
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_print ("  %s\n", _(commands[i].what));
  g_print (_("\npetalpane-cli COMMAND --help tells the options of a command, "
             "petalpane-cli --version the version.\n"));
}

int
main (int    argc,
      char **argv)
{
  pp_i18n_bind ();
  g_set_prgname ("petalpane-cli");
  if (argc > 1 && strcmp (argv[1], "--version") == 0)
    {
      g_print ("petalpane-cli %s\n", PP_VERSION);
      return PP_EXIT_DONE;
    }
  if (argc > 1 && (strcmp (argv[1], "--help") == 0 || strcmp (argv[1], "-h") == 0))
    {
      print_help ();
      return PP_EXIT_DONE;
    }
  for (guint i = 0; argc > 1 && i < G_N_ELEMENTS (commands); i++)
    if (strcmp (argv[1], commands[i].name) == 0)
      return commands[i].run (argc - 1, argv + 1);
  if (argc > 1)
    {
      g_autofree char *sentence
          = g_strdup_printf (_("there is no command “%s”; --help lists them."), argv[1]);

      return pp_command_fail (NULL, sentence);
    }
  return pp_command_fail (NULL, _("a command is missing; --help lists them."));
}
