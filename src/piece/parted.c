/* parted.c: which dots of a squared photo are glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In three steps. (1) Ground is what can be reached from dots of its colour without crossing a
 * steep change or a colour that no shadow has: so a soft shadow is ground, however dark, and a grey
 * piece with a sharp border is not. (2) From what is surely ground and surely glass both grow over
 * the dots between, the flattest first, and meet where the change is steepest (a watershed: Meyer,
 * Signal Processing 38, 1994). (3) There the share of glass in a dot is told (shares.c).
 */
#include "piece/parted.h"

#include "piece/beside.h"
#include "piece/mask.h"
#include "piece/shares.h"

#define STEEP 0.007         /* Oklab a mm: a border is sharper */
#define STEEP_HUE 0.003     /* the same of all but lightness */
#define STEEP_NOISES 3.5    /* as sharp as noise alone is */
#define LEAST_BORDER 2.0    /* mm² of steep dots that touch; less is noise */
#define GAP 0.6             /* mm: through less, ground is not reached */
#define STEPS_OF_SLIDER 1.5 /* halvings of the level from its middle to its end */
#define DEEPEST_SHADOW 0.3  /* of the way to black: 0.7³ or a third of the light is left */
#define SURE_GROUND 0.011   /* Oklab: no glass that is to be found is as near to the ground, */
#define SURE_NOISES 1.0     /* of one dot: three of a mean of nine */
#define SURE_GLASS 1.5      /* times as far */
#define HOLE_BESIDE 0.6     /* of the level, what is not of a shadow, in the ground in a hole */
#define HOLE_RIM 1.2        /* mm about a hole, */
#define HOLE_SHARE 0.8      /* of which so much is surely glass */
#define OPEN_SHARE 0.15     /* of the border of what is not reached, beyond which ground lies */
#define LEAST_PATCH 4.0     /* mm², to tell what it is */
#define STREAKY 0.05        /* Oklab a mm: steeper than a shadow */
#define PALE_CORE 1.0       /* mm, that a shadow enclosed by noise does not reach */
#define N_SLOPES 256
#define FINEST_SLOPE 0.004
#define N_STEPS 4           /* for the progress */

enum
{
  UNKNOWN,
  GROUND,
  GLASS,
  NOWHERE,
};

typedef struct
{
  const PpGround *ground;
  guint           width;
  guint           height;
  gsize           n;
  double          level;
  double          finer;  /* by the slider: what is told apart is so much smaller */
  double          near;   /* surely ground */
} Parting;

/* Of a colour that no shadow on this ground has. */
static gboolean
is_sure_glass (const Parting *self,
               gsize          dot)
{
  double along = (double) self->ground->along[dot], beside = (double) self->ground->beside[dot];

  return PP_GROUND_BESIDE * beside > self->level || along > self->level
         || along < -DEEPEST_SHADOW * self->ground->bright;
}

/* Noise is open too. */
static void
open_specks (const Parting *self,
             guchar        *open)
{
  guint n_patches;
  g_autofree guint32 *labels = pp_mask_label (open, self->width, self->height, 0, &n_patches);
  g_autofree guint *counts = g_new0 (guint, n_patches + 1);
  double least = LEAST_BORDER * self->ground->squared->dots * self->ground->squared->dots;

  for (gsize i = 0; i < self->n; i++)
    counts[labels[i]]++;
  for (gsize i = 0; i < self->n; i++)
    if (labels[i] != 0 && counts[labels[i]] < least
        && !pp_squared_is_nowhere (self->ground->squared, i))
      open[i] = 1;
}

/* What a shadow can have made of ground, and no border. */
static guchar *
find_open (const Parting *self)
{
  guchar *open = g_new (guchar, self->n);
  const PpGround *ground = self->ground;
  double steep = fmax (STEEP * self->finer, STEEP_NOISES * ground->edge_noise);
  double steep_hue = fmax (STEEP_HUE * self->finer, STEEP_NOISES * ground->hue_edge_noise);

  for (gsize i = 0; i < self->n; i++)
    open[i] = !pp_squared_is_nowhere (self->ground->squared, i) && !is_sure_glass (self, i)
              && (double) ground->edge[i] < steep && (double) ground->hue_edge[i] < steep_hue;
  open_specks (self, open);
  return open;
}

