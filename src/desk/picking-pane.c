/* picking-pane.c: the picture large, over it what a press does there and how far the search is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/picking-pane.h"

#include "desk/choice.h"
#include "panel/i18n.h"

#define LARGER 1.4
#define LOOK 80       /* ms between two looks at how far the work is */
#define LOOKS_FIRST 4 /* before it is shown, so that what is done at once shows nothing */

struct _PpPickingPane
{
  GtkBox          parent_instance;
  PpPickingWork  *work;
  PpPickingView  *view;
  PpPickingScale  scale;
  gboolean        is_showing;
  GtkWidget      *tool_box;
  PpChoice       *tools[PP_N_TOOLS];
  GtkLabel       *hint;
  GtkWidget      *empty;
  GtkWidget      *card;
  GtkProgressBar *bar;
  guint           timer;
  guint           looks;
};

G_DEFINE_FINAL_TYPE (PpPickingPane, pp_picking_pane, GTK_TYPE_BOX)

static const struct
{
  const char *words;
  const char *hint;
} tools[PP_N_TOOLS] = {
  [PP_TOOL_CHOOSE] = { N_("Choose"), N_("Press a piece to say more about it.") },
  [PP_TOOL_PART] = { N_("Part"), N_("Press where one piece should be two, or draw the cut.") },
  [PP_TOOL_JOIN] = { N_("Join"), N_("Press between two pieces that are one.") },
  [PP_TOOL_MARK] = { NULL, NULL },
};

static void
show_tool (PpPickingPane *self)
{
  PpPickingTool tool = pp_picking_view_get_tool (self->view);

  self->is_showing = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->tools[tool]), TRUE);
  self->is_showing = FALSE;
}

static void
tool_cb (PpChoice      *choice,
         PpPickingPane *self)
{
  if (self->is_showing || !gtk_check_button_get_active (GTK_CHECK_BUTTON (choice)))
    return;
  for (guint i = 0; i < PP_N_TOOLS; i++)
    if (self->tools[i] == choice)
      pp_picking_pane_set_tool (self, (PpPickingTool) i);
}

static void
view_tool_cb (PpPickingView *view,
              PpPickingPane *self)
{
  pp_picking_pane_set_tool (self, pp_picking_view_get_tool (view));
}

static gboolean
look_cb (gpointer data)
{
  PpPickingPane *self = data;
  gboolean is_busy = pp_picking_work_is_busy (self->work);

  gtk_widget_set_visible (self->card, is_busy && ++self->looks >= LOOKS_FIRST);
  gtk_progress_bar_set_fraction (self->bar, pp_picking_work_get_done (self->work));
  if (is_busy)
    return G_SOURCE_CONTINUE;
  self->timer = 0;
  return G_SOURCE_REMOVE;
}

static void
stop_cb (GtkButton     *button,
         PpPickingPane *self)
{
  pp_picking_work_stop (self->work);
}

static void
pp_picking_pane_dispose (GObject *object)
{
  PpPickingPane *self = PP_PICKING_PANE (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->work != NULL)
    pp_picking_work_stop (self->work);
  g_clear_object (&self->work);
  G_OBJECT_CLASS (pp_picking_pane_parent_class)->dispose (object);
}

static void
pp_picking_pane_class_init (PpPickingPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = pp_picking_pane_dispose;
}

static void
larger_cb (GtkButton     *button,
           PpPickingPane *self)
{
  pp_picking_view_zoom_by (self->view, LARGER);
}

static void
smaller_cb (GtkButton     *button,
            PpPickingPane *self)
{
  pp_picking_view_zoom_by (self->view, 1 / LARGER);
}

static void
fit_cb (GtkButton     *button,
        PpPickingPane *self)
{
  pp_picking_view_zoom_fit (self->view);
}

static GtkWidget *
new_zoom_row (PpPickingPane *self)
{
  GtkWidget *row = g_object_new (GTK_TYPE_BOX, "spacing", 6, "valign", GTK_ALIGN_CENTER, NULL);
  GtkWidget *fit = gtk_button_new_with_label (_("Fit"));
  const struct
  {
    const char *icon;
    const char *words;
    GCallback   pressed;
  } buttons[] = {
    { "pp-zoom-out-symbolic", _("Smaller"), G_CALLBACK (smaller_cb) },
    { "pp-zoom-in-symbolic", _("Larger"), G_CALLBACK (larger_cb) },
  };

  gtk_widget_set_tooltip_text (fit, "0");
  g_signal_connect (fit, "clicked", G_CALLBACK (fit_cb), self);
  gtk_box_append (GTK_BOX (row), fit);
  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      GtkWidget *button = gtk_button_new_from_icon_name (buttons[i].icon);

      gtk_widget_set_tooltip_text (button, buttons[i].words);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      buttons[i].words, -1);
      g_signal_connect (button, "clicked", buttons[i].pressed, self);
      gtk_box_append (GTK_BOX (row), button);
    }
  return row;
}

