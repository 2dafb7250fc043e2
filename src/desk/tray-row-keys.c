/* tray-row-keys.c: focus and keys of the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/tray-row-private.h"

#include "desk/tray-words.h"

#include <string.h>

#define PAUSE (G_USEC_PER_SEC * 3 / 2) /* after which typing begins another name */
#define MARGIN 30                      /* px seen of the neighbour of the one with the focus */

static int
find_last (PpTrayRow *self)
{
  guint index;

  if (self->last != NULL && g_ptr_array_find (self->order, self->last, &index))
    return (int) index;
  return 0;
}

/* With a bit of what is beside it. */
void
pp_tray_row_bring (PpTrayRow *self,
                   GtkWidget *compartment)
{
  GtkAllocation box;

  gtk_widget_get_allocation (compartment, &box);
  gtk_adjustment_clamp_page (self->adjustment, box.x - MARGIN, box.x + box.width + MARGIN);
}

/* Only keys scroll: what a pointer presses must not run away. */
static gboolean
go_to (PpTrayRow *self,
       int        index)
{
  GtkWidget *compartment;

  if (self->order->len == 0)
    return FALSE;
  index = CLAMP (index, 0, (int) self->order->len - 1);
  compartment = pp_tray_row_get (self, (guint) index);
  pp_tray_row_bring (self, compartment);
  return gtk_widget_grab_focus (compartment);
}

/* Left and right stay within the tray, also at its ends; Tab leaves it from anywhere. */
gboolean
pp_tray_row_focus (GtkWidget        *widget,
                   GtkDirectionType  direction)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);
  int forward = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL ? -1 : 1;

  if (gtk_widget_get_focus_child (widget) == NULL)
    return go_to (self, find_last (self));
  if (GTK_IS_POPOVER (gtk_widget_get_focus_child (widget)))
    return gtk_widget_child_focus (gtk_widget_get_focus_child (widget), direction);
  if (direction == GTK_DIR_RIGHT)
    return go_to (self, find_last (self) + forward);
  if (direction == GTK_DIR_LEFT)
    return go_to (self, find_last (self) - forward);
  return FALSE;
}

/* How many compartments are seen at once, about. */
static int
count_seen (PpTrayRow *self)
{
  double seen = gtk_adjustment_get_page_size (self->adjustment);
  double whole = gtk_adjustment_get_upper (self->adjustment);

  return MAX (1, (int) (self->order->len * seen / MAX (whole, 1)) - 1);
}

static gboolean
step_cb (GtkWidget *widget,
         GVariant  *pages,
         gpointer   data)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);

  return go_to (self, find_last (self) + g_variant_get_int32 (pages) * count_seen (self));
}

static gboolean
end_cb (GtkWidget *widget,
        GVariant  *last,
        gpointer   data)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);

  return go_to (self, g_variant_get_boolean (last) ? (int) self->order->len - 1 : 0);
}

/* The one with the focus, if it has one. */
static PpTrayCompartment *
get_focused (GtkWidget *widget)
{
  GtkWidget *child = gtk_widget_get_focus_child (widget);

  return PP_IS_TRAY_COMPARTMENT (child) ? PP_TRAY_COMPARTMENT (child) : NULL;
}

static gboolean
menu_cb (GtkWidget *widget,
         GVariant  *args,
         gpointer   data)
{
  PpTrayCompartment *compartment = get_focused (widget);

  if (compartment != NULL)
    pp_tray_menu_open (compartment);
  return compartment != NULL;
}

/* Does the window's action `args` names to the piece with the focus. */
static gboolean
act_cb (GtkWidget *widget,
        GVariant  *args,
        gpointer   data)
{
  PpTrayCompartment *compartment = get_focused (widget);

  return compartment != NULL
         && gtk_widget_activate_action (widget, g_variant_get_string (args, NULL), "s",
                                        pp_tray_compartment_get_piece (compartment)->id);
}

void
pp_tray_row_bind_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_add_binding (klass, GDK_KEY_F2, 0, act_cb, "s", "win.change-piece");
  gtk_widget_class_add_binding (klass, GDK_KEY_Menu, 0, menu_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_F10, GDK_SHIFT_MASK, menu_cb, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_Home, 0, end_cb, "b", FALSE);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Home, 0, end_cb, "b", FALSE);
  gtk_widget_class_add_binding (klass, GDK_KEY_End, 0, end_cb, "b", TRUE);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_End, 0, end_cb, "b", TRUE);
  gtk_widget_class_add_binding (klass, GDK_KEY_Page_Up, 0, step_cb, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Page_Up, 0, step_cb, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Page_Down, 0, step_cb, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Page_Down, 0, step_cb, "i", 1);
}

/* Whether a word of the name begins with what was typed: "leaf" finds "Dock leaf". */
static gboolean
is_meant (PpTrayRow *self,
          int        index)
{
  PpTrayCompartment *compartment = PP_TRAY_COMPARTMENT (pp_tray_row_get (self, (guint) index));
  const char *name = pp_tray_words_name (pp_tray_compartment_get_piece (compartment));
  g_autofree char *lower = g_utf8_strdown (name, -1);

  for (const char *at = lower; at != NULL; at = strchr (at, ' '))
    {
      at += *at == ' ';
      if (g_str_has_prefix (at, self->typed->str))
        return TRUE;
    }
  return FALSE;
}

/* A first letter goes on to the next that begins with it; more letters may mean the present one. */
static void
find_typed (PpTrayRow *self,
            gboolean   is_first)
{
  int n = (int) self->order->len;
  int from = find_last (self) + (is_first ? 1 : 0);

  for (int i = 0; i < n; i++)
    if (is_meant (self, (from + i) % n))
      {
        go_to (self, (from + i) % n);
        return;
      }
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        PpTrayRow             *self)
{
  gunichar letter = gdk_keyval_to_unicode (gdk_keyval_to_lower (key));
  gint64 now = g_get_monotonic_time ();

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0
      || !g_unichar_isgraph (letter))
    return FALSE;
  if (now - self->typed_at > PAUSE)
    g_string_truncate (self->typed, 0);
  self->typed_at = now;
  g_string_append_unichar (self->typed, letter);
  find_typed (self, g_utf8_strlen (self->typed->str, -1) == 1);
  return TRUE;
}

void
pp_tray_row_add_keys (PpTrayRow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
