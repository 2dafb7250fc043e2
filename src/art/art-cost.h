/* art-cost.h: what a drawing costs once every reference in it is followed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Costs are counted in simple elements: a path of a few points is 1. An element costs its own,
 * its children's, that of what it refers to (use, mask, clip path, ...), and that of the dearest
 * paint of the drawing, because fill and line are handed down from any element above.
 * Private to the judge.
 */
#pragma once

#include "art/art.h"

G_BEGIN_DECLS

#define PP_ART_MAX_COST 10000.0 /* simple elements; about 65 µs each in a small picture */
#define PP_ART_MAX_CHAIN 320    /* elements and references, one in another */
#define PP_ART_MAX_SCALE 20.0   /* of all transforms one in another that enlarge */
#define PP_ART_NO_PARENT G_MAXUINT

typedef enum
{
  PP_ART_DRAWN,
  PP_ART_GRADIENT,
  PP_ART_PATTERN,
} PpArtPart;

typedef struct _PpArtCost PpArtCost;

PpArtCost *pp_art_cost_new          (void);
void       pp_art_cost_free         (PpArtCost  *self);
/* Returns the new element. `parent` is an earlier one or PP_ART_NO_PARENT. */
guint      pp_art_cost_add          (PpArtCost  *self,
                                     guint       parent,
                                     PpArtPart   part);
void       pp_art_cost_weigh        (PpArtCost  *self,
                                     guint       element,
                                     double      cost);
/* Enlarges the element and what is in it, and its cost with it; `scale` is at least 1. */
void       pp_art_cost_enlarge      (PpArtCost  *self,
                                     guint       element,
                                     double      scale);
void       pp_art_cost_weigh_all    (PpArtCost  *self,
                                     double      cost);
void       pp_art_cost_name         (PpArtCost  *self,
                                     guint       element,
                                     const char *id);
void       pp_art_cost_refer        (PpArtCost  *self,
                                     guint       element,
                                     const char *id);
/* A style sheet refers to `id`: any element may. Only a paint may be meant. */
void       pp_art_cost_refer_by_all (PpArtCost  *self,
                                     const char *id);
/* TRUE if the whole may be drawn; element 0 is the root.
 * Errors: PP_ART_ERROR_TOO_MUCH for cost, chain, scale, a reference to itself, or a style sheet
 * that refers to more than paints. */
gboolean   pp_art_cost_is_allowed   (PpArtCost  *self,
                                     GError    **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpArtCost, pp_art_cost_free)

G_END_DECLS
