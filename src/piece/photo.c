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

struct _PpPhoto
{
  GdkPixbuf *pixbuf;
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

/* "png", "jpeg", or NULL for what is neither or has no end. A JPEG may have more behind its end,
 * and its small preview has an end of its own before its scans begin. */
static const char *
get_format (const guchar *data,
            gsize         length)
{
  gsize scan = 0, end;

  if (length > 16 && memcmp (data, "\x89PNG\r\n\x1a\n", 8) == 0)
    return has_behind (data, length, 8, "IEND", 4, &end) ? "png" : NULL;
  if (length > 16 && memcmp (data, "\xff\xd8\xff", 3) == 0
      && has_behind (data, length, 2, "\xff\xda", 2, &scan)
      && has_behind (data, length, scan, "\xff\xd9", 2, &end))
    return "jpeg";
  return NULL;
}

static GdkPixbuf *
decode (const guchar *data,
        gsize         length,
        const char   *format,
        Size         *size)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new_with_type (format, NULL);
  GdkPixbuf *pixbuf;

  if (loader == NULL)
    return NULL;
  g_signal_connect (loader, "size-prepared", G_CALLBACK (size_prepared_cb), size);
  if (!gdk_pixbuf_loader_write (loader, data, length, NULL))
    {
      gdk_pixbuf_loader_close (loader, NULL);
      return NULL;
    }
  if (!gdk_pixbuf_loader_close (loader, NULL))
    return NULL;
  pixbuf = gdk_pixbuf_loader_get_pixbuf (loader);
  return pixbuf != NULL ? gdk_pixbuf_apply_embedded_orientation (pixbuf) : NULL;
}

PpPhoto *
pp_photo_load (GBytes  *file,
               GError **error)
{
  gsize length;
  const guchar *data = g_bytes_get_data (file, &length);
  const char *format = get_format (data, length);
  Size size = { 0, 0 };
  GdkPixbuf *pixbuf;
  PpPhoto *self;

  pixbuf = format != NULL ? decode (data, length, format, &size) : NULL;
  if (pixbuf == NULL && size.width > 0 && !is_size_good (&size))
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_SIZE,
                           _("The picture must have at least 32 pixels a side and at most "
                             "120 million pixels."));
      return NULL;
    }
  if (pixbuf == NULL)
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FORMAT,
                           _("This is no whole PNG or JPEG picture."));
      return NULL;
    }
  if (gdk_pixbuf_get_has_alpha (pixbuf))
    {
      GdkPixbuf *clear = pixbuf;

      pixbuf = gdk_pixbuf_composite_color_simple (
        clear, gdk_pixbuf_get_width (clear), gdk_pixbuf_get_height (clear), GDK_INTERP_NEAREST, 255,
        16, 0xffffff, 0xffffff);
      g_object_unref (clear);
    }
  self = g_atomic_rc_box_new (PpPhoto);
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
