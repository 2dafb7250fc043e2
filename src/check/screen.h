/* screen.h: what may stand between a viewer and the wire, with its rim.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/midsurface.h"

G_BEGIN_DECLS

/* A corner of an outline, in the panel frame, and the height of the surface there, mm. */
typedef struct
{
  double x;
  double y;
  double z;
} PpRimPoint;

/* Glass that lies in the front face, or a settled piece. Borrows what it was made from. */
typedef struct
{
  PpCover      cover;
  gboolean     is_piece;
  PpMidsurface piece;   /* if it is one */
  guint        n_rings;
  guint       *ends;    /* of each ring: where its points end, which are closed */
  PpRimPoint  *rim;
  double       loose;   /* mm, between two points of the rim the surface is no farther from straight */
} PpScreen;

/* The rim of glass in the front face has height 0. */
void     pp_screen_init_glass (PpScreen           *self,
                               PpCover             cover);
/* Long sides of a shaped piece are parted, so that hardly anything is loose. */
void     pp_screen_init_piece (PpScreen           *self,
                               const PpMidsurface *piece);
void     pp_screen_clear      (PpScreen           *self);
/* Where lines of sight that slant by `slant` may leave the front face if they are to meet it. */
PpBox    pp_screen_get_shadow (const PpScreen     *self,
                               PpPoint             slant);
/* Whether it stands before `start` on the front face. */
gboolean pp_screen_hides      (const PpScreen     *self,
                               PpPoint             start,
                               PpPoint             slant);

G_END_DECLS
