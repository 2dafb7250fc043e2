/* again-command.c: petalpane-cli again.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/again.h"

#include "cli/command.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/i18n.h"

static void
print_to_make (const PpPanel *panel)
{
  g_autoptr (GArray) list = pp_again_list_to_make (panel);

  g_print ("%s\n", list->len > 0 ? _("Pieces to make") : _("The tray holds all pieces for it."));
  for (guint i = 0; i < list->len; i++)
    {
      const PpToMake *make = &g_array_index (list, PpToMake, i);
      const PpPiece *piece = pp_panel_piece (panel, make->piece);

      g_print ("%4u  %s\n", make->count, pp_piece_get_title (piece));
    }
}

int
pp_command_again (int    argc,
                  char **argv)
{
  g_autofree char *out = NULL;
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("The panel file to write"), N_("OUT") },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *file = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = NULL;
  g_autoptr (PpPanel) again = NULL;

  if (!pp_command_parse (argc, argv, entries,
                         _("Writes another panel like this one, with nothing glued, knotted or "
                           "drilled yet, and lists the pieces to make for it."), &file))
    return PP_EXIT_UNUSABLE;
  if (!pp_command_check_output (out, file))
    return PP_EXIT_UNUSABLE;
  panel = pp_panel_load (file, &error);
  if (panel == NULL)
    return pp_command_fail (file, error->message);
  again = pp_again_new (panel);
  if (!pp_panel_save (again, out, &error))
    return pp_command_fail (NULL, error->message);
  print_to_make (panel);
  return PP_EXIT_DONE;
}
