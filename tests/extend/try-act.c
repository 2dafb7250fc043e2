/* try-act.c: does one act on pieces of a panel, without a window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: try-act NAME PANEL OUT ID...
 * Prints what the step of undo is called, and writes the panel. Exits with 2 if there is no such act.
 */
#include "desk/edit-acts.h"
#include "file/panel-read.h"
#include "file/panel-write.h"

int
main (int    argc,
      char **argv)
{
  const PpActKind *act = argc > 4 ? pp_acts_find (argv[1]) : NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = NULL;
  g_autoptr (PpDocument) document = NULL;

  if (act == NULL)
    return 2;
  panel = pp_panel_load (argv[2], &error);
  g_assert_no_error (error);
  document = pp_document_new (panel, NULL);
  pp_document_choose (document, PP_CHOSEN_PLACEMENTS, (const char * const *) argv + 4);
  pp_edit_acts_do (document, act);
  g_print ("%s\n", pp_document_get_undo (document));
  pp_panel_save (pp_document_get_panel (document), argv[3], &error);
  g_assert_no_error (error);
  return 0;
}
