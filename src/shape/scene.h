/* scene.h: a panel as shapes in the panel frame, made once and asked by everything.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The scene holds its panel. Bodies are counted and shared with the scene of the panel before
 * where placement and piece are the same records. For one thread at a time, as its regions are.
 */
#pragma once

#include "shape/background.h"
#include "shape/bands.h"
#include "shape/cells.h"
#include "shape/height.h"
#include "shape/place.h"
#include "shape/region.h"
#include "shape/relief.h"

G_BEGIN_DECLS

#define PP_NO_INDEX (-1)

/* A placement as it lies. */
typedef struct
{
  const PpPlacement *placement;
  const PpPiece     *piece;
  PpFrame            frame;
  PpHeights          heights;
  PpOutline         *outline;  /* panel frame */
  PpRegion          *region;
  PpCells           *cells;
  PpBox              box;
  PpPoint            centroid; /* panel frame */
  double             area;     /* mm² */
  double             width;    /* mm, least between parallel lines */
  double             length;   /* mm, longer side of the box in its own frame */
  double             mass;     /* g */
  /* By the rest alone; NULL until they are asked for. */
  PpBands           *bands;
  PpRelief          *relief;
} PpBody;

/* A fused part. */
typedef struct
{
  const PpFused *fused;
  PpBands       *bands;        /* of the outline, reaching PP_TIE */
  PpRegion      *region;
  PpCells       *cells;
  PpRegion      *insert;       /* NULL without a pocket */
  PpCells       *insert_cells; /* NULL without a pocket */
  double         area;
  PpPoint        centroid;
} PpPart;

typedef struct
{
  const PpPanel *panel;
  PpOutline     *background_outline;
  PpBands       *background_bands; /* reaching PP_TIE */
  PpRegion      *background;
  PpCells       *background_cells;
  double         background_area;
  PpPoint        background_centroid;
  guint          n_parts;
  PpPart        *parts;      /* as panel->fused */
  guint          n_bodies;
  PpBody       **bodies;     /* as panel->placements, bottom first */
  PpCellBox     *reaches;    /* of each body: the box of its cells; all of them are asked often */
  int           *pockets;    /* of each body: the part in whose pocket it stands, or PP_NO_INDEX */
  int            knots[2];   /* the wire's holes, from and to; PP_NO_INDEX without a wire */
  guint          n_knots;    /* 0 or 2 */
  PpCells       *knot_cells[2];
} PpScene;

/* `previous` (nullable): a scene whose parts may be shared. (transfer full) */
PpScene *pp_scene_new   (const PpPanel *panel,
                         const PpScene *previous);
PpScene *pp_scene_ref   (PpScene       *self);
void     pp_scene_unref (PpScene       *self);

/* The hole of knot 0 (from) or 1 (to). */
static inline const PpHole *
pp_scene_knot_hole (const PpScene *self,
                    guint          knot)
{
  return pp_panel_hole (self->panel, (guint) self->knots[knot]);
}

/* Its middle, where the knot is. */
static inline PpPoint
pp_scene_knot_place (const PpScene *self,
                     guint          knot)
{
  const PpHole *hole = pp_scene_knot_hole (self, knot);

  return (PpPoint) { hole->x, hole->y };
}

/* On the border, within PP_TIE, counts as inside. */
gboolean pp_part_contains     (const PpPart  *self,
                               PpPoint        p);
/* mm of glass at a point: the background, and the fused parts there. */
double pp_scene_thickness_at (const PpScene *self,
                              PpPoint        at);

/* For the next two, which are asked often. (transfer none) */
const PpBands  *pp_body_make_bands  (const PpBody *self);
const PpRelief *pp_body_make_relief (const PpBody *self);

/* Of its outline, reaching PP_TIE; made when it is first asked for, which many bodies never are.
 * By any thread. (transfer none) */
static inline const PpBands *
pp_body_get_bands (const PpBody *self)
{
  PpBody *kept = (PpBody *) self;
  const PpBands *bands = g_atomic_pointer_get (&kept->bands);

  return bands != NULL ? bands : pp_body_make_bands (self);
}

/* Made when it is first asked for, most often when the body is settled: then it is in a cache
 * still. By any thread. (transfer none) */
static inline const PpRelief *
pp_body_get_relief (const PpBody *self)
{
  PpBody *kept = (PpBody *) self;
  const PpRelief *relief = g_atomic_pointer_get (&kept->relief);

  return relief != NULL ? relief : pp_body_make_relief (self);
}

static inline gboolean
pp_body_is_flat (const PpBody *body)
{
  return !pp_form_is_shaped (&body->piece->form);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpScene, pp_scene_unref)

G_END_DECLS
