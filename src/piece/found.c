/* found.c: the pieces found in a squared photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/found.h"

#include "piece/beside.h"
#include "piece/mask.h"
#include "piece/parted.h"
#include "piece/smooth.h"
#include "piece/trace.h"
#include "shape/polygon.h"

#define LEAST_AREA 10.0   /* mm² of a piece; less is a speck */
#define LEAST_HOLE 4.0    /* mm²; less is a glint */
#define LEAST_DEPTH 0.7   /* mm from its border to its inmost dot: letters have less */
#define OFF 0.05          /* mm, by which fewer points may part from the smooth border; 0.3 would
                           * cost a small disc 2 % of its area, as all points lie on the curve */
#define CUT 0.2           /* mm, half the width of a stroke that parts, */
#define LEAST_CUT 0.75    /* dots, that no way leads through by the sides of dots */
#define BRIDGE 1.5        /* of one that joins */
#define MARGIN 2          /* dots round a piece that is traced */
#define PARTING 0.7       /* of the work, before pieces are looked for */

/* Of a patch of dots. */
typedef struct
{
  guint    x0, y0, x1, y1; /* the last ones not in it */
  gsize    n;
  guint    depth;          /* thirds of a dot */
  gboolean is_cut;         /* it touches what is not looked at */
} Patch;

/* Glass that a stroke parts is kept in `cuts`, row after row. */
static void
draw_stroke (const PpSquared *squared,
             const PpStroke  *stroke,
             float           *shares,
             float           *cuts)
{
  double reach = stroke->joins ? BRIDGE : fmax (CUT, LEAST_CUT / squared->dots);
  PpBox box = pp_box_grow (pp_box_add_point (pp_box_add_point (pp_box_empty (), stroke->from),
                                             stroke->to), reach);
  guint x0 = (guint) fmax ((box.x0 - squared->box.x0) * squared->dots, 0);
  guint y0 = (guint) fmax ((box.y0 - squared->box.y0) * squared->dots, 0);
  double x1 = (box.x1 - squared->box.x0) * squared->dots;
  double y1 = (box.y1 - squared->box.y0) * squared->dots;

  for (guint y = y0; y < squared->height && y <= y1; y++)
    for (guint x = x0; x < squared->width && x <= x1; x++)
      {
        PpPoint p = { squared->box.x0 + (x + 0.5) / squared->dots,
                      squared->box.y0 + (y + 0.5) / squared->dots };
        gsize at = (gsize) y * squared->width + x;

        if (pp_segment_distance (stroke->from, stroke->to, p) > reach)
          continue;
        if (!stroke->joins && cuts[at] == 0)
          cuts[at] = shares[at];
        shares[at] = stroke->joins ? 1 : 0;
      }
}

/* What a cut took goes to the patch that reaches it first, from either side at the same pace. */
static void
give_back (PpFound     *self,
           const float *cuts)
{
  const PpSquared *squared = self->ground->squared;
  gsize n = (gsize) squared->width * squared->height;
  g_autoptr (GArray) reached = g_array_new (FALSE, FALSE, sizeof (gsize));

  for (gsize i = 0; i < n; i++)
    {
      self->shares[i] = fmaxf (self->shares[i], cuts[i]);
      if (self->labels[i] != 0)
        g_array_append_val (reached, i);
    }
  for (guint i = 0; i < reached->len; i++)
    {
      gsize at = g_array_index (reached, gsize, i);
      gsize next[4];

      pp_dots_beside (at, squared->width, n, next);
      for (guint k = 0; k < 4; k++)
        if (next[k] < n && self->labels[next[k]] == 0 && cuts[next[k]] > 0.5f)
          {
            self->labels[next[k]] = self->labels[at];
            g_array_append_val (reached, next[k]);
          }
    }
}

static gboolean
is_edge (const PpSquared *squared,
         guint            x,
         guint            y)
{
  gsize at = (gsize) y * squared->width + x;

  return x == 0 || y == 0 || x + 1 == squared->width || y + 1 == squared->height
         || squared->rgb[3 * (at - 1)] < 0 || squared->rgb[3 * (at + 1)] < 0
         || squared->rgb[3 * (at - squared->width)] < 0
         || squared->rgb[3 * (at + squared->width)] < 0;
}

/* By label; the first is that of none. (transfer full) */
static Patch *
measure (const PpSquared *squared,
         const guint32   *labels,
         const guint16   *depths,
         guint            n_patches)
{
  Patch *patches = g_new0 (Patch, n_patches + 1);

  for (guint i = 0; i <= n_patches; i++)
    patches[i].x0 = patches[i].y0 = G_MAXUINT;
  for (guint y = 0; y < squared->height; y++)
    for (guint x = 0; x < squared->width; x++)
      {
        gsize at = (gsize) y * squared->width + x;
        Patch *patch = &patches[labels[at]];

        if (labels[at] == 0)
          continue;
        patch->x0 = MIN (patch->x0, x);
        patch->y0 = MIN (patch->y0, y);
        patch->x1 = MAX (patch->x1, x + 1);
        patch->y1 = MAX (patch->y1, y + 1);
        patch->n++;
        patch->depth = MAX (patch->depth, depths[at]);
        patch->is_cut = patch->is_cut || is_edge (squared, x, y);
      }
  return patches;
}

