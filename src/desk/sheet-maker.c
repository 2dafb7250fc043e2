/* sheet-maker.c: draws sheets in a thread, for the eye.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Check and plan are kept for the next choice of sheets of the same panel.
 */
#include "config.h"

#include "desk/sheet-maker.h"

#include <math.h>

#define SHARE_OF_ANSWERS 0.6 /* of the whole, as sheet-answers.c has it */
#define SHARE_OF_COUNTS 0.8

struct _PpSheetMaker
{
  GObject         parent_instance;
  gboolean        is_running;
  PpWork         *work;    /* of what is being made, or NULL */
  const PpPanel  *panel;   /* that waits, or NULL */
  PpSheetChoice  *choice;
  PpSheetAnswers *answers; /* of the last panel; with the thread while one makes */
};

G_DEFINE_FINAL_TYPE (PpSheetMaker, pp_sheet_maker, G_TYPE_OBJECT)

enum
{
  MADE,
  FAILED,
  IDLE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

PpSheetSet *
pp_sheet_set_ref (PpSheetSet *self)
{
  g_atomic_ref_count_inc (&self->refs);
  return self;
}

void
pp_sheet_set_unref (PpSheetSet *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->refs))
    return;
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_free (self->kinds);
  g_free (self->counts);
  g_free (self);
}

/* What goes to the thread and comes back. */
typedef struct
{
  const PpPanel  *panel;
  PpSheetChoice  *choice;
  PpSheetAnswers *answers; /* nullable */
  PpWork         *work;
} Making;

static void
free_making (gpointer data)
{
  Making *self = data;

  pp_panel_unref (self->panel);
  pp_sheet_choice_free (self->choice);
  pp_sheet_answers_free (self->answers);
  pp_work_unref (self->work);
  g_free (self);
}

static gboolean
is_stopped (const Making *self)
{
  return g_cancellable_is_cancelled (pp_work_get_cancellable (self->work));
}

/* In the order of PpSheetSet.counts. */
static const PpSheetKind *
get_kind (guint i)
{
  guint n, n_blanks;
  const PpSheetKind * const *kinds = pp_sheet_kinds (&n);
  const PpSheetKind * const *blanks = pp_sheet_blanks (&n_blanks);

  if (i < n)
    return kinds[i];
  return i - n < n_blanks ? blanks[i - n] : NULL;
}

static void
count_pages (Making           *self,
             const PpSheetJob *job,
             PpSheetSet       *set)
{
  guint n = 0;

  while (get_kind (n) != NULL)
    n++;
  set->counts = g_new0 (guint, n);
  for (guint i = 0; i < n && !is_stopped (self); i++)
    {
      const char * const one[] = { get_kind (i)->id, NULL };

      set->counts[i] = pp_sheets_count (job, one);
      pp_work_report ((i + 1.0) / n, self->work);
    }
}

static void
name_pages (PpSheetSet         *set,
            const char * const *chosen)
{
  guint at = 0;

  set->kinds = g_new0 (const PpSheetKind *, set->n_pages + 1);
  for (guint c = 0; chosen[c] != NULL; c++)
    for (guint i = 0; get_kind (i) != NULL; i++)
      if (g_str_equal (get_kind (i)->id, chosen[c]))
        for (guint j = 0; j < set->counts[i] && at < set->n_pages; j++)
          set->kinds[at++] = get_kind (i);
}

/* Whole only if it was not stopped meanwhile. (transfer full) */
static PpSheetSet *
draw_set (Making  *self,
          GError **error)
{
  const char * const *kinds = (const char * const *) self->choice->kinds;
  const PpSheetJob job = pp_sheet_choice_job (self->choice, self->answers);
  g_autoptr (PpSheetSet) set = g_new0 (PpSheetSet, 1);

  g_atomic_ref_count_init (&set->refs);
  set->paper = self->choice->paper;
  pp_work_set_part (self->work, SHARE_OF_ANSWERS, SHARE_OF_COUNTS);
  count_pages (self, &job, set);
  if (is_stopped (self))
    set->pages = g_ptr_array_new ();
  else
    set->pages = pp_sheets_record (&job, kinds, error);
  if (set->pages == NULL)
    return NULL;
  set->n_pages = set->pages->len;
  name_pages (set, kinds);
  return g_steal_pointer (&set);
}

static void
make_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Making *self = data;
  g_autoptr (PpSheetSet) set = NULL;
  GError *error = NULL;

  if (self->answers == NULL || self->answers->check->panel != self->panel)
    {
      pp_sheet_answers_free (self->answers);
      self->answers = pp_sheet_answers_new (self->panel, TRUE, self->work, &error);
    }
  if (self->answers != NULL)
    set = draw_set (self, &error);
  if (error == NULL
      && g_cancellable_set_error_if_cancelled (pp_work_get_cancellable (self->work), &error))
    g_clear_pointer (&set, pp_sheet_set_unref);
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, g_steal_pointer (&set), (GDestroyNotify) pp_sheet_set_unref);
}

static void go_on (PpSheetMaker *self);

static void
made_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (PpSheetMaker) self = data;
  Making *making = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (PpSheetSet) set = g_task_propagate_pointer (G_TASK (result), &error);

  self->is_running = FALSE;
  self->answers = g_steal_pointer (&making->answers);
  g_clear_pointer (&self->work, pp_work_unref);
  if (self->panel == NULL && set != NULL)
    g_signal_emit (self, signals[MADE], 0, set);
  else if (self->panel == NULL)
    g_signal_emit (self, signals[FAILED], 0,
                   g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) ? NULL
                                                                             : error->message);
  go_on (self);
}

