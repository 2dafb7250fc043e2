/* text.c: words on a page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/text.h"

#include <pango/pangocairo.h>

#define CAPITAL_HEIGHT 0.72 /* of the size, about, in any sans face */

PangoContext *
pp_text_context_new (void)
{
  g_autoptr (PangoFontMap) map = pango_cairo_font_map_new_for_font_type (CAIRO_FONT_TYPE_FT);
  cairo_font_options_t *options = cairo_font_options_create ();
  PangoContext *context;

  if (map == NULL)
    map = pango_cairo_font_map_new ();
  pango_cairo_font_map_set_resolution (PANGO_CAIRO_FONT_MAP (map), 72);
  context = pango_font_map_create_context (map);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  return context;
}

static PangoFontDescription *
make_font (const PpTextStyle *style)
{
  PangoFontDescription *font = pango_font_description_new ();

  g_assert (style->size >= PP_TEXT_LEAST);
  pango_font_description_set_family_static (font, "sans");
  pango_font_description_set_stretch (font, PANGO_STRETCH_CONDENSED);
  pango_font_description_set_weight (font, style->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, style->size * PP_MM_PER_POINT * PANGO_SCALE);
  return font;
}

PangoLayout *
pp_text_layout (const PpBook      *book,
                const PpTextStyle *style,
                const char        *text,
                double             width)
{
  PangoLayout *layout = pango_layout_new (book->pango);
  PangoFontDescription *font = make_font (style);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  if (width >= 0)
    pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_alignment (layout, style->align == PP_ALIGN_RIGHT    ? PANGO_ALIGN_RIGHT
                                      : style->align == PP_ALIGN_MIDDLE ? PANGO_ALIGN_CENTER
                                                                        : PANGO_ALIGN_LEFT);
  if (style->max_lines > 0)
    {
      pango_layout_set_height (layout, -style->max_lines);
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }
  pango_layout_set_text (layout, text, -1);
  return layout;
}

static void
get_size (PangoLayout *layout,
          double      *width,
          double      *height)
{
  int w, h;

  pango_layout_get_size (layout, &w, &h);
  if (width != NULL)
    *width = w / (double) PANGO_SCALE;
  if (height != NULL)
    *height = h / (double) PANGO_SCALE;
}

void
pp_text_measure (const PpBook      *book,
                 const PpTextStyle *style,
                 const char        *text,
                 double             wrap_width,
                 double            *width,
                 double            *height)
{
  g_autoptr (PangoLayout) layout = pp_text_layout (book, style, text, wrap_width);

  get_size (layout, width, height);
}

double
pp_text_draw (PpBook            *book,
              const PpTextStyle *style,
              const char        *text,
              PpPoint            at,
              double             width)
{
  g_autoptr (PangoLayout) layout = pp_text_layout (book, style, text, width);
  double natural, height;

  get_size (layout, &natural, &height);
  if (width < 0 && style->align != PP_ALIGN_LEFT)
    at.x -= style->align == PP_ALIGN_RIGHT ? natural : natural / 2;
  pp_book_set_ink (book, style->ink);
  cairo_move_to (book->cr, at.x, at.y);
  pango_cairo_show_layout (book->cr, layout);
  return height;
}

double
pp_text_tell (PpBook            *book,
              const PpTextStyle *style,
              const char        *text,
              PpPoint            at,
              double             width)
{
  pp_book_say (book, text);
  return pp_text_draw (book, style, text, at, width);
}

void
pp_text_draw_centred (PpBook            *book,
                      const PpTextStyle *style,
                      const char        *text,
                      PpPoint            at)
{
  g_autoptr (PangoLayout) layout = pp_text_layout (book, style, text, PP_NO_WIDTH);
  double baseline = pango_layout_get_baseline (layout) / (double) PANGO_SCALE;
  double width;

  get_size (layout, &width, NULL);
  pp_book_set_ink (book, style->ink);
  cairo_move_to (book->cr, at.x - width / 2,
                 at.y + style->size * PP_MM_PER_POINT * CAPITAL_HEIGHT / 2 - baseline);
  pango_cairo_show_layout (book->cr, layout);
}
