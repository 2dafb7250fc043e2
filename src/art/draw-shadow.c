/* draw-shadow.c: the soft shadow of a piece, light from the upper left.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The higher a piece stands the farther its shadow falls and the softer it is. On a raster the
 * outline is blurred by three box passes, which is near a Gaussian; paper and recordings get a
 * few outlines one in another, so that they stay free of pictures.
 */
#include "config.h"

#include "art/colour.h"
#include "art/draw.h"

#define PASSES 3
#define SOFTNESS 0.9           /* mm, of a piece that lies flat */
#define SOFTNESS_PER_MM 0.08
#define FALL_X 0.16            /* mm a mm of height */
#define FALL_Y 0.26
#define FALL_LEAST 0.35        /* mm */
#define MAX_HEIGHT 60.0        /* mm: beyond this a shadow would lose its piece */
#define DARKNESS 0.42
#define RINGS 4
#define MAX_BOX_RADIUS 100     /* pixels */
#define MAX_PIXELS 67108864.0

/* One pass along one line of bytes, `step` apart; `line` has room for `n`. */
static void
box_pass (guchar *bytes,
          int     n,
          gsize   step,
          int     radius,
          guchar *line)
{
  guint window = 2 * (guint) radius + 1;
  guint sum = 0;

  for (int i = 0; i < n; i++)
    line[i] = bytes[(gsize) i * step];
  for (int i = 0; i <= MIN (radius, n - 1); i++)
    sum += line[i];
  for (int i = 0; i < n; i++)
    {
      bytes[(gsize) i * step] = (guchar) ((sum + window / 2) / window);
      if (i + radius + 1 < n)
        sum += line[i + radius + 1];
      if (i - radius >= 0)
        sum -= line[i - radius];
    }
}

static void
blur (cairo_surface_t *mask,
      int              radius)
{
  int width = cairo_image_surface_get_width (mask);
  int height = cairo_image_surface_get_height (mask);
  gsize stride = (gsize) cairo_image_surface_get_stride (mask);
  g_autofree guchar *line = g_malloc ((gsize) MAX (width, height));
  guchar *bytes;

  cairo_surface_flush (mask);
  bytes = cairo_image_surface_get_data (mask);
  for (int pass = 0; pass < PASSES; pass++)
    {
      for (int y = 0; y < height; y++)
        box_pass (bytes + (gsize) y * stride, width, 1, radius, line);
      for (int x = 0; x < width; x++)
        box_pass (bytes + x, height, stride, radius, line);
    }
  cairo_surface_mark_dirty (mask);
}

/* The path's box in whole pixels with room for the blur, no larger than what can be seen of it;
 * FALSE if that is nothing. */
static gboolean
get_pixels (cairo_t               *cr,
            int                    room,
            cairo_rectangle_int_t *pixels)
{
  double x0, y0, x1, y1, cx0, cy0, cx1, cy1;

  cairo_save (cr);
  cairo_identity_matrix (cr);
  cairo_path_extents (cr, &x0, &y0, &x1, &y1);
  cairo_clip_extents (cr, &cx0, &cy0, &cx1, &cy1);
  cairo_restore (cr);
  x0 = floor (fmax (x0 - room, cx0 - 2 * room));
  y0 = floor (fmax (y0 - room, cy0 - 2 * room));
  x1 = ceil (fmin (x1 + room, cx1 + 2 * room));
  y1 = ceil (fmin (y1 + room, cy1 + 2 * room));
  if (!(x1 > x0 && y1 > y0) || (x1 - x0) * (y1 - y0) > MAX_PIXELS)
    return FALSE;
  *pixels = (cairo_rectangle_int_t) { (int) x0, (int) y0, (int) (x1 - x0), (int) (y1 - y0) };
  return TRUE;
}

static void
draw_blurred (cairo_t         *cr,
              const PpOutline *outline,
              double           softness)
{
  cairo_matrix_t matrix;
  cairo_rectangle_int_t pixels;
  cairo_surface_t *mask;
  cairo_t *on_mask;
  int radius;

  cairo_get_matrix (cr, &matrix);
  radius = (int) round (softness * sqrt (fabs (matrix.xx * matrix.yy - matrix.xy * matrix.yx)));
  radius = CLAMP (radius, 1, MAX_BOX_RADIUS);
  pp_draw_outline_path (cr, outline);
  if (!get_pixels (cr, PASSES * radius + 1, &pixels))
    {
      cairo_new_path (cr);
      return;
    }
  cairo_new_path (cr);
  mask = cairo_image_surface_create (CAIRO_FORMAT_A8, pixels.width, pixels.height);
  on_mask = cairo_create (mask);
  cairo_translate (on_mask, -pixels.x, -pixels.y);
  cairo_transform (on_mask, &matrix);
  pp_draw_outline_path (on_mask, outline);
  cairo_set_fill_rule (on_mask, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_fill (on_mask);
  cairo_destroy (on_mask);
  blur (mask, radius);
  cairo_identity_matrix (cr);
  pp_colour_set (cr, PP_COLOUR_SHADOW, DARKNESS);
  cairo_mask_surface (cr, mask, pixels.x, pixels.y);
  cairo_surface_destroy (mask);
}

/* Each ring is painted whole at a part of the darkness, the widest first. */
static void
draw_rings (cairo_t         *cr,
            const PpOutline *outline,
            double           softness)
{
  double alpha = 1 - pow (1 - DARKNESS, 1.0 / RINGS);

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  for (int ring = RINGS - 1; ring >= 0; ring--)
    {
      cairo_push_group (cr);
      pp_colour_set (cr, PP_COLOUR_SHADOW, 1);
      pp_draw_outline_path (cr, outline);
      cairo_fill_preserve (cr);
      cairo_set_line_width (cr, 2 * softness * ring * 1.6 / RINGS);
      if (ring > 0)
        cairo_stroke (cr);
      cairo_new_path (cr);
      cairo_pop_group_to_source (cr);
      cairo_paint_with_alpha (cr, alpha);
    }
}

static double
get_softness (double height)
{
  return SOFTNESS + SOFTNESS_PER_MM * CLAMP (height, 0, MAX_HEIGHT);
}

double
pp_draw_get_shadow_reach (double height)
{
  return FALL_LEAST + FALL_Y * CLAMP (height, 0, MAX_HEIGHT) + PASSES * get_softness (height);
}

void
pp_draw_shadow (cairo_t      *cr,
                const PpBody *body,
                double        height)
{
  double over = CLAMP (height, 0, MAX_HEIGHT);
  double softness = get_softness (height);

  cairo_save (cr);
  cairo_translate (cr, FALL_LEAST + FALL_X * over, FALL_LEAST + FALL_Y * over);
  if (cairo_surface_get_type (cairo_get_group_target (cr)) == CAIRO_SURFACE_TYPE_IMAGE)
    draw_blurred (cr, body->outline, softness);
  else
    draw_rings (cr, body->outline, softness);
  cairo_restore (cr);
}
