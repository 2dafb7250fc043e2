/* frames.c: how long a frame takes while one of 200 pieces is dragged, and how much memory that needs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The real window with a canvas of 1400 x 900, each frame one step of a drag along a circle, timed
 * from before-paint to after-paint of the frame clock: edit, layout and painting. The check runs
 * beside it as ever. Machines differ, so the figure to compare is the ratio to the time of putting
 * 200 pictures of 110 px on a surface as large as the canvas, taken in the same run.
 *
 * Usage: frames PANEL
 */
#include "config.h"

#include "desk/application.h"
#include "desk/canvas-private.h"
#include "desk/window.h"
#include "file/panel-read.h"

#include <math.h>
#include <stdio.h>
#include <time.h>

#define CANVAS_WIDTH 1400
#define CANVAS_HEIGHT 900
#define WARM_UP 30        /* frames that are not counted: sprites and layers are made in them */
#define FRAMES 600
#define FRAME_MS 16.7
#define RADIUS 220.0      /* px, of the circle */
#define AROUND 120.0      /* frames once round it */
#define SPRITES 200
#define SPRITE 110        /* px */
#define BLITS 41

typedef struct
{
  PpWindow  *window;
  PpCanvas  *canvas;
  GMainLoop *loop;
  PpPoint    start; /* px */
  int        frame; /* -1 before the drag */
  gint64     began;
  double     began_cpu;
  double     ms[FRAMES];
  double     cpu_ms[FRAMES];
} Bench;

static int
compare (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
get_quantile (double *sorted,
              int     n,
              double  part)
{
  return sorted[MIN (n - 1, (int) (part * n))];
}

/* TRUE once the canvas has its size; else asks for a window that much larger. */
static gboolean
fit_window (Bench *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self->canvas));
  int height = gtk_widget_get_height (GTK_WIDGET (self->canvas));
  int window_width, window_height;

  if (width == CANVAS_WIDTH && height == CANVAS_HEIGHT)
    return TRUE;
  if (width == 0 || height == 0)
    return FALSE;
  gtk_window_get_default_size (GTK_WINDOW (self->window), &window_width, &window_height);
  gtk_window_set_default_size (GTK_WINDOW (self->window), window_width + CANVAS_WIDTH - width,
                               window_height + CANVAS_HEIGHT - height);
  return FALSE;
}

/* TRUE if a press in the middle of a piece takes hold of a piece, and of no pin. */
static gboolean
take_hold (Bench             *self,
           const PpPlacement *placement)
{
  self->start = pp_zoom_to_widget (pp_canvas_get_zoom (self->canvas),
                                   (PpPoint) { placement->x, placement->y });
  if (fabs (self->start.x - CANVAS_WIDTH / 2.0) > RADIUS
      || fabs (self->start.y - CANVAS_HEIGHT / 2.0) > RADIUS)
    return FALSE;
  pp_canvas_drag_begin (self->canvas, self->start, FALSE, FALSE);
  if (self->canvas->drag.meant == PP_DRAG_MOVE)
    return TRUE;
  pp_canvas_drag_cancel (self->canvas);
  return FALSE;
}

/* Of one that lies half way up the heap, or higher. */
static void
begin (Bench *self)
{
  const PpPanel *panel = pp_document_get_panel (pp_window_get_document (self->window));

  for (guint i = panel->placements->len / 2; i < panel->placements->len; i++)
    if (take_hold (self, pp_panel_placement (panel, i)))
      return;
  g_error ("There is no piece about the middle of the glass.");
}

static void
step (Bench *self)
{
  double angle = self->frame / AROUND * 2 * G_PI;
  PpPoint px = { self->start.x + RADIUS * (cos (angle) - 1), self->start.y + RADIUS * sin (angle) };

  pp_canvas_drag_update (self->canvas, px, FALSE);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  Bench *self = data;

  if (self->frame < 0)
    {
      gtk_widget_queue_draw (widget);
      if (!fit_window (self) || !pp_document_is_checked (pp_window_get_document (self->window)))
        return G_SOURCE_CONTINUE;
      begin (self);
    }
  self->frame++;
  step (self);
  return G_SOURCE_CONTINUE;
}

/* ms of work done by this thread, which other programs do not lengthen. */
static double
get_cpu_time (void)
{
  struct timespec time;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time);
  return (double) time.tv_sec * 1000 + (double) time.tv_nsec / 1e6;
}

static void
before_cb (GdkFrameClock *clock,
           Bench         *self)
{
  self->began = g_get_monotonic_time ();
  self->began_cpu = get_cpu_time ();
}

static void
after_cb (GdkFrameClock *clock,
          Bench         *self)
{
  int i = self->frame - WARM_UP;

  if (i < 0)
    return;
  if (i >= FRAMES)
    {
      g_main_loop_quit (self->loop);
      return;
    }
  self->ms[i] = (double) (g_get_monotonic_time () - self->began) / 1000;
  self->cpu_ms[i] = get_cpu_time () - self->began_cpu;
}

