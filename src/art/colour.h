/* colour.h: the few colours of the picture and how they are mixed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/* 0 to 1 each. */
typedef struct
{
  double red;
  double green;
  double blue;
} PpColour;

#define PP_COLOUR_WHITE ((PpColour) { 1, 1, 1 })
#define PP_COLOUR_BENCH ((PpColour) { 0xe9 / 255.0, 0xe4 / 255.0, 0xda / 255.0 })
#define PP_COLOUR_SHADOW ((PpColour) { 0.13, 0.16, 0.15 })

static inline double
pp_colour_read_pair (const char *hex)
{
  return (g_ascii_xdigit_value (hex[0]) * 16 + g_ascii_xdigit_value (hex[1])) / 255.0;
}

/* `text` is "#rrggbb", as every record's colour is. */
static inline PpColour
pp_colour_parse (const char *text)
{
  return (PpColour) { pp_colour_read_pair (text + 1), pp_colour_read_pair (text + 3),
                      pp_colour_read_pair (text + 5) };
}

/* `share` of b, the rest of a. */
static inline PpColour
pp_colour_mix (PpColour a,
               PpColour b,
               double   share)
{
  return (PpColour) { a.red + (b.red - a.red) * share, a.green + (b.green - a.green) * share,
                      a.blue + (b.blue - a.blue) * share };
}

static inline PpColour
pp_colour_darken (PpColour colour,
                  double   share)
{
  return (PpColour) { colour.red * (1 - share), colour.green * (1 - share),
                      colour.blue * (1 - share) };
}

static inline void
pp_colour_set (cairo_t  *cr,
               PpColour  colour,
               double    alpha)
{
  cairo_set_source_rgba (cr, colour.red, colour.green, colour.blue, alpha);
}

static inline void
pp_colour_add_stop (cairo_pattern_t *gradient,
                    double           at,
                    PpColour         colour,
                    double           alpha)
{
  cairo_pattern_add_color_stop_rgba (gradient, at, colour.red, colour.green, colour.blue, alpha);
}

G_END_DECLS
