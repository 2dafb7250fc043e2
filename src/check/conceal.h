/* conceal.h: whether wire, knots and holes are hidden, straight on and aslant.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/changes.h"
#include "check/hang.h"
#include "check/sight-leg.h"

G_BEGIN_DECLS

typedef struct
{
  PpPoint  from;   /* on the wire's centre line, panel frame */
  PpPoint  to;
  double   length; /* mm along the path */
  gboolean beyond; /* outside the background: in plain view, no finding */
} PpExposed;

/* The wire along one path. */
typedef struct
{
  double     length;  /* mm */
  double     hidden;  /* mm */
  double     share;   /* hidden / length */
  double     beyond;  /* mm */
  guint      n_exposed;
  PpExposed *exposed; /* in the order of the path; a stretch runs on through the hook */
} PpPath;

/* What is known of a path's screens for as long as it hardly moves. */
typedef struct _PpPathKept PpPathKept;

typedef struct
{
  double sideways; /* degrees, viewer to the right positive */
  double updown;   /* degrees, viewer above positive */
  double share;
} PpView;

#define PP_N_VIEWS 21
#define PP_MOST_LEGS 2 /* a hole, the hook, a hole */

typedef struct
{
  double share;  /* of the disc's area that is hidden */
  double barely; /* the same with pieces drawn in; NAN for a hole */
} PpDiscShare;

typedef struct
{
  gboolean    has_wire;
  PpPath      lying;
  PpPath      hung;
  double      barely; /* mm exposed, not beyond, with pieces drawn in */
  PpView      views[PP_N_VIEWS];
  PpView      worst;
  PpDiscShare knots[2];
  guint       n_holes;
  PpDiscShare *holes; /* as panel->holes */
  GPtrArray  *glass;  /* PpScreen, of the background and of fused parts; NULL without a wire */
  GPtrArray  *pieces; /* likewise, of each placement; NULL for one that was not looked at */
  PpSightLeg *legs[PP_MOST_LEGS]; /* of the hung wire, seen aslant; NULL for none */
  PpPathKept *kept[2]; /* of the hung wire straight on, pieces as they are and drawn in; NULL
                          without a wire */
} PpConceal;

/* `hang` is NULL without a wire. `previous` (nullable): of an earlier panel on the same ground,
 * with how its stack lay, `before`; what has not changed is taken over, and the answer is the same
 * with and without. (transfer full) */
PpConceal *pp_conceal_new        (const PpSettled *settled,
                                  const PpHang    *hang,
                                  const PpConceal *previous,
                                  const PpSettled *before);
void       pp_conceal_free       (PpConceal     *self);
/* mm exposed and not beyond. */
double     pp_path_get_exposed   (const PpPath  *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpConceal, pp_conceal_free)

G_END_DECLS