static void
spread (const Parting *self,
        const guchar  *open,
        guchar        *marks,
        GArray        *reached)
{
  while (reached->len > 0)
    {
      gsize at = g_array_index (reached, gsize, reached->len - 1);
      gsize next[4];

      g_array_set_size (reached, reached->len - 1);
      pp_dots_beside (at, self->width, self->n, next);
      for (guint k = 0; k < 4; k++)
        if (next[k] < self->n && marks[next[k]] == UNKNOWN && open[next[k]])
          {
            marks[next[k]] = GROUND;
            g_array_append_val (reached, next[k]);
          }
    }
}

/* Back to the borders that the flood kept off, dot by dot. */
static void
creep (const Parting *self,
       const guchar  *open,
       guchar        *marks)
{
  g_autoptr (GArray) reached = g_array_new (FALSE, FALSE, sizeof (gsize));
  guint begin = 0;

  for (gsize i = 0; i < self->n; i++)
    if (marks[i] == GROUND)
      g_array_append_val (reached, i);
  for (guint step = 0; step <= pp_squared_to_dots (self->ground->squared, GAP); step++)
    for (guint end = reached->len; begin < end; begin++)
      {
        gsize next[4];

        pp_dots_beside (g_array_index (reached, gsize, begin), self->width, self->n, next);
        for (guint k = 0; k < 4; k++)
          if (next[k] < self->n && marks[next[k]] == UNKNOWN && open[next[k]])
            {
              marks[next[k]] = GROUND;
              g_array_append_val (reached, next[k]);
            }
      }
}

/* Step 1: GROUND what is reached, UNKNOWN the rest. */
static guchar *
flood (const Parting *self,
       const guchar  *open)
{
  guchar *marks = g_new0 (guchar, self->n);
  g_autofree guint16 *room = pp_mask_distance (open, self->width, self->height, 1);
  g_autofree guchar *wide = g_new (guchar, self->n);
  guint gap = PP_MASK_UNIT * pp_squared_to_dots (self->ground->squared, GAP);
  g_autoptr (GArray) reached = g_array_new (FALSE, FALSE, sizeof (gsize));

  for (gsize i = 0; i < self->n; i++)
    if (pp_squared_is_nowhere (self->ground->squared, i))
      marks[i] = NOWHERE;
    else if (pp_ground_apart (self->ground, i) < self->near)
      {
        marks[i] = GROUND;
        g_array_append_val (reached, i);
      }
  for (gsize i = 0; i < self->n; i++)
    wide[i] = room[i] > gap;
  spread (self, wide, marks, reached);
  creep (self, open, marks);
  return marks;
}

/* What lies about a patch of open dots, and in it. */
typedef struct
{
  guint  n;
  guint  n_rim;
  guint  n_glass; /* of the rim */
  guint  n_sides; /* of its dots to others, */
  guint  n_open;  /* and to ground that was reached */
  double beside;
} Surroundings;

/* Counts each dot to the nearest patch in its row or column, a rim away at most. */
static void
look_around (const Parting *self,
             const guchar  *open,
             const guint32 *labels,
             Surroundings  *patches)
{
  guint reach = pp_squared_to_dots (self->ground->squared, HOLE_RIM);

  for (guint y = 0; y < self->height; y++)
    for (guint x = 0; x < self->width; x++)
      {
        gsize at = (gsize) y * self->width + x;
        const gsize away[] = { x >= reach ? at - reach : at,
                               x + reach < self->width ? at + reach : at,
                               y >= reach ? at - (gsize) reach * self->width : at,
                               y + reach < self->height ? at + (gsize) reach * self->width : at };
        Surroundings *patch = &patches[labels[at]];

        if (labels[at] == 0)
          continue;
        patch->n++;
        patch->beside += (double) self->ground->beside[at];
        for (guint k = 0; k < 4; k++)
          if (labels[away[k]] != labels[at])
            {
              /* dots of the blurred border between say nothing */
              patch->n_rim += open[away[k]] || is_sure_glass (self, away[k]);
              patch->n_glass += is_sure_glass (self, away[k]);
            }
      }
}

