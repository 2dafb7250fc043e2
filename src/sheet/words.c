/* words.c: where a piece goes, in the maker's words and unit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/words.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/polygon.h"
#include "sheet/plain-line.h"

#include <math.h>

#define LONG 1.6  /* a piece this many times as long as wide has a tip and a base */
#define ROUND 0.9 /* one whose least radius is at least this share of its greatest is round */

static gboolean
is_round (const PpPiece *piece)
{
  PpPoint middle = pp_outline_centroid (piece->outline);
  double least = INFINITY;
  double greatest = 0;
  guint n;
  const PpPoint *ring = pp_outline_get_ring (piece->outline, 0, &n);

  for (guint i = 0; i + 1 < n; i++)
    {
      /* Middles of sides too: a square's corners alone all lie on one circle. */
      PpPoint half = { (ring[i].x + ring[i + 1].x) / 2, (ring[i].y + ring[i + 1].y) / 2 };

      greatest = fmax (greatest, pp_point_distance (ring[i], middle));
      least = fmin (least, fmin (pp_point_distance (ring[i], middle),
                                 pp_point_distance (half, middle)));
    }
  return least >= ROUND * greatest;
}

/* The outline's farthest point along (dx, dy), in the middle of those equally far. */
static PpPoint
find_end (const PpOutline *outline,
          double           dx,
          double           dy)
{
  PpBox ties = pp_box_empty ();
  double farthest = -INFINITY;
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);

  for (guint i = 0; i < n; i++)
    {
      double reach = ring[i].x * dx + ring[i].y * dy;

      if (reach > farthest + PP_TIE)
        {
          farthest = reach;
          ties = pp_box_empty ();
        }
      if (reach > farthest - PP_TIE)
        ties = pp_box_add_point (ties, ring[i]);
    }
  return pp_box_middle (ties);
}

static guint
get_half_hours (PpPoint from,
                PpPoint to)
{
  double angle = atan2 (to.x - from.x, from.y - to.y) * 12 / G_PI;
  int half_hours = (int) lround (angle);

  return half_hours > 0 ? (guint) half_hours : (guint) (half_hours + 24);
}

PpLie
pp_lie_of (const PpBody *body)
{
  const PpOutline *outline = body->piece->outline;
  PpBox box = pp_outline_get_box (outline);
  gboolean is_upright = pp_box_height (box) >= pp_box_width (box);
  PpLie lie = { .middle = body->centroid };

  lie.is_long = body->piece->kind != PP_KIND_FLOWER && body->length >= LONG * body->width;
  if (lie.is_long)
    {
      lie.tip = is_upright ? find_end (outline, 0, -1) : find_end (outline, 1, 0);
      lie.base = is_upright ? find_end (outline, 0, 1) : find_end (outline, -1, 0);
      lie.tip = pp_frame_to_panel (&body->frame, lie.tip);
      lie.base = pp_frame_to_panel (&body->frame, lie.base);
      lie.half_hours = get_half_hours (lie.base, lie.tip);
    }
  else if (!is_round (body->piece))
    lie.half_hours = get_half_hours (pp_frame_to_panel (&body->frame, (PpPoint) { 0, 0 }),
                                     pp_frame_to_panel (&body->frame, (PpPoint) { 0, -1 }));
  return lie;
}

char *
pp_hour_format (guint half_hours)
{
  guint hour = half_hours / 2 % 12;

  if (half_hours == 0)
    return g_strdup ("");
  return g_strdup_printf (half_hours % 2 == 0 ? "%u" : "%u\302\275", hour == 0 ? 12 : hour);
}

char *
pp_clock_format (double minutes)
{
  guint64 seconds = (guint64) llround (fmax (minutes, 0) * 60);
  guint s = (guint) (seconds % 60);
  guint m = (guint) (seconds / 60 % 60);
  guint64 h = seconds / 3600;

  if (h == 0)
    return g_strdup_printf ("%u:%02u", m, s);
  return g_strdup_printf ("%" G_GUINT64_FORMAT ":%02u:%02u", h, m, s);
}

static PpPoint
from_corner (const PpSheetJob *job,
             PpPoint           p)
{
  PpBox box = pp_background_get_box (job->check->panel->background);

  return (PpPoint) { p.x - box.x0, p.y - box.y0 };
}

static char *
bare (const PpSheetJob *job,
      double            mm)
{
  return pp_length_format_bare (mm, job->units);
}

/* In the unit of the sheet, which may be another than the panel's. */
static char *
place_of (const PpSheetJob *job,
          PpPoint           p)
{
  PpPanel shown = *job->check->panel;

  shown.units = job->units;
  return pp_place_format (&shown, p);
}

