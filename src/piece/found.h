/* found.h: the pieces found in a squared photo, and what a maker puts right about them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "panel/outline.h"
#include "piece/ground.h"

G_BEGIN_DECLS

/* A line over the photo, mm in the squared frame: where glass is parted from glass, or joined to
 * it (stroke.h). It stays where it is when the slider moves. One that parts must cross a piece from
 * edge to edge; it costs no glass, as what lies under it goes to either side. */
typedef struct
{
  PpPoint  from;
  PpPoint  to;
  gboolean joins;
} PpStroke;

/* Read only, and shared. */
typedef struct
{
  PpGround         *ground;
  guint             n_pieces;
  const PpOutline **outlines; /* mm in the squared frame, from the top of the photo down */
  float            *parted;   /* how far each dot is glass before strokes, */
  float            *shares;   /* and with them */
  double            more;
  guint32          *labels;   /* of each dot: 1 + the index of its piece, 0 for none */
} PpFound;

/* `more`: the slider, from -1 to 1; 0 is what the picture itself says. Strokes in turn, a later
 * one over those before. Specks, words on the sheet,
 * and what is cut off by the border of what is looked at are left out. Returns (transfer full);
 * nothing found is no error. Errors: G_IO_ERROR_CANCELLED. */
PpFound *pp_found_new   (PpGround        *ground,
                         double           more,
                         const PpStroke  *strokes,
                         guint            n_strokes,
                         PpPhotoProgress  progress,
                         gpointer         data,
                         GCancellable    *cancellable,
                         GError         **error);
/* With other strokes instead, much faster; all else as above. */
PpFound *pp_found_again (PpFound         *before,
                         const PpStroke  *strokes,
                         guint            n_strokes,
                         GCancellable    *cancellable,
                         GError         **error);
PpFound *pp_found_ref   (PpFound         *self);
void     pp_found_unref (PpFound         *self);
/* The piece at a point of the squared frame; FALSE if there is none. */
gboolean pp_found_at    (const PpFound   *self,
                         PpPoint          point,
                         guint           *piece);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpFound, pp_found_unref)

G_END_DECLS
