/* picking-work.c: finds pieces in a picture in a thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A job takes along what is known, finds the rest, and brings all of it back, also where it was
 * stopped half-way.
 */
#include "config.h"

#include "desk/picking-work.h"

#include "desk/work.h"
#include "panel/i18n.h"
#include "piece/discs.h"

#define MOST_SHOWN 2400.0 /* pixels along a side */
#define USUAL_DPI 300.0

/* Of the whole, when each step has ended. */
#define AFTER_PHOTO 0.15
#define AFTER_DISCS 0.25
#define AFTER_SQUARED 0.4
#define AFTER_GROUND 0.7

/* All that is known of one question. */
typedef struct
{
  PpPicking        question;
  PpPhoto         *photo;
  cairo_surface_t *shown;
  double           share;
  gboolean         has_corners;
  PpPoint          corners[4];
  PpSquared       *squared;
  cairo_surface_t *sheet;
  PpGround        *ground;
  PpFound         *found;
  char            *said;
  PpWork          *work;
} Answer;

struct _PpPickingWork
{
  GObject         parent_instance;
  Answer         *answer;  /* the last; NULL */
  PpPickingSight  sight;   /* of it */
  PpPicking      *asked;   /* last; NULL: nothing */
  gboolean        is_waiting; /* while another is being done */
  PpWork         *work;    /* of what is being done; NULL */
};

G_DEFINE_FINAL_TYPE (PpPickingWork, pp_picking_work, G_TYPE_OBJECT)

enum
{
  SEEN,
  DONE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
answer_free (gpointer data)
{
  Answer *self = data;

  if (self == NULL)
    return;
  pp_picking_clear (&self->question);
  g_clear_pointer (&self->photo, pp_photo_unref);
  g_clear_pointer (&self->shown, cairo_surface_destroy);
  g_clear_pointer (&self->squared, pp_squared_unref);
  g_clear_pointer (&self->sheet, cairo_surface_destroy);
  g_clear_pointer (&self->ground, pp_ground_unref);
  g_clear_pointer (&self->found, pp_found_unref);
  g_free (self->said);
  g_clear_pointer (&self->work, pp_work_unref);
  g_free (self);
}

static gboolean
are_points_equal (const PpPoint *a,
                  const PpPoint *b,
                  guint          n)
{
  for (guint i = 0; i < n; i++)
    if (a[i].x != b[i].x || a[i].y != b[i].y)
      return FALSE;
  return TRUE;
}

static gboolean
are_equal (double a,
           double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* Whether two ask for the photo to be squared in the same way. */
static gboolean
is_squared_alike (const PpPicking *a,
                  const PpPicking *b)
{
  if (a->file != b->file || a->scale != b->scale)
    return FALSE;
  if (a->scale == PP_SCALE_SCAN)
    return are_equal (a->dpi, b->dpi);
  if (a->scale == PP_SCALE_LENGTH)
    return are_equal (a->length, b->length) && a->has_ends == b->has_ends
           && are_points_equal (a->ends, b->ends, 2);
  return are_points_equal (&a->frame, &b->frame, 1) && a->has_corners == b->has_corners
         && (!a->has_corners || are_points_equal (a->corners, b->corners, 4));
}

static gboolean
is_alike (const PpPicking *a,
          const PpPicking *b)
{
  guint n = a->strokes->len;

  return is_squared_alike (a, b) && a->more == b->more && n == b->strokes->len
         && (n == 0 || memcmp (a->strokes->data, b->strokes->data, n * sizeof (PpStroke)) == 0);
}

/* With what of an answer before can be kept for the question. */
static Answer *
answer_begin (const PpPicking *question,
              const Answer    *before)
{
  Answer *self = g_new0 (Answer, 1);

  self->question = pp_picking_copy (question);
  pp_picking_forget (&self->question);
  self->work = pp_work_new ();
  if (before == NULL || before->question.file != question->file || before->photo == NULL)
    return self;
  self->photo = pp_photo_ref (before->photo);
  self->shown = cairo_surface_reference (before->shown);
  self->share = before->share;
  if (before->squared == NULL || !is_squared_alike (&before->question, question))
    return self;
  self->has_corners = before->has_corners;
  memcpy (self->corners, before->corners, sizeof self->corners);
  self->squared = pp_squared_ref (before->squared);
  self->sheet = cairo_surface_reference (before->sheet);
  if (before->ground != NULL)
    self->ground = pp_ground_ref (before->ground);
  if (before->found != NULL && before->question.more == question->more)
    self->found = pp_found_ref (before->found);
  return self;
}

/* The mean of the pixels that a smaller one stands for. (transfer full) */
static cairo_surface_t *
shrink (PpPhoto *photo,
        double  *share)
{
  guint step, stride;
  const guchar *pixels = pp_photo_get_pixels (photo, &step, &stride);
  guint width = pp_photo_get_width (photo), height = pp_photo_get_height (photo);
  guint n = (guint) ceil (MAX (width, height) / MOST_SHOWN);
  int wide = (int) (width / n), high = (int) (height / n);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, wide, high);
  guchar *data = cairo_image_surface_get_data (surface);
  gsize row = (gsize) cairo_image_surface_get_stride (surface);

  for (int y = 0; y < high; y++)
    for (int x = 0; x < wide; x++)
      {
        guint sum[3] = { 0, 0, 0 };

        for (guint j = 0; j < n; j++)
          for (guint i = 0; i < n; i++)
            for (guint c = 0; c < 3; c++)
              sum[c] += pixels[((gsize) y * n + j) * stride + ((gsize) x * n + i) * step + c];
        ((guint32 *) (gpointer) (data + (gsize) y * row))[x]
          = sum[0] / (n * n) << 16 | sum[1] / (n * n) << 8 | sum[2] / (n * n);
      }
  cairo_surface_mark_dirty (surface);
  *share = 1.0 / n;
  return surface;
}

static guint32
to_byte (float light)
{
  double s = light <= 0.0031308f ? 12.92 * (double) light
                                 : 1.055 * pow ((double) light, 1 / 2.4) - 0.055;

  return (guint32) CLAMP (lround (255 * s), 0, 255);
}

/* What is not looked at is white paper. (transfer full) */
static cairo_surface_t *
paint (const PpSquared *squared)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) squared->width,
                                                         (int) squared->height);
  guchar *data = cairo_image_surface_get_data (surface);
  gsize row = (gsize) cairo_image_surface_get_stride (surface);

  for (guint y = 0; y < squared->height; y++)
    for (guint x = 0; x < squared->width; x++)
      {
        const float *rgb = squared->rgb + 3 * ((gsize) y * squared->width + x);

        ((guint32 *) (gpointer) (data + y * row))[x]
          = rgb[0] < 0 ? 0xffffff
                       : to_byte (rgb[0]) << 16 | to_byte (rgb[1]) << 8 | to_byte (rgb[2]);
      }
  cairo_surface_mark_dirty (surface);
  return surface;
}