static void
fill_middle (PpJobWords       *self,
             const PpSheetJob *job,
             PpPoint           middle)
{
  PpPoint from = from_corner (job, middle);
  g_autofree char *place = place_of (job, middle);

  self->middle_left = bare (job, from.x);
  self->middle_top = bare (job, from.y);
  self->from_left = g_strdup (self->middle_left);
  self->from_top = g_strdup (self->middle_top);
  self->place = g_strdup_printf (_("its middle %s"), place);
}

static void
fill_ends (PpJobWords       *self,
           const PpSheetJob *job,
           const PpLie      *lie)
{
  PpPoint tip = from_corner (job, lie->tip);
  PpPoint base = from_corner (job, lie->base);
  g_autofree char *tip_left = bare (job, tip.x);
  g_autofree char *tip_top = bare (job, tip.y);
  g_autofree char *base_left = bare (job, base.x);
  g_autofree char *base_top = bare (job, base.y);
  g_autofree char *tip_place = place_of (job, lie->tip);
  g_autofree char *base_place = place_of (job, lie->base);

  g_free (self->from_left);
  g_free (self->from_top);
  g_free (self->place);
  /* Translators: the two ends of a leaf or stem, each with its distance from the left. */
  self->from_left = g_strdup_printf (_("tip %s\nbase %s"), tip_left, base_left);
  self->from_top = g_strdup_printf ("%s\n%s", tip_top, base_top);
  self->place = g_strdup_printf (_("its tip %s, its base %s"), tip_place, base_place);
}

/* Which of the two: by where they are, for the maker does not know the names of the holes. */
static void
name_knot (PpJobWords    *self,
           const PpScene *scene,
           guint          knot)
{
  const PpHole *hole = pp_scene_knot_hole (scene, knot);
  const PpHole *other = pp_scene_knot_hole (scene, 1 - knot);

  if (fabs (hole->x - other->x) >= fabs (hole->y - other->y))
    {
      self->name = g_strdup (hole->x < other->x ? _("Left knot") : _("Right knot"));
      self->act = g_strdup (hole->x < other->x ? _("Tie the left knot and set it in glue")
                                               : _("Tie the right knot and set it in glue"));
      return;
    }
  self->name = g_strdup (hole->y < other->y ? _("Upper knot") : _("Lower knot"));
  self->act = g_strdup (hole->y < other->y ? _("Tie the upper knot and set it in glue")
                                           : _("Tie the lower knot and set it in glue"));
}

static void
name_piece (PpJobWords   *self,
            const PpBody *body)
{
  const PpPiece *piece = body->piece;
  g_autofree char *name = pp_plain_line_new (pp_piece_get_title (piece));

  if (body->placement->mirrored)
    self->name = g_strdup_printf (_("%s, mirrored"), name);
  else
    self->name = g_steal_pointer (&name);
  self->act = g_strdup (self->name);
}

PpJobWords *
pp_job_words_new (const PpSheetJob *job,
                  guint             job_index)
{
  const PpScene *scene = job->check->scene;
  PpJobWords *self = g_new0 (PpJobWords, 1);
  const PpBody *body;
  PpLie lie;

  if (job_index < scene->n_knots)
    {
      name_knot (self, scene, job_index);
      fill_middle (self, job, pp_scene_knot_place (scene, job_index));
      self->turn = g_strdup ("");
      return self;
    }
  body = scene->bodies[job_index - scene->n_knots];
  lie = pp_lie_of (body);
  name_piece (self, body);
  fill_middle (self, job, lie.middle);
  if (lie.is_long)
    fill_ends (self, job, &lie);
  self->turn = pp_hour_format (lie.half_hours);
  return self;
}

void
pp_job_words_free (PpJobWords *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_free (self->act);
  g_free (self->middle_left);
  g_free (self->middle_top);
  g_free (self->from_left);
  g_free (self->from_top);
  g_free (self->turn);
  g_free (self->place);
  g_free (self);
}

const char *
pp_from_left_heading (PpUnits units)
{
  return units == PP_UNITS_INCH ? _("from left, in") : _("from left, mm");
}

const char *
pp_from_top_heading (PpUnits units)
{
  return units == PP_UNITS_INCH ? _("from top, in") : _("from top, mm");
}

gboolean
pp_stands_over (const PpCheck *check)
{
  const PpBackground *glass = check->panel->background;

  return check->extent.width > glass->width + PP_TIE
         || check->extent.height > glass->height + PP_TIE;
}
