/* screen.h: what may stand between a viewer and the wire, with its rim.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/cover.h"
#include "check/midsurface.h"

G_BEGIN_DECLS

/* Glass that lies in the front face, or a settled piece. Counted; borrows what it was made from. */
typedef struct
{
  PpCover      cover;
  gboolean     is_piece;
  PpMidsurface piece;   /* if it is one */
  guint        n_rings;
  guint       *ends;    /* of each ring: where its points end, which are closed */
  double      *x;       /* of the rim's points, in the panel frame, mm */
  double      *y;
  double      *z;       /* height of the surface there */
  double       loose;   /* mm, no farther from straight is the surface between two of them */
} PpScreen;

/* The rim of glass in the front face has height 0. (transfer full) */
PpScreen *pp_screen_new_glass (PpCover             cover);
/* Long sides of a shaped piece are parted, so that hardly anything is loose. (transfer full) */
PpScreen *pp_screen_new_piece (const PpMidsurface *piece);
PpScreen *pp_screen_ref       (PpScreen           *self);
void      pp_screen_unref     (PpScreen           *self);
/* Where lines of sight that slant by `slant` may leave the front face if they are to meet it. */
PpBox     pp_screen_get_shadow (const PpScreen    *self,
                                PpPoint            slant);
/* Whether it stands before `start` on the front face. */
gboolean  pp_screen_hides     (const PpScreen     *self,
                               PpPoint             start,
                               PpPoint             slant);

G_END_DECLS
