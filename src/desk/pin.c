/* pin.c: to be filled.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/pin.h"

struct _PpPin
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PpPin, pp_pin, GTK_TYPE_WIDGET)

static void
pp_pin_class_init (PpPinClass *klass)
{
}

static void
pp_pin_init (PpPin *self)
{
}

GtkWidget *
pp_pin_new (PpLevel level,
            guint   number)
{
  return g_object_new (PP_TYPE_PIN, NULL);
}

void
pp_pin_set (PpPin   *self,
            PpLevel  level,
            guint    number)
{
}

double
pp_pin_get_size (PangoContext *pango)
{
  return 24;
}

void
pp_pin_draw (cairo_t         *cr,
             PangoContext    *pango,
             const PpPalette *palette,
             PpLevel          level,
             guint            number,
             double           x,
             double           y,
             double           size,
             gboolean         is_lit)
{
}
