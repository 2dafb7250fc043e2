/* parted.c: which dots of a squared photo are glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In three steps. (1) Ground is what can be reached from dots of its colour without crossing a
 * steep change or a colour that no shadow has: so a soft shadow is ground, however dark, and a grey
 * piece with a sharp border is not. (2) From what is surely ground and surely glass both grow over
 * the dots between, the flattest first, and meet where the change is steepest (a watershed: Meyer,
 * Signal Processing 38, 1994). (3) There the share of glass in a dot is how far its colour lies
 * from that of the ground nearby to that of the glass nearby.
 */
#include "piece/parted.h"

#include "piece/mask.h"

#define STEEP 0.05         /* Oklab a mm: a shadow this steep is taken for a border */
#define STEEP_NOISES 3.5    /* of one dot: twice what noise alone makes of a slope, a mm */
#define STEPS_OF_SLIDER 1.5 /* halvings of the level from its middle to its end */
#define BESIDE 1.6          /* as ground.c weighs it */
#define DEEPEST_SHADOW 0.3  /* of the way to black: 0.7³ or a third of the light is left */
#define SURE_GROUND 0.6     /* of the level */
#define HOLE_BESIDE 0.6     /* of the level, what is not of a shadow, in the ground in a hole */
#define HOLE_RIM 1.2        /* mm about a hole, */
#define HOLE_SHARE 0.8      /* of which so much is surely glass */
#define LEAST_HOLE 3.0      /* mm² */
#define CORE 0.4            /* mm from the border: no blur reaches there */
#define NEARBY 1.3          /* mm: glass and ground that a dot is held against */
#define BAND 0.9            /* mm either side of the border, where shares are found */
#define LEAST_DIFFERENCE 0.4 /* of the level, of glass and ground nearby, to tell a share */
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
} Parting;

static guint
to_dots (const Parting *self,
         double         mm)
{
  return (guint) fmax (ceil (mm * self->ground->squared->dots), 1);
}

static gboolean
is_nowhere (const Parting *self,
            gsize          dot)
{
  return self->ground->squared->rgb[3 * dot] < 0;
}

/* Of a colour that no shadow on this ground has. */
static gboolean
is_sure_glass (const Parting *self,
               gsize          dot)
{
  double along = (double) self->ground->along[dot], beside = (double) self->ground->beside[dot];

  return BESIDE * beside > self->level || along > self->level
         || along < -DEEPEST_SHADOW * self->ground->bright;
}

/* The dots beside one; those beyond the raster are `n`. */
static void
list_next (const Parting *self,
           gsize          at,
           gsize          next[4])
{
  next[0] = at % self->width > 0 ? at - 1 : self->n;
  next[1] = (at + 1) % self->width > 0 ? at + 1 : self->n;
  next[2] = at >= self->width ? at - self->width : self->n;
  next[3] = at + self->width < self->n ? at + self->width : self->n;
}

/* What a shadow can have made of ground, and no border. */
static guchar *
find_open (const Parting *self)
{
  guchar *open = g_new (guchar, self->n);
  double steep = fmax (STEEP * self->finer, STEEP_NOISES * self->ground->noise);

  for (gsize i = 0; i < self->n; i++)
    open[i] = !is_nowhere (self, i) && !is_sure_glass (self, i)
              && (double) self->ground->slope[i] < steep;
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
      list_next (self, at, next);
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
  g_autoptr (GArray) reached = g_array_new (FALSE, FALSE, sizeof (gsize));

  for (gsize i = 0; i < self->n; i++)
    if (is_nowhere (self, i))
      marks[i] = NOWHERE;
    else if (pp_ground_apart (self->ground, i) < SURE_GROUND * self->level)
      {
        marks[i] = GROUND;
        g_array_append_val (reached, i);
      }
  spread (self, open, marks, reached);
  return marks;
}

/* What lies about a patch of open dots, and in it. */
typedef struct
{
  guint  n;
  guint  n_rim;
  guint  n_glass; /* of the rim */
  double beside;
} Surroundings;

