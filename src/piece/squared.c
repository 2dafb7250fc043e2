/* squared.c: a photo as seen from straight above, in mm.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/squared.h"

#include "panel/i18n.h"
#include "panel/record.h"
#include "piece/discs.h"
#include "piece/srgb.h"

#define USUAL_DOTS 6.0   /* a mm */
#define MOST_DOTS 3e6    /* in all */
#define DISC_ROOM (PP_DISCS_ACROSS / 2 + 1) /* mm from a disc's middle: nothing is found there */
#define MOST_SAMPLES 4   /* along a side of a dot */

/* Of a byte. */
static const float *
get_curve (void)
{
  static float curve[256];
  static gsize is_made;

  if (g_once_init_enter (&is_made))
    {
      for (guint i = 0; i < 256; i++)
        curve[i] = (float) pp_srgb_decode (i / 255.0);
      g_once_init_leave (&is_made, 1);
    }
  return curve;
}

/* The photo as it is looked at, dot after dot. */
typedef struct
{
  const float  *curve;
  const guchar *pixels;
  guint         step;
  guint         stride;
  double        width;
  double        height;
  guint         n; /* samples along a side of a dot */
} Look;

static Look
begin_look (const PpSquared *self)
{
  Look look = { .curve = get_curve (), .width = pp_photo_get_width (self->photo),
                .height = pp_photo_get_height (self->photo),
                .n = (guint) CLAMP (lround (self->fineness / self->dots), 1, MOST_SAMPLES) };

  look.pixels = pp_photo_get_pixels (self->photo, &look.step, &look.stride);
  return look;
}

/* The mean of a dot's samples; FALSE if one lies outside the photo. Along a row of them the plane's
 * map has sums that grow evenly. */
static gboolean
see (const PpSquared *self,
     const Look      *look,
     guint            x,
     guint            y,
     float           *rgb)
{
  const double *m = self->plane.m;
  double by = 1 / (look->n * self->dots);
  double left = self->box.x0 + x / self->dots + by / 2;
  double top = self->box.y0 + y / self->dots + by / 2;
  float sum[3] = { 0, 0, 0 };

  for (guint j = 0; j < look->n; j++, top += by)
    {
      double u = m[0] * left + m[1] * top + m[2];
      double v = m[3] * left + m[4] * top + m[5];
      double w = m[6] * left + m[7] * top + m[8];

      for (guint i = 0; i < look->n; i++, u += m[0] * by, v += m[3] * by, w += m[6] * by)
        {
          double right = u / w, down = v / w;
          const guchar *pixel;

          if (!(right >= 0 && down >= 0 && right < look->width && down < look->height))
            return FALSE;
          pixel = look->pixels + (gsize) down * look->stride + (gsize) right * look->step;
          for (guint c = 0; c < 3; c++)
            sum[c] += look->curve[pixel[c]];
        }
    }
  for (guint c = 0; c < 3; c++)
    rgb[c] = sum[c] / (float) (look->n * look->n);
  return TRUE;
}

static gboolean
is_disc (const PpSquared *self,
         gboolean         has_frame,
         double           x,
         double           y)
{
  double right = fmin (x, self->width - x) / self->dots;
  double down = fmin (y, self->height - y) / self->dots;

  return has_frame && right * right + down * down < DISC_ROOM * DISC_ROOM;
}

static gboolean
fill (PpSquared       *self,
      gboolean         has_frame,
      PpPhotoProgress  progress,
      gpointer         data,
      GCancellable    *cancellable,
      GError         **error)
{
  const Look look = begin_look (self);

  for (guint y = 0; y < self->height; y++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      if (progress != NULL && y % 64 == 0)
        progress ((double) y / self->height, data);
      for (guint x = 0; x < self->width; x++)
        {
          float *rgb = self->rgb + 3 * ((gsize) y * self->width + x);

          if (is_disc (self, has_frame, x, y) || !see (self, &look, x, y, rgb))
            rgb[0] = rgb[1] = rgb[2] = -1;
        }
    }
  return TRUE;
}

static double
get_fineness (const PpSheetPlane *plane,
              PpPoint        middle)
{
  PpPoint at = pp_plane_map (plane, middle);
  PpPoint right = pp_plane_map (plane, (PpPoint) { middle.x + 1, middle.y });
  PpPoint down = pp_plane_map (plane, (PpPoint) { middle.x, middle.y + 1 });

  return sqrt (fabs (pp_point_cross (at, right, down)));
}

