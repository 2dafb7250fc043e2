/* fit-layout.c: of several ways to show the same, the first for which there is room.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/fit-layout.h"

struct _PpFitLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (PpFitLayout, pp_fit_layout, GTK_TYPE_LAYOUT_MANAGER)

static int
natural_width (GtkWidget *child)
{
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  return natural;
}

static GtkWidget *
find_fitting (GtkWidget *widget,
              int        width)
{
  GtkWidget *child = gtk_widget_get_first_child (widget);

  while (gtk_widget_get_next_sibling (child) != NULL && natural_width (child) > width)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* As high as the highest, so that nothing else moves when another way is shown. */
static void
pp_fit_layout_measure (GtkLayoutManager *manager,
                       GtkWidget        *widget,
                       GtkOrientation    orientation,
                       int               for_size,
                       int              *minimum,
                       int              *natural,
                       int              *minimum_baseline,
                       int              *natural_baseline)
{
  *minimum = *natural = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      gboolean is_last = gtk_widget_get_next_sibling (child) == NULL;
      int least, wanted;

      gtk_widget_measure (child, orientation, -1, &least, &wanted, NULL, NULL);
      *natural = MAX (*natural, wanted);
      if (is_last || orientation == GTK_ORIENTATION_VERTICAL)
        *minimum = MAX (*minimum, least);
    }
}

static void
pp_fit_layout_allocate (GtkLayoutManager *manager,
                        GtkWidget        *widget,
                        int               width,
                        int               height,
                        int               baseline)
{
  GtkWidget *shown = find_fitting (widget, width);

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      gtk_widget_set_child_visible (child, child == shown);
      gtk_accessible_update_state (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_STATE_HIDDEN,
                                   child != shown, -1);
    }
  gtk_widget_allocate (shown, width, height, baseline, NULL);
}

static void
pp_fit_layout_class_init (PpFitLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  manager_class->measure = pp_fit_layout_measure;
  manager_class->allocate = pp_fit_layout_allocate;
}

static void
pp_fit_layout_init (PpFitLayout *self)
{
}