static void
add_tools (PpPickingPane *self)
{
  GtkWidget *row = g_object_new (GTK_TYPE_BOX, "spacing", 6, "valign", GTK_ALIGN_CENTER,
                                 "accessible-role", GTK_ACCESSIBLE_ROLE_RADIO_GROUP, NULL);

  self->tool_box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_add_css_class (self->tool_box, "pp-picking-tools");
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("What a press on the picture does"), -1);
  for (guint i = 0; i < PP_N_TOOLS; i++)
    {
      self->tools[i] = g_object_new (PP_TYPE_CHOICE, "words",
                                     tools[i].words != NULL ? _(tools[i].words) : "", NULL);
      gtk_widget_add_css_class (GTK_WIDGET (self->tools[i]), "pp-slim");
      gtk_check_button_set_group (GTK_CHECK_BUTTON (self->tools[i]),
                                  i > 0 ? GTK_CHECK_BUTTON (self->tools[0]) : NULL);
      g_signal_connect (self->tools[i], "toggled", G_CALLBACK (tool_cb), self);
      gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->tools[i]));
    }
  self->hint = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0, "wrap", TRUE, "hexpand", TRUE, NULL);
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "pp-hint");
  gtk_box_append (GTK_BOX (self->tool_box), row);
  gtk_box_append (GTK_BOX (self->tool_box), GTK_WIDGET (self->hint));
  gtk_box_append (GTK_BOX (self->tool_box), new_zoom_row (self));
  gtk_box_append (GTK_BOX (self), self->tool_box);
}

static GtkWidget *
new_card (PpPickingPane *self)
{
  GtkWidget *card = g_object_new (GTK_TYPE_BOX, "spacing", 12, "halign", GTK_ALIGN_CENTER, "valign",
                                  GTK_ALIGN_CENTER, "visible", FALSE, NULL);
  GtkWidget *words = gtk_label_new (_("Looking for the pieces…"));
  GtkWidget *stop = gtk_button_new_with_label (_("Stop"));

  self->bar = g_object_new (GTK_TYPE_PROGRESS_BAR, "valign", GTK_ALIGN_CENTER, "width-request", 160,
                            NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->bar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("How far it is"), -1);
  g_signal_connect (stop, "clicked", G_CALLBACK (stop_cb), self);
  gtk_widget_add_css_class (card, "pp-picking-card");
  gtk_box_append (GTK_BOX (card), words);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->bar));
  gtk_box_append (GTK_BOX (card), stop);
  return card;
}

static void
pp_picking_pane_init (PpPickingPane *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  add_tools (self);
}

static void
add_view (PpPickingPane *self,
          PpUnits        units)
{
  GtkWidget *overlay = gtk_overlay_new ();

  self->view = pp_picking_view_new (units);
  self->empty = g_object_new (GTK_TYPE_LABEL, "label",
                              _("Drop a photo or a scan of your pieces here, or choose one."),
                              "wrap", TRUE, "justify", GTK_JUSTIFY_CENTER, "max-width-chars", 40,
                              "halign", GTK_ALIGN_CENTER, "valign", GTK_ALIGN_CENTER, NULL);
  gtk_widget_add_css_class (self->empty, "pp-picking-empty");
  self->card = new_card (self);
  gtk_overlay_set_child (GTK_OVERLAY (overlay), GTK_WIDGET (self->view));
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), self->empty);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), self->card);
  gtk_widget_set_vexpand (overlay, TRUE);
  gtk_box_append (GTK_BOX (self), overlay);
  g_signal_connect (self->view, "tool", G_CALLBACK (view_tool_cb), self);
}

PpPickingPane *
pp_picking_pane_new (PpPickingWork *work,
                     PpUnits        units)
{
  PpPickingPane *self = g_object_new (PP_TYPE_PICKING_PANE, NULL);

  self->work = g_object_ref (work);
  add_view (self, units);
  pp_picking_pane_set_tool (self, PP_TOOL_CHOOSE);
  return self;
}

PpPickingView *
pp_picking_pane_get_view (PpPickingPane *self)
{
  return self->view;
}

void
pp_picking_pane_show (PpPickingPane   *self,
                      const PpPicking *picking)
{
  gboolean has_photo = pp_picking_work_get_sight (self->work)->photo != NULL
                       && picking->file != NULL;
  PpPickingTool tool = pp_picking_view_get_tool (self->view);

  self->scale = picking->scale;
  gtk_widget_set_visible (self->tool_box, has_photo);
  gtk_widget_set_visible (self->empty, !has_photo);
  pp_choice_set_words (self->tools[PP_TOOL_MARK],
                       picking->scale == PP_SCALE_LENGTH ? _("Set the points")
                                                         : _("Set the discs"), NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->tools[PP_TOOL_MARK]), picking->scale != PP_SCALE_SCAN);
  if (picking->scale == PP_SCALE_SCAN && tool == PP_TOOL_MARK)
    tool = PP_TOOL_CHOOSE;
  pp_picking_pane_set_tool (self, tool);
  pp_picking_view_set_picking (self->view, picking);
}

static const char *
get_hint (PpPickingPane *self,
          PpPickingTool  tool)
{
  if (tools[tool].hint != NULL)
    return _(tools[tool].hint);
  if (self->scale == PP_SCALE_LENGTH)
    return _("Drag the points to both ends of what you measured.");
  return _("Drag each ring onto its disc; number 1 has the hole.");
}

void
pp_picking_pane_set_tool (PpPickingPane *self,
                          PpPickingTool  tool)
{
  pp_picking_view_set_tool (self->view, tool);
  gtk_label_set_text (self->hint, get_hint (self, tool));
  show_tool (self);
}

void
pp_picking_pane_follow (PpPickingPane *self)
{
  self->looks = 0;
  if (self->timer == 0)
    self->timer = g_timeout_add (LOOK, look_cb, self);
}
