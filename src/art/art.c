/* art.c: a piece's drawing: judged, loaded once, drawn to scale.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The library is given the drawing without a base file, so it opens nothing whatever is asked of
 * it; the judge refuses such a drawing before that anyway, because the maker should know.
 *
 * The drawing is first recorded upright and unmirrored, and the recording drawn wherever it is
 * wanted: librsvg 2.54 sizes its sheets for opacity wrongly under a turn or mirror ("InvalidSize")
 * and leaves the context unbalanced then. Only those sheets are raster, so a recording is made
 * for a scale, in steps of two, and kept until another scale is asked for.
 */
#include "config.h"

#include "art/art.h"

#include "art/art-judge.h"
#include "art/svg-length.h"
#include "panel/i18n.h"

#include <gio/gio.h>
#include <librsvg/rsvg.h>

#define PIXELS_PER_INCH 96.0 /* CSS: of a user unit without a viewBox; librsvg's own is 90 */
#define MAX_SIDE 10000.0    /* mm */
#define TRIAL_SIDE 64       /* pixels */
#define PAPER_SCALE 16.0    /* dots a mm of what cannot be vector on paper, 406 dpi */
#define LEAST_SCALE 0.25
#define MOST_PIXELS 4096.0  /* a side of a recording */
#define TRIAL_SECONDS 2.0   /* slow machines draw what is allowed in well under it */

struct _PpArt
{
  gatomicrefcount  count;
  GMutex           drawing;   /* guards handle and recording */
  RsvgHandle      *handle;
  cairo_surface_t *recording; /* nullable */
  double           scale;     /* of the recording: its units a mm */
  PpBox            box;
};

G_DEFINE_QUARK (pp-art-error-quark, pp_art_error)

/* Without a viewBox the drawing begins at 0, 0 and is as large as it says, if in mm. */
static gboolean
measure (PpArt   *self,
         GError **error)
{
  RsvgLength width, height;
  RsvgRectangle view;
  gboolean has_width, has_height, has_view;

  rsvg_handle_get_intrinsic_dimensions (self->handle, &has_width, &width, &has_height, &height,
                                        &has_view, &view);
  if (!has_view && has_width && has_height)
    view = (RsvgRectangle) { 0, 0, pp_svg_length_to_mm (width), pp_svg_length_to_mm (height) };
  else if (!has_view)
    view = (RsvgRectangle) { 0 };
  self->box = (PpBox) { view.x, view.y, view.x + view.width, view.y + view.height };
  if (view.width > 0 && view.height > 0 && fabs (view.x) < MAX_SIDE && fabs (view.y) < MAX_SIDE
      && view.width <= MAX_SIDE && view.height <= MAX_SIDE)
    return TRUE;
  g_set_error_literal (error, PP_ART_ERROR, PP_ART_ERROR_NOT_SVG,
                       _("The drawing does not say how large it is: it needs a viewBox in "
                         "millimetres."));
  return FALSE;
}

/* One unit of `cr` is 1 mm and its origin the corner of the box. */
static gboolean
render (PpArt   *self,
        cairo_t *cr)
{
  const RsvgRectangle viewport = { 0, 0, pp_box_width (self->box), pp_box_height (self->box) };

  return rsvg_handle_render_document (self->handle, cr, &viewport, NULL)
         && cairo_status (cr) == CAIRO_STATUS_SUCCESS;
}

static gboolean
record (PpArt  *self,
        double  scale)
{
  const cairo_rectangle_t extents = { 0, 0, pp_box_width (self->box) * scale,
                                      pp_box_height (self->box) * scale };
  cairo_t *cr;
  gboolean drawn;

  if (self->recording != NULL && self->scale >= scale && self->scale <= scale)
    return TRUE;
  g_clear_pointer (&self->recording, cairo_surface_destroy);
  self->recording = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &extents);
  self->scale = scale;
  cr = cairo_create (self->recording);
  cairo_scale (cr, scale, scale);
  drawn = render (self, cr);
  cairo_destroy (cr);
  if (!drawn)
    g_clear_pointer (&self->recording, cairo_surface_destroy);
  return drawn;
}

