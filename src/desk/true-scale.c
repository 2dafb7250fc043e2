/* true-scale.c: how large a millimetre is on the screen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/true-scale.h"

#include "panel/point.h"

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
    return 96 / PP_MM_PER_INCH;
  gdk_monitor_get_geometry (monitor, &geometry);
  return (double) geometry.width / gdk_monitor_get_width_mm (monitor);
}
