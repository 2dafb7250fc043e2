/* field.h: the height of what lies on the panel, cell by cell, and whose it is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A mutable work sheet of settling: starts with background, fused parts and knots, then each
 * settled placement raises it. Heights are mm over the front face.
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

typedef struct
{
  PpCellBox room;   /* of the whole field */
  PpCellBox box;    /* of the cells held, within it */
  double   *height; /* row after row; 0 where nothing lies */
  PpOwner  *owner;  /* PP_OWNER_NOTHING there */
  double    depth;  /* mm, greatest height of glass, fused parts and knots */
} PpField;

/* With background, fused parts and knots in it, and room for every body that may have support;
 * one whose box is not all inside has none. */
PpField *pp_field_new   (const PpScene *scene);
/* Of that field the cells `within` a box alone. */
PpField *pp_field_new_part (const PpScene *scene,
                            PpCellBox      within);
void     pp_field_free  (PpField       *self);

static inline gboolean
pp_field_has_room (const PpField *self,
                   PpCellBox      box)
{
  return box.i0 >= self->room.i0 && box.j0 >= self->room.j0 && box.i1 <= self->room.i1
         && box.j1 <= self->room.j1;
}

/* What of a span lies in the box; FALSE for nothing. */
static inline gboolean
pp_field_clip (const PpField *self,
               PpSpan        *span)
{
  span->i0 = MAX (span->i0, self->box.i0);
  span->i1 = MIN (span->i1, self->box.i1);
  return span->i0 < span->i1 && span->j >= self->box.j0 && span->j < self->box.j1;
}

/* Index into height and owner; (i, j) must lie in the box. */
static inline gsize
pp_field_at (const PpField *self,
             int            i,
             int            j)
{
  return (gsize) (j - self->box.j0) * (gsize) (self->box.i1 - self->box.i0)
         + (gsize) (i - self->box.i0);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpField, pp_field_free)

G_END_DECLS
