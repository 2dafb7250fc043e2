/* bed.h: what lies under a placement at the moment it is laid, cell by cell.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only cells with support are in a bed. It is thrown away once settling and dabs have read it, and
 * so is what it takes of a room.
 */
#pragma once

#include "check/room.h"
#include "shape/ground.h"

G_BEGIN_DECLS

/* Cells beside each other in a row: those of the bed from the first on lie in columns from i0. */
typedef struct
{
  int            j;
  int            i0;
  guint          first;
  guint          n;
  const double  *underside; /* u of each; NULL: 0 */
  const PpOwner *owner;
  gboolean       has_knot; /* a cell may be a knot's */
  double         least;    /* gap; set by settling, as the next */
  double         greatest;
} PpBedRun;

typedef struct
{
  const PpBody *body;
  PpRoom       *room;      /* for more that goes by cells */
  guint         n;         /* cells with support */
  double       *h;         /* H - u, H being what lies under it and u the underside, level */
  double       *gap;       /* to the piece at rest; set by settling */
  guint         n_runs;
  guint         n_runs_held; /* there is memory for so many */
  PpBedRun     *runs;      /* row by row, in each from the left */
  PpOwner      *owner;     /* of all cells of the body, span by span; runs point into it */
} PpBed;

/* `index` of the body in the scene: a stem in a pocket finds the bare background there. `below`, H,
 * and `owner` of all cells of the body, span by span, are taken of the same room; H - u comes to
 * stand in place of H. (transfer full) */
PpBed *pp_bed_new  (const PpScene *scene,
                    guint          index,
                    double        *below,
                    PpOwner       *owner,
                    PpRoom        *room);
void   pp_bed_free (PpBed         *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBed, pp_bed_free)

G_END_DECLS
