/* main.c: petalpane [FILE]...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "desk/application.h"

#include "panel/i18n.h"

int
main (int    argc,
      char **argv)
{
  g_autoptr (PpApplication) application = NULL;

  pp_i18n_bind ();
  g_set_application_name ("Petalpane");
  application = pp_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
