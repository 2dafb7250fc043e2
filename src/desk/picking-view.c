/* picking-view.c: a picture with the pieces that were found in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/picking-view.h"

#include "desk/picking-view-private.h"
#include "panel/i18n.h"

G_DEFINE_FINAL_TYPE (PpPickingView, pp_picking_view, GTK_TYPE_WIDGET)

guint pp_picking_view_signals[PP_PICKING_N_SIGNALS];

gboolean
pp_picking_view_is_photo (const PpPickingView *self)
{
  return self->squared == NULL || self->tool == PP_TOOL_MARK;
}

static void
place (PpPickingView *self)
{
  gboolean is_photo = pp_picking_view_is_photo (self);
  int width = gtk_widget_get_width (GTK_WIDGET (self->area));
  int height = gtk_widget_get_height (GTK_WIDGET (self->area));
  PpZoom ruled;
  PpPoint zero = { 0, 0 };

  gtk_widget_set_opacity (GTK_WIDGET (self->across), self->photo == NULL || is_photo ? 0 : 1);
  gtk_widget_set_opacity (GTK_WIDGET (self->down), self->photo == NULL || is_photo ? 0 : 1);
  if (self->photo == NULL || width <= 0 || height <= 0)
    return;
  pp_picking_view_place (self);
  if (!is_photo)
    zero = (PpPoint) { self->squared->box.x0, self->squared->box.y0 };
  zero = pp_zoom_to_widget (&self->zoom, zero);
  ruled = (PpZoom) { .scale = self->zoom.scale, .x = zero.x, .y = zero.y };
  pp_ruler_set (self->across, &ruled, self->units);
  pp_ruler_set (self->down, &ruled, self->units);
}

/* Said of the picture to those who do not see it. */
static char *
describe (PpPickingView *self)
{
  static const char *const names[] = { N_("upper left, with the hole"), N_("upper right"),
                                       N_("lower right"), N_("lower left") };

  if (self->photo == NULL)
    return g_strdup (_("No picture yet"));
  if (pp_picking_view_is_photo (self) && self->n_marks == 4)
    return g_strdup_printf (_("Disc %u of 4, %s: arrow keys move it, Page Down goes to the next"),
                            self->mark + 1, _(names[self->mark]));
  if (pp_picking_view_is_photo (self))
    return self->n_marks == 2
             ? g_strdup_printf (_("Point %u of 2: arrow keys move it, Page Down goes to the next"),
                                self->mark + 1)
             : g_strdup (_("The picture"));
  if (self->tool == PP_TOOL_PART)
    return g_strdup (_("The picture: arrow keys move the cross, Return parts the piece there"));
  if (self->tool == PP_TOOL_JOIN)
    return g_strdup (_("The picture: arrow keys move the cross, Return joins two pieces there"));
  if (self->found == NULL || self->found->n_pieces == 0)
    return g_strdup (_("The picture, no piece found"));
  return g_strdup_printf (_("The picture, piece %u of %u: arrow keys choose, Delete leaves it out"),
                          self->chosen + 1, self->found->n_pieces);
}

void
pp_picking_view_redraw (PpPickingView *self)
{
  g_autofree char *words = describe (self);

  place (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->area), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self->area));
}

static void
resize_cb (GtkDrawingArea *area,
           int             width,
           int             height,
           PpPickingView  *self)
{
  place (self);
}

static void
forget_sight (PpPickingView *self)
{
  g_clear_pointer (&self->photo, pp_photo_unref);
  g_clear_pointer (&self->shown, cairo_surface_destroy);
  g_clear_pointer (&self->squared, pp_squared_unref);
  g_clear_pointer (&self->sheet, cairo_surface_destroy);
}

static void
forget_found (PpPickingView *self)
{
  g_clear_pointer (&self->found, pp_found_unref);
  g_clear_pointer (&self->places, g_free);
  g_clear_pointer (&self->is_left_out, g_free);
  self->has_stroke = FALSE;
}

static void
pp_picking_view_dispose (GObject *object)
{
  g_clear_pointer (&PP_PICKING_VIEW (object)->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (pp_picking_view_parent_class)->dispose (object);
}

static void
pp_picking_view_finalize (GObject *object)
{
  forget_sight (PP_PICKING_VIEW (object));
  forget_found (PP_PICKING_VIEW (object));
  G_OBJECT_CLASS (pp_picking_view_parent_class)->finalize (object);
}

static guint
add_signal (GObjectClass *klass,
            const char   *name,
            GType         type)
{
  return g_signal_new (name, G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, type != G_TYPE_NONE ? 1 : 0, type);
}

static void
pp_picking_view_class_init (PpPickingViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_picking_view_dispose;
  object_class->finalize = pp_picking_view_finalize;
  pp_picking_view_signals[PP_PICKING_CHOSEN] = add_signal (object_class, "chosen", G_TYPE_UINT);
  pp_picking_view_signals[PP_PICKING_PRESSED] = add_signal (object_class, "pressed", G_TYPE_NONE);
  pp_picking_view_signals[PP_PICKING_LEFT_OUT] = add_signal (object_class, "left-out", G_TYPE_UINT);
  pp_picking_view_signals[PP_PICKING_STROKE] = add_signal (object_class, "stroke", G_TYPE_POINTER);
  pp_picking_view_signals[PP_PICKING_MARKED] = add_signal (object_class, "marked", G_TYPE_BOOLEAN);
  pp_picking_view_signals[PP_PICKING_TOOL] = add_signal (object_class, "tool", G_TYPE_NONE);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "pp-picking-view");
}