static gboolean
is_piece (const PpSquared *squared,
          const Patch     *patch)
{
  return !patch->is_cut && patch->n >= LEAST_AREA * squared->dots * squared->dots
         && patch->depth >= LEAST_DEPTH * squared->dots * PP_MASK_UNIT;
}

/* What of the raster belongs to a patch, with a margin; the dots of other patches are clear. */
static float *
crop (const PpFound *self,
      const Patch   *patch,
      guint32        label,
      guint         *width,
      guint         *height)
{
  const PpSquared *squared = self->ground->squared;
  float *covers;

  *width = patch->x1 - patch->x0 + 2 * MARGIN;
  *height = patch->y1 - patch->y0 + 2 * MARGIN;
  covers = g_new0 (float, (gsize) *width * *height);
  for (guint y = patch->y0 > 0 ? patch->y0 - 1 : 0; y < MIN (patch->y1 + 1, squared->height); y++)
    for (guint x = patch->x0 > 0 ? patch->x0 - 1 : 0; x < MIN (patch->x1 + 1, squared->width); x++)
      {
        gsize at = (gsize) y * squared->width + x;

        if (self->labels[at] == label || self->labels[at] == 0)
          covers[(gsize) (y + MARGIN - patch->y0) * *width + (x + MARGIN - patch->x0)]
            = self->labels[at] == label ? self->shares[at] : fminf (self->shares[at], 0.5f);
      }
  return covers;
}

static void
append_ring (GArray   *ring,
             gboolean  is_border,
             GArray   *points,
             GArray   *lengths)
{
  PpPoint first = g_array_index (ring, PpPoint, 0);
  guint length;

  g_array_append_val (ring, first);
  if ((pp_ring_area ((PpPoint *) (gpointer) ring->data, ring->len) > 0) != is_border)
    for (guint i = 0; i < ring->len / 2; i++)
      {
        PpPoint *a = &g_array_index (ring, PpPoint, i);
        PpPoint *b = &g_array_index (ring, PpPoint, ring->len - 1 - i);
        PpPoint swap = *a;

        *a = *b;
        *b = swap;
      }
  length = ring->len;
  g_array_append_val (lengths, length);
  g_array_append_vals (points, ring->data, ring->len);
}

/* The ring in mm, with the fewest points; NULL for one too small. */
static GArray *
finish_ring (GArray          *ring,
             const PpSquared *squared,
             const Patch     *patch,
             double           least)
{
  g_autoptr (GArray) simple = NULL;
  PpPoint first;

  for (guint i = 0; i < ring->len; i++)
    {
      PpPoint *p = &g_array_index (ring, PpPoint, i);

      p->x = squared->box.x0 + (p->x + patch->x0 - MARGIN) / squared->dots;
      p->y = squared->box.y0 + (p->y + patch->y0 - MARGIN) / squared->dots;
    }
  simple = pp_ring_simplify_evenly (ring, OFF);
  if (simple->len < 3)
    return NULL;
  first = g_array_index (simple, PpPoint, 0); /* not from within the array, which may move */
  g_array_append_val (simple, first);
  if (fabs (pp_ring_area ((PpPoint *) (gpointer) simple->data, simple->len)) < least)
    return NULL;
  g_array_set_size (simple, simple->len - 1);
  return g_steal_pointer (&simple);
}

/* (nullable) */
static PpOutline *
trace (const PpFound *self,
       const Patch   *patch,
       guint32        label)
{
  guint width, height;
  g_autofree float *covers = crop (self, patch, label, &width, &height);
  g_autoptr (GPtrArray) rings = pp_smooth_rings (covers, width, height);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (PpOutline) outline = NULL;

  for (guint i = 0; i < rings->len; i++)
    {
      g_autoptr (GArray) ring = finish_ring (rings->pdata[i], self->ground->squared, patch,
                                             i == 0 ? LEAST_AREA : LEAST_HOLE);

      if (ring == NULL && i == 0)
        return NULL;
      if (ring != NULL)
        append_ring (ring, i == 0, points, lengths);
    }
  if (lengths->len == 0)
    return NULL;
  outline = pp_outline_new ((guint *) (gpointer) lengths->data, lengths->len,
                            (PpPoint *) (gpointer) points->data, NULL, NULL);
  return outline != NULL && pp_outline_is_simple (outline, NULL, NULL) ? g_steal_pointer (&outline)
                                                                       : NULL;
}

/* Numbers the pieces 1 and on, and everything else 0. */
static void
keep (PpFound       *self,
      const guint32 *numbers,
      guint          n_patches)
{
  const PpSquared *squared = self->ground->squared;
  gsize n = (gsize) squared->width * squared->height;

  for (gsize i = 0; i < n; i++)
    self->labels[i] = self->labels[i] <= n_patches ? numbers[self->labels[i]] : 0;
}

