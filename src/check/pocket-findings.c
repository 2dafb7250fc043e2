/* pocket-findings.c: fused glass, and the pockets in it that stems stand in.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What counts of an insert is the part of it under the fused glass: there the pocket is. An insert
 * that misses its fused part leaves a mouth of no width, and no seam and no depth are asked of it.
 */
#include "check/piece-name.h"
#include "check/questions.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"
#include "shape/polygon.h"

#define SAME_EXPANSION 1e-7   /* /K by which two glasses may differ */
#define BEYOND 1.0            /* mm² of glass beyond another that count as nothing */
#define OPEN_WITHIN 0.5       /* mm: an insert this near the border leaves a mouth */
#define BELOW_MOUTH 0.5       /* mm under the mouth from which the seam counts */
#define MOUTH_DEPTH 1.0       /* mm under the top of the pocket, where its mouth is measured */
#define KILN_LOSS 0.5         /* mm that an insert gives up in the kiln */
#define SHORT 5.0             /* mm a stem may end over the bottom of its pocket */

typedef struct
{
  PpFindings    *findings;
  const PpScene *scene;
  guint          index;
  const PpPart  *part;
  PpRegion      *pocket; /* insert ∩ fused part; NULL without a pocket */
} Fusing;

static void
say (const Fusing       *self,
     const char         *code,
     PpLevel             level,
     PpOrigin            origin,
     const char * const *about,
     double              value,
     double              limit,
     char               *text)
{
  pp_findings_add (self->findings,
                   (PpFinding) { .code = code,
                                 .level = level,
                                 .origin = origin,
                                 .at = self->part->centroid,
                                 .about = about,
                                 .value = value,
                                 .limit = limit },
                   text);
}

static char *
length (const Fusing *self,
        double        mm)
{
  return pp_length_format (mm, self->scene->panel->units);
}

static const char *
name_of (const Fusing *self)
{
  return pp_fused_get_title (self->part->fused);
}

static void
ask_firing (const Fusing *self)
{
  const PpPanel *panel = self->scene->panel;
  const PpFused *fused = self->part->fused;
  const char *name = pp_fused_get_title (fused);
  double difference = fabs (pp_panel_get_fused_expansion (panel, fused)
                            - panel->background->glass.expansion);
  g_autoptr (PpRegion) beyond = pp_region_difference (self->part->region, self->scene->background);

  if (difference > SAME_EXPANSION + PP_TIE_EXPANSION)
    say (self, "expansion", PP_LEVEL_FAULT, PP_ORIGIN_OWN, PP_ABOUT (fused->id), difference,
         SAME_EXPANSION,
         g_strdup_printf (_("%s and the background are of different COE and crack as they cool. "
                            "Use glass of one COE."), name));
  say (self, "fire-slower", PP_LEVEL_NOTE, PP_ORIGIN_PRACTICE, PP_ABOUT (fused->id), NAN, NAN,
       g_strdup_printf (_("%s makes one layer beside two: heat and cool it more slowly, by the "
                          "glass maker’s own schedule."), name));
  if (pp_is_over (pp_region_get_area (beyond), BEYOND))
    say (self, "fused-over", PP_LEVEL_CAUTION, PP_ORIGIN_PRACTICE, PP_ABOUT (fused->id),
         pp_region_get_area (beyond), BEYOND,
         g_strdup_printf (_("%s reaches beyond the background, where it sags in the kiln. Move or "
                            "trim it."), name));
}

/* Leaves of a side what is lower than y; FALSE where nothing is. */
static gboolean
clip_below (PpSide *side,
            double  y)
{
  PpPoint *upper = side->a.y < side->b.y ? &side->a : &side->b;
  PpPoint *lower = side->a.y < side->b.y ? &side->b : &side->a;

  if (lower->y <= y)
    return FALSE;
  if (upper->y < y)
    *upper = (PpPoint) { upper->x + (y - upper->y) / (lower->y - upper->y) * (lower->x - upper->x),
                         y };
  return TRUE;
}

/* Whether two sides may, by their boxes, be nearer than `distance`. */
static gboolean
may_be_nearer (const PpSide *p,
               const PpSide *q,
               double        distance)
{
  double x = fmax (fmin (p->a.x, p->b.x) - fmax (q->a.x, q->b.x),
                   fmin (q->a.x, q->b.x) - fmax (p->a.x, p->b.x));
  double y = fmax (fmin (p->a.y, p->b.y) - fmax (q->a.y, q->b.y),
                   fmin (q->a.y, q->b.y) - fmax (p->a.y, p->b.y));

  return fmax (x, y) < distance;
}

