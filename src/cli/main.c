/* main.c: petalpane-cli, everything that needs no window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "cli/command.h"

#include "panel/i18n.h"

#include <stdio.h>
#include <string.h>

static const struct
{
  const char *name;
  int       (*run) (int argc, char **argv);
  const char *what;
} commands[] = {
  { "check", pp_command_check,
    N_("check FILE: say what would go wrong, and in which order to glue") },
  { "put-right", pp_command_put_right,
    N_("put-right FILE -o OUT: write a better panel and say what to move") },
  { "fit", pp_command_fit,
    N_("fit FILE -o OUT --width MM --height MM: space the layout out for another size") },
  { "again", pp_command_again, N_("again FILE -o OUT: write another panel like this one") },
  { "sheets", pp_command_sheets, N_("sheets FILE -o FOLDER: write the sheets for the bench") },
  { "picture", pp_command_picture,
    N_("picture FILE -o OUT.png: write the arrangement as a picture") },
  { "piece", pp_command_piece, N_("piece measures|ring|ladder|picture|drawing …: make a piece") },
};

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
