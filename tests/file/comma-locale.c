/* comma-locale.c: a test run where people write a decimal comma.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "comma-locale.h"

#include <locale.h>

static gboolean
has_comma (void)
{
  return *localeconv ()->decimal_point == ',';
}

static gboolean
use_comma_locale (void)
{
  static const char *const locales[] = { "de_DE.UTF-8", "fr_FR.UTF-8", "nl_NL.UTF-8" };

  for (guint i = 0; i < G_N_ELEMENTS (locales); i++)
    if (setlocale (LC_ALL, locales[i]) != NULL && has_comma ())
      return TRUE;
  return FALSE;
}

/* Where no locale with a comma is installed, one is made in a folder of the test's own. */
static gboolean
make_comma_locale (const char *folder)
{
  g_autofree char *made = g_build_filename (folder, "de_DE.UTF-8", NULL);
  const char *arguments[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", made, NULL };

  g_spawn_sync (NULL, (char **) arguments, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                NULL, NULL, NULL, NULL, NULL, NULL);
  g_setenv ("LOCPATH", folder, TRUE);
  return use_comma_locale ();
}

static void
remove_folder (const char *folder)
{
  const char *arguments[] = { "rm", "-r", folder, NULL };

  g_assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL,
                               NULL, NULL, NULL, NULL));
}

void
comma_locale_run (void (*test) (void))
{
  g_autofree char *folder = g_dir_make_tmp ("petalpane-locale-XXXXXX", NULL);

  if (use_comma_locale () || make_comma_locale (folder))
    {
      g_autofree char *half = g_strdup_printf ("%.1f", 0.5);

      g_assert_cmpstr (half, ==, "0,5"); /* the locale is in force */
      test ();
    }
  else
    g_test_skip ("no locale with a decimal comma is installed or can be made");
  setlocale (LC_ALL, "C");
  g_unsetenv ("LOCPATH");
  remove_folder (folder);
}