/* `cuts`: what strokes have parted; NULL where there are none. Not all of them once cancelled. */
static void
find_pieces (PpFound      *self,
             const float  *cuts,
             GCancellable *cancellable)
{
  const PpSquared *squared = self->ground->squared;
  gsize n = (gsize) squared->width * squared->height;
  g_autofree guchar *glass = g_new (guchar, n);
  g_autofree guint16 *depths = NULL;
  g_autofree Patch *patches = NULL;
  g_autofree guint32 *numbers = NULL;
  guint n_patches;

  for (gsize i = 0; i < n; i++)
    glass[i] = self->shares[i] > 0.5f;
  depths = pp_mask_distance (glass, squared->width, squared->height, 1);
  self->labels = pp_mask_label (glass, squared->width, squared->height, 1, &n_patches);
  if (cuts != NULL)
    give_back (self, cuts);
  patches = measure (squared, self->labels, depths, n_patches);
  self->outlines = g_new0 (const PpOutline *, n_patches);
  numbers = g_new0 (guint32, n_patches + 1);
  for (guint i = 1; i <= n_patches && !g_cancellable_is_cancelled (cancellable); i++)
    {
      PpOutline *outline = is_piece (squared, &patches[i]) ? trace (self, &patches[i], i) : NULL;

      if (outline == NULL)
        continue;
      self->outlines[self->n_pieces++] = outline;
      numbers[i] = self->n_pieces;
    }
  keep (self, numbers, n_patches);
}

/* `self` has its ground and what is parted. (transfer full), of `self` too */
static PpFound *
finish (PpFound        *self,
        const PpStroke *strokes,
        guint           n_strokes,
        GCancellable   *cancellable,
        GError        **error)
{
  g_autoptr (PpFound) owned = self;
  const PpSquared *squared = self->ground->squared;
  gsize n = (gsize) squared->width * squared->height;
  g_autofree float *cuts = n_strokes > 0 ? g_new0 (float, n) : NULL;

  self->shares = g_memdup2 (self->parted, n * sizeof *self->parted);
  for (guint i = 0; i < n_strokes; i++)
    draw_stroke (squared, &strokes[i], self->shares, cuts);
  find_pieces (self, cuts, cancellable);
  return g_cancellable_set_error_if_cancelled (cancellable, error) ? NULL
         : g_steal_pointer (&owned);
}

/* The first part of the whole. */
typedef struct
{
  PpPhotoProgress progress;
  gpointer        data;
} Part;

static void
report_part (double   share,
             gpointer data)
{
  const Part *part = data;

  if (part->progress != NULL)
    part->progress (PARTING * share, part->data);
}

PpFound *
pp_found_new (PpGround        *ground,
              double           more,
              const PpStroke  *strokes,
              guint            n_strokes,
              PpPhotoProgress  progress,
              gpointer         data,
              GCancellable    *cancellable,
              GError         **error)
{
  g_autoptr (PpFound) self = g_atomic_rc_box_new0 (PpFound);
  Part part = { progress, data };

  self->ground = pp_ground_ref (ground);
  self->more = more;
  self->parted = pp_parted_new (ground, more, report_part, &part, cancellable, error);
  if (self->parted == NULL)
    return NULL;
  report_part (1, &part);
  return finish (g_steal_pointer (&self), strokes, n_strokes, cancellable, error);
}

PpFound *
pp_found_again (PpFound         *before,
                const PpStroke  *strokes,
                guint            n_strokes,
                GCancellable    *cancellable,
                GError         **error)
{
  PpFound *self = g_atomic_rc_box_new0 (PpFound);
  const PpSquared *squared = before->ground->squared;
  gsize n = (gsize) squared->width * squared->height;

  self->ground = pp_ground_ref (before->ground);
  self->more = before->more;
  self->parted = g_memdup2 (before->parted, n * sizeof *before->parted);
  return finish (self, strokes, n_strokes, cancellable, error);
}

PpFound *
pp_found_ref (PpFound *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear (gpointer data)
{
  PpFound *self = data;

  for (guint i = 0; i < self->n_pieces; i++)
    pp_outline_unref (self->outlines[i]);
  g_free (self->outlines);
  g_free (self->parted);
  g_free (self->shares);
  g_free (self->labels);
  pp_ground_unref (self->ground);
}

void
pp_found_unref (PpFound *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear);
}

gboolean
pp_found_at (const PpFound *self,
             PpPoint        point,
             guint         *piece)
{
  const PpSquared *squared = self->ground->squared;
  double x = (point.x - squared->box.x0) * squared->dots;
  double y = (point.y - squared->box.y0) * squared->dots;
  guint32 label;

  if (!(x >= 0 && y >= 0 && x < squared->width && y < squared->height))
    return FALSE;
  label = self->labels[(gsize) y * squared->width + (gsize) x];
  if (label == 0)
    return FALSE;
  *piece = label - 1;
  return TRUE;
}
