/* tray-row.c: the compartments of the tray side by side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/tray-row-private.h"

#define GAP 6        /* px of wood between compartments */
#define GROUP_GAP 18 /* between kinds */
#define MOST_GROWTH 0.3 /* of a compartment's width, where the tray is wider than it needs */

G_DEFINE_FINAL_TYPE (PpTrayRow, pp_tray_row, GTK_TYPE_WIDGET)

static int
measure_child (GtkWidget      *child,
               GtkOrientation  orientation)
{
  int natural;

  gtk_widget_measure (child, orientation, -1, NULL, &natural, NULL, NULL);
  return natural;
}

/* The wood before the i-th compartment. */
static int
get_gap (PpTrayRow *self,
         guint      i)
{
  if (i == 0)
    return PP_TRAY_RAIL;
  return pp_tray_row_get_kind (self, i) != pp_tray_row_get_kind (self, i - 1) ? GROUP_GAP : GAP;
}

static void
pp_tray_row_measure (GtkWidget      *widget,
                     GtkOrientation  orientation,
                     int             for_size,
                     int            *minimum,
                     int            *natural,
                     int            *minimum_baseline,
                     int            *natural_baseline)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);
  int size = PP_TRAY_RAIL;

  if (orientation == GTK_ORIENTATION_VERTICAL)
    size += pp_tray_row_get_head (self);
  if (orientation == GTK_ORIENTATION_VERTICAL && self->order->len > 0)
    size += measure_child (pp_tray_row_get (self, 0), orientation);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    for (guint i = 0; i < self->order->len; i++)
      size += get_gap (self, i) + measure_child (pp_tray_row_get (self, i), orientation);
  *minimum = *natural = size;
}

/* By how much each compartment is wider than it must be, as a share of its width. */
static double
get_growth (PpTrayRow *self,
            int        width)
{
  int compartments = 0, wood = PP_TRAY_RAIL;

  for (guint i = 0; i < self->order->len; i++)
    {
      wood += get_gap (self, i);
      compartments += measure_child (pp_tray_row_get (self, i), GTK_ORIENTATION_HORIZONTAL);
    }
  if (compartments == 0)
    return 0;
  return CLAMP ((double) (width - wood - compartments) / compartments, 0, MOST_GROWTH);
}

/* Not while places are given out, for this scrolls. */
static gboolean
bring_come_cb (GtkWidget     *widget,
               GdkFrameClock *clock,
               gpointer       data)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);

  if (self->come != NULL)
    pp_tray_row_bring (self, self->come);
  self->come = NULL;
  return G_SOURCE_REMOVE;
}

static void
pp_tray_row_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  PpTrayRow *self = PP_TRAY_ROW (widget);
  gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  double growth = get_growth (self, width);
  int head = pp_tray_row_get_head (self);
  int x = 0;

  for (guint i = 0; i < self->order->len; i++)
    {
      GtkWidget *child = pp_tray_row_get (self, i);
      int needed = measure_child (child, GTK_ORIENTATION_HORIZONTAL);
      int given = needed + (int) (needed * growth);

      x += get_gap (self, i);
      gtk_widget_size_allocate (child,
                                &(GtkAllocation) { rtl ? width - x - given : x, head, given,
                                                   MAX (height - head - PP_TRAY_RAIL, 0) }, -1);
      x += given;
    }
  if (self->come != NULL)
    gtk_widget_add_tick_callback (widget, bring_come_cb, NULL, NULL);
}

static void
pp_tray_row_set_focus_child (GtkWidget *widget,
                             GtkWidget *child)
{
  if (PP_IS_TRAY_COMPARTMENT (child)) /* and not the menu */
    PP_TRAY_ROW (widget)->last = child;
  GTK_WIDGET_CLASS (pp_tray_row_parent_class)->set_focus_child (widget, child);
}

static void
pp_tray_row_css_changed (GtkWidget         *widget,
                         GtkCssStyleChange *change)
{
  pp_tray_gauge_reset (PP_TRAY_ROW (widget)->gauge);
  GTK_WIDGET_CLASS (pp_tray_row_parent_class)->css_changed (widget, change);
}

