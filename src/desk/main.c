/* main.c: petalpane [FILE]...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/application.h"
#include "panel/i18n.h"

#include <locale.h>

int
main (int    argc,
      char **argv)
{
  g_autoptr (PpApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, PP_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name ("Petalpane");
  application = pp_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
