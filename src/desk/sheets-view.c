/* sheets-view.c: the pages that will print, as paper on the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/sheets-view.h"

#include "desk/sheet-leaf.h"
#include "panel/i18n.h"

#include <math.h>

#define GAP 18          /* px, round each page */
#define LEAST_ZOOM 0.2  /* px a mm */
#define MOST_ZOOM 12.0
#define MOST_PIXELS 2e7 /* of one page's picture; a larger page is drawn coarser */
#define KEPT 1.5        /* heights of the view, above and below, in which pictures are kept */

struct _PpSheetsView
{
  GtkWidget     parent_instance;
  PpSheetMaker *maker;
  PpSheetSet   *set;
  GPtrArray    *leaves; /* PpSheetLeaf, borrowed */
  double        zoom;   /* px a mm, or 0 */
  guint         n_across;
  guint         asked;  /* page whose picture is being drawn */
  guint         fitting; /* idle source */
  GtkScrolledWindow *scrolled; /* round it, borrowed, while it is rooted */
};

G_DEFINE_FINAL_TYPE (PpSheetsView, pp_sheets_view, GTK_TYPE_WIDGET)

static guint moved_signal;

static GtkAdjustment *
get_down (PpSheetsView *self)
{
  return self->scrolled != NULL ? gtk_scrolled_window_get_vadjustment (self->scrolled) : NULL;
}

double
pp_sheets_view_get_scale (PpSheetsView *self)
{
  double wide, high;

  g_return_val_if_fail (PP_IS_SHEETS_VIEW (self), 1);

  if (self->zoom > 0)
    return self->zoom;
  if (self->set == NULL || self->scrolled == NULL)
    return 1;
  wide = gtk_widget_get_width (GTK_WIDGET (self->scrolled)) - 2.0 * GAP;
  high = gtk_widget_get_height (GTK_WIDGET (self->scrolled)) - 2.0 * GAP;
  return CLAMP (fmin (wide / self->set->paper.width, high / self->set->paper.height), LEAST_ZOOM,
                MOST_ZOOM);
}

static int
get_width (PpSheetsView *self)
{
  return (int) ceil (self->set->paper.width * pp_sheets_view_get_scale (self));
}

static int
get_height (PpSheetsView *self)
{
  return (int) ceil (self->set->paper.height * pp_sheets_view_get_scale (self));
}

static guint
count_across (PpSheetsView *self,
              int           width)
{
  int fit = (width - GAP) / (get_width (self) + GAP);

  return (guint) CLAMP (fit, 1, (int) MAX (self->leaves->len, 1));
}

static void
pp_sheets_view_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  PpSheetsView *self = PP_SHEETS_VIEW (widget);
  guint n, rows;

  *minimum = *natural = 0;
  if (self->set == NULL)
    return;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = *natural = self->zoom > 0 ? get_width (self) + 2 * GAP : 2 * GAP;
      return;
    }
  n = count_across (self, for_size >= 0 ? for_size : gtk_widget_get_width (widget));
  rows = (self->leaves->len + n - 1) / n;
  *minimum = *natural = GAP + (int) rows * (get_height (self) + GAP);
}

static GtkSizeRequestMode
pp_sheets_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* Where a page lies in the view. */
static GdkRectangle
get_place (PpSheetsView *self,
           guint         page)
{
  int width = get_width (self), height = get_height (self);
  int row = (int) (page / self->n_across), column = (int) (page % self->n_across);
  int whole = (int) self->n_across * (width + GAP) - GAP;
  int left = MAX ((gtk_widget_get_width (GTK_WIDGET (self)) - whole) / 2, GAP);

  return (GdkRectangle) { left + column * (width + GAP), GAP + row * (height + GAP), width,
                          height };
}

static void draw_next (PpSheetsView *self);

static void
pp_sheets_view_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  PpSheetsView *self = PP_SHEETS_VIEW (widget);

  if (self->set == NULL)
    return;
  self->n_across = count_across (self, width);
  for (guint i = 0; i < self->leaves->len; i++)
    {
      GdkRectangle place = get_place (self, i);

      gtk_widget_size_allocate (g_ptr_array_index (self->leaves, i), &place, -1);
    }
  draw_next (self);
}

/* Pixels a mm of the picture that is wished for. */
static double
get_picture_scale (PpSheetsView *self)
{
  double scale = pp_sheets_view_get_scale (self) * gtk_widget_get_scale_factor (GTK_WIDGET (self));
  double area = self->set->paper.width * self->set->paper.height;

  return fmin (scale, sqrt (MOST_PIXELS / area));
}

