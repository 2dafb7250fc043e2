/* tray.c: the wooden tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the document; the compartments are the row's (tray-row.c).
 */
#include "config.h"

#include "desk/tray.h"

#include "desk/template.h"
#include "desk/tray-row.h"

struct _PpTray
{
  GtkWidget          parent_instance;
  PpDocument        *document;

  GtkScrolledWindow *scroller;
  GtkScrollbar      *scrollbar;
  GtkWidget         *empty;
  PpTrayRow         *row;
};

G_DEFINE_FINAL_TYPE (PpTray, pp_tray, GTK_TYPE_WIDGET)

enum
{
  PLACE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
changed_cb (PpDocument *document,
            PpTray     *self)
{
  const PpPanel *panel = pp_document_get_panel (document);
  gboolean is_empty = panel->tray->len == 0;

  pp_tray_row_show (self->row, panel, pp_document_get_gallery (document));
  gtk_widget_set_visible (GTK_WIDGET (self->scroller), !is_empty);
  gtk_widget_set_visible (GTK_WIDGET (self->scrollbar), !is_empty);
  gtk_widget_set_visible (self->empty, is_empty);
}

/* A wheel goes sideways here, whichever way it turns. */
static gboolean
scroll_cb (GtkEventControllerScroll *controller,
           double                    dx,
           double                    dy,
           PpTray                   *self)
{
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (self->scroller);
  double page = gtk_adjustment_get_page_size (across);
  gboolean rtl = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;

  if (gtk_event_controller_scroll_get_unit (controller) != GDK_SCROLL_UNIT_WHEEL || dy == 0)
    return FALSE;
  gtk_adjustment_set_value (across,
                            gtk_adjustment_get_value (across)
                            + (rtl ? -dy : dy) * pow (page, 2.0 / 3));
  return TRUE;
}

/* The scrollbar keeps its room where there is nothing to scroll, so that the bench above never
 * jumps. */
static void
show_scrollbar (PpTray        *self,
                GtkAdjustment *across)
{
  gboolean is_needed = gtk_adjustment_get_upper (across) > gtk_adjustment_get_page_size (across);

  gtk_widget_set_opacity (GTK_WIDGET (self->scrollbar), is_needed ? 1 : 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->scrollbar), is_needed);
}

static void
place_action (GtkWidget  *widget,
              const char *name,
              GVariant   *piece)
{
  g_signal_emit (widget, signals[PLACE], 0, g_variant_get_string (piece, NULL));
}

static void
let_go (PpTray *self)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
pp_tray_dispose (GObject *object)
{
  let_go (PP_TRAY (object));
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_TRAY);
  G_OBJECT_CLASS (pp_tray_parent_class)->dispose (object);
}

static void
pp_tray_class_init (PpTrayClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_tray_dispose;
  signals[PLACE] = g_signal_new ("place", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  g_type_ensure (PP_TYPE_TRAY_ROW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/petalpane/Petalpane/tray.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "pp-tray");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_bind_template_child (widget_class, PpTray, empty);
  gtk_widget_class_bind_template_child (widget_class, PpTray, scroller);
  gtk_widget_class_bind_template_child (widget_class, PpTray, scrollbar);
  gtk_widget_class_bind_template_child (widget_class, PpTray, row);
  gtk_widget_class_bind_template_callback (widget_class, scroll_cb);
  gtk_widget_class_install_action (widget_class, "tray.place", "s", place_action);
}

/* From those who hear the window: keys and compartments are all they need. */
static void
hide_scrollbar (GtkWidget *scrollbar)
{
  gtk_accessible_update_state (GTK_ACCESSIBLE (scrollbar), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
}

static void
pp_tray_init (PpTray *self)
{
  GtkAdjustment *across;

  gtk_widget_init_template (GTK_WIDGET (self));
  across = gtk_scrolled_window_get_hadjustment (self->scroller);
  gtk_scrollbar_set_adjustment (self->scrollbar, across);
  g_signal_connect_swapped (across, "changed", G_CALLBACK (show_scrollbar), self);
  pp_tray_row_set_adjustment (self->row, across);
  hide_scrollbar (GTK_WIDGET (self->scrollbar));
  hide_scrollbar (gtk_scrolled_window_get_hscrollbar (self->scroller));
  hide_scrollbar (gtk_scrolled_window_get_vscrollbar (self->scroller));
}

void
pp_tray_set_document (PpTray     *self,
                      PpDocument *document)
{
  g_return_if_fail (PP_IS_TRAY (self));
  g_return_if_fail (document == NULL || PP_IS_DOCUMENT (document));

  let_go (self);
  if (document == NULL)
    {
      pp_tray_row_clear (self->row);
      return;
    }
  self->document = g_object_ref (document);
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (document, "drawn", G_CALLBACK (changed_cb), self);
  changed_cb (document, self);
}

void
pp_tray_set_scale (PpTray *self,
                   double  scale)
{
  g_return_if_fail (PP_IS_TRAY (self));

  if (scale > 0)
    pp_tray_row_set_scale (self->row, scale);
}
