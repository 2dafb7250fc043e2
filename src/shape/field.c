/* field.c: the height of what lies on the panel, cell by cell, and whose it is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/field.h"

static PpCellBox
join_boxes (PpCellBox a,
            PpCellBox b)
{
  if (a.i0 >= a.i1)
    return b;
  if (b.i0 >= b.i1)
    return a;
  return (PpCellBox) { MIN (a.i0, b.i0), MIN (a.j0, b.j0), MAX (a.i1, b.i1), MAX (a.j1, b.j1) };
}

/* Raises the cells by `thickness`, from 0 where nothing lies. */
static void
add_layer (PpField       *self,
           const PpCells *cells,
           double         thickness,
           PpOwner        owner)
{
  for (guint k = 0; k < cells->n_spans; k++)
    {
      PpSpan span = cells->spans[k];
      double *height;
      PpOwner *owners;

      if (!pp_field_clip (self, &span))
        continue;
      height = self->height + pp_field_at (self, span.i0, span.j);
      owners = self->owner + pp_field_at (self, span.i0, span.j);
      for (int i = 0; i < span.i1 - span.i0; i++)
        owners[i] = owner;
      for (int i = 0; thickness > 0 && i < span.i1 - span.i0; i++)
        {
          height[i] += thickness;
          self->depth = MAX (self->depth, height[i]);
        }
    }
}

/* The glass stands out over the pocket: once more where the insert of a fused part lies under
 * it. */
static void
add_pocket (PpField      *self,
            const PpPart *part)
{
  for (guint k = 0; k < part->cells->n_spans; k++)
    {
      PpSpan span = part->cells->spans[k];

      if (!pp_field_clip (self, &span))
        continue;
      for (int i = span.i0; i < span.i1; i++)
        if (pp_cells_contain (part->insert_cells, i, span.j))
          {
            double *height = &self->height[pp_field_at (self, i, span.j)];

            *height += part->fused->pocket.insert_thickness;
            self->depth = MAX (self->depth, *height);
          }
    }
}

static void
add_knot (PpField       *self,
          const PpScene *scene,
          guint          knot)
{
  const PpHole *hole = pp_scene_knot_hole (scene, knot);
  const PpWire *wire = scene->panel->wire;
  g_autoptr (PpCells) cells
      = pp_cells_new_disc ((PpPoint) { hole->x, hole->y }, wire->knot_diameter / 2);

  add_layer (self, cells, wire->knot_height, PP_OWNER (PP_OWNER_KNOT, knot));
}

static gboolean
boxes_meet (PpCellBox a,
            PpCellBox b)
{
  return a.i0 < b.i1 && b.i0 < a.i1 && a.j0 < b.j1 && b.j0 < a.j1;
}

static PpCellBox
find_box (const PpScene *scene)
{
  PpCellBox box = scene->background_cells->box;

  for (guint i = 0; i < scene->n_parts; i++)
    box = join_boxes (box, scene->parts[i].cells->box);
  for (guint i = 0; i < scene->n_knots; i++)
    {
      const PpHole *hole = pp_scene_knot_hole (scene, i);
      double reach = scene->panel->wire->knot_diameter / 2 + PP_CELL;

      box = join_boxes (box, (PpCellBox) { pp_cell_at (hole->x - reach),
                                           pp_cell_at (hole->y - reach),
                                           pp_cell_at (hole->x + reach) + 1,
                                           pp_cell_at (hole->y + reach) + 1 });
    }
  /* What meets nothing that was laid before it floats, and needs no room however far it lies. */
  for (guint i = 0; i < scene->n_bodies; i++)
    if (boxes_meet (box, scene->bodies[i]->cells->box))
      box = join_boxes (box, scene->bodies[i]->cells->box);
  return box;
}

static PpCellBox
meet_of (PpCellBox a,
         PpCellBox b)
{
  PpCellBox meet = { MAX (a.i0, b.i0), MAX (a.j0, b.j0), MIN (a.i1, b.i1), MIN (a.j1, b.j1) };

  meet.i1 = MAX (meet.i1, meet.i0);
  meet.j1 = MAX (meet.j1, meet.j0);
  return meet;
}

static PpField *
make_field (const PpScene *scene,
            PpCellBox      room,
            PpCellBox      box)
{
  PpField *self = g_new0 (PpField, 1);
  gsize n;

  self->room = room;
  self->box = box;
  n = (gsize) (self->box.i1 - self->box.i0) * (gsize) (self->box.j1 - self->box.j0);
  self->height = g_new0 (double, n);
  self->owner = g_new0 (PpOwner, n);
  add_layer (self, scene->background_cells, 0, PP_OWNER (PP_OWNER_BACKGROUND, 0));
  for (guint i = 0; i < scene->n_parts; i++)
    {
      const PpPart *part = &scene->parts[i];

      add_layer (self, part->cells, part->fused->thickness, PP_OWNER (PP_OWNER_FUSED, i));
      if (part->insert_cells != NULL)
        add_pocket (self, part);
    }
  for (guint i = 0; i < scene->n_knots; i++)
    add_knot (self, scene, i);
  return self;
}

PpField *
pp_field_new (const PpScene *scene)
{
  PpCellBox room = find_box (scene);

  return make_field (scene, room, meet_of (room, room));
}

PpField *
pp_field_new_part (const PpScene *scene,
                   PpCellBox      within)
{
  PpCellBox room = find_box (scene);

  return make_field (scene, room, meet_of (room, within));
}

void
pp_field_free (PpField *self)
{
  if (self == NULL)
    return;
  g_free (self->height);
  g_free (self->owner);
  g_free (self);
}
