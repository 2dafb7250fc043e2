/* conceal-private.h: what the parts of concealment share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/conceal.h"

G_BEGIN_DECLS

/* mm: a leg shorter than this is nothing but rounding. */
#define PP_NO_LENGTH 1e-9

/* Where the wire runs: from one hole by the hook, or straight, to the other. */
typedef struct
{
  PpPoint points[3];
  guint   n_legs;
} PpRun;

/* One straight part of it. The normal points to one side of the wire; a leg without length has
 * none of either. */
typedef struct
{
  PpPoint from;
  PpPoint direction;
  PpPoint normal;
  double  length;
} PpLeg;

PpRun    pp_run_hung            (const PpScene *scene,
                                 const PpHang  *hang);
PpLeg    pp_run_get_leg         (const PpRun   *self,
                                 guint          leg);
/* The point `along` mm from its start and `aside` mm from its centre line. */
PpPoint  pp_leg_point           (const PpLeg   *self,
                                 double         along,
                                 double         aside);
/* A piece that floats takes no part. */
gboolean pp_conceal_counts      (PpRest       **rests,
                                 guint          index);
/* mm: the reach of a wire with its edges. */
PpBox    pp_run_get_box         (const PpRun   *self,
                                 double         radius);
/* Fills it with how much of the run is hidden, pieces being `drawn_in` by so many mm, and gives
 * what is to be kept for the next time; `previous` (nullable) is that of before (conceal-path.c).
 * (transfer full) */
PpPathKept *pp_path_look        (PpPath           *self,
                                 const PpScene    *scene,
                                 PpRest          **rests,
                                 const PpRun      *run,
                                 double            drawn_in,
                                 const PpPathKept *previous);
void     pp_path_kept_free      (PpPathKept    *self);
/* Fills the 21 views and the worst of them, and keeps its screens (conceal-aslant.c). */
void     pp_conceal_look_aslant (PpConceal       *self,
                                 const PpSettled *settled,
                                 const PpHang    *hang,
                                 const PpConceal *previous,
                                 const PpSettled *before);
/* The shares of the knots' and holes' discs (conceal-discs.c). */
void     pp_conceal_share_discs (PpConceal       *self,
                                 const PpScene   *scene,
                                 PpRest         **rests,
                                 const PpConceal *previous,
                                 GArray          *changes);

G_END_DECLS
