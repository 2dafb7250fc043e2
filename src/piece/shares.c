/* shares.c: how much of each dot at a border is glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far a dot's colour lies from that of the ground nearby to that of the glass nearby.
 */
#include "piece/shares.h"

#include "piece/mask.h"
#include "piece/srgb.h"

#define NEARBY 1.2          /* mm: glass and ground that a dot is held against */
#define FARTHER 2.2         /* mm: ground a little farther off */
#define LEAD 0.9f           /* times from there to nearby it is to the border */
#define BAND 0.9            /* mm either side of the border, where shares are found */
#define LEAST_MIXED 0.2     /* share of either side: less is mostly noise */
#define USUAL_BOW 0.005     /* of the way between two colours; a smaller one hardly tells */
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
  guint least = PP_MASK_UNIT * pp_squared_to_dots (self->squared, PP_GROUND_CORE);

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

static float
decode_one (float encoded)
{
  return (float) pp_srgb_decode ((double) encoded);
}

/* Where light is mixed, the file's colours from ground to glass are bowed. */
typedef struct
{
  guint  n;
  double bows;   /* squares of how far they would be, */
  double likely; /* and as far as the colours seen are so, the same */
} Bowing;

static void
count_bow (Bowing      *bowing,
           const float *colour,
           const float *ground,
           const float *glass,
           double       share)
{
  float middle[3];
  double square = 0, bow = 0, likely = 0, middle_share;

  if (share < LEAST_MIXED || share > 1 - LEAST_MIXED)
    return;
  for (guint c = 0; c < 3; c++)
    {
      middle[c] = pp_srgb_encode ((decode_one (ground[c]) + decode_one (glass[c])) / 2);
      square += (double) ((glass[c] - ground[c]) * (glass[c] - ground[c]));
    }
  if (square <= (double) (LEAST_DIFFERENCE * LEAST_DIFFERENCE)) /* no way between the two */
    return;
  middle_share = (double) get_share (middle, ground, glass, 0);
  for (guint c = 0; c < 3; c++)
    {
      double way = (double) (glass[c] - ground[c]);
      double off = 4 * share * (1 - share)
                   * ((double) (middle[c] - ground[c]) - middle_share * way);

      bow += off * off;
      likely += off * ((double) (colour[c] - ground[c]) - share * way);
    }
  bowing->n++;
  bowing->bows += bow / square;
  bowing->likely += likely / square;
}

/* The shares of three channels that are mixed evenly where the border is blurred. `bowing`
 * (nullable) grows by what is seen there. (transfer full) */
static float *
mix (const Look   *self,
     const float  *channels,
     const guchar *glass,
     Bowing       *bowing)
{
  g_auto (Sides) sides = find_sides (self, channels, glass);
  guint band = PP_MASK_UNIT * pp_squared_to_dots (self->squared, BAND);
  float *shares = g_new (float, self->n);

  for (gsize i = 0; i < self->n; i++)
    {
      const float *g = sides.glass + 3 * i, *h = sides.ground + 3 * i;

      shares[i] = glass[i];
      if (sides.in[i] + sides.out[i] > band || pp_squared_is_nowhere (self->squared, i))
        continue;
      shares[i] = get_share (channels + 3 * i, h, g, shares[i]);
      if (bowing != NULL)
        count_bow (bowing, channels + 3 * i, h, g, (double) shares[i]);
      shares[i] = CLAMP (shares[i], 0, 1);
    }
  return shares;
}

/* What is more than half, which the first border may lie beside. (transfer full) */
static guchar *
find_better (const Look   *self,
             const float  *channels,
             const guchar *glass)
{
  g_autofree float *shares = mix (self, channels, glass, NULL);
  guchar *better = g_new (guchar, self->n);

  for (gsize i = 0; i < self->n; i++)
    better[i] = shares[i] > 0.5f;
  return better;
}

/* (transfer full) */
static float *
encode (const Look *self)
{
  float *encoded = g_new (float, 3 * self->n);

  for (gsize i = 0; i < 3 * self->n; i++)
    encoded[i] = pp_srgb_encode (self->light[i]);
  return encoded;
}

/* A lens mixes light, a program that makes a picture smaller or softer mixes what the file has. The
 * colours at the borders tell which; greys do not, and then it is halfway between the two. */
float *
pp_shares_find (const PpGround *ground,
                const guchar   *glass)
{
  const Look self = { ground->squared, ground->light, ground->squared->width,
                      ground->squared->height,
                      (gsize) ground->squared->width * ground->squared->height };
  g_autofree float *encoded = encode (&self);
  g_autofree guchar *better = find_better (&self, encoded, glass);
  g_autofree float *by_light = mix (&self, ground->light, better, NULL);
  Bowing bowing = { 0 };
  float *shares = mix (&self, encoded, better, &bowing);
  double doubt = USUAL_BOW * USUAL_BOW * bowing.n;
  float is_light = bowing.n > 0 ? (float) CLAMP ((bowing.likely + doubt / 2)
                                                   / (bowing.bows + doubt), 0, 1)
                                : 0.5f;

  for (gsize i = 0; i < self.n; i++)
    shares[i] += is_light * (by_light[i] - shares[i]);
  return shares;
}
