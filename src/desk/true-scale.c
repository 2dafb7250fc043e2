/* true-scale.c: how large a millimetre is on the screen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/true-scale.h"

#include "panel/i18n.h"
#include "panel/point.h"

#define USUAL (96 / PP_MM_PER_INCH) /* px a mm */

double
pp_true_scale_of (GtkWidget *widget)
{
  GdkSurface *surface;
  GdkMonitor *monitor;
  GdkRectangle geometry;

  g_return_val_if_fail (GTK_IS_WIDGET (widget) && gtk_widget_get_realized (widget), 1);

  surface = gtk_native_get_surface (gtk_widget_get_native (widget));
  monitor = gdk_display_get_monitor_at_surface (gtk_widget_get_display (widget), surface);
  if (monitor == NULL || gdk_monitor_get_width_mm (monitor) <= 0)
    return USUAL;
  gdk_monitor_get_geometry (monitor, &geometry);
  return (double) geometry.width / gdk_monitor_get_width_mm (monitor);
}

char *
pp_true_scale_format (GtkWidget *widget,
                      double     scale)
{
  double whole;

  g_return_val_if_fail (GTK_IS_WIDGET (widget), NULL);

  whole = gtk_widget_get_realized (widget) ? pp_true_scale_of (widget) : USUAL;
  return g_strdup_printf (_("%.0f %%"), scale / whole * 100);
}