static gboolean
see_photo (Answer  *self,
           GError **error)
{
  if (self->photo != NULL)
    return TRUE;
  pp_work_set_part (self->work, 0, AFTER_PHOTO);
  self->photo = pp_photo_load (self->question.file, pp_work_report, self->work,
                               pp_work_get_cancellable (self->work), error);
  if (self->photo != NULL)
    self->shown = shrink (self->photo, &self->share);
  return self->photo != NULL;
}

static gboolean
see_corners (Answer  *self,
             GError **error)
{
  const PpPicking *question = &self->question;

  pp_work_set_part (self->work, AFTER_PHOTO, AFTER_DISCS);
  memcpy (self->corners, question->corners, sizeof self->corners);
  self->has_corners = question->has_corners
                      || pp_discs_find (self->photo, question->frame.x, question->frame.y,
                                        self->corners, pp_work_get_cancellable (self->work), error);
  return self->has_corners;
}

static PpSquared *
square (Answer  *self,
        GError **error)
{
  const PpPicking *question = &self->question;
  GCancellable *cancellable = pp_work_get_cancellable (self->work);
  double own = pp_photo_get_dpi (self->photo);
  double dpi = !isnan (question->dpi) ? question->dpi : isnan (own) ? USUAL_DPI : own;

  if (question->scale == PP_SCALE_FRAME && !see_corners (self, error))
    return NULL;
  pp_work_set_part (self->work, AFTER_DISCS, AFTER_SQUARED);
  switch (question->scale)
    {
    case PP_SCALE_FRAME:
      return pp_squared_by_frame (self->photo, self->corners, question->frame.x, question->frame.y,
                                  pp_work_report, self->work, cancellable, error);
    case PP_SCALE_SCAN:
      return pp_squared_by_dpi (self->photo, dpi, pp_work_report, self->work, cancellable, error);
    case PP_SCALE_LENGTH:
      if (isnan (question->length) || !question->has_ends)
        {
          g_set_error_literal (error, PP_PHOTO_ERROR, PP_PHOTO_ERROR_FRAME,
                               _("Drag the two points to both ends of something that you can "
                                 "measure, such as a ruler, and type how long it is."));
          return NULL;
        }
      return pp_squared_by_length (self->photo, question->ends[0], question->ends[1],
                                   question->length, pp_work_report, self->work, cancellable,
                                   error);
    }
  g_return_val_if_reached (NULL);
}

static gboolean
see_sheet (Answer  *self,
           GError **error)
{
  if (self->squared != NULL)
    return TRUE;
  self->squared = square (self, error);
  if (self->squared == NULL)
    return FALSE;
  self->sheet = paint (self->squared);
  return TRUE;
}

