/* tray-gauge.c: sizes that all compartments of a tray share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures are tabular, so what is said of a count is as wide as for any other count of as many
 * figures.
 */
#include "config.h"

#include "desk/tray-gauge.h"

#include "desk/tray-words.h"

#define PICTURE_LEAST 50 /* px high, and so many lines of text more */
#define PICTURE_LINES 1.6
#define LEAST_CHARS 11
#define MOST_CHARS 24    /* a longer name is cut short; the tooltip has it whole */
#define MOST_OVER 9      /* there is room for the words of so many too many */
#define MOST_FIGURES 10  /* of a count */

struct _PpTrayGauge
{
  GtkWidget   *widget;
  PangoLayout *layout;                  /* NULL: nothing is measured yet */
  int          line;
  int          character;
  int          words[MOST_FIGURES + 1]; /* of a count of so many figures; 0: not yet */
};

PpTrayGauge *
pp_tray_gauge_new (GtkWidget *widget)
{
  PpTrayGauge *self = g_new0 (PpTrayGauge, 1);

  self->widget = widget;
  return self;
}

void
pp_tray_gauge_free (PpTrayGauge *self)
{
  g_clear_object (&self->layout);
  g_free (self);
}

void
pp_tray_gauge_reset (PpTrayGauge *self)
{
  GtkWidget *widget = self->widget;

  g_clear_object (&self->layout);
  *self = (PpTrayGauge) { .widget = widget };
}

static void
begin (PpTrayGauge *self)
{
  PangoFontMetrics *metrics;

  if (self->layout != NULL)
    return;
  self->layout = gtk_widget_create_pango_layout (self->widget, NULL);
  metrics = pango_context_get_metrics (pango_layout_get_context (self->layout), NULL, NULL);
  self->line = PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics));
  self->character = PANGO_PIXELS_CEIL (pango_font_metrics_get_approximate_char_width (metrics));
  pango_font_metrics_unref (metrics);
}

PangoAttrList *
pp_tray_gauge_make_face (PangoWeight weight)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_weight_new (weight));
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  return attributes;
}

int
pp_tray_gauge_get_line (PpTrayGauge *self)
{
  begin (self);
  return self->line;
}

int
pp_tray_gauge_get_picture (PpTrayGauge *self)
{
  begin (self);
  return PICTURE_LEAST + (int) (PICTURE_LINES * self->line);
}

static int
measure (PpTrayGauge *self,
         const char  *text,
         PangoWeight  weight)
{
  PangoAttrList *attributes = pp_tray_gauge_make_face (weight);
  int width;

  pango_layout_set_attributes (self->layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_text (self->layout, text, -1);
  pango_layout_get_pixel_size (self->layout, &width, NULL);
  return width;
}

static int
measure_words (PpTrayGauge *self,
               guint        count)
{
  g_autofree char *all = pp_tray_words_left (count, 0);
  g_autofree char *none = pp_tray_words_left (count, count);
  g_autofree char *over = pp_tray_words_left (count, count + MOST_OVER);

  return MAX (measure (self, over, PANGO_WEIGHT_BOLD),
              MAX (measure (self, all, PANGO_WEIGHT_NORMAL),
                   measure (self, none, PANGO_WEIGHT_NORMAL)));
}

static int
get_words (PpTrayGauge *self,
           guint        count)
{
  guint figures = 1;

  for (guint rest = count; rest >= 10; rest /= 10)
    figures++;
  if (self->words[figures] == 0)
    self->words[figures] = measure_words (self, count);
  return self->words[figures];
}

int
pp_tray_gauge_get_width (PpTrayGauge *self,
                         const char  *name,
                         guint        count)
{
  int width;

  begin (self);
  width = measure (self, name, PANGO_WEIGHT_MEDIUM);
  width = CLAMP (width, LEAST_CHARS * self->character, MOST_CHARS * self->character);
  return MAX (width, get_words (self, count));
}