static gboolean
draw (PpArt   *self,
      cairo_t *cr,
      double   scale)
{
  if (!record (self, scale))
    return FALSE;
  cairo_save (cr);
  cairo_translate (cr, self->box.x0, self->box.y0);
  cairo_scale (cr, 1 / scale, 1 / scale);
  cairo_set_source_surface (cr, self->recording, 0, 0);
  cairo_paint (cr);
  cairo_restore (cr);
  return cairo_status (cr) == CAIRO_STATUS_SUCCESS;
}

static double
pick_scale (const PpArt *self,
            cairo_t     *cr)
{
  double side = fmax (pp_box_width (self->box), pp_box_height (self->box));
  cairo_matrix_t matrix;
  double asked = PAPER_SCALE;

  if (cairo_surface_get_type (cairo_get_group_target (cr)) == CAIRO_SURFACE_TYPE_IMAGE)
    {
      cairo_get_matrix (cr, &matrix);
      asked = sqrt (fabs (matrix.xx * matrix.yy - matrix.xy * matrix.yx));
      asked = fmax (exp2 (ceil (log2 (fmax (asked, LEAST_SCALE)))), LEAST_SCALE);
    }
  return fmin (asked, MOST_PIXELS / side);
}

/* Some faults show only in the drawing. */
static gboolean
try_once (PpArt   *self,
          GError **error)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, TRIAL_SIDE,
                                                         TRIAL_SIDE);
  cairo_t *cr = cairo_create (surface);
  double scale = TRIAL_SIDE / fmax (pp_box_width (self->box), pp_box_height (self->box));
  gint64 start = g_get_monotonic_time ();
  gboolean drawn, in_time;

  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -self->box.x0, -self->box.y0);
  drawn = draw (self, cr, scale);
  in_time = (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC <= TRIAL_SECONDS;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  if (!drawn || !in_time)
    g_set_error_literal (error, PP_ART_ERROR, PP_ART_ERROR_TOO_MUCH,
                         _("The drawing takes too long to draw."));
  return drawn && in_time;
}

PpArt *
pp_art_new (GBytes  *svg,
            GError **error)
{
  g_autoptr (GBytes) judged = NULL;
  g_autoptr (GInputStream) stream = NULL;
  g_autoptr (PpArt) self = NULL;

  g_return_val_if_fail (svg != NULL, NULL);

  judged = pp_art_judge (svg, error);
  if (judged == NULL)
    return NULL;
  self = g_new0 (PpArt, 1);
  g_atomic_ref_count_init (&self->count);
  g_mutex_init (&self->drawing);
  stream = g_memory_input_stream_new_from_bytes (judged);
  self->handle = rsvg_handle_new_from_stream_sync (stream, NULL, RSVG_HANDLE_FLAGS_NONE, NULL,
                                                   NULL);
  if (self->handle == NULL)
    {
      g_set_error_literal (error, PP_ART_ERROR, PP_ART_ERROR_NOT_SVG,
                           _("The drawing is not well-formed SVG."));
      return NULL;
    }
  rsvg_handle_set_dpi (self->handle, PIXELS_PER_INCH);
  if (!measure (self, error) || !try_once (self, error))
    return NULL;
  return g_steal_pointer (&self);
}

PpArt *
pp_art_ref (PpArt *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_atomic_ref_count_inc (&self->count);
  return self;
}

void
pp_art_unref (PpArt *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->count))
    return;
  g_clear_object (&self->handle);
  g_clear_pointer (&self->recording, cairo_surface_destroy);
  g_mutex_clear (&self->drawing);
  g_free (self);
}

PpBox
pp_art_get_box (const PpArt *self)
{
  return self->box;
}

void
pp_art_draw (PpArt   *self,
             cairo_t *cr)
{
  g_return_if_fail (self != NULL && cr != NULL);

  g_mutex_lock (&self->drawing);
  draw (self, cr, pick_scale (self, cr));
  g_mutex_unlock (&self->drawing);
}
