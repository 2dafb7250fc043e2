/* new-panel.c: an empty panel to begin with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Half the distance of the holes is c, their depth below the top of the glass y. A wish for c
 * gives the least y at which holes are safe; y may be more, then c is drawn in until the wire
 * levels itself with its hook behind the glass. Drawing in only makes a hole safer. Distances
 * from a curved edge are bounded, not computed: a convex shape that holds a disc of radius r
 * round its middle also holds one of (1 - s) r round each point that lies at the share s of the
 * way from the middle to the edge.
 */
#include "panel/new-panel.h"

#include "panel/hole-rules.h"
#include "panel/tolerance.h"

/* Shares of the glass. */
#define APART 0.2        /* of the width: a hole from the middle */
#define DOWN 0.2         /* of the height: holes from the top, ... */
#define DOWN_NARROW 0.4  /* ... but of the width no more than this */
#define LOWEST 0.35      /* of the height: deeper the weight is hardly below them */
#define HOOK_DEPTH 0.25  /* of the holes' depth: the hook stays this far below the top */

/* Times the sag from which a panel levels itself: pieces will move its weight a little. */
#define SELF_LEVEL 1.25

/* Distances from a hole's centre, mm. */
typedef struct
{
  double diameter;
  double edge;
  double corner;
  double between; /* two centres */
} Room;

typedef struct
{
  double x; /* mm, of the left one */
  double y;
  double length; /* of the wire */
} Holes;

PpNewPanel
pp_new_panel_wish (PpUnits units)
{
  gboolean inches = units == PP_UNITS_INCH;

  return (PpNewPanel) {
    .place = PP_PLACE_WALL,
    .shape = PP_SHAPE_RECTANGLE,
    .width = inches ? 12 * PP_MM_PER_INCH : 300,
    .height = inches ? 16 * PP_MM_PER_INCH : 400,
    .corner_radius = inches ? PP_MM_PER_INCH / 8 : 3,
    .thickness = inches ? PP_MM_PER_INCH / 4 : 6,
    .hole_diameter = NAN,
    .units = units,
  };
}

static double
get_step (PpUnits units)
{
  return units == PP_UNITS_INCH ? PP_MM_PER_INCH / 8 : 1;
}

static double
round_up (double value,
          double step)
{
  return ceil (value / step - PP_TIE) * step;
}

/* The drill a maker has at hand: 1/4 in or 6 mm, or wider in thick glass. */
static double
choose_diameter (const PpNewPanel *wish)
{
  double least = wish->units == PP_UNITS_INCH ? PP_MM_PER_INCH / 4 : PP_HOLE_LEAST;

  return fmax (least, pp_hole_least_diameter (wish->thickness));
}

static Room
room_for (const PpNewPanel *wish)
{
  double d = isnan (wish->hole_diameter) ? choose_diameter (wish) : wish->hole_diameter;

  return (Room) {
    .diameter = d,
    .edge = pp_hole_wanted_edge (wish->thickness) + d / 2,
    .corner = PP_HOLE_CORNER_FACTOR * wish->thickness + d / 2,
    .between = pp_hole_least_between (wish->thickness, wish->thickness) + d,
  };
}

/* The least depth of holes c from the middle that is safe from the edge and, where there is
 * room, from the corners of a rectangle. INFINITY: there is none. */
static double
least_depth_rectangle (const PpNewPanel *wish,
                       const Room       *room,
                       double            c)
{
  double x = wish->width / 2 - c;
  double below_corner = x < room->corner ? sqrt (room->corner * room->corner - x * x) : 0;

  if (x < room->edge - PP_TIE)
    return INFINITY;
  return fmax (room->edge, fmin (below_corner, LOWEST * wish->height));
}

/* The same under an upper half of an ellipse of half axes w/2 and `rise`; the check may take a
 * polygon for it. */
static double
least_depth_curved (const PpNewPanel *wish,
                    const Room       *room,
                    double            rise,
                    double            c)
{
  double across = wish->width / 2;
  double share = 1 - (room->edge + PP_CURVE_TOLERANCE) / fmin (across, rise);
  double out = c / across;

  if (share < out)
    return INFINITY;
  return rise * (1 - sqrt (share * share - out * out));
}

static double
least_depth (const PpNewPanel *wish,
             const Room       *room,
             double            c)
{
  switch (wish->shape)
    {
    case PP_SHAPE_ELLIPSE:
      return least_depth_curved (wish, room, wish->height / 2, c);
    case PP_SHAPE_ARCH:
      return least_depth_curved (wish, room, wish->height / 4, c);
    case PP_SHAPE_RECTANGLE:
    case PP_SHAPE_FREE:
      break;
    }
  return least_depth_rectangle (wish, room, c);
}

/* Of the centre of mass below the top. An arch: a rectangle of 3/4 of the height, and above it
 * half an ellipse, whose centroid stands 4/(3 pi) of its rise over its foot. */
static double
get_weight_depth (const PpNewPanel *wish)
{
  double top = G_PI / 16;

  if (wish->shape != PP_SHAPE_ARCH)
    return wish->height / 2;
  return wish->height * (0.75 * 0.625 + top * (0.25 - 1 / (3 * G_PI))) / (0.75 + top);
}

