/* bed.h: what lies under a placement at the moment it is laid, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only cells with support are in a bed. The heights are those of the field before the placement
 * raises it; a bed is thrown away once settling and dabs have read it.
 */
#pragma once

#include "shape/field.h"

G_BEGIN_DECLS

typedef struct
{
  const PpBody *body;
  guint         n;         /* cells with support */
  int          *i;         /* column and row of each */
  int          *j;
  double       *x;         /* centre less the body's centroid, mm */
  double       *y;
  double       *underside; /* u, level */
  double       *below;     /* H */
  PpOwner      *owner;
} PpBed;

/* `index` of the body in the scene: a stem in a pocket finds the bare background there. */
PpBed *pp_bed_new  (const PpScene *scene,
                    guint          index,
                    const PpField *field);
void   pp_bed_free (PpBed         *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBed, pp_bed_free)

G_END_DECLS
