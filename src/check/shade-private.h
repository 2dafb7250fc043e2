/* shade-private.h: what windows and slabs of a shade share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/shade.h"

G_BEGIN_DECLS

/* The rings of a pane, or a ring that is taken out of it. */
typedef struct
{
  guint    pane;
  gboolean taken_out;
  gboolean inside;  /* right under the upper left corner of the window */
  guint    n_sides; /* through the window */
  PpPoint  from;    /* of what is taken out: nothing is left within `reach` of that segment */
  PpPoint  to;
  double   reach;
} PpShadePatch;

typedef struct
{
  double   through;
  gboolean gone;   /* covers nothing of the window */
  guint    n_open; /* of its patches, those with sides through it */
} PpShadePane;

typedef struct
{
  double y0;
  double x0;    /* at y0 */
  double y1;    /* no less than y0 */
  double x1;
  double slope; /* mm in x a mm in y */
  guint  patch;
} PpShadeSide;

/* All of it, or a part seen through a window. */
struct _PpShade
{
  PpBox    box;
  double   opaque;
  double   through;  /* of panes over all of it, which are not listed */
  gboolean is_empty; /* nothing of pane 0 is in it */
  GArray  *panes;    /* PpShadePane */
  GArray  *patches;  /* PpShadePatch; of each pane that of its rings comes first */
  GArray  *sides;    /* PpShadeSide; of a window by y0 */
};

static inline PpShadePatch *
pp_shade_get_patch (const PpShade *self,
                    guint          i)
{
  return &g_array_index (self->patches, PpShadePatch, i);
}

static inline PpShadePane *
pp_shade_get_pane (const PpShade *self,
                   guint          i)
{
  return &g_array_index (self->panes, PpShadePane, i);
}

static inline const PpShadeSide *
pp_shade_get_side (const PpShade *self,
                   guint          i)
{
  return &g_array_index (self->sides, PpShadeSide, i);
}

static inline double
pp_shade_side_at (const PpShadeSide *side,
                  double             y)
{
  double x = side->x0 + (y - side->y0) * side->slope;

  if (y <= side->y0)
    return side->x0;
  return y >= side->y1 ? side->x1 : CLAMP (x, MIN (side->x0, side->x1), MAX (side->x0, side->x1));
}

/* Whether a side, which reaches below the upper edge, is at the left of the window there or where
 * it begins. */
static inline gboolean
pp_shade_begins_left (const PpShade     *self,
                      const PpShadeSide *side)
{
  return pp_shade_side_at (side, self->box.y0) <= self->box.x0;
}

/* All ends and crossings of sides, rising, and the window's own; NULL if there are more than
 * `most`. (transfer full) */
GArray *pp_shade_find_heights (const PpShade *self,
                               guint          most);
/* mm² of pane 0 in the window over which more than enough light comes; slab by slab between
 * `heights`. */
double  pp_shade_sweep        (const PpShade *self,
                               const GArray  *heights);

G_END_DECLS
