/* i18n.c: the maker's language, for libraries and programs alike.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/i18n.h"

#include <locale.h>

void
pp_i18n_bind (void)
{
  const char *folder = g_getenv ("PP_LOCALE_DIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : PP_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}
