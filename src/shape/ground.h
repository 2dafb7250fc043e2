/* ground.h: how high glass, fused parts and knots stand before any piece is laid, and owners.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Heights are mm over the front face.
 */
#pragma once

#include "panel/panel.h"
#include "shape/scene.h"

G_BEGIN_DECLS

/* What a cell's top belongs to, packed in 16 bits: background, fused part, knot or placement. */
typedef guint16 PpOwner;

typedef enum
{
  PP_OWNER_NOTHING,
  PP_OWNER_BACKGROUND,
  PP_OWNER_FUSED,
  PP_OWNER_KNOT,
  PP_OWNER_PLACEMENT,
} PpOwnerKind;

#define PP_OWNER(kind, index) ((PpOwner) ((guint) (kind) << 12 | (guint) (index)))

G_STATIC_ASSERT (PP_PANEL_MAX_PLACEMENTS <= 1 << 12 && PP_PANEL_MAX_FUSED <= 1 << 12);

static inline PpOwnerKind
pp_owner_kind (PpOwner owner)
{
  return (PpOwnerKind) (owner >> 12);
}

/* Index of the fused part, the knot (0 from, 1 to) or the placement; 0 for the others. */
static inline guint
pp_owner_index (PpOwner owner)
{
  return owner & 0xfffu;
}

/* Of each cell of the span: 0 and PP_OWNER_NOTHING where nothing lies. */
void   pp_ground_lay       (const PpScene *scene,
                            PpSpan         span,
                            double        *height,
                            PpOwner       *owner);
/* mm: the greatest height. */
double pp_ground_get_depth (const PpScene *scene);

G_END_DECLS
