/* piece-thumb.c: a piece as a small picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drawing is judged and drawn in a thread, as that may take long; until then the piece is plain.
 */
#include "config.h"

#include "desk/piece-thumb.h"

#include "desk/em.h"
#include "desk/piece-picture.h"

#define WIDTH_EMS 4.6
#define HEIGHT_EMS 3.4
#define LEAST_EMS 1.2

struct _PpPieceThumb
{
  GtkWidget        parent_instance;
  const PpPiece   *piece;
  cairo_surface_t *picture; /* NULL: not drawn yet */
  PpPoint          origin;  /* of the piece in it */
  PpPieceLie       lie;
  int              factor;
};

G_DEFINE_FINAL_TYPE (PpPieceThumb, pp_piece_thumb, GTK_TYPE_WIDGET)

/* Of one piece, for one lie of it. */
typedef struct
{
  const PpPiece   *piece;
  PpPieceLie       lie;
  int              factor;
  cairo_surface_t *picture;
  PpPoint          origin;
} Drawing;

static void
free_drawing (gpointer data)
{
  Drawing *self = data;

  pp_piece_unref (self->piece);
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  g_free (self);
}

/* `art` is nullable. */
static void
draw (Drawing *self,
      PpArt   *art)
{
  self->picture = pp_piece_picture (self->piece, art, self->lie.scale, self->lie.turned,
                                    self->piece->thickness, self->factor, &self->origin);
  cairo_surface_set_device_scale (self->picture, self->factor, self->factor);
}

static void
draw_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Drawing *self = data;
  g_autoptr (PpArt) art = pp_art_new (self->piece->art, NULL);

  if (art != NULL)
    draw (self, art);
  g_task_return_boolean (task, art != NULL);
}

static void
take (PpPieceThumb *self,
      Drawing      *drawing)
{
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  self->picture = g_steal_pointer (&drawing->picture);
  self->origin = drawing->origin;
  self->lie = drawing->lie;
  self->factor = drawing->factor;
}

/* What is shown may be another piece by now, or as large as no more. */
static void
drawn_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (PpPieceThumb) self = data;
  Drawing *drawing = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), NULL) || self->picture == NULL
      || drawing->piece != self->piece || drawing->factor != self->factor
      || drawing->lie.scale != self->lie.scale)
    return;
  take (self, drawing);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
draw_picture (PpPieceThumb *self,
              double        em,
              int           factor)
{
  Drawing *drawing = g_new0 (Drawing, 1);
  g_autoptr (GTask) task = NULL;

  drawing->piece = pp_piece_ref (self->piece);
  drawing->lie = pp_piece_lie (self->piece, pp_piece_span (self->piece), WIDTH_EMS * em,
                               HEIGHT_EMS * em, LEAST_EMS * em);
  drawing->factor = factor;
  draw (drawing, NULL);
  take (self, drawing);
  if (self->piece->art == NULL)
    {
      free_drawing (drawing);
      return;
    }
  task = g_task_new (NULL, NULL, drawn_cb, g_object_ref (self));
  g_task_set_task_data (task, drawing, free_drawing);
  g_task_run_in_thread (task, draw_in_thread);
}

static void
pp_piece_thumb_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  PpPieceThumb *self = PP_PIECE_THUMB (widget);
  int factor = gtk_widget_get_scale_factor (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  PpPoint middle;
  cairo_t *cr;

  if (self->piece == NULL)
    return;
  if (self->picture == NULL || self->factor != factor)
    draw_picture (self, pp_em_of (widget), factor);
  middle = pp_box_middle (self->lie.box);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  cairo_set_source_surface (cr, self->picture,
                            round ((double) width / 2 - middle.x) - self->origin.x,
                            round ((double) height / 2 - middle.y) - self->origin.y);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
pp_piece_thumb_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  double ems = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_EMS : HEIGHT_EMS;

  *minimum = *natural = (int) ceil (ems * pp_em_of (widget)) + 4;
}

static void
pp_piece_thumb_css_changed (GtkWidget         *widget,
                            GtkCssStyleChange *change)
{
  g_clear_pointer (&PP_PIECE_THUMB (widget)->picture, cairo_surface_destroy);
  GTK_WIDGET_CLASS (pp_piece_thumb_parent_class)->css_changed (widget, change);
}

static void
pp_piece_thumb_finalize (GObject *object)
{
  PpPieceThumb *self = PP_PIECE_THUMB (object);

  g_clear_pointer (&self->picture, cairo_surface_destroy);
  g_clear_pointer (&self->piece, pp_piece_unref);
  G_OBJECT_CLASS (pp_piece_thumb_parent_class)->finalize (object);
}

static void
pp_piece_thumb_class_init (PpPieceThumbClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = pp_piece_thumb_finalize;
  widget_class->snapshot = pp_piece_thumb_snapshot;
  widget_class->measure = pp_piece_thumb_measure;
  widget_class->css_changed = pp_piece_thumb_css_changed;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
pp_piece_thumb_init (PpPieceThumb *self)
{
}

GtkWidget *
pp_piece_thumb_new (void)
{
  return g_object_new (PP_TYPE_PIECE_THUMB, NULL);
}

void
pp_piece_thumb_set_piece (PpPieceThumb  *self,
                          const PpPiece *piece)
{
  g_return_if_fail (PP_IS_PIECE_THUMB (self));

  if (piece == self->piece)
    return;
  if (piece != NULL)
    pp_piece_ref (piece);
  g_clear_pointer (&self->piece, pp_piece_unref);
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  self->piece = piece;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
