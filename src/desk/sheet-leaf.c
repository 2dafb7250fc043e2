/* sheet-leaf.c: one page of paper as it will print.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/sheet-leaf.h"

struct _PpSheetLeaf
{
  GtkWidget        parent_instance;
  cairo_surface_t *image;
};

G_DEFINE_FINAL_TYPE (PpSheetLeaf, pp_sheet_leaf, GTK_TYPE_WIDGET)

static void
pp_sheet_leaf_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  PpSheetLeaf *self = PP_SHEET_LEAF (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  cairo_t *cr;

  if (self->image == NULL)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  cairo_scale (cr, (double) width / cairo_image_surface_get_width (self->image),
               (double) height / cairo_image_surface_get_height (self->image));
  cairo_set_source_surface (cr, self->image, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
pp_sheet_leaf_finalize (GObject *object)
{
  g_clear_pointer (&PP_SHEET_LEAF (object)->image, cairo_surface_destroy);
  G_OBJECT_CLASS (pp_sheet_leaf_parent_class)->finalize (object);
}

static void
pp_sheet_leaf_class_init (PpSheetLeafClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = pp_sheet_leaf_finalize;
  widget_class->snapshot = pp_sheet_leaf_snapshot;
  gtk_widget_class_set_css_name (widget_class, "pp-sheet-leaf");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
pp_sheet_leaf_init (PpSheetLeaf *self)
{
}

GtkWidget *
pp_sheet_leaf_new (const char *name)
{
  GtkWidget *self = g_object_new (PP_TYPE_SHEET_LEAF, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return self;
}

void
pp_sheet_leaf_set_image (PpSheetLeaf     *self,
                         cairo_surface_t *image)
{
  g_return_if_fail (PP_IS_SHEET_LEAF (self));

  if (image != NULL)
    cairo_surface_reference (image);
  g_clear_pointer (&self->image, cairo_surface_destroy);
  self->image = image;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

int
pp_sheet_leaf_get_pixels (PpSheetLeaf *self)
{
  g_return_val_if_fail (PP_IS_SHEET_LEAF (self), 0);
  return self->image != NULL ? cairo_image_surface_get_width (self->image) : 0;
}