static gboolean
is_within (PpSheetsView *self,
           guint         page,
           double        more)
{
  GdkRectangle place = get_place (self, page);
  GtkAdjustment *down = get_down (self);
  double top = gtk_adjustment_get_value (down), size = gtk_adjustment_get_page_size (down);

  return place.y + place.height > top - more * size && place.y < top + (1 + more) * size;
}

static void
picture_cb (cairo_surface_t *image,
            gpointer         data)
{
  PpSheetsView *self = data;

  if (image == NULL) /* no memory for it, nor for the next */
    pp_sheets_view_set_set (self, NULL);
  else if (self->asked < self->leaves->len)
    pp_sheet_leaf_set_image (g_ptr_array_index (self->leaves, self->asked), image);
}

/* The first page in sight without a picture of the right size; those far away lose theirs. */
static void
draw_next (PpSheetsView *self)
{
  double scale;
  int pixels;

  if (self->set == NULL || self->maker == NULL || get_down (self) == NULL
      || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  scale = get_picture_scale (self);
  pixels = (int) lround (self->set->paper.width * scale);
  for (guint i = 0; i < self->leaves->len; i++)
    {
      PpSheetLeaf *leaf = g_ptr_array_index (self->leaves, i);

      if (!is_within (self, i, KEPT))
        pp_sheet_leaf_set_image (leaf, NULL);
      else if (is_within (self, i, 0) && pp_sheet_leaf_get_pixels (leaf) != pixels)
        {
          if (pp_sheet_maker_picture (self->maker, self->set, i, scale, picture_cb, self))
            self->asked = i;
          return;
        }
    }
}

static void
idle_cb (PpSheetMaker *maker,
         PpSheetsView *self)
{
  draw_next (self);
}

static void
scrolled_cb (PpSheetsView *self)
{
  draw_next (self);
  g_signal_emit (self, moved_signal, 0);
}

static gboolean
fit_cb (gpointer data)
{
  PpSheetsView *self = data;

  self->fitting = 0;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_signal_emit (self, moved_signal, 0);
  return G_SOURCE_REMOVE;
}

/* It may be amid an allocation. */
static void
resized_cb (PpSheetsView *self)
{
  if (self->fitting == 0)
    self->fitting = g_idle_add (fit_cb, self);
}

static void
pp_sheets_view_root (GtkWidget *widget)
{
  PpSheetsView *self = PP_SHEETS_VIEW (widget);
  GtkWidget *around;

  GTK_WIDGET_CLASS (pp_sheets_view_parent_class)->root (widget);
  around = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  g_return_if_fail (around != NULL);
  self->scrolled = GTK_SCROLLED_WINDOW (around);
  g_signal_connect_swapped (get_down (self), "value-changed", G_CALLBACK (scrolled_cb), self);
  g_signal_connect_swapped (get_down (self), "changed", G_CALLBACK (resized_cb), self);
}

static void
pp_sheets_view_unroot (GtkWidget *widget)
{
  PpSheetsView *self = PP_SHEETS_VIEW (widget);

  g_signal_handlers_disconnect_by_data (get_down (self), self);
  self->scrolled = NULL;
  g_clear_handle_id (&self->fitting, g_source_remove);
  GTK_WIDGET_CLASS (pp_sheets_view_parent_class)->unroot (widget);
}

static void
pp_sheets_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (pp_sheets_view_parent_class)->map (widget);
  resized_cb (PP_SHEETS_VIEW (widget));
}

guint
pp_sheets_view_get_page (PpSheetsView *self)
{
  g_return_val_if_fail (PP_IS_SHEETS_VIEW (self), 0);

  if (self->set == NULL || get_down (self) == NULL)
    return 0;
  for (guint i = 0; i < self->leaves->len; i++)
    {
      GdkRectangle place = get_place (self, i);

      if (place.y + place.height / 2 > gtk_adjustment_get_value (get_down (self)))
        return i + 1;
    }
  return self->leaves->len;
}

guint
pp_sheets_view_get_n_pages (PpSheetsView *self)
{
  g_return_val_if_fail (PP_IS_SHEETS_VIEW (self), 0);
  return self->leaves->len;
}

static void
go_to (PpSheetsView *self,
       int           page)
{
  int last = (int) self->leaves->len - 1;

  if (last >= 0)
    gtk_adjustment_set_value (get_down (self),
                              get_place (self, (guint) CLAMP (page, 0, last)).y - GAP);
}

