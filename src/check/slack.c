/* slack.c: where a hook can sit on a slack wire: an ellipse about the two holes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In the frame of its axes the ellipse is (half·cos t, sag·sin t). For p = (u, v) half the
 * derivative of the squared distance is
 *
 *     g(t) = -spread²·sin t·cos t + half·u·sin t - sag·v·cos t
 *
 * Within a quarter turn g has the roots of h(t) = half·u/cos t - sag·v/sin t = spread², and h
 * turns back only where tan³ t = -sag·v/(half·u). So the four ends of the axes and the two places
 * where h turns cut the ellipse into stretches with at most one root each, which none can hide
 * in: each is either seen by the signs of g just inside its stretch's ends and bisected, or is
 * itself such an end.
 */
#include "check/slack.h"

#include "panel/tolerance.h"

static double
dot (PpPoint a,
     PpPoint b)
{
  return a.x * b.x + a.y * b.y;
}

static PpPoint
minus (PpPoint a,
       PpPoint b)
{
  return (PpPoint) { a.x - b.x, a.y - b.y };
}

static PpPoint
find_up (PpPoint along,
         PpPoint middle,
         PpPoint weight)
{
  PpPoint normal = { along.y, -along.x };

  if (fabs (normal.y) > PP_TIE)
    return normal.y < 0 ? normal : (PpPoint) { -normal.x, -normal.y };
  if (fabs (weight.x - middle.x) > PP_TIE)
    return (normal.x > 0) == (weight.x < middle.x) ? normal : (PpPoint) { -normal.x, -normal.y };
  return normal.x > 0 ? normal : (PpPoint) { -normal.x, -normal.y };
}

PpSlack
pp_slack_of (PpPoint from,
             PpPoint to,
             double  length,
             PpPoint weight)
{
  double distance = pp_point_distance (from, to);
  PpSlack self = {
    .from = from,
    .to = to,
    .middle = { (from.x + to.x) / 2, (from.y + to.y) / 2 },
    .along = { 1, 0 },
    .half = length / 2,
    .spread = distance / 2,
  };

  if (distance > 0)
    self.along = (PpPoint) { (to.x - from.x) / distance, (to.y - from.y) / distance };
  self.up = find_up (self.along, self.middle, weight);
  if (self.half > self.spread)
    self.sag = sqrt ((self.half - self.spread) * (self.half + self.spread));
  return self;
}

static PpPoint
point_at (const PpSlack *self,
          double         cosine,
          double         sine)
{
  double along = self->half * cosine, up = self->sag * sine;

  return (PpPoint) { self->middle.x + along * self->along.x + up * self->up.x,
                     self->middle.y + along * self->along.y + up * self->up.y };
}

PpPoint
pp_slack_top (const PpSlack *self)
{
  return point_at (self, 0, 1);
}

gboolean
pp_slack_above (const PpSlack *self,
                double         x,
                PpPoint       *hook)
{
  double across = self->half * self->along.x, upward = self->sag * self->up.x;
  double reach = hypot (across, upward); /* x - middle.x = reach·cos (t - start) */
  double start = atan2 (upward, across);
  double aside = x - self->middle.x;
  double turn;
  PpPoint one, other;

  if (fabs (aside) > reach + PP_TIE)
    return FALSE;
  turn = acos (CLAMP (aside / reach, -1, 1));
  one = point_at (self, cos (start + turn), sin (start + turn));
  other = point_at (self, cos (start - turn), sin (start - turn));
  *hook = one.y <= other.y ? one : other;
  return TRUE;
}

/* g(t) with its coefficients; see the head. */
typedef struct
{
  double squared; /* spread² */
  double u;       /* half·u */
  double v;       /* sag·v */
} Derivative;

typedef struct
{
  double t;
  double cosine;
  double sine;
} Turn;

static Turn
turn_to (double t)
{
  return (Turn) { t, cos (t), sin (t) };
}