static void
make (PpSheetMaker *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, made_cb, g_object_ref (self));
  Making *making = g_new0 (Making, 1);

  self->is_running = TRUE;
  self->work = pp_work_new ();
  making->panel = g_steal_pointer (&self->panel);
  making->choice = g_steal_pointer (&self->choice);
  making->answers = g_steal_pointer (&self->answers);
  making->work = pp_work_ref (self->work);
  g_task_set_task_data (task, making, free_making);
  g_task_run_in_thread (task, make_in_thread);
}

static void
go_on (PpSheetMaker *self)
{
  if (self->is_running)
    return;
  if (self->panel != NULL)
    make (self);
  else
    g_signal_emit (self, signals[IDLE], 0);
}

static void
pp_sheet_maker_finalize (GObject *object)
{
  PpSheetMaker *self = PP_SHEET_MAKER (object);

  g_clear_pointer (&self->panel, pp_panel_unref);
  pp_sheet_choice_free (self->choice);
  pp_sheet_answers_free (self->answers);
  g_clear_pointer (&self->work, pp_work_unref);
  G_OBJECT_CLASS (pp_sheet_maker_parent_class)->finalize (object);
}

static void
pp_sheet_maker_class_init (PpSheetMakerClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = pp_sheet_maker_finalize;
  signals[MADE] = g_signal_new ("made", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[FAILED] = g_signal_new ("failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[IDLE] = g_signal_new ("idle", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
pp_sheet_maker_init (PpSheetMaker *self)
{
}

PpSheetMaker *
pp_sheet_maker_new (void)
{
  return g_object_new (PP_TYPE_SHEET_MAKER, NULL);
}

static void
cancel (PpSheetMaker *self)
{
  if (self->work != NULL)
    g_cancellable_cancel (pp_work_get_cancellable (self->work));
  g_clear_pointer (&self->panel, pp_panel_unref);
  g_clear_pointer (&self->choice, pp_sheet_choice_free);
}

void
pp_sheet_maker_ask (PpSheetMaker        *self,
                    const PpPanel       *panel,
                    const PpSheetChoice *choice)
{
  g_return_if_fail (PP_IS_SHEET_MAKER (self) && panel != NULL && choice != NULL);

  cancel (self);
  self->panel = pp_panel_ref (panel);
  self->choice = pp_sheet_choice_copy (choice);
  go_on (self);
}

void
pp_sheet_maker_stop (PpSheetMaker *self)
{
  gboolean is_waiting;

  g_return_if_fail (PP_IS_SHEET_MAKER (self));

  is_waiting = self->panel != NULL && self->work == NULL; /* behind a picture: no set comes back */
  cancel (self);
  if (is_waiting)
    g_signal_emit (self, signals[FAILED], 0, NULL);
}

double
pp_sheet_maker_get_done (PpSheetMaker *self)
{
  g_return_val_if_fail (PP_IS_SHEET_MAKER (self), 1);

  if (self->panel != NULL)
    return 0;
  return self->work != NULL ? pp_work_get_done (self->work) : 1;
}

typedef struct
{
  PpSheetMaker       *maker;
  PpSheetSet         *set;
  guint               page;
  double              scale;
  PpSheetPictureFunc  done;
  gpointer            data;
} Picture;

static void
free_picture (gpointer data)
{
  Picture *self = data;

  pp_sheet_set_unref (self->set);
  g_free (self);
}

static void
draw_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  const Picture *self = data;
  cairo_surface_t *image
      = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                    (int) lround (self->set->paper.width * self->scale),
                                    (int) lround (self->set->paper.height * self->scale));
  cairo_t *cr = cairo_create (image);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, self->scale, self->scale);
  pp_sheets_draw_page (g_ptr_array_index (self->set->pages, self->page), cr);
  cairo_destroy (cr);
  g_task_return_pointer (task, image, (GDestroyNotify) cairo_surface_destroy);
}

static void
drawn_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  const Picture *picture = g_task_get_task_data (G_TASK (result));
  g_autoptr (PpSheetMaker) self = picture->maker;
  g_autoptr (GObject) target = picture->data;
  cairo_surface_t *image = g_task_propagate_pointer (G_TASK (result), NULL);

  self->is_running = FALSE;
  picture->done (cairo_surface_status (image) == CAIRO_STATUS_SUCCESS ? image : NULL, target);
  cairo_surface_destroy (image);
  go_on (self);
}

gboolean
pp_sheet_maker_picture (PpSheetMaker       *self,
                        PpSheetSet         *set,
                        guint               page,
                        double              scale,
                        PpSheetPictureFunc  done,
                        gpointer            data)
{
  g_autoptr (GTask) task = NULL;
  Picture *picture;

  g_return_val_if_fail (PP_IS_SHEET_MAKER (self) && set != NULL && page < set->n_pages, FALSE);

  if (self->is_running)
    return FALSE;
  picture = g_new (Picture, 1);
  *picture = (Picture) { g_object_ref (self), pp_sheet_set_ref (set), page, scale, done,
                         g_object_ref (data) };
  task = g_task_new (NULL, NULL, drawn_cb, NULL);
  g_task_set_task_data (task, picture, free_picture);
  self->is_running = TRUE;
  g_task_run_in_thread (task, draw_in_thread);
  return TRUE;
}