static void
pp_tray_row_dispose (GObject *object)
{
  PpTrayRow *self = PP_TRAY_ROW (object);

  pp_tray_row_clear (self);
  pp_tray_row_set_adjustment (self, NULL);
  G_OBJECT_CLASS (pp_tray_row_parent_class)->dispose (object);
}

static void
pp_tray_row_finalize (GObject *object)
{
  PpTrayRow *self = PP_TRAY_ROW (object);

  pp_tray_gauge_free (self->gauge);
  g_hash_table_unref (self->compartments);
  g_ptr_array_unref (self->order);
  g_string_free (self->typed, TRUE);
  g_clear_pointer (&self->grain, cairo_surface_destroy);
  G_OBJECT_CLASS (pp_tray_row_parent_class)->finalize (object);
}

static void
pp_tray_row_class_init (PpTrayRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_tray_row_dispose;
  object_class->finalize = pp_tray_row_finalize;
  widget_class->measure = pp_tray_row_measure;
  widget_class->size_allocate = pp_tray_row_size_allocate;
  widget_class->snapshot = pp_tray_row_snapshot;
  widget_class->focus = pp_tray_row_focus;
  widget_class->set_focus_child = pp_tray_row_set_focus_child;
  widget_class->css_changed = pp_tray_row_css_changed;
  widget_class->query_tooltip = pp_tray_row_query_tooltip;
  gtk_widget_class_set_css_name (widget_class, "pp-tray-row");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
  pp_tray_row_bind_keys (widget_class);
}

static void
pp_tray_row_init (PpTrayRow *self)
{
  self->scale = 1;
  self->gauge = pp_tray_gauge_new (GTK_WIDGET (self));
  self->compartments = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->order = g_ptr_array_new ();
  self->typed = g_string_new (NULL);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  pp_tray_row_add_pointer (self);
  pp_tray_row_add_keys (self);
}

void
pp_tray_row_set_adjustment (PpTrayRow     *self,
                            GtkAdjustment *adjustment)
{
  g_return_if_fail (PP_IS_TRAY_ROW (self));

  if (self->adjustment != NULL)
    g_signal_handlers_disconnect_by_data (self->adjustment, self);
  g_set_object (&self->adjustment, adjustment);
  if (adjustment == NULL)
    return;
  g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (gtk_widget_queue_draw), self);
  g_signal_connect_swapped (adjustment, "changed", G_CALLBACK (gtk_widget_queue_draw), self);
}

void
pp_tray_row_set_scale (PpTrayRow *self,
                       double     scale)
{
  g_return_if_fail (PP_IS_TRAY_ROW (self) && scale > 0);
  self->scale = scale;
}

/* The tray by kind; within a kind as it was. (transfer full) */
static GPtrArray *
sort_by_kind (GPtrArray *tray)
{
  GPtrArray *sorted = g_ptr_array_sized_new (tray->len);

  for (guint kind = PP_KIND_FLOWER; kind <= PP_KIND_FILLER; kind++)
    for (guint i = 0; i < tray->len; i++)
      if (((const PpPiece *) g_ptr_array_index (tray, i))->kind == kind)
        g_ptr_array_add (sorted, g_ptr_array_index (tray, i));
  return sorted;
}

static void
take_out (PpTrayRow *self,
          GtkWidget *compartment)
{
  if (self->last == compartment)
    self->last = NULL;
  if (self->come == compartment)
    self->come = NULL;
  gtk_widget_unparent (compartment);
}

static void
take_out_gone (PpTrayRow     *self,
               const PpPanel *panel)
{
  GHashTableIter iter;
  gpointer id, compartment;

  g_hash_table_iter_init (&iter, self->compartments);
  while (g_hash_table_iter_next (&iter, &id, &compartment))
    if (panel == NULL || pp_panel_find_piece (panel, id, NULL) == NULL)
      {
        take_out (self, compartment);
        g_hash_table_iter_remove (&iter);
      }
}

