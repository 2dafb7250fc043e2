/* ground.h: how far each place of a squared photo is from the ground that the pieces lie on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bright or dark, in even or uneven light: the ground is whatever colour most of it has, and its
 * light a smooth surface. Each dot's light is held against the ground's there. Colours are those of
 * Oklab (Ottosson, A perceptual color space for image processing, 2020), in which a shadow moves a
 * colour straight toward black; so what is only that counts apart.
 */
#pragma once

#include "piece/squared.h"

G_BEGIN_DECLS

#define PP_GROUND_BESIDE 1.6 /* a shadow has none of this, so less of it counts */
#define PP_GROUND_CORE 0.4   /* mm from the border of a piece: no blur reaches there */

/* Read only, and shared. */
typedef struct
{
  PpSquared *squared;
  float     *light;   /* linear light of each dot, evened out, three to a dot; */
  float     *colours; /* the same in Oklab */
  float     *along;   /* from the ground's colour away from black, less than 0: darker */
  float     *beside;  /* what is left of the difference */
  float     *slope;   /* greatest change of colour there, to a mm; */
  float     *edge;    /* the same of lightness alone, as far as it is sharper than a soft shadow, */
  float     *hue_edge; /* and of all but lightness */
  double     bright;  /* how far the ground's colour is from black */
  double     noise;   /* of one dot, */
  double     edge_noise; /* of an edge, */
  double     hue_edge_noise; /* and of the other */
  double     level;   /* difference that parts ground and pieces best */
} PpGround;

/* Returns (transfer full). Errors: G_IO_ERROR_CANCELLED. */
PpGround *pp_ground_new   (PpSquared        *squared,
                           PpPhotoProgress   progress,
                           gpointer          data,
                           GCancellable     *cancellable,
                           GError          **error);
PpGround *pp_ground_ref   (PpGround         *self);
void      pp_ground_unref (PpGround         *self);
/* The difference of a dot as the level counts it. */
double    pp_ground_apart (const PpGround   *self,
                           gsize             dot);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpGround, pp_ground_unref)

G_END_DECLS
