/* background.c: the background's shape: exact area and centroid, and a polygon for overlay.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The polygon's corners lie on the curve and its sides within PP_CURVE_TOLERANCE of it; what has a
 * closed formula does not go through the polygon.
 */
#include "shape/background.h"

#include "panel/tolerance.h"
#include "shape/polygon.h"

/* Sides for a quarter turn: a chord of an arc with half axes up to `reach`, taken in equal steps of
 * the parameter, stays within reach·step²/8 of it. */
static guint
count_steps (double reach)
{
  double step = sqrt (8 * PP_CURVE_TOLERANCE / fmax (reach, PP_CURVE_TOLERANCE));

  return MAX (1, (guint) ceil (G_PI_2 / step));
}

/* An arc of the ellipse with half axes (a, b) about `centre`, from angle `start` (radians) over
 * `quarters` of a turn, clockwise as seen, both ends included; so its extremes are corners. */
static void
add_arc (GArray *points,
         PpPoint centre,
         double  a,
         double  b,
         double  start,
         guint   quarters)
{
  guint n = quarters * count_steps (fmax (a, b));

  for (guint i = 0; i <= n; i++)
    {
      double t = start + quarters * G_PI_2 * i / n;
      PpPoint p = { centre.x + a * cos (t), centre.y + b * sin (t) };

      g_array_append_val (points, p);
    }
}

static void
add_rectangle (GArray *points,
               double  width,
               double  height,
               double  radius)
{
  const PpPoint corners[] = { { 0, 0 }, { width, 0 }, { width, height }, { 0, height } };
  const PpPoint inward[] = { { 1, 1 }, { -1, 1 }, { -1, -1 }, { 1, -1 } };

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      PpPoint centre = { corners[i].x + inward[i].x * radius, corners[i].y + inward[i].y * radius };

      if (radius > 0)
        add_arc (points, centre, radius, radius, G_PI + i * G_PI_2, 1);
      else
        g_array_append_val (points, corners[i]);
    }
}

static void
add_arch (GArray *points,
          double  width,
          double  height)
{
  const PpPoint feet[] = { { width, height }, { 0, height } };

  add_arc (points, (PpPoint) { width / 2, height / 4 }, width / 2, height / 4, G_PI, 2);
  g_array_append_vals (points, feet, G_N_ELEMENTS (feet));
}

PpOutline *
pp_background_make_outline (const PpBackground *background)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  double width = background->width, height = background->height;
  PpPoint middle = { width / 2, height / 2 };

  switch (background->shape)
    {
    case PP_SHAPE_FREE:
      return pp_outline_ref (background->outline);
    case PP_SHAPE_RECTANGLE:
      add_rectangle (points, width, height, background->corner_radius);
      break;
    case PP_SHAPE_ELLIPSE:
      add_arc (points, middle, middle.x, middle.y, 0, 4);
      g_array_set_size (points, points->len - 1);
      break;
    case PP_SHAPE_ARCH:
      add_arch (points, width, height);
      break;
    }
  return pp_outline_new_ring ((const PpPoint *) points->data, points->len);
}

double
pp_background_get_area (const PpBackground *self)
{
  double box = self->width * self->height;

  switch (self->shape)
    {
    case PP_SHAPE_FREE:
      return pp_outline_area (self->outline);
    case PP_SHAPE_RECTANGLE:
      return box - (4 - G_PI) * self->corner_radius * self->corner_radius;
    case PP_SHAPE_ELLIPSE:
      return G_PI / 4 * box;
    case PP_SHAPE_ARCH:
      return box * (3.0 / 4 + G_PI / 16);
    }
  g_return_val_if_reached (0);
}

/* Of the arch: a rectangle of 3/4 of the height under half an ellipse, whose centroid stands
 * 4/(3π) of its half axis above its base. */
static double
arch_centroid_y (double height)
{
  double rectangle = 3.0 / 4, cap = G_PI / 16;
  double rectangle_y = 5 * height / 8;
  double cap_y = height / 4 - 4 * (height / 4) / (3 * G_PI);

  return (rectangle * rectangle_y + cap * cap_y) / (rectangle + cap);
}

PpPoint
pp_background_get_centroid (const PpBackground *self)
{
  switch (self->shape)
    {
    case PP_SHAPE_FREE:
      return pp_outline_centroid (self->outline);
    case PP_SHAPE_RECTANGLE:
    case PP_SHAPE_ELLIPSE:
      return (PpPoint) { self->width / 2, self->height / 2 };
    case PP_SHAPE_ARCH:
      return (PpPoint) { self->width / 2, arch_centroid_y (self->height) };
    }
  g_return_val_if_reached (((PpPoint) { 0, 0 }));
}