/* On whole steps where that does not push them out of their room. */
static double
round_depth (const PpNewPanel *wish,
             double            y)
{
  double rounded = round_up (y, get_step (wish->units));

  return rounded <= LOWEST * wish->height ? rounded : y;
}

static double
round_apart (const PpNewPanel *wish,
             const Room       *room,
             double            c)
{
  double rounded = wish->width / 2 - round_up (wish->width / 2 - c, get_step (wish->units));

  return 2 * rounded >= room->between ? rounded : c;
}

/* The wire levels itself if its sag times the weight's depth below the holes is over c². */
static double
choose_length (const PpNewPanel *wish,
               double            c,
               double            y)
{
  double drop = get_weight_depth (wish) - y;
  double sag = fmax (SELF_LEVEL * c * c / drop, c * tan (PP_WIRE_LEG_RISE * G_PI / 180));

  return round_up (2 * hypot (c, sag), get_step (wish->units));
}

/* FALSE where two holes find no room. */
static gboolean
choose_holes (const PpNewPanel *wish,
              const Room       *room,
              Holes            *holes)
{
  double lowest = LOWEST * wish->height;
  double c = fmax (APART * wish->width, room->between / 2);
  double y = fmin (DOWN * wish->height, DOWN_NARROW * wish->width);
  double drop;

  if (least_depth (wish, room, c) > lowest)
    c = room->between / 2;
  y = fmax (y, least_depth (wish, room, c));
  if (y > lowest + PP_TIE)
    return FALSE;
  y = round_depth (wish, y);
  drop = get_weight_depth (wish) - y;
  c = fmin (c, sqrt ((1 - HOOK_DEPTH) * y * drop / SELF_LEVEL));
  c = round_apart (wish, room, fmax (c, room->between / 2));
  *holes = (Holes) { wish->width / 2 - c, y, choose_length (wish, c, y) };
  return TRUE;
}

static PpHole *
make_hole (const char *id,
           double      x,
           double      y,
           double      diameter,
           GError    **error)
{
  PpHole draft = pp_hole_draft ();

  draft.id = id;
  draft.x = x;
  draft.y = y;
  draft.diameter = diameter;
  return pp_hole_new (&draft, error);
}

/* Adds holes and wire to the draft, whose list of holes is its own. */
static gboolean
add_holes (const PpNewPanel *wish,
           PpPanel          *draft,
           GError          **error)
{
  const Room room = room_for (wish);
  PpWire wire = pp_wire_draft ();
  PpHole *left, *right;
  Holes holes;

  if (!choose_holes (wish, &room, &holes))
    return TRUE;
  left = make_hole ("left", holes.x, holes.y, room.diameter, error);
  if (left == NULL)
    return FALSE;
  g_ptr_array_add (draft->holes, left);
  right = make_hole ("right", wish->width - holes.x, holes.y, room.diameter, error);
  if (right == NULL)
    return FALSE;
  g_ptr_array_add (draft->holes, right);
  wire.from = "left";
  wire.to = "right";
  wire.length = holes.length;
  wire.knot_diameter = fmax (wire.knot_diameter, room.diameter + PP_KNOT_OVER);
  draft->wire = pp_wire_new (&wire, error);
  return draft->wire != NULL;
}

static PpBackground *
make_background (const PpNewPanel *wish,
                 GError          **error)
{
  PpBackground draft = pp_background_draft ();

  draft.shape = wish->shape;
  draft.width = wish->width;
  draft.height = wish->height;
  draft.thickness = wish->thickness;
  if (wish->shape == PP_SHAPE_RECTANGLE)
    draft.corner_radius = fmin (wish->corner_radius, fmin (wish->width, wish->height) / 2);
  return pp_background_new (&draft, error);
}

static PpDisplay *
make_display (const PpNewPanel *wish)
{
  PpDisplay draft = pp_display_draft ();

  draft.place = wish->place;
  return pp_display_new (&draft, NULL);
}

PpPanel *
pp_new_panel (const PpNewPanel *wish,
              GPtrArray        *tray,
              GError          **error)
{
  g_autoptr (PpBackground) background = NULL;
  g_autoptr (PpDisplay) display = NULL;
  g_autoptr (GPtrArray) holes = NULL;
  PpPanel draft = pp_panel_draft ();
  PpPanel *panel = NULL;

  g_return_val_if_fail (wish != NULL && wish->shape != PP_SHAPE_FREE, NULL);
  background = make_background (wish, error);
  if (background == NULL)
    return NULL;
  display = make_display (wish);
  holes = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_hole_unref);
  draft.units = wish->units;
  draft.created = wish->created != NULL ? wish->created : "";
  draft.background = background;
  draft.display = display;
  draft.holes = holes;
  draft.tray = tray;
  if (add_holes (wish, &draft, error))
    panel = pp_panel_new (&draft, error);
  g_clear_pointer (&draft.wire, pp_wire_unref);
  return panel;
}
