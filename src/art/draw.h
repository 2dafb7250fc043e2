/* draw.h: the panel as a picture: glass, fused parts, wire, pieces from their art with shadows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One unit of the cairo context is 1 mm of the panel frame; the caller sets scale and clip. The
 * same functions draw for screen, picture and sheets.
 */
#pragma once

#include "art/gallery.h"
#include "shape/scene.h"

G_BEGIN_DECLS

/* Adds an outline to the path; fill with CAIRO_FILL_RULE_EVEN_ODD. */
void pp_draw_outline_path (cairo_t         *cr,
                           const PpOutline *outline);
/* One piece level in its own frame: its art, or without it its outline filled with its colour,
 * a thin darker rim and a few lines by its kind. `art` nullable. */
void pp_draw_piece        (cairo_t         *cr,
                           const PpPiece   *piece,
                           PpArt           *art);
/* The same placed. */
void pp_draw_body         (cairo_t         *cr,
                           const PpBody    *body,
                           PpArt           *art);
/* A soft shadow of a body whose top stands `height` mm over the glass. */
void pp_draw_shadow       (cairo_t         *cr,
                           const PpBody    *body,
                           double           height);
/* mm from the outline within which all of that shadow falls. */
double pp_draw_get_shadow_reach (double     height);

/* Straight from behind, whatever the angles. */
typedef struct
{
  double   sideways;    /* degrees, viewer to the right positive; 0: straight on */
  double   updown;      /* degrees, viewer above positive */
  gboolean from_behind; /* mirrored, with wire and knots in front */
} PpViewFrom;

/* All but the pieces, glass in front of nothing: from the front it belongs under them, from behind
 * over them. From behind the caller mirrors. */
void pp_draw_bare         (cairo_t          *cr,
                           const PpScene    *scene,
                           const PpViewFrom *view);
/* How far a piece between `base` and `top` (mm over the glass) is seen from where it lies, mm. */
PpPoint pp_draw_get_shift (const PpViewFrom *view,
                           double            base,
                           double            top);
/* What stands in front of a stem in a pocket: the pocket's glass once more over where the stem is
 * seen, `shift` from where it lies. */
void pp_draw_pocket_front (cairo_t          *cr,
                           const PpScene    *scene,
                           guint             body,
                           PpPoint           shift);
/* What is guessed of a body's top before it has settled: as if flat on the glass. */
double pp_draw_guess_top  (const PpBody     *body);
/* The whole arrangement. `heights` (nullable): base height of each placement in mm, for shadows
 * and the shift of an oblique view, NAN for one that floats; `tops` likewise. */
void pp_draw_scene        (cairo_t          *cr,
                           const PpScene    *scene,
                           PpGallery        *gallery,
                           const double     *heights,
                           const double     *tops,
                           const PpViewFrom *view);

G_END_DECLS
