/* em.h: the size of the text, so that what is drawn by hand grows with it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* px of the font that is written with, as CSS has it. */
static inline double
pp_em_of_pango (PangoContext *pango)
{
  const PangoFontDescription *font = pango_context_get_font_description (pango);
  double size = (double) pango_font_description_get_size (font) / PANGO_SCALE;

  if (pango_font_description_get_size_is_absolute (font))
    return size;
  return size * pango_cairo_context_get_resolution (pango) / 72;
}

static inline double
pp_em_of (GtkWidget *widget)
{
  return pp_em_of_pango (gtk_widget_get_pango_context (widget));
}

G_END_DECLS
