/* art.c: a piece's drawing: judged, loaded once, drawn to scale.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The library is given the drawing without a base file, so it opens nothing whatever is asked of
 * it; the judge refuses such a drawing before that anyway, because the maker should know.
 */
#include "config.h"

#include "art/art.h"

#include "art/art-judge.h"
#include "panel/i18n.h"

#include <gio/gio.h>
#include <librsvg/rsvg.h>

#define PIXELS_PER_INCH 96.0 /* CSS: a user unit without a viewBox */
#define MM_PER_INCH 25.4
#define MAX_SIDE 10000.0    /* mm */
#define TRIAL_SIDE 64       /* pixels */
#define TRIAL_SECONDS 2.0   /* slow machines draw what is allowed in well under it */

struct _PpArt
{
  gatomicrefcount  count;
  GMutex           drawing; /* a handle is not for two threads at once */
  RsvgHandle      *handle;
  PpBox            box;
  double           unit;    /* mm */
};

G_DEFINE_QUARK (pp-art-error-quark, pp_art_error)

/* mm, or 0 for a length that has no fixed size. */
static double
get_mm (RsvgLength length)
{
  switch (length.unit)
    {
    case RSVG_UNIT_MM:
      return length.length;
    case RSVG_UNIT_CM:
      return length.length * 10;
    case RSVG_UNIT_IN:
      return length.length * MM_PER_INCH;
    case RSVG_UNIT_PERCENT:
    case RSVG_UNIT_PX:
    case RSVG_UNIT_EM:
    case RSVG_UNIT_EX:
    case RSVG_UNIT_PT:
    case RSVG_UNIT_PC:
    default:
      return 0;
    }
}

/* Without a viewBox the user unit is a CSS pixel, and only a size in mm says how large that is. */
static gboolean
measure (PpArt   *self,
         GError **error)
{
  RsvgLength width, height;
  RsvgRectangle view;
  gboolean has_width, has_height, has_view;

  rsvg_handle_get_intrinsic_dimensions (self->handle, &has_width, &width, &has_height, &height,
                                        &has_view, &view);
  self->unit = has_view ? 1 : MM_PER_INCH / PIXELS_PER_INCH;
  if (!has_view && has_width && has_height)
    view = (RsvgRectangle) { 0, 0, get_mm (width), get_mm (height) };
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

static gboolean
render (PpArt    *self,
        cairo_t  *cr,
        GError  **error)
{
  const RsvgRectangle viewport = { self->box.x0 / self->unit, self->box.y0 / self->unit,
                                   pp_box_width (self->box) / self->unit,
                                   pp_box_height (self->box) / self->unit };
  gboolean drawn;

  cairo_save (cr);
  cairo_scale (cr, self->unit, self->unit);
  drawn = rsvg_handle_render_document (self->handle, cr, &viewport, error);
  cairo_restore (cr);
  return drawn;
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
  drawn = render (self, cr, NULL) && cairo_status (cr) == CAIRO_STATUS_SUCCESS;
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
  render (self, cr, NULL);
  g_mutex_unlock (&self->drawing);
}