static void
count_sides (const Parting *self,
             const guchar  *marks,
             const guint32 *labels,
             Surroundings  *patches)
{
  for (gsize i = 0; i < self->n; i++)
    {
      gsize next[4];

      if (labels[i] == 0)
        continue;
      pp_dots_beside (i, self->width, self->n, next);
      for (guint k = 0; k < 4; k++)
        if (next[k] < self->n && labels[next[k]] != labels[i])
          {
            patches[labels[i]].n_sides++;
            patches[labels[i]].n_open += marks[next[k]] == GROUND;
          }
    }
}

/* Ground that lies in a shadow within a piece cannot be reached; it is what has the colour of
 * ground in shadow, and glass all round; and what is open to ground on a long side is ground that a
 * narrow way leads to. */
static void
mark_holes (const Parting *self,
            const guchar  *open,
            guchar        *marks)
{
  g_autofree guchar *enclosed = g_new (guchar, self->n);
  g_autofree guint32 *labels = NULL;
  g_autofree Surroundings *patches = NULL;
  double least = LEAST_PATCH * self->ground->squared->dots * self->ground->squared->dots;
  guint n_patches;

  for (gsize i = 0; i < self->n; i++)
    enclosed[i] = open[i] && marks[i] == UNKNOWN;
  labels = pp_mask_label (enclosed, self->width, self->height, 1, &n_patches);
  patches = g_new0 (Surroundings, n_patches + 1);
  look_around (self, open, labels, patches);
  count_sides (self, marks, labels, patches);
  for (gsize i = 0; i < self->n; i++)
    {
      const Surroundings *patch = &patches[labels[i]];

      if (labels[i] == 0 || patch->n < least)
        continue;
      if (patch->n_open > OPEN_SHARE * patch->n_sides
          || (patch->n_glass >= HOLE_SHARE * patch->n_rim
              && patch->beside < HOLE_BESIDE * self->level * patch->n))
        marks[i] = GROUND;
    }
}

/* What cannot be reached is glass, however pale, if it is no narrow strip of shadow between a
 * border and noise beside it: sets `unlike` for the patches that are thick enough. */
static void
add_pale (const Parting *self,
          const guchar  *open,
          const guchar  *marks,
          guchar        *unlike)
{
  g_autofree guchar *pale = g_new (guchar, self->n);
  g_autofree guint16 *depth = NULL;
  g_autofree guint32 *labels = NULL;
  g_autofree guint16 *depths = NULL;
  guint thick = PP_MASK_UNIT * pp_squared_to_dots (self->ground->squared, PALE_CORE);
  guint n_patches;

  for (gsize i = 0; i < self->n; i++)
    pale[i] = marks[i] == UNKNOWN && open[i]
              && pp_ground_apart (self->ground, i) > SURE_GLASS * self->near;
  depth = pp_mask_distance (pale, self->width, self->height, 1);
  labels = pp_mask_label (pale, self->width, self->height, 1, &n_patches);
  depths = g_new0 (guint16, n_patches + 1);
  for (gsize i = 0; i < self->n; i++)
    depths[labels[i]] = MAX (depths[labels[i]], depth[i]);
  for (gsize i = 0; i < self->n; i++)
    if (labels[i] != 0 && depths[labels[i]] > thick)
      unlike[i] = TRUE;
}

/* What is unlike the ground, of a colour or texture that no shadow has, or thick enough, and does
 * not lie at a border. */
