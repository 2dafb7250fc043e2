/* art.h: a piece's drawing: judged, loaded once, drawn to scale.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Art comes from strangers. A text that is not SVG, refers to anything outside itself (embedded
 * PNG or JPEG data apart), declares a document type, holds a script, or costs too much to draw is
 * never drawn; its piece is drawn by its outline instead. Judging costs what drawing once costs,
 * so it is done off the main thread and its answer kept.
 */
#pragma once

#include "panel/record.h"

#include <cairo.h>

G_BEGIN_DECLS

#define PP_ART_ERROR (pp_art_error_quark ())

typedef enum
{
  PP_ART_ERROR_NOT_SVG,  /* not well-formed SVG */
  PP_ART_ERROR_OUTSIDE,  /* refers to something outside itself */
  PP_ART_ERROR_SCRIPT,   /* holds a script or declares a document type */
  PP_ART_ERROR_TOO_MUCH, /* more bytes, elements, depth or time than it may cost */
} PpArtError;

GQuark pp_art_error_quark (void);

typedef struct _PpArt PpArt;

/* Judges and loads SVG text whose viewBox is in mm, same origin as the piece's outline.
 * Returns (transfer full), counted; or NULL with a PP_ART_ERROR in one plain sentence. */
PpArt   *pp_art_new      (GBytes      *svg,
                          GError     **error);
PpArt   *pp_art_ref      (PpArt       *self);
void     pp_art_unref    (PpArt       *self);
/* The viewBox, mm in the piece's own frame. */
PpBox    pp_art_get_box  (const PpArt *self);
/* Draws with one unit of `cr` = 1 mm, origin = the piece's origin. Vector where `cr` is. */
void     pp_art_draw     (PpArt       *self,
                          cairo_t     *cr);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpArt, pp_art_unref)

G_END_DECLS
