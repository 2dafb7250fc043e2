/* picture.c: the arrangement as a PNG file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/picture.h"

#include "art/colour.h"
#include "art/draw-private.h"
#include "art/taken.h"
#include "panel/i18n.h"

#define MARGIN_SHARE 0.04 /* of the longer side */
#define MAX_PIXELS (256.0 * 1024 * 1024)

/* Background and all that reaches beyond it as it is seen, with the margin. */
static PpBox
get_extent (const PpScene    *scene,
            const double     *heights,
            const double     *tops,
            const PpViewFrom *view)
{
  PpBox background = pp_outline_get_box (scene->background_outline);
  PpBox box = background;

  for (guint i = 0; i < scene->panel->fused->len; i++)
    box = pp_box_union (box, pp_outline_get_box (pp_panel_fused (scene->panel, i)->outline));
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      PpPoint shift = pp_draw_get_shift_of (scene, heights, tops, view, i);

      box = pp_box_union (box, pp_box_move (scene->bodies[i]->box, shift));
    }
  if (view != NULL && view->from_behind)
    {
      double sum = background.x0 + background.x1;

      box = (PpBox) { sum - box.x1, box.y0, sum - box.x0, box.y1 };
    }
  return pp_box_grow (box, MARGIN_SHARE * fmax (pp_box_width (box), pp_box_height (box)));
}

static gboolean
get_height (PpBox    box,
            int      width,
            int     *height,
            GError **error)
{
  double exact = ceil (pp_box_height (box) / pp_box_width (box) * width - PP_TIE);

  if (width < PP_PICTURE_MIN_WIDTH || width > PP_PICTURE_MAX_WIDTH)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                   _("A picture is %d to %d pixels wide; %d is not."), PP_PICTURE_MIN_WIDTH,
                   PP_PICTURE_MAX_WIDTH, width);
      return FALSE;
    }
  if (exact * width > MAX_PIXELS)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                           _("The picture would be too large; choose a smaller width."));
      return FALSE;
    }
  *height = MAX ((int) exact, 1);
  return TRUE;
}

GBytes *
pp_picture_png (const PpScene    *scene,
                PpGallery        *gallery,
                const double     *heights,
                const double     *tops,
                const PpViewFrom *view,
                int               width,
                GError          **error)
{
  g_autoptr (GByteArray) png = g_byte_array_new ();
  PpBox box = get_extent (scene, heights, tops, view);
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;
  int height;

  if (!get_height (box, width, &height, error))
    return NULL;
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cr = cairo_create (surface);
  pp_colour_set (cr, PP_COLOUR_BENCH, 1);
  cairo_paint (cr);
  cairo_scale (cr, width / pp_box_width (box), width / pp_box_width (box));
  cairo_translate (cr, -box.x0, -box.y0);
  pp_draw_scene (cr, scene, gallery, heights, tops, view);
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, pp_taken_add, png);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (g_steal_pointer (&png));
  if (status == CAIRO_STATUS_NO_MEMORY)
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                         _("There is not enough memory for a picture this large; choose a smaller "
                           "width."));
  else
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _("The picture could not be drawn: %s."),
                 cairo_status_to_string (status));
  return NULL;
}