static void
mark_glass (const Parting *self,
            const guchar  *open,
            guchar        *marks)
{
  g_autofree guchar *unlike = g_new (guchar, self->n);
  g_autofree guint16 *depth = NULL;

  for (gsize i = 0; i < self->n; i++)
    unlike[i] = marks[i] == UNKNOWN && pp_ground_apart (self->ground, i) > self->level
                && (is_sure_glass (self, i) || (double) self->ground->slope[i] > STREAKY);
  add_pale (self, open, marks, unlike);
  depth = pp_mask_distance (unlike, self->width, self->height, 1);
  for (gsize i = 0; i < self->n; i++)
    if (depth[i] > PP_MASK_UNIT * pp_squared_to_dots (self->ground->squared, PP_GROUND_CORE))
      marks[i] = GLASS;
}

static guint
get_step (const Parting *self,
          gsize          dot)
{
  return (guint) CLAMP ((double) self->ground->slope[dot] / FINEST_SLOPE, 0, N_SLOPES - 1);
}

static void
push (GArray **steps,
      guint    step,
      gsize    dot)
{
  if (steps[step] == NULL)
    steps[step] = g_array_new (FALSE, FALSE, sizeof (gsize));
  g_array_append_val (steps[step], dot);
}

/* Step 2. First come, first served within a step, so that plateaus are shared. */
static void
grow (const Parting *self,
      guchar        *marks)
{
  GArray *steps[N_SLOPES] = { NULL };

  for (gsize i = 0; i < self->n; i++)
    if (marks[i] == GROUND || marks[i] == GLASS)
      {
        gsize next[4];

        pp_dots_beside (i, self->width, self->n, next);
        for (guint k = 0; k < 4; k++)
          if (next[k] < self->n && marks[next[k]] == UNKNOWN)
            {
              push (steps, get_step (self, i), i);
              break;
            }
      }
  for (guint step = 0; step < N_SLOPES; step++)
    for (guint i = 0; steps[step] != NULL && i < steps[step]->len; i++)
      {
        gsize at = g_array_index (steps[step], gsize, i);
        gsize next[4];

        pp_dots_beside (at, self->width, self->n, next);
        for (guint k = 0; k < 4; k++)
          if (next[k] < self->n && marks[next[k]] == UNKNOWN)
            {
              marks[next[k]] = marks[at];
              push (steps, MAX (get_step (self, next[k]), step), next[k]);
            }
      }
  for (guint step = 0; step < N_SLOPES; step++)
    g_clear_pointer (&steps[step], g_array_unref);
}

static gboolean
go_on (guint             step,
       PpPhotoProgress   progress,
       gpointer          data,
       GCancellable     *cancellable,
       GError          **error)
{
  if (progress != NULL)
    progress ((double) step / N_STEPS, data);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}

float *
pp_parted_new (const PpGround   *ground,
               double            more,
               PpPhotoProgress   progress,
               gpointer          data,
               GCancellable     *cancellable,
               GError          **error)
{
  const PpSquared *squared = ground->squared;
  Parting self = { ground, squared->width, squared->height,
                   (gsize) squared->width * squared->height,
                   .finer = exp2 (-STEPS_OF_SLIDER * more) };
  g_autofree guchar *open = NULL;
  g_autofree guchar *marks = NULL;

  self.level = ground->level * self.finer;
  self.near = fmin (fmax (SURE_GROUND * self.finer, SURE_NOISES * ground->noise),
                    self.level / SURE_GLASS);
  open = find_open (&self);
  marks = flood (&self, open);
  if (!go_on (1, progress, data, cancellable, error))
    return NULL;
  mark_holes (&self, open, marks);
  mark_glass (&self, open, marks);
  if (!go_on (2, progress, data, cancellable, error))
    return NULL;
  grow (&self, marks);
  if (!go_on (3, progress, data, cancellable, error))
    return NULL;
  for (gsize i = 0; i < self.n; i++)
    marks[i] = marks[i] == GLASS;
  return pp_shares_find (ground, marks);
}