static PpSquared *
make (PpPhoto         *photo,
      const PpSheetPlane *plane,
      PpBox            box,
      gboolean         has_frame,
      PpPhotoProgress  progress,
      gpointer         data,
      GCancellable    *cancellable,
      GError         **error)
{
  g_autoptr (PpSquared) self = g_atomic_rc_box_new0 (PpSquared);
  double most = sqrt (MOST_DOTS / (pp_box_width (box) * pp_box_height (box)));

  self->photo = pp_photo_ref (photo);
  self->plane = *plane;
  self->box = box;
  self->fineness = get_fineness (plane, pp_box_middle (box));
  self->dots = fmin (fmin (USUAL_DOTS, most), self->fineness);
  self->width = (guint) floor (pp_box_width (box) * self->dots);
  self->height = (guint) floor (pp_box_height (box) * self->dots);
  if (self->fineness * PP_MM_PER_INCH < PP_SQUARED_LEAST_DPI || self->width < PP_PHOTO_LEAST_SIDE
      || self->height < PP_PHOTO_LEAST_SIDE
      || fmax (pp_box_width (box), pp_box_height (box)) > PP_BACKGROUND_MAX_SIDE)
    {
      g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_SIZE,
                           _("By these measures the picture shows too much or too little: it must "
                             "have at least one pixel to a millimetre, and show at most three "
                             "metres."));
      return NULL;
    }
  self->rgb = g_new (float, 3 * (gsize) self->width * self->height);
  return fill (self, has_frame, progress, data, cancellable, error) ? g_steal_pointer (&self)
         : NULL;
}

static PpSquared *
refuse (const char *sentence,
        GError    **error)
{
  g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FRAME, sentence);
  return NULL;
}

PpSquared *
pp_squared_by_frame (PpPhoto         *photo,
                     const PpPoint    corners[4],
                     double           width,
                     double           height,
                     PpPhotoProgress  progress,
                     gpointer         data,
                     GCancellable    *cancellable,
                     GError         **error)
{
  const PpPoint sheet[4] = { { 0, 0 }, { width, 0 }, { width, height }, { 0, height } };
  PpSheetPlane plane, back;

  if (!(width > 0 && height > 0 && fmax (width, height) <= PP_BACKGROUND_MAX_SIDE))
    return refuse (_("The frame must measure from 1 to 3000 mm each way."), error);
  for (guint i = 0; i < 4; i++)
    if (!(pp_point_cross (corners[i], corners[(i + 1) % 4], corners[(i + 2) % 4]) > 0))
      return refuse (_("The four points must go clockwise round a frame, from its upper left."),
                     error);
  if (!pp_plane_fit (sheet, corners, &plane) || !pp_plane_invert (&plane, &back))
    return refuse (_("The four points must go clockwise round a frame, from its upper left."),
                   error);
  return make (photo, &plane, (PpBox) { 0, 0, width, height }, TRUE, progress, data, cancellable,
               error);
}

static PpSquared *
by_scale (PpPhoto         *photo,
          double           dots,
          PpPhotoProgress  progress,
          gpointer         data,
          GCancellable    *cancellable,
          GError         **error)
{
  const PpSheetPlane plane = { { dots, 0, 0, 0, dots, 0, 0, 0, 1 } };
  PpBox box = { 0, 0, pp_photo_get_width (photo) / dots, pp_photo_get_height (photo) / dots };

  return make (photo, &plane, box, FALSE, progress, data, cancellable, error);
}

PpSquared *
pp_squared_by_dpi (PpPhoto         *photo,
                   double           dpi,
                   PpPhotoProgress  progress,
                   gpointer         data,
                   GCancellable    *cancellable,
                   GError         **error)
{
  if (!(dpi >= PP_SQUARED_LEAST_DPI && dpi <= PP_SQUARED_MOST_DPI))
    return refuse (_("A scan has from 25 to 4800 dots to the inch."), error);
  return by_scale (photo, dpi / PP_MM_PER_INCH, progress, data, cancellable, error);
}

PpSquared *
pp_squared_by_length (PpPhoto         *photo,
                      PpPoint          from,
                      PpPoint          to,
                      double           length,
                      PpPhotoProgress  progress,
                      gpointer         data,
                      GCancellable    *cancellable,
                      GError         **error)
{
  double pixels = pp_point_distance (from, to);

  if (!(length > 0 && length <= PP_BACKGROUND_MAX_SIDE && pixels >= 1 && isfinite (pixels)))
    return refuse (_("Two points apart from each other are needed, and how many mm lie between "
                     "them."), error);
  return by_scale (photo, pixels / length, progress, data, cancellable, error);
}

PpSquared *
pp_squared_ref (PpSquared *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear (gpointer data)
{
  PpSquared *self = data;

  pp_photo_unref (self->photo);
  g_free (self->rgb);
}

void
pp_squared_unref (PpSquared *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear);
}
