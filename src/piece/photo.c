/* photo.c: a photo or scan, opened.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Files come from strangers: the size is known before anything is allocated for it, and a file that
 * was cut off is refused, as half of a piece is worse than none.
 */
#include "config.h"

#include "piece/photo.h"

#include "panel/i18n.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

#define PART (256 * 1024) /* bytes, between two looks whether it is still wanted */
#define PIXELS_OF_NO_SIZE 72 /* to the inch, what is written where nobody knows */

struct _PpPhoto
{
  GdkPixbuf *pixbuf;
  double     dpi;
};

G_DEFINE_QUARK (pp-photo-error-quark, pp_photo_error)

/* What the loader was told of the size. */
typedef struct
{
  int width;
  int height;
} Size;

static gboolean
is_size_good (const Size *size)
{
  return (double) size->width * size->height <= PP_PHOTO_MAX_PIXELS
         && MIN (size->width, size->height) >= PP_PHOTO_LEAST_SIDE;
}

/* A size of nothing makes the loader give up before it allocates. */
static void
size_prepared_cb (GdkPixbufLoader *loader,
                  int              width,
                  int              height,
                  Size            *size)
{
  *size = (Size) { width, height };
  if (!is_size_good (size))
    gdk_pixbuf_loader_set_size (loader, 0, 0);
}

static gboolean
has_behind (const guchar *data,
            gsize         length,
            gsize         from,
            const char   *what,
            gsize         n,
            gsize        *last)
{
  gboolean found = FALSE;

  for (gsize i = from; i + n <= length; i++)
    if (data[i] == (guchar) what[0] && memcmp (data + i, what, n) == 0)
      {
        *last = i;
        found = TRUE;
      }
  return found;
}

/* A PNG or JPEG that has no end. A JPEG may have more behind its end, and its small preview has an
 * end of its own before its scans begin. */
static gboolean
is_cut_off (const guchar *data,
            gsize         length)
{
  gsize scan = 0, end;

  if (length > 16 && memcmp (data, "\x89PNG\r\n\x1a\n", 8) == 0)
    return !has_behind (data, length, 8, "IEND", 4, &end);
  if (length > 16 && memcmp (data, "\xff\xd8\xff", 3) == 0)
    return !has_behind (data, length, 2, "\xff\xda", 2, &scan)
           || !has_behind (data, length, scan, "\xff\xd9", 2, &end);
  return FALSE;
}

/* Of several frames, each with a size of its own that the loader takes as it comes: no photo. */
static gboolean
is_gif (const guchar *data,
        gsize         length)
{
  return length > 4 && memcmp (data, "GIF8", 4) == 0;
}

/* Drawings have no pixels, and a loader for them may read other files. */
static gboolean
is_drawing (GdkPixbufLoader *loader)
{
  GdkPixbufFormat *format = gdk_pixbuf_loader_get_format (loader);

  return format != NULL && gdk_pixbuf_format_is_scalable (format);
}

/* What is no picture, or no whole one, gives NULL without an error. */
static GdkPixbuf *
decode (const guchar    *data,
        gsize            length,
        Size            *size,
        PpPhotoProgress  progress,
        gpointer         progress_data,
        GCancellable    *cancellable,
        GError         **error)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new ();
  gboolean is_good = TRUE;
  GdkPixbuf *pixbuf;

  g_signal_connect (loader, "size-prepared", G_CALLBACK (size_prepared_cb), size);
  for (gsize from = 0; is_good && from < length; from += PART)
    {
      if (progress != NULL)
        progress ((double) from / (double) length, progress_data);
      is_good = !g_cancellable_set_error_if_cancelled (cancellable, error)
                && gdk_pixbuf_loader_write (loader, data + from, MIN (PART, length - from), NULL)
                && !is_drawing (loader);
    }
  /* of a small file the loader knows the kind only at its end */
  if (!gdk_pixbuf_loader_close (loader, NULL) || !is_good || is_drawing (loader))
    return NULL;
  pixbuf = gdk_pixbuf_loader_get_pixbuf (loader);
  return pixbuf != NULL ? gdk_pixbuf_apply_embedded_orientation (pixbuf) : NULL;
}

