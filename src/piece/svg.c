/* svg.c: writes the art of a made piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/svg.h"

#define UNITS_PER_MM 20

struct _PpSvg
{
  GString *defs;
  GString *body;
  guint    n_gradients;
  double   opacity;
};

PpSvg *
pp_svg_new (double opacity)
{
  PpSvg *self = g_new0 (PpSvg, 1);

  self->defs = g_string_new (NULL);
  self->body = g_string_new (NULL);
  self->opacity = opacity;
  return self;
}

void
pp_svg_free (PpSvg *self)
{
  if (self == NULL)
    return;
  g_string_free (self->defs, TRUE);
  g_string_free (self->body, TRUE);
  g_free (self);
}

static long
units (double mm)
{
  return lround (mm * UNITS_PER_MM);
}

/* To a hundredth and with a point whatever the locale. */
static void
append_number (GString    *text,
               const char *before,
               double      number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (digits, sizeof digits, "%.4g", round (number * 100) / 100);
  g_string_append_printf (text, "%s%s", before, digits);
}

static guint
append_stops (PpSvg        *self,
              const char   *closing,
              const PpStop *stops,
              guint         n_stops)
{
  for (guint i = 0; i < n_stops; i++)
    {
      append_number (self->defs, "<stop offset=\"", stops[i].at);
      g_string_append_printf (self->defs, "\" stop-color=\"#%06x\"", stops[i].tint);
      if (stops[i].opacity < 1)
        {
          append_number (self->defs, " stop-opacity=\"", stops[i].opacity);
          g_string_append_c (self->defs, '"');
        }
      g_string_append (self->defs, "/>");
    }
  g_string_append (self->defs, closing);
  return self->n_gradients;
}

guint
pp_svg_linear (PpSvg        *self,
               PpPoint       from,
               PpPoint       to,
               const PpStop *stops,
               guint         n_stops)
{
  g_string_append_printf (self->defs, "<linearGradient id=\"g%u\" gradientUnits=\"userSpaceOnUse\" "
                          "x1=\"%ld\" y1=\"%ld\" x2=\"%ld\" y2=\"%ld\">", ++self->n_gradients,
                          units (from.x), units (from.y), units (to.x), units (to.y));
  return append_stops (self, "</linearGradient>\n", stops, n_stops);
}

guint
pp_svg_radial (PpSvg        *self,
               PpPoint       centre,
               double        radius,
               const PpStop *stops,
               guint         n_stops)
{
  g_string_append_printf (self->defs, "<radialGradient id=\"g%u\" gradientUnits=\"userSpaceOnUse\" "
                          "cx=\"%ld\" cy=\"%ld\" r=\"%ld\">", ++self->n_gradients,
                          units (centre.x), units (centre.y), MAX (units (radius), 1));
  return append_stops (self, "</radialGradient>\n", stops, n_stops);
}

static void
begin_path (PpSvg      *self,
            const char *attribute,
            PpPaint     paint)
{
  g_string_append_printf (self->body, "<path %s=\"", attribute);
  if (paint.gradient != 0)
    g_string_append_printf (self->body, "url(#g%u)\"", paint.gradient);
  else
    g_string_append_printf (self->body, "#%06x\"", paint.tint);
  if (paint.opacity < 1)
    {
      append_number (self->body, g_str_has_prefix (attribute, "fill=") ? " stroke-opacity=\""
                                                                        : " fill-opacity=\"",
                     paint.opacity);
      g_string_append_c (self->body, '"');
    }
}

/* Steps from point to point; a step that is none is left out. */
static void
append_points (GString       *text,
               const PpPoint *points,
               guint          n_points)
{
  long x = units (points[0].x);
  long y = units (points[0].y);

  g_string_append_printf (text, " d=\"M%ld %ldl", x, y);
  for (guint i = 1; i < n_points; i++)
    {
      long dx = units (points[i].x) - x;
      long dy = units (points[i].y) - y;

      if (dx != 0 || dy != 0)
        g_string_append_printf (text, dy < 0 ? "%ld%ld " : "%ld %ld ", dx, dy);
      x += dx;
      y += dy;
    }
  if (g_str_has_suffix (text->str, "l"))
    g_string_append (text, "0 0");
}

void
pp_svg_area (PpSvg         *self,
             PpPaint        paint,
             const PpPoint *points,
             guint          n_points)
{
  begin_path (self, "fill", paint);
  append_points (self->body, points, n_points);
  g_string_append (self->body, "z\"/>\n");
}

static void
begin_stroke (PpSvg  *self,
              PpPaint paint,
              double  width)
{
  begin_path (self, "fill=\"none\" stroke", paint);
  append_number (self->body, " stroke-linecap=\"round\" stroke-width=\"", width * UNITS_PER_MM);
  g_string_append_c (self->body, '"');
}

void
pp_svg_line (PpSvg         *self,
             PpPaint        paint,
             double         width,
             const PpPoint *points,
             guint          n_points)
{
  begin_stroke (self, paint, width);
  append_points (self->body, points, n_points);
  g_string_append (self->body, "\"/>\n");
}

void
pp_svg_dots (PpSvg         *self,
             PpPaint        paint,
             double         width,
             const PpPoint *points,
             guint          n_points)
{
  begin_stroke (self, paint, width);
  g_string_append (self->body, " d=\"");
  for (guint i = 0; i < n_points; i++)
    g_string_append_printf (self->body, "M%ld %ldh0", units (points[i].x), units (points[i].y));
  g_string_append (self->body, "\"/>\n");
}

GBytes *
pp_svg_finish (PpSvg      *self,
               const char *title,
               PpBox       box)
{
  GString *text = g_string_new (NULL);
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  int x = (int) floor (box.x0) - 1;
  int y = (int) floor (box.y0) - 1;
  int width = (int) ceil (box.x1) + 1 - x;
  int height = (int) ceil (box.y1) + 1 - y;

  g_string_append_printf (text, "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" "
                          "width=\"%dmm\" height=\"%dmm\" viewBox=\"%d %d %d %d\">\n", width,
                          height, x, y, width, height);
  g_string_append_printf (text, "<title>%s</title>\n<defs>\n%s</defs>\n", escaped,
                          self->defs->str);
  g_string_append (text, "<g transform=\"scale(.05)\"");
  if (self->opacity < 1)
    {
      append_number (text, " opacity=\"", self->opacity);
      g_string_append_c (text, '"');
    }
  g_string_append_printf (text, ">\n%s</g>\n</svg>\n", self->body->str);
  return g_string_free_to_bytes (text);
}