/* The lesser of `least` and the distance of one side to an outline. */
static double
side_to_outline (const PpSide    *side,
                 const PpOutline *outline,
                 double           least)
{
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          const PpSide other = { p[i], p[i + 1] };

          if (may_be_nearer (side, &other, least))
            least = fmin (least, pp_side_distance (*side, other));
        }
    }
  return least;
}

/* Least distance of the insert's outline from the fused part's where that lies under the mouth. */
static double
find_seam (const Fusing *self,
           double        mouth_y)
{
  const PpFused *fused = self->part->fused;
  double least = INFINITY;

  for (guint r = 0; r < pp_outline_get_n_rings (fused->outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (fused->outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          PpSide side = { p[i], p[i + 1] };

          if (clip_below (&side, mouth_y + BELOW_MOUTH))
            least = side_to_outline (&side, fused->pocket.insert, least);
        }
    }
  return least;
}

static int
compare_doubles (gconstpointer a,
                 gconstpointer b)
{
  const double *p = a, *q = b;

  return *p < *q ? -1 : *p > *q;
}

typedef struct
{
  GArray *cuts;
  double  y;
} Slice;

static void
slice_polygon (const PpOutline *polygon,
               gpointer         data)
{
  Slice *slice = data;

  for (guint r = 0; r < pp_outline_get_n_rings (polygon); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (polygon, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        if ((p[i].y <= slice->y) != (p[i + 1].y <= slice->y))
          {
            double t = (slice->y - p[i].y) / (p[i + 1].y - p[i].y);
            double x = p[i].x + t * (p[i + 1].x - p[i].x);

            g_array_append_val (slice->cuts, x);
          }
    }
}

/* How much of the line at height y lies in the region. */
static double
width_at (PpRegion *region,
          double    y)
{
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (double));
  Slice slice = { cuts, y };
  double width = 0;

  pp_region_foreach (region, slice_polygon, &slice);
  g_array_sort (cuts, compare_doubles);
  for (guint i = 0; i + 1 < cuts->len; i += 2)
    width += g_array_index (cuts, double, i + 1) - g_array_index (cuts, double, i);
  return width;
}

static void
ask_seam (const Fusing *self)
{
  const PpFused *fused = self->part->fused;
  double limit = pp_panel_get_limit (self->scene->panel, PP_LIMIT_SEAM);
  double seam = find_seam (self, pp_region_get_box (self->pocket).y0);
  g_autofree char *is = length (self, isfinite (seam) ? seam : 0);
  g_autofree char *wanted = length (self, limit);

  if (pp_is_under (seam, limit))
    say (self, "seam", PP_LEVEL_FAULT, PP_ORIGIN_PRACTICE, PP_ABOUT (fused->id), seam, limit,
         g_strdup_printf (_("The seam beside the pocket of %s is %s wide and may not hold; make it "
                            "at least %s."), name_of (self), is, wanted));
}

static void
ask_mouth (const Fusing *self)
{
  const PpFused *fused = self->part->fused;
  double distance = pp_region_border_distance (self->part->insert, self->part->region);
  g_autofree char *is = length (self, distance);

  if (pp_is_over (distance, OPEN_WITHIN))
    say (self, "pocket-closed", PP_LEVEL_FAULT, PP_ORIGIN_OWN, PP_ABOUT (fused->id), distance,
         OPEN_WITHIN,
         g_strdup_printf (_("The pocket of %s has no mouth: its insert ends %s inside the border. "
                            "Let the insert reach the rim."), name_of (self), is));
}

/* Of a stem as it lies level: its greatest top less its least underside. One too thin for a cell
 * is as high as it is thick. */
static double
stem_height (const PpBody *body)
{
  double least = INFINITY, greatest = -INFINITY;

  for (guint k = 0; k < body->cells->n_spans; k++)
    {
      const PpSpan *span = &body->cells->spans[k];

      for (int i = span->i0; i < span->i1; i++)
        {
          PpPoint own = pp_frame_to_piece (&body->frame, (PpPoint) { pp_cell_centre (i),
                                                                     pp_cell_centre (span->j) });

          least = fmin (least, pp_heights_underside (&body->heights, own));
          greatest = fmax (greatest, pp_heights_top (&body->heights, own));
        }
    }
  return greatest > least ? greatest - least : body->piece->thickness;
}

static void
ask_stem_height (const Fusing *self,
                 guint         stem)
{
  const PpPocket *pocket = &self->part->fused->pocket;
  const PpBody *body = self->scene->bodies[stem];
  double room = isnan (pocket->gap) ? pocket->insert_thickness - KILN_LOSS : pocket->gap;
  double height = stem_height (body);
  g_autofree char *name = pp_piece_name_of (self->scene, stem);
  g_autofree char *is = length (self, height);
  g_autofree char *has = length (self, fmax (room, 0));

  if (pp_is_over (height, room))
    say (self, "stem-thick", PP_LEVEL_FAULT, PP_ORIGIN_OWN, PP_ABOUT (body->placement->id), height,
         room,
         g_strdup_printf (_("%s is %s thick, and the pocket has room for %s. Take a thinner stem."),
                          name, is, has));
}

static void
ask_stem_place (const Fusing *self,
                guint         stem)
{
  const PpBody *body = self->scene->bodies[stem];
  const char *part = self->part->fused->id;
  g_autofree char *name = pp_piece_name_of (self->scene, stem);
  g_autoptr (PpRegion) inside = pp_region_intersection (body->region, self->part->region);
  g_autoptr (PpRegion) beside = pp_region_difference (inside, self->part->insert);
  g_autoptr (PpRegion) within = pp_region_intersection (body->region, self->part->insert);
  double bottom = pp_region_get_box (self->part->insert).y1;
  double foot = pp_region_get_area (within) > 0 ? pp_region_get_box (within).y1
                                                : pp_region_get_box (self->pocket).y0;
  g_autofree char *over = NULL;

  if (pp_is_over (pp_region_get_area (beside), BEYOND))
    say (self, "stem-astray", PP_LEVEL_FAULT, PP_ORIGIN_OWN, PP_ABOUT (body->placement->id, part),
         pp_region_get_area (beside), BEYOND,
         g_strdup_printf (_("%s runs beside the pocket of %s, where there is no room. Turn or move "
                            "it into the pocket."), name, name_of (self)));
  if (!pp_is_over (bottom - foot, SHORT))
    return;
  over = length (self, bottom - foot);
  say (self, "stem-short", PP_LEVEL_NOTE, PP_ORIGIN_OWN, PP_ABOUT (body->placement->id, part),
       bottom - foot, SHORT,
       g_strdup_printf (_("%s ends %s above the bottom of the pocket. Push it farther in if it "
                          "should stand firm."), name, over));
}

/* The widths of the stems against the mouth. */
static void
ask_stems (const Fusing *self)
{
  g_autoptr (GPtrArray) about = g_ptr_array_new ();
  double mouth = width_at (self->pocket, pp_region_get_box (self->pocket).y0 + MOUTH_DEPTH);
  double sum = 0;
  g_autofree char *room = length (self, mouth);
  g_autofree char *needed = NULL;

  g_ptr_array_add (about, (gpointer) self->part->fused->id);
  for (guint i = 0; i < self->scene->n_bodies; i++)
    if (self->scene->pockets[i] == (int) self->index)
      {
        ask_stem_height (self, i);
        ask_stem_place (self, i);
        sum += self->scene->bodies[i]->width;
        g_ptr_array_add (about, (gpointer) self->scene->bodies[i]->placement->id);
      }
  g_ptr_array_add (about, NULL);
  needed = length (self, sum);
  if (about->len > 2 && pp_is_over (sum, mouth))
    say (self, "stems-wide", PP_LEVEL_FAULT, PP_ORIGIN_OWN, (const char * const *) about->pdata,
         sum, mouth,
         g_strdup_printf (_("The stems in the pocket of %s are %s wide together; its mouth is %s. "
                            "Take one out or use thinner ones."), name_of (self),
                          needed, room));
}

void
pp_ask_pocket (PpFindings    *findings,
               const PpCheck *check)
{
  const PpScene *scene = check->scene;

  for (guint i = 0; i < scene->n_parts; i++)
    {
      const PpPart *part = &scene->parts[i];
      g_autoptr (PpRegion) pocket = part->insert != NULL
                                        ? pp_region_intersection (part->insert, part->region)
                                        : NULL;
      const Fusing fusing = { findings, scene, i, part, pocket };

      ask_firing (&fusing);
      if (pocket == NULL)
        continue;
      ask_mouth (&fusing);
      if (pp_region_get_area (pocket) > 0)
        ask_seam (&fusing);
      ask_stems (&fusing);
    }
}