static gboolean
find (Answer  *self,
      GError **error)
{
  GCancellable *cancellable = pp_work_get_cancellable (self->work);
  g_autoptr (PpFound) before = g_steal_pointer (&self->found);
  g_autofree PpStroke *strokes = pp_picking_strokes (&self->question, self->squared);
  guint n = self->question.strokes->len;

  pp_work_set_part (self->work, AFTER_SQUARED, AFTER_GROUND);
  if (self->ground == NULL)
    self->ground = pp_ground_new (self->squared, pp_work_report, self->work, cancellable, error);
  if (self->ground == NULL)
    return FALSE;
  pp_work_set_part (self->work, AFTER_GROUND, 1);
  if (before != NULL)
    self->found = pp_found_again (before, strokes, n, cancellable, error);
  else
    self->found = pp_found_new (self->ground, self->question.more, strokes, n, pp_work_report,
                                self->work, cancellable, error);
  return self->found != NULL;
}

static void
find_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Answer *self = *(Answer **) data;
  g_autoptr (GError) error = NULL;

  if (!see_photo (self, &error) || !see_sheet (self, &error) || !find (self, &error))
    self->said = g_strdup (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)
                             ? _("Stopped. Choose the picture again, or move the slider.")
                             : error->message);
  g_task_return_boolean (task, TRUE);
}

static void
show (PpPickingWork *self)
{
  const Answer *answer = self->answer;

  self->sight = (PpPickingSight) { answer->photo, answer->shown, answer->share, answer->has_corners,
                                   { { 0 } }, answer->squared, answer->sheet };
  memcpy (self->sight.corners, answer->corners, sizeof answer->corners);
  g_signal_emit (self, signals[SEEN], 0);
}

static void begin (PpPickingWork *self);

static void
found_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (PpPickingWork) self = data;
  Answer **answer = g_task_get_task_data (G_TASK (result));

  answer_free (self->answer);
  self->answer = g_steal_pointer (answer);
  g_clear_pointer (&self->work, pp_work_unref);
  show (self);
  if (self->is_waiting)
    begin (self);
  else
    g_signal_emit (self, signals[DONE], 0);
}

static void
free_slot (gpointer data)
{
  answer_free (*(Answer **) data);
  g_free (data);
}

static void
begin (PpPickingWork *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, found_cb, g_object_ref (self));
  Answer **slot = g_new (Answer *, 1);

  *slot = answer_begin (self->asked, self->answer);
  self->is_waiting = FALSE;
  self->work = pp_work_ref ((*slot)->work);
  g_task_set_task_data (task, slot, free_slot);
  g_task_run_in_thread (task, find_in_thread);
}

static void
forget_asked (PpPickingWork *self)
{
  if (self->asked != NULL)
    pp_picking_clear (self->asked);
  g_clear_pointer (&self->asked, g_free);
  self->is_waiting = FALSE;
}

static void
pp_picking_work_finalize (GObject *object)
{
  PpPickingWork *self = PP_PICKING_WORK (object);

  answer_free (self->answer);
  forget_asked (self);
  g_clear_pointer (&self->work, pp_work_unref);
  G_OBJECT_CLASS (pp_picking_work_parent_class)->finalize (object);
}

static void
pp_picking_work_class_init (PpPickingWorkClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = pp_picking_work_finalize;
  signals[SEEN] = g_signal_new ("seen", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                0);
  signals[DONE] = g_signal_new ("done", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                0);
}

static void
pp_picking_work_init (PpPickingWork *self)
{
}

PpPickingWork *
pp_picking_work_new (void)
{
  return g_object_new (PP_TYPE_PICKING_WORK, NULL);
}

const PpPickingSight *
pp_picking_work_get_sight (PpPickingWork *self)
{
  return &self->sight;
}

void
pp_picking_work_ask (PpPickingWork   *self,
                     const PpPicking *picking)
{
  g_return_if_fail (PP_IS_PICKING_WORK (self) && picking->file != NULL);

  if (self->work != NULL && self->asked != NULL && is_alike (self->asked, picking))
    return;
  forget_asked (self);
  self->asked = g_new (PpPicking, 1);
  *self->asked = pp_picking_copy (picking);
  pp_picking_forget (self->asked);
  if (self->work == NULL)
    begin (self);
  else
    {
      self->is_waiting = TRUE;
      g_cancellable_cancel (pp_work_get_cancellable (self->work));
    }
}

void
pp_picking_work_stop (PpPickingWork *self)
{
  self->is_waiting = FALSE;
  if (self->work != NULL)
    g_cancellable_cancel (pp_work_get_cancellable (self->work));
}

gboolean
pp_picking_work_is_busy (PpPickingWork *self)
{
  return self->work != NULL;
}

double
pp_picking_work_get_done (PpPickingWork *self)
{
  return self->work != NULL ? pp_work_get_done (self->work) : 1;
}

gboolean
pp_picking_work_put_in (PpPickingWork *self,
                        PpPicking     *picking)
{
  const Answer *answer = self->answer;

  if (self->work != NULL || answer == NULL || !is_alike (&answer->question, picking))
    return FALSE;
  pp_picking_forget (picking);
  picking->is_due = FALSE;
  picking->found = answer->found != NULL ? pp_found_ref (answer->found) : NULL;
  picking->said = g_strdup (answer->said);
  return TRUE;
}