static void
pp_picking_view_init (PpPickingView *self)
{
  self->across = g_object_new (PP_TYPE_RULER, "orientation", GTK_ORIENTATION_HORIZONTAL, NULL);
  self->down = g_object_new (PP_TYPE_RULER, "orientation", GTK_ORIENTATION_VERTICAL, NULL);
  self->area = g_object_new (GTK_TYPE_DRAWING_AREA, "hexpand", TRUE, "vexpand", TRUE, "focusable",
                             TRUE, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  gtk_drawing_area_set_draw_func (self->area, pp_picking_view_draw, self, NULL);
  g_signal_connect (self->area, "resize", G_CALLBACK (resize_cb), self);
  g_signal_connect_swapped (self->area, "state-flags-changed", G_CALLBACK (gtk_widget_queue_draw),
                            self->area);
  pp_picking_view_add_input (self);
  pp_picking_view_add_zoom (self);
  self->grid = gtk_grid_new ();
  gtk_widget_set_direction (self->grid, GTK_TEXT_DIR_LTR); /* left is left in every language */
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->across), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->down), 0, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->area), 1, 1, 1, 1);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  pp_picking_view_redraw (self);
}

PpPickingView *
pp_picking_view_new (PpUnits units)
{
  PpPickingView *self = g_object_new (PP_TYPE_PICKING_VIEW, NULL);

  self->units = units;
  return self;
}

void
pp_picking_view_set_sight (PpPickingView        *self,
                           const PpPickingSight *sight)
{
  g_return_if_fail (PP_IS_PICKING_VIEW (self));

  self->is_whole = self->is_whole || self->photo != sight->photo;
  forget_sight (self);
  if (sight->photo != NULL)
    {
      self->photo = pp_photo_ref (sight->photo);
      self->shown = cairo_surface_reference (sight->shown);
      self->share = sight->share;
    }
  if (sight->squared != NULL)
    {
      self->squared = pp_squared_ref (sight->squared);
      self->sheet = cairo_surface_reference (sight->sheet);
    }
  self->has_corners = sight->has_corners;
  memcpy (self->corners, sight->corners, sizeof sight->corners);
  pp_picking_view_redraw (self);
}

/* Where marks stand that nobody has set: well within the photo, the right way round. */
static void
set_usual_marks (PpPickingView *self)
{
  static const PpPoint shares[2][PP_MOST_MARKS] = {
    { { 0.3, 0.5 }, { 0.7, 0.5 } },
    { { 0.15, 0.15 }, { 0.85, 0.15 }, { 0.85, 0.85 }, { 0.15, 0.85 } },
  };
  double width = pp_photo_get_width (self->photo), height = pp_photo_get_height (self->photo);

  for (guint i = 0; i < self->n_marks; i++)
    self->marks[i] = (PpPoint) { shares[self->n_marks == 4][i].x * width,
                                 shares[self->n_marks == 4][i].y * height };
}

static void
take_marks (PpPickingView   *self,
            const PpPicking *picking)
{
  static const guint counts[] = { [PP_SCALE_FRAME] = 4, [PP_SCALE_SCAN] = 0,
                                  [PP_SCALE_LENGTH] = 2 };
  guint n = counts[picking->scale];
  gboolean is_told = n == 4 ? picking->has_corners : picking->has_ends;

  if (self->is_dragging)
    return;
  self->n_marks = n;
  self->mark = MIN (self->mark, n > 0 ? n - 1 : 0);
  if (n > 0 && is_told)
    memcpy (self->marks, n == 4 ? picking->corners : picking->ends, n * sizeof *self->marks);
  else if (n == 4 && self->has_corners)
    memcpy (self->marks, self->corners, sizeof self->corners);
  else
    set_usual_marks (self);
}

void
pp_picking_view_set_picking (PpPickingView   *self,
                             const PpPicking *picking)
{
  PpFound *found = picking->found;

  g_return_if_fail (PP_IS_PICKING_VIEW (self));

  if (self->photo != NULL)
    take_marks (self, picking);
  if (found != self->found)
    {
      forget_found (self);
      self->found = found != NULL ? pp_found_ref (found) : NULL;
      self->places = g_new0 (PpPoint, found != NULL ? found->n_pieces : 1);
      for (guint i = 0; found != NULL && i < found->n_pieces; i++)
        self->places[i] = pp_picking_place (found, i);
    }
  g_free (self->is_left_out);
  self->is_left_out = g_new0 (gboolean, found != NULL ? found->n_pieces + 1 : 1);
  for (guint i = 0; found != NULL && i < found->n_pieces; i++)
    self->is_left_out[i] = pp_picking_is_left_out (picking, i);
  self->chosen = pp_picking_get_chosen (picking);
  pp_picking_view_redraw (self);
}

void
pp_picking_view_set_tool (PpPickingView *self,
                          PpPickingTool  tool)
{
  g_return_if_fail (PP_IS_PICKING_VIEW (self));

  if (self->tool == tool)
    return;
  self->tool = tool;
  self->has_stroke = self->has_cross = FALSE;
  pp_picking_view_redraw (self);
}

PpPickingTool
pp_picking_view_get_tool (PpPickingView *self)
{
  return self->tool;
}

const PpPoint *
pp_picking_view_get_marks (PpPickingView *self)
{
  return self->marks;
}
