/* rig.c: holes and wire for a panel that lacks them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/rig.h"

#include "panel/edit-private.h"
#include "panel/hole-rules.h"
#include "panel/new-panel.h"

#define PLACES 12         /* across and down, to look for one that is free */

/* An empty panel of the same glass, or NULL; an outline of its own is taken as an oval. */
static PpPanel *
begin_alike (const PpPanel *panel)
{
  const PpBackground *background = panel->background;
  PpNewPanel wish = pp_new_panel_wish (panel->units);

  wish.shape = background->shape == PP_SHAPE_FREE ? PP_SHAPE_ELLIPSE : background->shape;
  wish.width = background->width;
  wish.height = background->height;
  wish.corner_radius = background->corner_radius;
  wish.thickness = background->thickness;
  return pp_new_panel (&wish, NULL, NULL);
}

static gboolean
is_free (const PpPanel *panel,
         const PpHole  *wanted)
{
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);
      double apart = hypot (hole->x - wanted->x, hole->y - wanted->y);

      if (apart < (hole->diameter + wanted->diameter) / 2 + PP_HOLE_LEAST_BETWEEN)
        return FALSE;
    }
  return TRUE;
}

/* Row by row from the top; the middle where nothing is free. */
static void
look_for_place (const PpPanel *panel,
                PpHole        *hole)
{
  PpBox glass = pp_background_get_box (panel->background);

  for (int j = 2; j < PLACES; j++)
    for (int i = 2; i < PLACES - 1; i++)
      {
        hole->x = glass.x0 + pp_box_width (glass) * i / PLACES;
        hole->y = glass.y0 + pp_box_height (glass) * j / PLACES;
        if (is_free (panel, hole))
          return;
      }
  hole->x = pp_box_middle (glass).x;
  hole->y = pp_box_middle (glass).y;
}

/* Its id is the caller's to set. */
static PpHole
choose_hole (const PpPanel *panel)
{
  g_autoptr (PpPanel) alike = begin_alike (panel);
  PpBox glass = pp_background_get_box (panel->background);
  PpHole hole = pp_hole_draft ();

  hole.diameter = pp_hole_least_diameter (panel->background->thickness);
  for (guint i = 0; alike != NULL && i < alike->holes->len; i++)
    {
      const PpHole *wanted = pp_panel_hole (alike, i);

      hole.x = glass.x0 + wanted->x;
      hole.y = glass.y0 + wanted->y;
      hole.diameter = wanted->diameter;
      if (is_free (panel, &hole))
        return hole;
    }
  look_for_place (panel, &hole);
  return hole;
}

/* Findings call a hole by its id, so it is a word where one is free. */
static char *
name_hole (const PpPanel *panel,
           double         x)
{
  const char *side = x < pp_box_middle (pp_background_get_box (panel->background)).x ? "left"
                                                                                     : "right";
  const char *words[] = { side, "spare" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (!pp_edit_is_taken (panel, words[i]))
      return g_strdup (words[i]);
  return pp_edit_new_id (panel, "spare");
}

PpPanel *
pp_rig_add_hole (const PpPanel *panel,
                 char         **id,
                 GError       **error)
{
  g_autoptr (PpHole) hole = NULL;
  g_autofree char *new_id = NULL;
  PpHole draft;
  PpPanel *next;

  g_return_val_if_fail (panel != NULL, NULL);

  draft = choose_hole (panel);
  draft.id = new_id = name_hole (panel, draft.x);
  hole = pp_hole_new (&draft, error);
  next = hole != NULL ? pp_edit_set_hole (panel, hole, error) : NULL;
  if (next != NULL && id != NULL)
    *id = g_steal_pointer (&new_id);
  return next;
}

static PpPanel *
with_two_holes (const PpPanel *panel,
                GError       **error)
{
  g_autoptr (PpPanel) one_more = NULL;

  if (panel->holes->len >= 2)
    return pp_panel_ref (panel);
  one_more = pp_rig_add_hole (panel, NULL, error);
  return one_more != NULL ? with_two_holes (one_more, error) : NULL;
}

/* The leftmost and the rightmost; of equals the one listed first. */
static void
find_ends (const PpPanel *panel,
           const PpHole **from,
           const PpHole **to)
{
  *from = *to = pp_panel_hole (panel, 0);
  for (guint i = 1; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, i);

      if (hole->x < (*from)->x)
        *from = hole;
      if (hole->x > (*to)->x)
        *to = hole;
    }
  if (*from == *to)
    *to = pp_panel_hole (panel, *from == pp_panel_hole (panel, 0) ? 1 : 0);
}

PpPanel *
pp_rig_put_wire_on (const PpPanel *panel,
                    GError       **error)
{
  g_autoptr (PpPanel) with_holes = NULL;
  g_autoptr (PpWire) wire = NULL;
  PpWire draft = pp_wire_draft ();
  const PpHole *from, *to;

  g_return_val_if_fail (panel != NULL && panel->wire == NULL, NULL);

  with_holes = with_two_holes (panel, error);
  if (with_holes == NULL)
    return NULL;
  find_ends (with_holes, &from, &to);
  draft.from = from->id;
  draft.to = to->id;
  draft.length = round (hypot (to->x - from->x, to->y - from->y)
                        / cos (PP_WIRE_LEG_RISE * G_PI / 180));
  draft.knot_diameter = fmax (draft.knot_diameter,
                              fmax (from->diameter, to->diameter) + PP_KNOT_OVER);
  wire = pp_wire_new (&draft, error);
  return wire != NULL ? pp_edit_set_wire (with_holes, wire, error) : NULL;
}
