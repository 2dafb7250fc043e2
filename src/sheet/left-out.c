/* left-out.c: the findings about art that is not drawn.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheet/left-out.h"

#include "panel/i18n.h"

/* Where the first copy lies; the panel's corner while none does. */
static PpPoint
first_place (const PpPanel *panel,
             const PpPiece *piece)
{
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);

      if (g_str_equal (placement->piece, piece->id))
        return (PpPoint) { placement->x, placement->y };
    }
  return (PpPoint) { 0, 0 };
}

GPtrArray *
pp_left_out_findings (const PpPanel *panel,
                      PpGallery     *gallery)
{
  PpFindings findings;
  GPtrArray *list;

  pp_findings_init (&findings, panel);
  for (guint i = 0; i < panel->tray->len; i++)
    {
      const PpPiece *piece = pp_panel_piece (panel, i);
      const char *fault = pp_gallery_get_fault (gallery, piece);

      if (fault == NULL)
        continue;
      pp_findings_add (&findings,
                       (PpFinding) { .code = "art-left-out",
                                     .level = PP_LEVEL_NOTE,
                                     .at = first_place (panel, piece),
                                     .about = PP_ABOUT (piece->id),
                                     .value = NAN,
                                     .limit = NAN },
                       g_strdup_printf (_("The picture of %s is left out and its outline drawn "
                                          "instead: %s"),
                                        pp_piece_get_title (piece), fault));
    }
  list = g_ptr_array_ref (findings.list);
  pp_findings_clear (&findings);
  return list;
}
