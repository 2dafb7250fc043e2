/* photo.h: a photo or scan, opened.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first of the steps from a picture to pieces, each a value that never changes and is counted,
 * so that threads may share it and a change redoes only what comes after it:
 * photo -> corners (discs.h) -> squared -> ground -> found -> pieces (cutout.h).
 *
 * Places in a photo are pixels, (0, 0) the outer corner of the first one.
 */
#pragma once

#include "panel/point.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define PP_PHOTO_MAX_BYTES (64 * 1024 * 1024)
#define PP_PHOTO_MAX_PIXELS 120e6
#define PP_PHOTO_LEAST_SIDE 32 /* pixels */

#define PP_PHOTO_ERROR (pp_photo_error_quark ())

typedef enum
{
  PP_PHOTO_ERROR_FORMAT, /* no picture that the system's loaders open, or not whole */
  PP_PHOTO_ERROR_SIZE,   /* too large or too small */
  PP_PHOTO_ERROR_FRAME,  /* the frame is not found, or its four points cannot be */
} PpPhotoError;

GQuark pp_photo_error_quark (void);
/* PP_PHOTO_ERROR_SIZE: there is no memory for it. */
void   pp_photo_set_too_large (GError **error);

/* How far a step is, 0 to 1. Called in the thread that does the work. */
typedef void (*PpPhotoProgress) (double   share,
                                 gpointer data);

typedef struct _PpPhoto PpPhoto;

/* A PNG, a JPEG, or what the system's loaders add, turned as its camera says (EXIF); what is clear
 * in it is taken as white. `progress` is nullable. Returns (transfer full).
 * Errors: PP_PHOTO_ERROR_FORMAT, _SIZE in one sentence; G_IO_ERROR_CANCELLED. */
PpPhoto      *pp_photo_load         (GBytes          *file,
                                     PpPhotoProgress  progress,
                                     gpointer         data,
                                     GCancellable    *cancellable,
                                     GError         **error);
PpPhoto      *pp_photo_ref          (PpPhoto        *self);
void          pp_photo_unref        (PpPhoto        *self);
guint         pp_photo_get_width    (const PpPhoto  *self);
guint         pp_photo_get_height   (const PpPhoto  *self);
/* Dots to the inch, as the file says; NAN if it does not. Cameras say what means nothing, so this
 * is for scans alone. */
double        pp_photo_get_dpi      (const PpPhoto  *self);
/* Three bytes of sRGB at least a pixel, `step` from one to the next, `stride` from row to row;
 * (transfer none). */
const guchar *pp_photo_get_pixels   (const PpPhoto  *self,
                                     guint          *step,
                                     guint          *stride);
/* Red, green and blue, 0 to 255, straight between the middles of pixels; the nearest ones beyond
 * the border. */
void          pp_photo_sample       (const PpPhoto  *self,
                                     PpPoint         at,
                                     double         *rgb);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPhoto, pp_photo_unref)

G_END_DECLS
