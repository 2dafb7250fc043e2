/* margin-keys.c: up and down through the margin.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tab goes through every button; the arrows go from one finding to the next, and stay in the
 * margin at either end.
 */
#include "config.h"

#include "desk/margin-private.h"

static void
add_children (GPtrArray *stops,
              GtkBox    *box)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    g_ptr_array_add (stops, child);
}

static void
add_button (GPtrArray       *stops,
            GtkToggleButton *button)
{
  if (gtk_widget_get_visible (GTK_WIDGET (button)))
    g_ptr_array_add (stops, button);
}

static GPtrArray *
list_stops (PpMargin *self)
{
  GPtrArray *stops = g_ptr_array_new ();

  add_children (stops, self->open);
  add_button (stops, self->folded);
  add_children (stops, self->lines);
  add_button (stops, self->known);
  add_children (stops, self->quiet);
  return stops;
}

static int
find_focus (GPtrArray *stops,
            GtkWidget *focus)
{
  for (guint i = 0; focus != NULL && i < stops->len; i++)
    {
      GtkWidget *stop = g_ptr_array_index (stops, i);

      if (focus == stop || gtk_widget_is_ancestor (focus, stop))
        return (int) i;
    }
  return -1;
}

gboolean
pp_margin_key_cb (GtkEventController *controller,
                  guint               key,
                  guint               code,
                  GdkModifierType     state,
                  PpMargin           *self)
{
  gboolean is_down = key == GDK_KEY_Down || key == GDK_KEY_KP_Down;
  gboolean is_up = key == GDK_KEY_Up || key == GDK_KEY_KP_Up;
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autoptr (GPtrArray) stops = NULL;
  int index;

  if ((!is_down && !is_up) || (state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return GDK_EVENT_PROPAGATE;
  stops = list_stops (self);
  index = find_focus (stops, gtk_root_get_focus (root));
  if (index < 0)
    return GDK_EVENT_PROPAGATE;
  index += is_down ? 1 : -1;
  if (index >= 0 && index < (int) stops->len)
    gtk_widget_grab_focus (g_ptr_array_index (stops, index));
  return GDK_EVENT_STOP;
}
