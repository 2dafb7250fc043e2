/* map.h: the panel drawn to scale on part of a page, as it lies on the bench or from behind.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines and marks keep their size on paper whatever the scale. "Page" is mm on paper.
 */
#pragma once

#include "sheet/book.h"
#include "sheet/labels.h"

G_BEGIN_DECLS

typedef struct
{
  PpBox  box;    /* panel frame: what is shown */
  PpBox  place;  /* page: where it is shown */
  double scale;  /* mm on paper for 1 mm of glass */
  gboolean is_mirrored; /* left is right, as from behind */
} PpMap;

#define PP_RULER 7.0 /* mm, what rulers take at top and left of it */

/* The glass and all that lies on it, panel frame. */
PpBox   pp_map_get_extent  (const PpScene      *scene);
/* The glass and all that lies on it, as large as it goes in `area`, at its top and in the middle
 * across; never larger than life. `with_rulers` keeps room for them. */
PpMap   pp_map_fit         (const PpScene      *scene,
                            PpBox               area,
                            gboolean            with_rulers);
PpPoint pp_map_to_page     (const PpMap        *self,
                            PpPoint             in_panel);
/* Makes 1 unit of `cr` 1 mm of the panel frame. */
void    pp_map_apply       (const PpMap        *self,
                            cairo_t            *cr);
/* Adds an outline, as large as on the page, to the path. */
void    pp_map_add_outline (const PpMap        *self,
                            cairo_t            *cr,
                            const PpOutline    *outline);
/* Rulers along the top and left edge of the glass in the job's unit. */
void    pp_map_draw_rulers (const PpMap        *self,
                            PpBook             *book);
/* Glass, fused parts, holes and (if there is one) the wire, as lines. */
void    pp_map_draw_glass  (const PpMap        *self,
                            PpBook             *book,
                            const PpScene      *scene);

/* The wire from hole to hole, if there is one. */
void    pp_map_draw_wire   (const PpMap        *self,
                            PpBook             *book,
                            const PpScene      *scene);

typedef enum
{
  PP_LOOK_DOWN,   /* thin: it lies there already */
  PP_LOOK_NOW,    /* heavy: to be placed now */
  PP_LOOK_RECORD, /* a picture in outlines: middle lines, leaves and stems hatched */
  PP_LOOK_PLAIN,  /* middle lines on white */
} PpMapLook;

void    pp_map_draw_body   (const PpMap        *self,
                            PpBook             *book,
                            const PpBody       *body,
                            PpMapLook           look);
/* A knot of the wire. */
void    pp_map_draw_knot   (const PpMap        *self,
                            PpBook             *book,
                            const PpHole       *hole,
                            PpMapLook           look);
/* From a number that does not stand on its piece (or knot) to just within it: thinner than any
 * outline of a piece to be placed, and ended by a dot. `job` as in PpNumbers. */
void    pp_map_draw_leader (const PpMap        *self,
                            PpBook             *book,
                            const PpScene      *scene,
                            guint               job,
                            const PpSheetLabel *label);

G_END_DECLS
