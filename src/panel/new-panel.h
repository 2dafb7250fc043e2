/* new-panel.h: an empty panel to begin with: its glass, two holes well placed, a wire.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The holes lie level, evenly about the middle and in the upper part of the glass: as far in as
 * the rules for holes ask (hole-rules.h), high enough that the panel hangs with its weight well
 * below them, close enough that flowers hide them. The wire is long enough that an empty panel
 * slides back to level on its hook, and where the glass is large enough short enough that the
 * hook stays behind it.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* What the maker wishes for. */
typedef struct
{
  PpPlace           place;
  PpBackgroundShape shape;         /* not free */
  double            width;         /* mm, of the bounding box */
  double            height;        /* mm */
  double            corner_radius; /* mm; rectangle; more than fits is taken as what fits */
  double            thickness;     /* mm */
  double            hole_diameter; /* mm; NAN: as the glass and the unit ask */
  PpUnits           units;         /* also rounds where the holes lie */
  const char       *created;       /* as in a panel; nullable: unknown */
} PpNewPanel;

/* A piece of glass most rooms have a place for, on a wall; rounded in the unit. */
PpNewPanel pp_new_panel_wish (PpUnits           units);
/* Makes it. `tray` (nullable) holds the pieces (PpPiece) to begin with. Holes are "left" and
 * "right", not drilled. Glass too small for two holes gets neither holes nor wire.
 * Returns (transfer full). Errors: PP_PANEL_ERROR for a size that no panel has, and for a tray as
 * in pp_panel_new(). */
PpPanel   *pp_new_panel      (const PpNewPanel *wish,
                              GPtrArray        *tray,
                              GError          **error);

G_END_DECLS
