/* place.c: where a placement puts its piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/place.h"

PpFrame
pp_frame_of (const PpPlacement *placement)
{
  PpFrame frame = { .x = placement->x, .y = placement->y, .mirror = placement->mirrored ? -1 : 1 };

  pp_sincos_degrees (placement->rotation, &frame.sine, &frame.cosine);
  return frame;
}

PpPoint
pp_frame_to_panel (const PpFrame *frame,
                   PpPoint        own)
{
  double u = frame->mirror * own.x;

  return (PpPoint) { frame->x + u * frame->cosine - own.y * frame->sine,
                     frame->y + u * frame->sine + own.y * frame->cosine };
}

PpPoint
pp_frame_to_piece (const PpFrame *frame,
                   PpPoint        in_panel)
{
  double x = in_panel.x - frame->x;
  double y = in_panel.y - frame->y;

  return (PpPoint) { frame->mirror * (x * frame->cosine + y * frame->sine),
                     y * frame->cosine - x * frame->sine };
}

static PpPoint
map_to_panel (PpPoint       p,
              gconstpointer data)
{
  return pp_frame_to_panel (data, p);
}

PpOutline *
pp_place_outline (const PpPiece     *piece,
                  const PpPlacement *placement)
{
  PpFrame frame = pp_frame_of (placement);

  return pp_outline_map (piece->outline, map_to_panel, &frame);
}

PpBox
pp_place_box (const PpPanel      *panel,
              const char * const *placements)
{
  PpBox box = pp_box_empty ();

  for (guint i = 0; placements[i] != NULL; i++)
    {
      const PpPlacement *placement = pp_panel_find_placement (panel, placements[i], NULL);
      g_autoptr (PpOutline) outline = NULL;

      if (placement == NULL)
        continue;
      outline = pp_place_outline (pp_panel_get_piece_of (panel, placement), placement);
      box = pp_box_union (box, pp_outline_get_box (outline));
    }
  return box;
}
