/* bounds.c: how much may lie on one panel, so that it can be checked anywhere.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/bounds.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"

/* Of an outline, as often as it lies there; or of all. */
typedef struct
{
  double covered; /* mm² */
  double largest; /* mm² */
  double length;  /* mm */
  double positions;
} Sum;

static Sum
measure (const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);
  Sum sum = { .covered = pp_box_width (box) * pp_box_height (box) };

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);

      sum.positions += n;
      for (guint i = 0; i + 1 < n; i++)
        sum.length += pp_point_distance (p[i], p[i + 1]);
    }
  return sum;
}

static void
add_placements (Sum           *self,
                const PpPanel *panel)
{
  g_autofree guint *copies = g_new0 (guint, panel->tray->len + 1);

  for (guint i = 0; i < panel->placements->len; i++)
    {
      guint which;

      if (pp_panel_find_piece (panel, pp_panel_placement (panel, i)->piece, &which) != NULL)
        copies[which]++;
    }
  for (guint i = 0; i < panel->tray->len; i++)
    if (copies[i] > 0)
      {
        Sum one = measure (pp_panel_piece (panel, i)->outline);

        self->covered += copies[i] * one.covered;
        self->largest = fmax (self->largest, one.covered);
        self->length += copies[i] * one.length;
        self->positions += copies[i] * one.positions;
      }
}

/* What is fused covers no more than its spans: those go by its length alone. */
static void
add_fused (Sum           *self,
           const PpPanel *panel)
{
  for (guint i = 0; i < panel->fused->len; i++)
    {
      Sum one = measure (pp_panel_fused (panel, i)->outline);

      self->length += one.length;
      self->positions += one.positions;
    }
}

/* However it is turned about the middle of its box. */
static PpBox
get_reach (const PpPanel     *panel,
           const PpPlacement *placement)
{
  PpBox box = pp_outline_get_box (pp_panel_get_piece_of (panel, placement)->outline);
  PpPoint middle = pp_box_middle (box);
  double sine, cosine, x = placement->mirrored ? -middle.x : middle.x;
  PpPoint p;

  pp_sincos_degrees (placement->rotation, &sine, &cosine);
  p = (PpPoint) { placement->x + x * cosine - middle.y * sine,
                  placement->y + x * sine + middle.y * cosine };
  return pp_box_grow ((PpBox) { p.x, p.y, p.x, p.y },
                      hypot (pp_box_width (box), pp_box_height (box)) / 2);
}

static PpBox
add_knot (PpBox         room,
          const PpPanel *panel,
          const char    *id)
{
  const PpHole *hole = pp_panel_find_hole (panel, id, NULL);

  double half = panel->wire->knot_diameter / 2;

  if (hole == NULL)
    return room;
  return pp_box_union (room, (PpBox) { hole->x - half, hole->y - half,
                                       hole->x + half, hole->y + half });
}

/* A piece that meets nothing of it floats, and needs no room. */
static PpBox
find_room (const PpPanel *panel)
{
  PpBox room = pp_background_get_box (panel->background);

  for (guint i = 0; i < panel->fused->len; i++)
    room = pp_box_union (room, pp_outline_get_box (pp_panel_fused (panel, i)->outline));
  if (panel->wire != NULL)
    {
      room = add_knot (room, panel, panel->wire->from);
      room = add_knot (room, panel, panel->wire->to);
    }
  for (guint i = 0; i < panel->placements->len; i++)
    {
      PpBox reach = get_reach (panel, pp_panel_placement (panel, i));

      if (pp_box_meets (room, reach))
        room = pp_box_union (room, reach);
    }
  return room;
}

/* mm about the centre of a hole: how near borders matter to it or its knot. */
static double
get_reach_of_hole (const PpPanel *panel,
                   const PpHole  *hole)
{
  const PpWire *wire = panel->wire;

  if (!pp_wire_ends_in (wire, hole->id))
    return hole->diameter / 2;
  return fmax (hole->diameter / 2,
               wire->knot_diameter / 2 + pp_panel_get_limit (panel, PP_LIMIT_PLACE));
}