/* The compartment of a piece, right after the last of `order`. */
static void
add_to_order (PpTrayRow  *self,
              const char *id)
{
  GtkWidget *compartment = g_hash_table_lookup (self->compartments, id);
  GtkWidget *before = self->order->len > 0 ? pp_tray_row_get (self, self->order->len - 1) : NULL;

  if (compartment == NULL)
    {
      compartment = pp_tray_compartment_new (self->gauge);
      if (self->panel != NULL && self->come == NULL)
        self->come = compartment;
      g_hash_table_insert (self->compartments, g_strdup (id), compartment);
    }
  if (gtk_widget_get_parent (compartment) == NULL
      || gtk_widget_get_prev_sibling (compartment) != before)
    gtk_widget_insert_after (compartment, GTK_WIDGET (self), before);
  g_ptr_array_add (self->order, compartment);
}

static void
fill (PpTrayRow     *self,
      const PpPanel *panel,
      PpGallery     *gallery)
{
  g_autoptr (GPtrArray) sorted = sort_by_kind (panel->tray);
  PpPieceSpan span = { 1, 1 };

  if (sorted->len > 0)
    span = pp_piece_span_of_tray (sorted);
  take_out_gone (self, panel);
  g_ptr_array_set_size (self->order, 0);
  for (guint i = 0; i < sorted->len; i++)
    {
      const PpPiece *piece = g_ptr_array_index (sorted, i);

      add_to_order (self, piece->id);
      pp_tray_compartment_set_piece (PP_TRAY_COMPARTMENT (pp_tray_row_get (self, i)), piece,
                                     pp_gallery_get (gallery, piece), span);
    }
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
count (PpTrayRow     *self,
       const PpPanel *panel)
{
  g_autoptr (GHashTable) placed = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < panel->placements->len; i++)
    {
      const char *id = pp_panel_placement (panel, i)->piece;
      guint n = GPOINTER_TO_UINT (g_hash_table_lookup (placed, id));

      g_hash_table_insert (placed, (char *) id, GUINT_TO_POINTER (n + 1));
    }
  for (guint i = 0; i < self->order->len; i++)
    {
      PpTrayCompartment *compartment = PP_TRAY_COMPARTMENT (pp_tray_row_get (self, i));
      const char *id = pp_tray_compartment_get_piece (compartment)->id;

      pp_tray_compartment_set_placed (compartment,
                                      GPOINTER_TO_UINT (g_hash_table_lookup (placed, id)),
                                      panel->units);
    }
}

/* Whether nothing that is counted differs; asked at each step of a drag. */
static gboolean
is_counted (const PpPanel *a,
            const PpPanel *b)
{
  if (a == NULL || a->tray != b->tray || a->units != b->units
      || a->placements->len != b->placements->len)
    return FALSE;
  for (guint i = 0; i < a->placements->len; i++)
    {
      const PpPlacement *one = pp_panel_placement (a, i), *other = pp_panel_placement (b, i);

      if (one != other && !g_str_equal (one->piece, other->piece))
        return FALSE;
    }
  return TRUE;
}

static void
keep_panel (PpTrayRow     *self,
            const PpPanel *panel)
{
  if (panel != NULL)
    pp_panel_ref (panel);
  g_clear_pointer (&self->panel, pp_panel_unref);
  self->panel = panel;
}

static void
keep_gallery (PpTrayRow *self,
              PpGallery *gallery)
{
  if (gallery != NULL)
    pp_gallery_ref (gallery);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  self->gallery = gallery;
}

void
pp_tray_row_show (PpTrayRow     *self,
                  const PpPanel *panel,
                  PpGallery     *gallery)
{
  gboolean is_filled;

  g_return_if_fail (PP_IS_TRAY_ROW (self) && panel != NULL);

  is_filled = self->panel != NULL && self->panel->tray == panel->tray && self->gallery == gallery;
  if (!is_filled)
    fill (self, panel, gallery);
  if (!is_filled || !is_counted (self->panel, panel))
    count (self, panel);
  keep_panel (self, panel);
  keep_gallery (self, gallery);
}

void
pp_tray_row_clear (PpTrayRow *self)
{
  g_return_if_fail (PP_IS_TRAY_ROW (self));

  g_ptr_array_set_size (self->order, 0);
  take_out_gone (self, NULL);
  keep_panel (self, NULL);
  keep_gallery (self, NULL);
}