static void
drag (Bench *self)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (self->window));
  guint tick;

  self->frame = -1;
  self->loop = g_main_loop_new (NULL, FALSE);
  g_signal_connect (clock, "before-paint", G_CALLBACK (before_cb), self);
  g_signal_connect (clock, "after-paint", G_CALLBACK (after_cb), self);
  tick = gtk_widget_add_tick_callback (GTK_WIDGET (self->canvas), tick_cb, self, NULL);
  g_main_loop_run (self->loop);
  gtk_widget_remove_tick_callback (GTK_WIDGET (self->canvas), tick);
  g_signal_handlers_disconnect_by_data (clock, self);
  pp_canvas_drag_end (self->canvas);
  g_main_loop_unref (self->loop);
}

static cairo_surface_t *
make_picture (void)
{
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, SPRITE, SPRITE);
  cairo_t *cr = cairo_create (picture);

  cairo_arc (cr, SPRITE / 2.0, SPRITE / 2.0, SPRITE / 2.0, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, 0.2, 0.3, 0.8, 0.9);
  cairo_fill (cr);
  cairo_destroy (cr);
  return picture;
}

/* Median ms of putting all pictures down once, at whole px as the sprites of the canvas are. */
static double
blit (void)
{
  cairo_surface_t *picture = make_picture ();
  cairo_surface_t *target
    = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, CANVAS_WIDTH, CANVAS_HEIGHT);
  double ms[BLITS];

  for (int k = 0; k < BLITS; k++)
    {
      gint64 began = g_get_monotonic_time ();
      cairo_t *cr = cairo_create (target);

      for (int i = 0; i < SPRITES; i++)
        {
          cairo_set_source_surface (cr, picture, i * 397 % (CANVAS_WIDTH - SPRITE),
                                    i * 211 % (CANVAS_HEIGHT - SPRITE));
          cairo_paint (cr);
        }
      cairo_destroy (cr);
      cairo_surface_flush (target);
      ms[k] = (double) (g_get_monotonic_time () - began) / 1000;
    }
  cairo_surface_destroy (picture);
  cairo_surface_destroy (target);
  qsort (ms, BLITS, sizeof *ms, compare);
  return ms[BLITS / 2];
}

/* MiB, the most this process ever had. */
static double
get_peak_memory (void)
{
  g_autofree char *status = NULL;
  const char *line;

  if (!g_file_get_contents ("/proc/self/status", &status, NULL, NULL))
    return (double) NAN;
  line = strstr (status, "VmHWM:");
  return line != NULL ? g_ascii_strtod (line + strlen ("VmHWM:"), NULL) / 1024 : (double) NAN;
}

static void
report (Bench *self)
{
  double once = blit ();
  double median;
  int late = 0;

  for (int i = 0; i < FRAMES; i++)
    late += self->ms[i] > FRAME_MS;
  qsort (self->ms, FRAMES, sizeof *self->ms, compare);
  qsort (self->cpu_ms, FRAMES, sizeof *self->cpu_ms, compare);
  median = get_quantile (self->ms, FRAMES, 0.5);
  printf ("{ \"frame_ms\": %.3f, \"frame_99_ms\": %.3f, \"work_ms\": %.3f, \"late\": %d, \"frames\": %d, \"blit_ms\": %.3f,"
          " \"ratio\": %.3f, \"memory_mib\": %.0f }\n",
          median, get_quantile (self->ms, FRAMES, 0.99),
          get_quantile (self->cpu_ms, FRAMES, 0.5), late, FRAMES, once, median / once,
          get_peak_memory ());
}

static void
activate_cb (GtkApplication *application,
             gpointer        data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_load (data, &error);
  g_autoptr (PpDocument) document = NULL;
  Bench *bench = g_new0 (Bench, 1);

  /* else the program would open its own window after this one */
  g_signal_stop_emission_by_name (application, "activate");
  if (panel == NULL)
    g_error ("%s", error->message);
  document = pp_document_new (panel, NULL);
  bench->window = pp_window_new (application);
  bench->canvas = pp_window_get_canvas (bench->window);
  pp_window_set_document (bench->window, document);
  gtk_window_set_default_size (GTK_WINDOW (bench->window), CANVAS_WIDTH + 300, CANVAS_HEIGHT + 300);
  gtk_window_present (GTK_WINDOW (bench->window));
  drag (bench);
  report (bench);
  gtk_window_destroy (GTK_WINDOW (bench->window));
  g_free (bench);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (PpApplication) application = NULL;

  if (argc != 2)
    return 2;
  application = pp_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), argv[1]);
  return g_application_run (G_APPLICATION (application), 1, argv);
}