/* Sides of a ring whose boxes meet `box`. */
static guint
count_sides_in (const PpPoint *p,
                guint          n,
                PpBox          box)
{
  guint count = 0;

  for (guint i = 0; i + 1 < n; i++)
    count += MIN (p[i].x, p[i + 1].x) <= box.x1 && MAX (p[i].x, p[i + 1].x) >= box.x0
             && MIN (p[i].y, p[i + 1].y) <= box.y1 && MAX (p[i].y, p[i + 1].y) >= box.y0;
  return count;
}

static guint
count_sides_about (const PpPanel     *panel,
                   const PpPlacement *placement,
                   const PpHole      *hole,
                   double             reach)
{
  const PpOutline *outline = pp_panel_get_piece_of (panel, placement)->outline;
  PpBox box = pp_outline_get_box (outline), about;
  double dx = hole->x - placement->x, dy = hole->y - placement->y, sine, cosine;
  double far = reach + hypot (fmax (-box.x0, box.x1), fmax (-box.y0, box.y1));
  guint count = 0, n;
  PpPoint p;

  if (dx * dx + dy * dy > far * far)
    return 0;
  pp_sincos_degrees (placement->rotation, &sine, &cosine);
  p = (PpPoint) { dx * cosine + dy * sine, dy * cosine - dx * sine };
  if (placement->mirrored)
    p.x = -p.x;
  about = pp_box_grow ((PpBox) { p.x, p.y, p.x, p.y }, reach);
  if (!pp_box_meets (box, about))
    return 0;
  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      const PpPoint *ring = pp_outline_get_ring (outline, r, &n);

      count += count_sides_in (ring, n, about);
    }
  return count;
}

static double
measure_about_holes (const PpPanel *panel)
{
  double squares = 0;

  for (guint h = 0; h < panel->holes->len; h++)
    {
      const PpHole *hole = pp_panel_hole (panel, h);
      double reach = get_reach_of_hole (panel, hole), sum = 0;

      for (guint i = 0; i < panel->placements->len; i++)
        sum += count_sides_about (panel, pp_panel_placement (panel, i), hole, reach);
      squares += sum * sum;
    }
  return sqrt (squares);
}

static gboolean
refuse (GError    **error,
        const char *text)
{
  g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT, text);
  return FALSE;
}

gboolean
pp_bounds_check (const PpPanel *panel,
                 GError       **error)
{
  PpBox room = find_room (panel);
  Sum sum = { 0 };

  add_placements (&sum, panel);
  add_fused (&sum, panel);
  if (pp_box_width (room) * pp_box_height (room) > PP_BOUNDS_MAX_ROOM)
    return refuse (error, _("placements: what lies on the glass or beside it takes more than "
                            "25 m² of room, which is too much to check."));
  if (sum.largest > PP_BOUNDS_MAX_PIECE)
    return refuse (error, _("placements: a piece would cover more than 1.5 m², which is too much "
                            "to check."));
  if (sum.covered > PP_BOUNDS_MAX_COVERED)
    return refuse (error, _("placements: the pieces would cover more than 12 m² together, which is "
                            "too much to check."));
  if (sum.length > PP_BOUNDS_MAX_LENGTH)
    return refuse (error, _("placements: the outlines of the pieces are more than 10 km long "
                            "together, which is too much to check."));
  if (sum.positions > PP_BOUNDS_MAX_POSITIONS)
    return refuse (error, _("placements: the outlines of the pieces have more than 2 million "
                            "positions together, which is too much to check."));
  if (measure_about_holes (panel) > PP_BOUNDS_MAX_ABOUT)
    return refuse (error, _("placements: the outlines of the pieces have more than 6000 sides "
                            "about the holes, which is too much to check."));
  return TRUE;
}