static double
value_at (const Derivative *self,
          Turn              at)
{
  return -self->squared * at.sine * at.cosine + self->u * at.sine - self->v * at.cosine;
}

/* The sign of g just after (`side` 1) or just before (-1) a place: that of its first derivative
 * that is not zero there. Three are enough for a g that is not zero throughout. */
static int
sign_beside (const Derivative *self,
             Turn              at,
             int               side)
{
  const double twice_sine = 2 * at.sine * at.cosine;
  const double twice_cosine = at.cosine * at.cosine - at.sine * at.sine;
  const double along = self->u * at.sine - self->v * at.cosine;
  const double across = self->u * at.cosine + self->v * at.sine;
  const double derivatives[] = {
    value_at (self, at),
    side * (across - self->squared * twice_cosine),
    2 * self->squared * twice_sine - along,
    side * (4 * self->squared * twice_cosine - across),
  };

  for (guint i = 0; i < G_N_ELEMENTS (derivatives); i++)
    if (derivatives[i] < 0 || derivatives[i] > 0)
      return derivatives[i] < 0 ? -1 : 1;
  return 0;
}

/* Where g passes 0 between two turns that are no more than a whole one apart: it is positive just
 * after `lower` and negative just before `upper`. */
static Turn
bisect (const Derivative *self,
        double            lower,
        double            upper)
{
  for (;;)
    {
      double t = lower + (upper - lower) / 2;

      if (t <= lower || t >= upper)
        return turn_to (t);
      if (value_at (self, turn_to (t)) > 0)
        lower = t;
      else
        upper = t;
    }
}

#define MAX_CUTS 6

static int
compare_turns (gconstpointer a,
               gconstpointer b)
{
  const Turn *p = a, *q = b;

  return p->t < q->t ? -1 : p->t > q->t;
}

/* The ends of the axes and where h turns back, in order. */
static guint
find_cuts (const Derivative *self,
           Turn              cuts[MAX_CUTS])
{
  const Turn ends[] = { { 0, 1, 0 }, { G_PI_2, 0, 1 }, { G_PI, -1, 0 }, { 3 * G_PI_2, 0, -1 } };
  guint n = 0;

  for (; n < G_N_ELEMENTS (ends); n++)
    cuts[n] = ends[n];
  if (self->u < 0 || self->u > 0)
    if (self->v < 0 || self->v > 0)
      {
        double t = atan (cbrt (-self->v / self->u));

        cuts[n++] = turn_to (t < 0 ? t + G_PI : t);
        cuts[n++] = turn_to (t < 0 ? t + 2 * G_PI : t + G_PI);
      }
  qsort (cuts, n, sizeof *cuts, compare_turns);
  return n;
}

guint
pp_slack_find_far (const PpSlack *self,
                   PpPoint        p,
                   PpPoint        far[2])
{
  const PpPoint from_middle = minus (p, self->middle);
  const Derivative derivative = {
    .squared = self->spread * self->spread,
    .u = self->half * dot (from_middle, self->along),
    .v = self->sag * dot (from_middle, self->up),
  };
  Turn cuts[MAX_CUTS];
  guint n_cuts = find_cuts (&derivative, cuts);
  guint n = 0;

  for (guint i = 0; i < n_cuts && n < 2; i++)
    {
      const Turn *next = &cuts[(i + 1) % n_cuts];
      double end = i + 1 < n_cuts ? next->t : next->t + 2 * G_PI;
      int after = sign_beside (&derivative, cuts[i], 1);
      Turn at = cuts[i];

      if (after > 0 && sign_beside (&derivative, *next, -1) < 0)
        at = bisect (&derivative, cuts[i].t, end);
      else if (after >= 0 || sign_beside (&derivative, cuts[i], -1) <= 0)
        continue;
      far[n++] = point_at (self, at.cosine, at.sine);
    }
  return n;
}
