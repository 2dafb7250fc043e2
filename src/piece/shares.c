/* shares.c: how much of each dot at a border is glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far a dot's colour lies from that of the ground nearby to that of the glass nearby.
 */
#include "piece/shares.h"

#include "piece/mask.h"

#define CORE 0.4            /* mm from the border: no blur reaches there */
#define NEARBY 1.2          /* mm: glass and ground that a dot is held against */
#define FARTHER 2.2         /* mm: ground a little farther off */
#define LEAD 0.9f           /* times from there to nearby it is to the border */
#define BAND 0.9            /* mm either side of the border, where shares are found */
#define LEAN_BAND 0.55      /* mm, where it is told how they mix: farther off, shadows lean too */
#define STEPPED 3.0         /* times as steep as the border: its half stays where it is */
#define LIGHT_LEAN 0.7      /* of the other, below which it is light that is mixed */
#define LEAST_DIFFERENCE 0.008f /* of the light of glass and ground nearby, to tell a share */

typedef struct
{
  const PpSquared *squared;
  const float     *light;
  guint            width;
  guint            height;
  gsize            n;
} Look;

/* Cores of what is surely one or the other. */
static guchar *
find_core (const Look    *self,
           const guint16 *depth)
{
  guchar *core = g_new (guchar, self->n);
  guint least = PP_MASK_UNIT * pp_squared_to_dots (self->squared, CORE);

  for (gsize i = 0; i < self->n; i++)
    core[i] = depth[i] > least && !pp_squared_is_nowhere (self->squared, i);
  return core;
}

static float
get_share (const float *colour,
           const float *ground,
           const float *glass,
           float        otherwise)
{
  float square = 0, product = 0;

  for (guint c = 0; c < 3; c++)
    {
      square += (glass[c] - ground[c]) * (glass[c] - ground[c]);
      product += (colour[c] - ground[c]) * (glass[c] - ground[c]);
    }
  return square > LEAST_DIFFERENCE * LEAST_DIFFERENCE ? product / square : otherwise;
}

/* Of the glass against the ground: where too little is mixed, dark pieces seem larger, bright ones
 * smaller. */
static double
darkness (const float *glass,
          const float *ground)
{
  return (double) (ground[0] + ground[1] + ground[2] - glass[0] - glass[1] - glass[2]);
}

/* Of three channels, what glass and ground nearby have of them. */
typedef struct
{
  guint16 *in; /* thirds of a dot to the border, */
  guint16 *out;
  float   *glass;
  float   *ground;
} Sides;

static void
sides_clear (Sides *self)
{
  g_free (self->in);
  g_free (self->out);
  g_free (self->glass);
  g_free (self->ground);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Sides, sides_clear)

/* A shadow deepens toward the glass: the ground at the border is as much darker than that nearby as
 * that is than what is farther off. */
static void
lead_on (const Look *self,
         const float   *channels,
         const guchar  *core,
         float         *ground)
{
  g_autofree float *farther = pp_mask_mean (channels, core, self->width, self->height,
                                            pp_squared_to_dots (self->squared, FARTHER));

  for (gsize i = 0; i < 3 * self->n; i++)
    if (isfinite (farther[i]))
      ground[i] += LEAD * (ground[i] - farther[i]);
}

static Sides
find_sides (const Look *self,
            const float   *channels,
            const guchar  *glass)
{
  Sides sides = { pp_mask_distance (glass, self->width, self->height, 1),
                  pp_mask_distance (glass, self->width, self->height, 0) };
  g_autofree guchar *glass_core = find_core (self, sides.in);
  g_autofree guchar *ground_core = find_core (self, sides.out);
  guint reach = pp_squared_to_dots (self->squared, NEARBY);

  sides.glass = pp_mask_mean (channels, glass_core, self->width, self->height, reach);
  sides.ground = pp_mask_mean (channels, ground_core, self->width, self->height, reach);
  lead_on (self, channels, ground_core, sides.ground);
  return sides;
}

/* The shares of three channels that are mixed evenly where the border is blurred. `lean` (nullable)
 * grows by how much the dark side takes more than half of the border; without it `glass` becomes
 * what is more than half. (transfer full) */
static float *
mix (const Look *self,
     const float   *channels,
     guchar        *glass,
     double        *lean)
{
  g_auto (Sides) sides = find_sides (self, channels, glass);
  guint band = PP_MASK_UNIT * pp_squared_to_dots (self->squared, BAND);
  guint lean_band = PP_MASK_UNIT * pp_squared_to_dots (self->squared, LEAN_BAND);
  float *shares = g_new (float, self->n);

  for (gsize i = 0; i < self->n; i++)
    {
      guint away = sides.in[i] + sides.out[i];
      const float *g = sides.glass + 3 * i, *h = sides.ground + 3 * i;

      shares[i] = glass[i];
      if (away > band || pp_squared_is_nowhere (self->squared, i))
        continue;
      shares[i] = get_share (channels + 3 * i, h, g, shares[i]);
      if (lean != NULL && away <= lean_band) /* before it is clamped: noise would lean */
        *lean += copysign (1, darkness (g, h))
                 * ((double) shares[i] - CLAMP (STEPPED * ((double) shares[i] - 0.5) + 0.5, 0, 1));
      shares[i] = CLAMP (shares[i], 0, 1);
    }
  for (gsize i = 0; lean == NULL && i < self->n; i++)
    glass[i] = shares[i] > 0.5f;
  return shares;
}

/* As a file has it: sRGB, IEC 61966-2-1. (transfer full) */
static float *
encode (const Look *self)
{
  const float *light = self->light;
  float *encoded = g_new (float, 3 * self->n);

  for (gsize i = 0; i < 3 * self->n; i++)
    encoded[i] = light[i] <= 0.0031308f ? 12.92f * light[i]
                                        : 1.055f * powf (light[i], 1 / 2.4f) - 0.055f;
  return encoded;
}

/* A lens mixes light, a program that makes a picture smaller or softer mixes what the file has. The
 * right one is told by the two sides of the border, which are alike only there. */
float *
pp_shares_find (const PpGround *ground,
                const guchar   *glass)
{
  const Look self = { ground->squared, ground->light, ground->squared->width,
                      ground->squared->height,
                      (gsize) ground->squared->width * ground->squared->height };
  g_autofree guchar *better = g_memdup2 (glass, self.n);
  g_autofree float *encoded = encode (&self);
  double lean_light = 0, lean_file = 0;
  float *by_light, *by_file;

  /* the first border may lie beside it, and what lies about it then is not what it seems */
  g_free (mix (&self, encoded, better, NULL));
  by_light = mix (&self, ground->light, better, &lean_light);
  by_file = mix (&self, encoded, better, &lean_file);
  if (fabs (lean_light) > LIGHT_LEAN * fabs (lean_file))
    {
      g_free (by_light);
      return by_file;
    }
  g_free (by_file);
  return by_light;
}
