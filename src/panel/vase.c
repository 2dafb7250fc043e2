/* vase.c: vases made from a few measures, and their pockets.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each kind says at which shares of the height which width stands. Between these runs a cubic that
 * never swings over them (Fritsch and Carlson 1980, with the harmonic slopes of Fritsch and Butland
 * 1984): the widest place is as wide as was typed. The ring goes down the left side and up the
 * right one in steps that meet every given width, so the measures stand in the outline and are read
 * from it; that it is one of ours is known by making it again.
 */
#include "panel/vase.h"

#include "panel/tolerance.h"

#define STEPS 50        /* a side */
#define NECK 0.82       /* of a jug's mouth */
#define OVER_RIM 5.0    /* mm that an insert reaches over the rim */
#define CORNER 6.0      /* mm, radius of a slot's lower corners, at most */
#define CORNER_STEPS 6
#define DEEP 0.75       /* of the height: no slot is deeper */
#define SPARE 1.15      /* a slanting side is nearer than it is straight across */
#define LEAST_SLOT 6.0  /* mm: no stem is thinner */

typedef enum
{
  MOUTH,
  WIDEST,
  FOOT,
} Width;

typedef struct
{
  double at;    /* share of the height from the rim down; a whole number of steps */
  Width  width;
  double part;  /* of that width */
} Knot;

#define MAX_KNOTS 4

static const struct
{
  guint n;
  Knot  knots[MAX_KNOTS];
} kinds[] = {
  [PP_VASE_JUG]
    = { 4, { { 0, MOUTH, 1 }, { 0.16, MOUTH, NECK }, { 0.62, WIDEST, 1 }, { 1, FOOT, 1 } } },
  [PP_VASE_PAIL] = { 2, { { 0, MOUTH, 1 }, { 1, FOOT, 1 } } },
  [PP_VASE_BOWL] = { 3, { { 0, MOUTH, 1 }, { 0.3, WIDEST, 1 }, { 1, FOOT, 1 } } },
  [PP_VASE_BOTTLE]
    = { 4, { { 0, MOUTH, 1 }, { 0.3, MOUTH, 1 }, { 0.62, WIDEST, 1 }, { 1, FOOT, 1 } } },
};

/* The shares of height, width and foot of a vase that suits, of the glass and of its own height. */
static const struct
{
  double height;
  double mouth;
  double widest;
  double foot;
} suits[] = {
  [PP_VASE_JUG] = { 0.36, 0.62, 0.8, 0.5 },
  [PP_VASE_PAIL] = { 0.34, 0.8, 0.8, 0.58 },
  [PP_VASE_BOWL] = { 0.24, 1.5, 1.56, 0.8 },
  [PP_VASE_BOTTLE] = { 0.4, 0.34, 0.56, 0.5 },
};

static double
width_of (const PpVase *self,
          Width         which)
{
  switch (which)
    {
    case MOUTH:
      return self->mouth;
    case WIDEST:
      return self->widest;
    case FOOT:
      return self->foot;
    }
  g_return_val_if_reached (0);
}

/* The slope at an inner knot between chords `a` and `b` over `ha` and `hb`: none at a turn. */
static double
inner_slope (double a,
             double b,
             double ha,
             double hb)
{
  if (a * b <= 0)
    return 0;
  return 3 * (ha + hb) / ((2 * hb + ha) / a + (hb + 2 * ha) / b);
}

/* Half the width at share `at` of the height. */
static double
half_width (const PpVase *self,
            double        at)
{
  const Knot *knots = kinds[self->kind].knots;
  guint n = kinds[self->kind].n, k = 0;
  double t[MAX_KNOTS] = { 0 }, y[MAX_KNOTS] = { 0 };
  double chord[MAX_KNOTS] = { 0 }, slope[MAX_KNOTS], h, s;

  for (guint i = 0; i < n; i++)
    {
      t[i] = knots[i].at;
      y[i] = width_of (self, knots[i].width) * knots[i].part / 2;
    }
  for (guint i = 0; i + 1 < n; i++)
    chord[i] = (y[i + 1] - y[i]) / (t[i + 1] - t[i]);
  slope[0] = chord[0];
  slope[n - 1] = chord[n - 2];
  for (guint i = 1; i + 1 < n; i++)
    slope[i] = inner_slope (chord[i - 1], chord[i], t[i] - t[i - 1], t[i + 1] - t[i]);
  while (k + 2 < n && at > t[k + 1])
    k++;
  h = t[k + 1] - t[k];
  s = (at - t[k]) / h;
  return y[k] * (1 + 2 * s) * (1 - s) * (1 - s) + y[k + 1] * s * s * (3 - 2 * s)
         + h * s * (1 - s) * (slope[k] * (1 - s) - slope[k + 1] * s);
}

PpOutline *
pp_vase_outline (const PpVase *self,
                 PpPoint       foot)
{
  PpPoint points[2 * (STEPS + 1)];

  g_return_val_if_fail (self != NULL && self->kind < PP_VASE_OWN, NULL);
  g_return_val_if_fail (self->height > 0 && self->mouth > 0 && self->widest > 0 && self->foot > 0,
                        NULL);

  for (guint i = 0; i <= STEPS; i++)
    {
      double at = (double) i / STEPS;
      double half = half_width (self, at);
      double y = foot.y - (1 - at) * self->height;

      points[i] = (PpPoint) { foot.x - half, y };
      points[G_N_ELEMENTS (points) - 1 - i] = (PpPoint) { foot.x + half, y };
    }
  return pp_outline_new_ring (points, G_N_ELEMENTS (points));
}

/* Where the share of the height is one of the steps. */
static double
width_at (const PpPoint *ring,
          double         at)
{
  guint i = (guint) lround (at * STEPS);

  return ring[2 * STEPS + 1 - i].x - ring[i].x;
}

