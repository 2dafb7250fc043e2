/* palette.h: the colours of the window for what is drawn by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They stand as named colours in ui/light.css and ui/dark.css, so that widgets and drawing agree.
 * Ask again in every snapshot; it costs little, and the theme may have changed.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct
{
  GdkRGBA bench;   /* what all lies on */
  GdkRGBA paper;   /* cards, lists */
  GdkRGBA ink;     /* text and lines on bench and paper */
  GdkRGBA faint;   /* text of less weight, 4.5:1 on bench and paper all the same */
  GdkRGBA line;    /* borders, grid */
  GdkRGBA accent;  /* what is chosen, what is in hand */
  GdkRGBA fault;   /* a triangle */
  GdkRGBA caution; /* a diamond */
  GdkRGBA note;    /* a circle */
  GdkRGBA done;    /* a tick */
  GdkRGBA on_mark; /* figures upon the four above */
} PpPalette;

PpPalette pp_palette_of  (GtkWidget     *widget);

/* Installs the style sheets for the display, and follows the system from light to dark. */
void      pp_style_start (GdkDisplay    *display);

static inline void
pp_palette_set (cairo_t       *cr,
                const GdkRGBA *colour,
                double         alpha)
{
  cairo_set_source_rgba (cr, (double) colour->red, (double) colour->green, (double) colour->blue,
                         (double) colour->alpha * alpha);
}

G_END_DECLS
