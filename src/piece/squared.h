/* squared.h: a photo as seen from straight above, in mm.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "piece/photo.h"
#include "piece/plane.h"

G_BEGIN_DECLS

#define PP_SQUARED_MOST_DPI 4800.0
#define PP_SQUARED_LEAST_DPI 25.0 /* coarser, and a piece is a few pixels */

/* Read only, and shared. Beside the photo itself, which pieces are cut from, it has a raster fine
 * enough to find their borders in. */
typedef struct
{
  PpPhoto     *photo;
  PpSheetPlane plane;    /* from mm to pixels of the photo */
  PpBox        box;      /* mm: what is looked at; a frame's upper left disc is (0, 0) */
  double       fineness; /* pixels of the photo to a mm, in its middle */
  double       dots;     /* of the raster to a mm */
  guint        width;
  guint        height;
  float       *rgb;      /* linear light, 0 to 1, three to a dot; -1 where nothing is to be found */
} PpSquared;

/* By the middles of the discs in the photo, as pp_discs_find() or a maker gives them; they must
 * be `width` by `height` mm apart. What lies inside them is looked at. All return (transfer full).
 * Errors: PP_PHOTO_ERROR_FRAME for four points that no sheet shows; G_IO_ERROR_CANCELLED. */
PpSquared *pp_squared_by_frame  (PpPhoto         *photo,
                                 const PpPoint    corners[4],
                                 double           width,
                                 double           height,
                                 PpPhotoProgress  progress,
                                 gpointer         data,
                                 GCancellable    *cancellable,
                                 GError         **error);
/* By a scanner's dots to the inch; (0, 0) is the corner of the photo. */
PpSquared *pp_squared_by_dpi    (PpPhoto         *photo,
                                 double           dpi,
                                 PpPhotoProgress  progress,
                                 gpointer         data,
                                 GCancellable    *cancellable,
                                 GError         **error);
/* By two points of the photo and how far apart they are, mm. */
PpSquared *pp_squared_by_length (PpPhoto         *photo,
                                 PpPoint          from,
                                 PpPoint          to,
                                 double           length,
                                 PpPhotoProgress  progress,
                                 gpointer         data,
                                 GCancellable    *cancellable,
                                 GError         **error);
PpSquared *pp_squared_ref       (PpSquared       *self);
void       pp_squared_unref     (PpSquared       *self);

/* As many dots as so many mm are, and at least one. */
static inline guint
pp_squared_to_dots (const PpSquared *self,
                    double           mm)
{
  return (guint) fmax (ceil (mm * self->dots), 1);
}

static inline gboolean
pp_squared_is_nowhere (const PpSquared *self,
                       gsize            dot)
{
  return self->rgb[3 * dot] < 0;
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpSquared, pp_squared_unref)

G_END_DECLS
