/* command.h: the commands of petalpane-cli, and what they share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each takes its own arguments, argv[0] being the command's name, and gives the exit status:
 * PP_EXIT_DONE, PP_EXIT_FAULTS or PP_EXIT_UNUSABLE. What cannot be done is one sentence on
 * standard error, and nothing is written then.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

enum
{
  PP_EXIT_DONE = 0,
  PP_EXIT_FAULTS = 1,   /* the panel has faults, and --strict asked */
  PP_EXIT_UNUSABLE = 2, /* bad usage, or a file that cannot be used */
};

int pp_command_again     (int argc, char **argv);
int pp_command_check     (int argc, char **argv);
int pp_command_fit       (int argc, char **argv);
int pp_command_put_right (int argc, char **argv);
int pp_command_sheets    (int argc, char **argv);
int pp_command_picture   (int argc, char **argv);
int pp_command_piece     (int argc, char **argv);

/* Reads options and exactly one FILE, which goes to `file` (transfer full); `summary` says what
 * the command does. FALSE after a complaint on standard error. */
gboolean pp_command_parse (int                 argc,
                           char              **argv,
                           const GOptionEntry *entries,
                           const char         *summary,
                           char              **file);

/* The same with any number of words after the options, which go to `words` (transfer full). */
gboolean pp_command_parse_words (int                 argc,
                                 char              **argv,
                                 const GOptionEntry *entries,
                                 const char         *summary,
                                 char             ***words);

/* The same; `usage` is the line that --help begins with, and `others` (nullable) are options that
 * it lists after `entries`. */
gboolean pp_command_parse_options (int                 argc,
                                   char              **argv,
                                   const char         *usage,
                                   const char         *summary,
                                   const GOptionEntry *entries,
                                   const GOptionEntry *others,
                                   char             ***words);

/* Whether both names lead to one file that is there: what is written must not take the place of
 * what was read. */
gboolean pp_command_is_same_file (const char *a,
                                  const char *b);

/* Whether `out` (nullable) is a name under which another panel than that of `file` may be written.
 * FALSE after a complaint on standard error. */
gboolean pp_command_check_output (const char *out,
                                  const char *file);

/* `json` (nullable: an error) on standard output, in UTF-8 whatever the locale, so not by
 * g_print (). Returns the exit status. */
int      pp_command_print_json (const GString *json);

/* One sentence on standard error, after the program's name and, if given, the file's.
 * Returns PP_EXIT_UNUSABLE. */
int      pp_command_fail  (const char         *file,
                           const char         *sentence);

G_END_DECLS