static gboolean
key_cb (GtkEventControllerKey *keys,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        state,
        PpSheetsView          *self)
{
  GtkAdjustment *down = get_down (self);
  int page = (int) pp_sheets_view_get_page (self) - 1, row = (int) self->n_across;

  if (self->set == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  if (keyval == GDK_KEY_Page_Down || keyval == GDK_KEY_KP_Page_Down || keyval == GDK_KEY_space)
    go_to (self, page + row);
  else if (keyval == GDK_KEY_Page_Up || keyval == GDK_KEY_KP_Page_Up)
    go_to (self, page - row);
  else if (keyval == GDK_KEY_Home || keyval == GDK_KEY_KP_Home)
    go_to (self, 0);
  else if (keyval == GDK_KEY_End || keyval == GDK_KEY_KP_End)
    go_to (self, G_MAXINT);
  else if (keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down)
    gtk_adjustment_set_value (down, gtk_adjustment_get_value (down)
                                    + gtk_adjustment_get_page_size (down) / 8);
  else if (keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up)
    gtk_adjustment_set_value (down, gtk_adjustment_get_value (down)
                                    - gtk_adjustment_get_page_size (down) / 8);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

static void
drop_leaves (PpSheetsView *self)
{
  for (guint i = 0; i < self->leaves->len; i++)
    gtk_widget_unparent (g_ptr_array_index (self->leaves, i));
  g_ptr_array_set_size (self->leaves, 0);
}

static void
pp_sheets_view_dispose (GObject *object)
{
  PpSheetsView *self = PP_SHEETS_VIEW (object);

  pp_sheets_view_set_maker (self, NULL);
  drop_leaves (self);
  g_clear_pointer (&self->set, pp_sheet_set_unref);
  G_OBJECT_CLASS (pp_sheets_view_parent_class)->dispose (object);
}

static void
pp_sheets_view_finalize (GObject *object)
{
  g_ptr_array_unref (PP_SHEETS_VIEW (object)->leaves);
  G_OBJECT_CLASS (pp_sheets_view_parent_class)->finalize (object);
}

static void
pp_sheets_view_class_init (PpSheetsViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_sheets_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_sheets_view_finalize;
  widget_class->measure = pp_sheets_view_measure;
  widget_class->get_request_mode = pp_sheets_view_get_request_mode;
  widget_class->size_allocate = pp_sheets_view_size_allocate;
  widget_class->root = pp_sheets_view_root;
  widget_class->unroot = pp_sheets_view_unroot;
  widget_class->map = pp_sheets_view_map;
  moved_signal = g_signal_new ("moved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "pp-sheets-view");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
pp_sheets_view_init (PpSheetsView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->leaves = g_ptr_array_new ();
  self->n_across = 1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

void
pp_sheets_view_set_maker (PpSheetsView *self,
                          PpSheetMaker *maker)
{
  g_return_if_fail (PP_IS_SHEETS_VIEW (self));

  if (self->maker != NULL)
    g_signal_handlers_disconnect_by_data (self->maker, self);
  g_set_object (&self->maker, maker);
  if (maker != NULL)
    g_signal_connect (maker, "idle", G_CALLBACK (idle_cb), self);
}

static void
lay_leaves (PpSheetsView *self)
{
  for (guint i = 0; i < self->set->n_pages; i++)
    {
      /* Translators: a sheet, then the number of its page: "Record, page 1 of 9". */
      g_autofree char *name = g_strdup_printf (_("%s, page %u of %u"),
                                               _(self->set->kinds[i]->title), i + 1,
                                               self->set->n_pages);
      GtkWidget *leaf = pp_sheet_leaf_new (name);

      gtk_widget_set_parent (leaf, GTK_WIDGET (self));
      g_ptr_array_add (self->leaves, leaf);
    }
}

void
pp_sheets_view_set_set (PpSheetsView *self,
                        PpSheetSet   *set)
{
  g_return_if_fail (PP_IS_SHEETS_VIEW (self));

  drop_leaves (self);
  g_clear_pointer (&self->set, pp_sheet_set_unref);
  self->asked = G_MAXUINT;
  if (set != NULL)
    {
      self->set = pp_sheet_set_ref (set);
      lay_leaves (self);
    }
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_signal_emit (self, moved_signal, 0);
}

void
pp_sheets_view_set_zoom (PpSheetsView *self,
                         double        zoom)
{
  g_return_if_fail (PP_IS_SHEETS_VIEW (self));

  self->zoom = zoom > 0 ? CLAMP (zoom, LEAST_ZOOM, MOST_ZOOM) : 0;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_signal_emit (self, moved_signal, 0);
}
