/* picking-list.c: the pieces found in a picture, one a line.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/picking-list.h"

#include "desk/em.h"
#include "panel/i18n.h"

#define MOST_EM 20 /* height; the rest is scrolled to */

struct _PpPickingList
{
  GtkWidget   parent_instance;
  gboolean    is_showing;
  GtkListBox *box;
  GPtrArray  *rows; /* of Line */
};

/* The widgets of one line. */
typedef struct
{
  GtkWidget *row;
  GtkWidget *name;
  GtkWidget *size;
  GtkWidget *keep;
} Line;

G_DEFINE_FINAL_TYPE (PpPickingList, pp_picking_list, GTK_TYPE_WIDGET)

static guint chosen_signal, left_out_signal;

static void
row_cb (GtkListBox    *box,
        GtkListBoxRow *row,
        PpPickingList *self)
{
  if (!self->is_showing && row != NULL)
    g_signal_emit (self, chosen_signal, 0, (guint) gtk_list_box_row_get_index (row));
}

static void
keep_cb (GtkCheckButton *keep,
         PpPickingList  *self)
{
  for (guint i = 0; !self->is_showing && i < self->rows->len; i++)
    if (((Line *) self->rows->pdata[i])->keep == GTK_WIDGET (keep))
      g_signal_emit (self, left_out_signal, 0, i);
}

static void
add_line (PpPickingList *self)
{
  Line *line = g_new (Line, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  g_autofree char *number = g_strdup_printf ("%u", self->rows->len + 1);
  GtkWidget *figure = g_object_new (GTK_TYPE_LABEL, "label", number, "width-chars", 2, "xalign",
                                    1.0, NULL);

  line->name = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0, "hexpand", TRUE, "ellipsize",
                             PANGO_ELLIPSIZE_END, NULL);
  line->size = gtk_label_new (NULL);
  line->keep = gtk_check_button_new ();
  line->row = gtk_list_box_row_new ();
  gtk_widget_add_css_class (figure, "numeric");
  gtk_widget_add_css_class (line->size, "pp-faint");
  gtk_widget_add_css_class (line->size, "numeric");
  gtk_widget_set_tooltip_text (line->keep, _("Keep it, or leave it out"));
  gtk_box_append (GTK_BOX (box), figure);
  gtk_box_append (GTK_BOX (box), line->name);
  gtk_box_append (GTK_BOX (box), line->size);
  gtk_box_append (GTK_BOX (box), line->keep);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (line->row), box);
  g_signal_connect (line->keep, "toggled", G_CALLBACK (keep_cb), self);
  gtk_list_box_append (self->box, line->row);
  g_ptr_array_add (self->rows, line);
}

static void
drop_line (PpPickingList *self)
{
  Line *line = self->rows->pdata[self->rows->len - 1];

  gtk_list_box_remove (self->box, line->row);
  g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
}

static void
pp_picking_list_dispose (GObject *object)
{
  PpPickingList *self = PP_PICKING_LIST (object);
  GtkWidget *child;

  self->is_showing = TRUE;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (pp_picking_list_parent_class)->dispose (object);
}

static void
pp_picking_list_finalize (GObject *object)
{
  g_ptr_array_unref (PP_PICKING_LIST (object)->rows);
  G_OBJECT_CLASS (pp_picking_list_parent_class)->finalize (object);
}

static void
pp_picking_list_class_init (PpPickingListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_picking_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_picking_list_finalize;
  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  left_out_signal = g_signal_new ("left-out", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
pp_picking_list_init (PpPickingList *self)
{
  GtkWidget *scrolled = g_object_new (GTK_TYPE_SCROLLED_WINDOW, "hscrollbar-policy",
                                      GTK_POLICY_NEVER, "propagate-natural-height", TRUE,
                                      "max-content-height",
                                      (int) (MOST_EM * pp_em_of (GTK_WIDGET (self))), NULL);

  self->rows = g_ptr_array_new_with_free_func (g_free);
  self->box = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_widget_add_css_class (GTK_WIDGET (self->box), "pp-picking-list");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->box), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Pieces in the picture"), -1);
  g_signal_connect (self->box, "row-selected", G_CALLBACK (row_cb), self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (self->box));
  gtk_widget_add_css_class (scrolled, "pp-shelf-frame");
  gtk_widget_set_parent (scrolled, GTK_WIDGET (self));
}

static void
show_line (const Line          *line,
           const PpPickingLine *what,
           guint                number)
{
  g_autofree char *spoken = g_strdup_printf (_("Piece %u, %s, %s"), number, what->name, what->size);
  g_autofree char *keep = g_strdup_printf (_("Keep piece %u"), number);

  gtk_label_set_text (GTK_LABEL (line->name), what->name);
  gtk_label_set_text (GTK_LABEL (line->size), what->size);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (line->keep), what->is_kept);
  gtk_widget_set_opacity (line->name, what->is_kept ? 1 : 0.6);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line->row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line->keep), GTK_ACCESSIBLE_PROPERTY_LABEL, keep,
                                  -1);
}

void
pp_picking_list_show (PpPickingList       *self,
                      const PpPickingLine *lines,
                      guint                n_lines,
                      guint                chosen)
{
  g_return_if_fail (PP_IS_PICKING_LIST (self));

  self->is_showing = TRUE;
  while (self->rows->len < n_lines)
    add_line (self);
  while (self->rows->len > n_lines)
    drop_line (self);
  for (guint i = 0; i < n_lines; i++)
    show_line (self->rows->pdata[i], &lines[i], i + 1);
  if (chosen < n_lines)
    gtk_list_box_select_row (self->box,
                             GTK_LIST_BOX_ROW (((Line *) self->rows->pdata[chosen])->row));
  self->is_showing = FALSE;
}
