/* load-sample.c: a panel that comes with the program, as a test's beginning.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "load-sample.h"

#include "file/panel-read.h"

PpPanel *
load_sample (const char *name)
{
  g_autofree char *path = g_strdup_printf ("%s/samples/%s.petalpane", g_getenv ("PP_SOURCE_ROOT"),
                                           name);
  g_autoptr (GError) error = NULL;
  PpPanel *panel = pp_panel_load (path, &error);

  g_assert_no_error (error);
  return panel;
}
