/* print-memory.c: how was printed last.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/print-memory.h"

#include "panel/i18n.h"

#include <math.h>

#define NEAR 1.0 /* mm: sizes of paper that are the same; a system may round to points */

/* (transfer full) */
static char *
get_path (void)
{
  return g_build_filename (g_get_user_config_dir (), "petalpane", "printing.ini", NULL);
}

GtkPrintSettings *
pp_print_memory_get (void)
{
  g_autofree char *path = get_path ();
  GtkPrintSettings *settings = gtk_print_settings_new_from_file (path, NULL);

  return settings != NULL ? settings : gtk_print_settings_new ();
}

void
pp_print_memory_keep (GtkPrintSettings *settings)
{
  g_autofree char *path = get_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GtkPrintSettings) kept = NULL;

  g_return_if_fail (GTK_IS_PRINT_SETTINGS (settings));

  kept = gtk_print_settings_copy (settings);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_ORIENTATION);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_PAPER_FORMAT);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_PAPER_WIDTH);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_PAPER_HEIGHT);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_PAGE_RANGES);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_PRINT_PAGES);
  gtk_print_settings_unset (kept, GTK_PRINT_SETTINGS_OUTPUT_URI);
  g_mkdir_with_parents (folder, 0700);
  gtk_print_settings_to_file (kept, path, NULL);
}

/* The paper that the system has a name for, or one of its own measure. (transfer full) */
static GtkPaperSize *
find_size (double width,
           double height)
{
  static const char * const names[] = {
    GTK_PAPER_NAME_A4, GTK_PAPER_NAME_A3, GTK_PAPER_NAME_LETTER, GTK_PAPER_NAME_LEGAL, "na_ledger",
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GtkPaperSize) size = gtk_paper_size_new (names[i]);

      if (fabs (gtk_paper_size_get_width (size, GTK_UNIT_MM) - width) < NEAR
          && fabs (gtk_paper_size_get_height (size, GTK_UNIT_MM) - height) < NEAR)
        return g_steal_pointer (&size);
    }
  return gtk_paper_size_new_custom ("petalpane", _("Own size"), width, height, GTK_UNIT_MM);
}

GtkPageSetup *
pp_print_memory_setup (const PpPaper *paper)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  gboolean is_wide = paper->width > paper->height;
  g_autoptr (GtkPaperSize) size = find_size (fmin (paper->width, paper->height),
                                             fmax (paper->width, paper->height));

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_page_setup_set_orientation (setup, is_wide ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                 : GTK_PAGE_ORIENTATION_PORTRAIT);
  return setup;
}