/* Counts each dot to the nearest patch in its row or column, a rim away at most. */
static void
look_around (const Parting *self,
             const guchar  *open,
             const guint32 *labels,
             Surroundings  *patches)
{
  guint reach = to_dots (self, HOLE_RIM);

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

/* Ground that lies in a shadow within a piece cannot be reached; it is what has the colour of
 * ground in shadow, and glass all round. */
static void
mark_holes (const Parting *self,
            const guchar  *open,
            guchar        *marks)
{
  g_autofree guchar *enclosed = g_new (guchar, self->n);
  g_autofree guint32 *labels = NULL;
  g_autofree Surroundings *patches = NULL;
  double least = LEAST_HOLE * self->ground->squared->dots * self->ground->squared->dots;
  guint n_patches;

  for (gsize i = 0; i < self->n; i++)
    enclosed[i] = open[i] && marks[i] == UNKNOWN;
  labels = pp_mask_label (enclosed, self->width, self->height, 1, &n_patches);
  patches = g_new0 (Surroundings, n_patches + 1);
  look_around (self, open, labels, patches);
  for (gsize i = 0; i < self->n; i++)
    {
      const Surroundings *patch = &patches[labels[i]];

      if (labels[i] != 0 && patch->n >= least && patch->n_glass >= HOLE_SHARE * patch->n_rim
          && patch->beside < HOLE_BESIDE * self->level * patch->n)
        marks[i] = GROUND;
    }
}

/* What is unlike the ground and does not lie at a border. */
static void
mark_glass (const Parting *self,
            guchar        *marks)
{
  g_autofree guchar *unlike = g_new0 (guchar, self->n);
  g_autofree guint16 *depth = NULL;

  for (gsize i = 0; i < self->n; i++)
    unlike[i] = marks[i] == UNKNOWN && pp_ground_apart (self->ground, i) > self->level;
  depth = pp_mask_distance (unlike, self->width, self->height, 1);
  for (gsize i = 0; i < self->n; i++)
    if (depth[i] > PP_MASK_UNIT * to_dots (self, CORE))
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

        list_next (self, i, next);
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

        list_next (self, at, next);
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

/* The mean colour of what is surely one or the other, about each dot. */
static float *
find_nearby (const Parting *self,
             const guint16 *depth)
{
  g_autofree guchar *core = g_new (guchar, self->n);

  for (gsize i = 0; i < self->n; i++)
    core[i] = depth[i] > PP_MASK_UNIT * to_dots (self, CORE) && !is_nowhere (self, i);
  return pp_mask_mean (self->ground->colours, core, self->width, self->height,
                       to_dots (self, NEARBY));
}

static float
get_share (const Parting *self,
           const float   *colour,
           const float   *ground,
           const float   *glass,
           float          otherwise)
{
  float square = 0, product = 0, least = (float) (LEAST_DIFFERENCE * self->level);

  for (guint c = 0; c < 3; c++)
    {
      square += (glass[c] - ground[c]) * (glass[c] - ground[c]);
      product += (colour[c] - ground[c]) * (glass[c] - ground[c]);
    }
  return square > least * least ? CLAMP (product / square, 0, 1) : otherwise;
}

/* Step 3. */
static float *
find_shares (const Parting *self,
             const guchar  *glass)
{
  g_autofree guint16 *in = pp_mask_distance (glass, self->width, self->height, 1);
  g_autofree guint16 *out = pp_mask_distance (glass, self->width, self->height, 0);
  g_autofree float *glass_colours = find_nearby (self, in);
  g_autofree float *ground_colours = find_nearby (self, out);
  float *shares = g_new (float, self->n);
  guint band = PP_MASK_UNIT * to_dots (self, BAND);

  for (gsize i = 0; i < self->n; i++)
    {
      shares[i] = glass[i];
      if (in[i] + out[i] <= band && !is_nowhere (self, i))
        shares[i] = get_share (self, self->ground->colours + 3 * i, ground_colours + 3 * i,
                               glass_colours + 3 * i, shares[i]);
    }
  return shares;
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
  open = find_open (&self);
  marks = flood (&self, open);
  if (!go_on (1, progress, data, cancellable, error))
    return NULL;
  mark_holes (&self, open, marks);
  mark_glass (&self, marks);
  if (!go_on (2, progress, data, cancellable, error))
    return NULL;
  grow (&self, marks);
  if (!go_on (3, progress, data, cancellable, error))
    return NULL;
  for (gsize i = 0; i < self.n; i++)
    marks[i] = marks[i] == GLASS;
  return find_shares (&self, marks);
}