/* The measures that an outline has if it is a vase of that kind. */
static PpVase
suppose (PpVaseKind     kind,
         const PpPoint *ring,
         double         height)
{
  PpVase vase = { kind, height, NAN, NAN, NAN };

  for (guint i = kinds[kind].n; i-- > 0;)
    {
      const Knot *knot = &kinds[kind].knots[i];
      double width = width_at (ring, knot->at) / knot->part;

      if (knot->width == MOUTH)
        vase.mouth = width;
      else if (knot->width == WIDEST)
        vase.widest = width;
      else
        vase.foot = width;
    }
  if (isnan (vase.widest))
    vase.widest = fmax (vase.mouth, vase.foot);
  return vase;
}

PpVase
pp_vase_read (const PpOutline *outline)
{
  const PpPoint *ring;
  PpBox box;
  guint n;

  g_return_val_if_fail (outline != NULL, ((PpVase) { .kind = PP_VASE_OWN }));

  box = pp_outline_get_box (outline);
  ring = pp_outline_get_ring (outline, 0, &n);
  /* A pail's sides are any kind's: it comes first. */
  for (guint i = 0; n == 2 * (STEPS + 1) + 1 && i < G_N_ELEMENTS (kinds); i++)
    {
      static const PpVaseKind order[] = { PP_VASE_PAIL, PP_VASE_JUG, PP_VASE_BOWL, PP_VASE_BOTTLE };
      PpVase vase = suppose (order[i], ring, pp_box_height (box));
      PpPoint foot = { (ring[STEPS].x + ring[STEPS + 1].x) / 2, ring[STEPS].y };
      g_autoptr (PpOutline) again = NULL;

      if (!(vase.height > 0 && vase.mouth > 0 && vase.widest > 0 && vase.foot > 0))
        continue;
      again = pp_vase_outline (&vase, foot);
      if (pp_outline_near (outline, again))
        return vase;
    }
  return (PpVase) { PP_VASE_OWN, pp_box_height (box), NAN, pp_box_width (box), NAN };
}

/* To 5 mm or 1/4 in. */
static double
round_in (double  mm,
          PpUnits units)
{
  double step = units == PP_UNITS_INCH ? PP_MM_PER_INCH / 4 : 5;

  return fmax (round (mm / step), 1) * step;
}

PpVase
pp_vase_wish (const PpPanel *panel,
              PpVaseKind     kind)
{
  const PpBackground *glass;
  double height;
  PpVase vase = { .kind = kind };

  g_return_val_if_fail (panel != NULL && kind < PP_VASE_OWN, vase);

  glass = panel->background;
  height = fmin (glass->height * suits[kind].height, glass->width * 0.5 / suits[kind].widest);
  vase.height = round_in (height, panel->units);
  vase.mouth = round_in (height * suits[kind].mouth, panel->units);
  vase.widest = round_in (height * suits[kind].widest, panel->units);
  vase.foot = round_in (height * suits[kind].foot, panel->units);
  return vase;
}

PpOutline *
pp_vase_slot (const PpOutline *vase,
              double           middle,
              double           width,
              double           depth)
{
  PpPoint points[2 * (CORNER_STEPS + 1) + 2];
  double radius = fmin (CORNER, fmin (width, depth) / 3);
  double top, bottom;
  guint n = 0;

  g_return_val_if_fail (vase != NULL && width > 0 && depth > 0, NULL);

  top = pp_outline_get_box (vase).y0;
  bottom = top + depth;
  points[n++] = (PpPoint) { middle + width / 2, top - OVER_RIM };
  for (guint i = 0; i <= CORNER_STEPS; i++)
    {
      double turn = G_PI / 2 * i / CORNER_STEPS;

      points[n++] = (PpPoint) { middle + width / 2 - radius * (1 - cos (turn)),
                                bottom - radius * (1 - sin (turn)) };
    }
  for (guint i = 0; i <= CORNER_STEPS; i++)
    {
      PpPoint right = points[CORNER_STEPS + 1 - i];

      points[n++] = (PpPoint) { 2 * middle - right.x, right.y };
    }
  points[n++] = (PpPoint) { middle - width / 2, top - OVER_RIM };
  return pp_outline_new_ring (points, n);
}

/* How far the border is from the upright line x = `middle`, between the top and `bottom`. */
static double
find_reach (const PpOutline *outline,
            double           middle,
            double           bottom)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (outline, 0, &n);
  double top = pp_outline_get_box (outline).y0, least = INFINITY;

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint a = p[i], b = p[i + 1];
      gboolean is_rim = fabs (a.y - top) < PP_TIE && fabs (b.y - top) < PP_TIE;

      if (is_rim || fmin (a.y, b.y) > bottom)
        continue;
      if ((a.x - middle) * (b.x - middle) <= 0)
        return 0;
      least = fmin (least, fmin (fabs (a.x - middle), fabs (b.x - middle)));
    }
  return least;
}

gboolean
pp_vase_largest_slot (const PpOutline *vase,
                      double           seam,
                      double          *width,
                      double          *depth)
{
  double room = seam * SPARE + 1;
  double middle, reach;
  PpBox box;

  g_return_val_if_fail (vase != NULL && width != NULL && depth != NULL, FALSE);

  box = pp_outline_get_box (vase);
  middle = pp_box_middle (box).x;
  *depth = floor (fmin (DEEP * pp_box_height (box), pp_box_height (box) - room));
  reach = *depth > 0 ? find_reach (vase, middle, box.y0 + *depth + room) : 0;
  *width = floor (2 * (reach - room));
  return *depth >= LEAST_SLOT && *width >= LEAST_SLOT;
}
