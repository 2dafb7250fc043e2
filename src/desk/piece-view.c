/* piece-view.c: a piece drawn large.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/piece-view.h"

#include "desk/em.h"
#include "desk/palette.h"
#include "desk/piece-picture.h"
#include "desk/ruler.h"
#include "panel/i18n.h"

#define MARGIN_EMS 2.4
#define DASH 4.0 /* px */

typedef struct
{
  PpPoint from;   /* mm */
  PpPoint to;
  double  radius; /* mm, of a ring round the origin; 0: a line */
  char   *words;
} Mark;

struct _PpPieceView
{
  GtkWidget       parent_instance;
  PpUnits         units;
  const PpPiece  *piece;
  PpArt          *art;
  GArray         *marks;
  PpZoom          zoom;  /* the piece's frame */

  GtkWidget      *grid;
  PpRuler        *across;
  PpRuler        *down;
  GtkDrawingArea *sheet;
};

G_DEFINE_FINAL_TYPE (PpPieceView, pp_piece_view, GTK_TYPE_WIDGET)

static guint pressed_signal;

static void
clear_mark (gpointer mark)
{
  g_free (((Mark *) mark)->words);
}

/* mm: the least of a row of sizes that the piece has room in. */
static double
get_room (double longer)
{
  static const double rows[] = { 1, 1.5, 2, 3, 5, 7.5 };

  for (double decade = 1; decade < 1e5; decade *= 10)
    for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
      if (decade * rows[i] >= longer)
        return decade * rows[i];
  return longer;
}

/* A square in which long pieces lie too would leave them tiny: the row of sizes goes by what is
 * the tighter of the two ways. */
static PpZoom
fit (PpBox  box,
     double width,
     double height,
     double margin)
{
  double wide = pp_box_width (box), high = pp_box_height (box);
  double room = fmax (width - 2 * margin, 1) / fmax (height - 2 * margin, 1);
  double longer = get_room (fmax (high, wide / room));
  PpPoint middle = pp_box_middle (box);
  PpBox whole = { middle.x - longer * room / 2, middle.y - longer / 2,
                  middle.x + longer * room / 2, middle.y + longer / 2 };

  return pp_zoom_fit (whole, width, height, margin, FALSE);
}

static void
place (PpPieceView *self)
{
  double em = pp_em_of (GTK_WIDGET (self));
  int width = gtk_widget_get_width (GTK_WIDGET (self->sheet));
  int height = gtk_widget_get_height (GTK_WIDGET (self->sheet));
  PpZoom ruled;
  PpPoint zero;
  PpBox box;

  if (self->piece == NULL || width <= 0 || height <= 0)
    return;
  box = pp_outline_get_box (self->piece->outline);
  self->zoom = fit (box, width, height, MARGIN_EMS * em);
  zero = pp_zoom_to_widget (&self->zoom, (PpPoint) { box.x0, box.y0 });
  ruled = (PpZoom) { .scale = self->zoom.scale, .x = zero.x, .y = zero.y };
  pp_ruler_set (self->across, &ruled, self->units);
  pp_ruler_set (self->down, &ruled, self->units);
}

/* From the rulers to the piece, so that its ends are read. */
static void
draw_edges (PpPieceView     *self,
            cairo_t         *cr,
            const PpPalette *palette,
            int              width,
            int              height)
{
  PpBox box = pp_outline_get_box (self->piece->outline);
  PpPoint near = pp_zoom_to_widget (&self->zoom, (PpPoint) { box.x0, box.y0 });
  PpPoint far = pp_zoom_to_widget (&self->zoom, (PpPoint) { box.x1, box.y1 });
  const double xs[] = { near.x, far.x }, ys[] = { near.y, far.y };

  for (guint i = 0; i < 2; i++)
    {
      cairo_move_to (cr, floor (xs[i]) + 0.5, 0);
      cairo_line_to (cr, floor (xs[i]) + 0.5, height);
      cairo_move_to (cr, 0, floor (ys[i]) + 0.5);
      cairo_line_to (cr, width, floor (ys[i]) + 0.5);
    }
  cairo_set_line_width (cr, 1);
  pp_palette_set (cr, &palette->line, 0.45);
  cairo_stroke (cr);
}

static void
draw_piece (PpPieceView *self,
            cairo_t     *cr)
{
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  PpPoint origin;
  cairo_surface_t *picture = pp_piece_picture (self->piece, self->art, self->zoom.scale, FALSE,
                                               self->piece->thickness, factor, &origin);

  cairo_surface_set_device_scale (picture, factor, factor);
  cairo_set_source_surface (cr, picture, round (self->zoom.x) - origin.x,
                            round (self->zoom.y) - origin.y);
  cairo_paint (cr);
  cairo_surface_destroy (picture);
}