static double
read_dpi (GdkPixbuf *pixbuf)
{
  const char *across = gdk_pixbuf_get_option (pixbuf, "x-dpi");
  double dpi = across != NULL ? g_ascii_strtod (across, NULL) : 0;

  return dpi > PIXELS_OF_NO_SIZE ? dpi : (double) NAN;
}

void
pp_photo_set_too_large (GError **error)
{
  g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_SIZE,
                       _("The picture is too large for the memory of this machine."));
}

/* (transfer full), or NULL where there is no memory for it */
static GdkPixbuf *
lay_on_white (GdkPixbuf *clear)
{
  GdkPixbuf *laid;

  if (!gdk_pixbuf_get_has_alpha (clear))
    return clear;
  laid = gdk_pixbuf_composite_color_simple (clear, gdk_pixbuf_get_width (clear),
                                            gdk_pixbuf_get_height (clear), GDK_INTERP_NEAREST, 255,
                                            16, 0xffffff, 0xffffff);
  g_object_unref (clear);
  return laid;
}

PpPhoto *
pp_photo_load (GBytes          *file,
               PpPhotoProgress  progress,
               gpointer         data,
               GCancellable    *cancellable,
               GError         **error)
{
  gsize length;
  const guchar *bytes = g_bytes_get_data (file, &length);
  Size size = { 0, 0 };
  GdkPixbuf *pixbuf = NULL;
  GError *stopped = NULL;
  PpPhoto *self;
  double dpi;

  if (length > 0 && !is_cut_off (bytes, length) && !is_gif (bytes, length))
    pixbuf = decode (bytes, length, &size, progress, data, cancellable, &stopped);
  if (stopped != NULL)
    {
      g_propagate_error (error, stopped);
      return NULL;
    }
  if (size.width > 0 && !is_size_good (&size))
    {
      g_clear_object (&pixbuf);
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_SIZE,
                           _("The picture must have at least 32 pixels a side and at most "
                             "120 million pixels."));
      return NULL;
    }
  if (pixbuf == NULL)
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FORMAT,
                           _("This is no whole picture that can be opened here; a PNG or a JPEG "
                             "can be."));
      return NULL;
    }
  dpi = read_dpi (pixbuf);
  pixbuf = lay_on_white (pixbuf);
  if (pixbuf == NULL)
    {
      pp_photo_set_too_large (error);
      return NULL;
    }
  self = g_atomic_rc_box_new (PpPhoto);
  self->dpi = dpi;
  self->pixbuf = pixbuf;
  return self;
}

PpPhoto *
pp_photo_ref (PpPhoto *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear (gpointer data)
{
  PpPhoto *self = data;

  g_object_unref (self->pixbuf);
}

void
pp_photo_unref (PpPhoto *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear);
}

guint
pp_photo_get_width (const PpPhoto *self)
{
  return (guint) gdk_pixbuf_get_width (self->pixbuf);
}

guint
pp_photo_get_height (const PpPhoto *self)
{
  return (guint) gdk_pixbuf_get_height (self->pixbuf);
}

double
pp_photo_get_dpi (const PpPhoto *self)
{
  return self->dpi;
}

const guchar *
pp_photo_get_pixels (const PpPhoto *self,
                     guint         *step,
                     guint         *stride)
{
  *step = (guint) gdk_pixbuf_get_n_channels (self->pixbuf);
  *stride = (guint) gdk_pixbuf_get_rowstride (self->pixbuf);
  return gdk_pixbuf_read_pixels (self->pixbuf);
}

void
pp_photo_sample (const PpPhoto *self,
                 PpPoint        at,
                 double        *rgb)
{
  guint step, stride;
  const guchar *pixels = pp_photo_get_pixels (self, &step, &stride);
  double x = CLAMP (at.x - 0.5, 0, pp_photo_get_width (self) - 1.001);
  double y = CLAMP (at.y - 0.5, 0, pp_photo_get_height (self) - 1.001);
  guint column = (guint) x, row = (guint) y;
  double right = x - column, down = y - row;
  const guchar *upper = pixels + (gsize) row * stride + (gsize) column * step;
  const guchar *lower = upper + stride;

  for (guint c = 0; c < 3; c++)
    rgb[c] = (upper[c] * (1 - right) + upper[step + c] * right) * (1 - down)
             + (lower[c] * (1 - right) + lower[step + c] * right) * down;
}