static void
draw_words (PpPieceView     *self,
            cairo_t         *cr,
            const PpPalette *palette,
            PpPoint          at,
            const char      *words)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), words);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  cairo_move_to (cr, at.x + 4, at.y - height / 2.0);
  pp_palette_set (cr, &palette->faint, 1);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_mark (PpPieceView     *self,
           cairo_t         *cr,
           const PpPalette *palette,
           const Mark      *mark)
{
  const double dash[] = { DASH, DASH };
  PpPoint from = pp_zoom_to_widget (&self->zoom, mark->from);
  PpPoint to = pp_zoom_to_widget (&self->zoom, mark->to);

  cairo_new_path (cr);
  if (mark->radius > 0)
    cairo_arc (cr, self->zoom.x, self->zoom.y, mark->radius * self->zoom.scale, 0, 2 * G_PI);
  else
    {
      cairo_move_to (cr, from.x, from.y);
      cairo_line_to (cr, to.x, to.y);
    }
  cairo_set_line_width (cr, 3);
  pp_palette_set (cr, &palette->paper, 0.5);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dash, G_N_ELEMENTS (dash), 0);
  pp_palette_set (cr, &palette->ink, 0.7);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  if (mark->words != NULL)
    draw_words (self, cr, palette, to, mark->words);
}

static void
draw_cb (GtkDrawingArea *sheet,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  PpPieceView *self = data;
  PpPalette palette = pp_palette_of (GTK_WIDGET (self));

  if (self->piece == NULL)
    return;
  place (self);
  draw_edges (self, cr, &palette, width, height);
  draw_piece (self, cr);
  for (guint i = 0; i < self->marks->len; i++)
    draw_mark (self, cr, &palette, &g_array_index (self->marks, Mark, i));
}

static void
resize_cb (GtkDrawingArea *sheet,
           int             width,
           int             height,
           PpPieceView    *self)
{
  place (self);
}

static void
pressed_cb (GtkGestureClick *click,
            int              n_press,
            double           x,
            double           y,
            PpPieceView     *self)
{
  PpPoint at = pp_zoom_to_panel (&self->zoom, (PpPoint) { x, y });

  if (self->piece != NULL)
    g_signal_emit (self, pressed_signal, 0, at.x, at.y);
}

static void
pp_piece_view_dispose (GObject *object)
{
  g_clear_pointer (&PP_PIECE_VIEW (object)->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (pp_piece_view_parent_class)->dispose (object);
}

static void
pp_piece_view_finalize (GObject *object)
{
  PpPieceView *self = PP_PIECE_VIEW (object);

  g_clear_pointer (&self->piece, pp_piece_unref);
  g_clear_pointer (&self->art, pp_art_unref);
  g_array_unref (self->marks);
  G_OBJECT_CLASS (pp_piece_view_parent_class)->finalize (object);
}

static void
pp_piece_view_class_init (PpPieceViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_piece_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_piece_view_finalize;
  pressed_signal = g_signal_new ("pressed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "pp-piece-view");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
pp_piece_view_init (PpPieceView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->marks = g_array_new (FALSE, TRUE, sizeof (Mark));
  g_array_set_clear_func (self->marks, clear_mark);
  self->across = g_object_new (PP_TYPE_RULER, "orientation", GTK_ORIENTATION_HORIZONTAL, NULL);
  self->down = g_object_new (PP_TYPE_RULER, "orientation", GTK_ORIENTATION_VERTICAL, NULL);
  self->sheet = GTK_DRAWING_AREA (gtk_drawing_area_new ());
  gtk_drawing_area_set_draw_func (self->sheet, draw_cb, self, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self->sheet), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self->sheet), TRUE);
  g_signal_connect (self->sheet, "resize", G_CALLBACK (resize_cb), self);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->sheet), GTK_EVENT_CONTROLLER (click));
  self->grid = gtk_grid_new ();
  gtk_widget_set_direction (self->grid, GTK_TEXT_DIR_LTR); /* left is left, whichever way is read */
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->across), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->down), 0, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (self->sheet), 1, 1, 1, 1);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
}

void
pp_piece_view_set_units (PpPieceView *self,
                         PpUnits      units)
{
  g_return_if_fail (PP_IS_PIECE_VIEW (self));
  self->units = units;
}

void
pp_piece_view_set_piece (PpPieceView   *self,
                         const PpPiece *piece)
{
  g_return_if_fail (PP_IS_PIECE_VIEW (self));

  if (piece != NULL)
    pp_piece_ref (piece);
  g_clear_pointer (&self->piece, pp_piece_unref);
  g_clear_pointer (&self->art, pp_art_unref);
  g_array_set_size (self->marks, 0);
  self->piece = piece;
  if (piece != NULL && piece->art != NULL)
    self->art = pp_art_new (piece->art, NULL);
  place (self);
  gtk_widget_queue_draw (GTK_WIDGET (self->sheet));
}

void
pp_piece_view_add_line (PpPieceView *self,
                        PpPoint      from,
                        PpPoint      to,
                        const char  *words)
{
  Mark mark = { from, to, 0, g_strdup (words) };

  g_return_if_fail (PP_IS_PIECE_VIEW (self));
  g_array_append_val (self->marks, mark);
}

void
pp_piece_view_add_ring (PpPieceView *self,
                        double       radius)
{
  Mark mark = { .radius = radius };

  g_return_if_fail (PP_IS_PIECE_VIEW (self));
  if (radius > 0)
    g_array_append_val (self->marks, mark);
}
