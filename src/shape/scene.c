/* scene.c: a panel as shapes in the panel frame.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/scene.h"

#include "shape/polygon.h"

/* What goes by the piece alone. `like` (nullable): a body of the same piece, already measured. */
static void
measure_piece (PpBody       *self,
               const PpBody *like)
{
  if (like != NULL)
    {
      self->heights = like->heights;
      self->area = like->area;
      self->width = like->width;
      self->length = like->length;
      self->mass = like->mass;
      return;
    }
  pp_heights_init (&self->heights, self->piece);
  self->area = pp_outline_area (self->piece->outline);
  self->width = pp_outline_width (self->piece->outline);
  self->length = pp_outline_length (self->piece->outline);
  self->mass = pp_piece_get_mass (self->piece);
}

static PpBody *
body_new (const PpPiece     *piece,
          const PpPlacement *placement,
          const PpBody      *like)
{
  PpBody *self = g_atomic_rc_box_new0 (PpBody);

  self->placement = pp_placement_ref (placement);
  self->piece = pp_piece_ref (piece);
  self->frame = pp_frame_of (placement);
  measure_piece (self, like);
  self->outline = pp_place_outline (piece, placement);
  self->region = pp_region_new (self->outline);
  self->cells = pp_cells_new (self->outline);
  self->box = pp_outline_get_box (self->outline);
  self->centroid = pp_frame_to_panel (&self->frame, pp_outline_centroid (piece->outline));
  return self;
}

const PpRelief *
pp_body_make_relief (const PpBody *self)
{
  PpBody *kept = (PpBody *) self;

  if (g_once_init_enter (&kept->relief))
    g_once_init_leave (&kept->relief, pp_relief_new (&self->heights, &self->frame, self->cells));
  return self->relief;
}

const PpBands *
pp_body_make_bands (const PpBody *self)
{
  PpBody *kept = (PpBody *) self;

  if (g_once_init_enter (&kept->bands))
    g_once_init_leave (&kept->bands, pp_bands_new (self->outline, PP_TIE));
  return self->bands;
}

static void
body_clear (gpointer data)
{
  PpBody *self = data;

  pp_relief_free (self->relief);
  pp_bands_unref (self->bands);
  pp_cells_unref (self->cells);
  pp_region_unref (self->region);
  pp_outline_unref (self->outline);
  pp_piece_unref (self->piece);
  pp_placement_unref (self->placement);
}

/* Of the same piece among those before it, or NULL. */
static const PpBody *
find_like (const PpScene *self,
           guint          index,
           const PpPiece *piece)
{
  for (guint i = 0; i < index; i++)
    if (self->bodies[i]->piece == piece)
      return self->bodies[i];
  return NULL;
}

/* Where the same placement was before, most often where it is now. */
static gboolean
find_before (const PpScene     *previous,
             const PpPlacement *placement,
             guint             *index)
{
  if (*index < previous->n_bodies && pp_panel_placement (previous->panel, *index) == placement)
    return TRUE;
  return pp_panel_find_placement (previous->panel, placement->id, index) == placement;
}

static PpBody *
find_body (const PpScene     *self,
           guint              index,
           const PpScene     *previous,
           const PpPlacement *placement)
{
  guint before = index;
  const PpBody *body = previous != NULL && find_before (previous, placement, &before)
                           ? previous->bodies[before] : NULL;
  const PpPiece *piece;

  if (body != NULL && self->panel->tray == previous->panel->tray)
    return g_atomic_rc_box_acquire ((PpBody *) body);
  piece = pp_panel_get_piece_of (self->panel, placement);
  if (body != NULL && body->piece == piece)
    return g_atomic_rc_box_acquire ((PpBody *) body);
  return body_new (piece, placement, find_like (self, index, piece));
}

static void
part_init (PpPart        *self,
           const PpFused *fused)
{
  self->fused = fused;
  self->bands = pp_bands_new (fused->outline, PP_TIE);
  self->region = pp_region_new (fused->outline);
  self->cells = pp_cells_new (fused->outline);
  self->area = pp_outline_area (fused->outline);
  self->centroid = pp_outline_centroid (fused->outline);
  if (fused->has_pocket)
    {
      self->insert = pp_region_new (fused->pocket.insert);
      self->insert_cells = pp_cells_new (fused->pocket.insert);
    }
}

static void
part_share (PpPart       *self,
            const PpPart *other)
{
  *self = *other;
  pp_bands_ref (self->bands);
  pp_region_ref (self->region);
  pp_cells_ref (self->cells);
  if (self->insert != NULL)
    {
      pp_region_ref (self->insert);
      pp_cells_ref (self->insert_cells);
    }
}

static void
part_clear (PpPart *self)
{
  pp_bands_unref (self->bands);
  pp_region_unref (self->region);
  pp_cells_unref (self->cells);
  g_clear_pointer (&self->insert, pp_region_unref);
  g_clear_pointer (&self->insert_cells, pp_cells_unref);
}

/* Those of the scene before that are in the same places. */
static void
make_parts (PpScene       *self,
            const PpScene *previous)
{
  self->n_parts = self->panel->fused->len;
  self->parts = g_new0 (PpPart, self->n_parts);
  for (guint i = 0; i < self->n_parts; i++)
    if (previous != NULL && i < previous->n_parts
        && previous->parts[i].fused == pp_panel_fused (self->panel, i))
      part_share (&self->parts[i], &previous->parts[i]);
    else
      part_init (&self->parts[i], pp_panel_fused (self->panel, i));
}

static void
make_background (PpScene *self)
{
  const PpBackground *background = self->panel->background;

  self->background_outline = pp_background_make_outline (background);
  self->background_bands = pp_bands_new_far (self->background_outline, PP_TIE);
  self->background = pp_region_new (self->background_outline);
  self->background_cells = pp_cells_new (self->background_outline);
  self->background_area = pp_background_get_area (background);
  self->background_centroid = pp_background_get_centroid (background);
}

/* The background is the costliest shape, and the one that changes least. */
static void
share_background (PpScene       *self,
                  const PpScene *previous)
{
  self->background_outline = pp_outline_ref (previous->background_outline);
  self->background_bands = pp_bands_ref (previous->background_bands);
  self->background = pp_region_ref (previous->background);
  self->background_cells = pp_cells_ref (previous->background_cells);
  self->background_area = previous->background_area;
  self->background_centroid = previous->background_centroid;
}

static void
find_knots (PpScene *self)
{
  const PpWire *wire = self->panel->wire;
  guint from, to;

  self->knots[0] = self->knots[1] = PP_NO_INDEX;
  if (wire == NULL)
    return;
  pp_panel_find_hole (self->panel, wire->from, &from);
  pp_panel_find_hole (self->panel, wire->to, &to);
  self->knots[0] = (int) from;
  self->knots[1] = (int) to;
  self->n_knots = 2;
  for (guint i = 0; i < self->n_knots; i++)
    self->knot_cells[i] = pp_cells_new_disc (pp_scene_knot_place (self, i),
                                             wire->knot_diameter / 2);
}

static void
make_bodies (PpScene       *self,
             const PpScene *previous)
{
  const PpPanel *panel = self->panel;

  self->n_bodies = panel->placements->len;
  self->bodies = g_new (PpBody *, self->n_bodies);
  self->reaches = g_new (PpCellBox, self->n_bodies);
  self->pockets = g_new (int, self->n_bodies);
  for (guint i = 0; i < self->n_bodies; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);
      guint pocket;

      self->bodies[i] = find_body (self, i, previous, placement);
      /* Of most from the array of before: their cells are far away in memory. */
      self->reaches[i] = previous != NULL && i < previous->n_bodies
                                 && previous->bodies[i] == self->bodies[i]
                             ? previous->reaches[i] : self->bodies[i]->cells->box;
      self->pockets[i] = PP_NO_INDEX;
      if (placement->pocket != NULL
          && pp_panel_find_fused (panel, placement->pocket, &pocket) != NULL)
        self->pockets[i] = (int) pocket;
    }
}

PpScene *
pp_scene_new (const PpPanel *panel,
              const PpScene *previous)
{
  PpScene *self = g_atomic_rc_box_new0 (PpScene);

  self->panel = pp_panel_ref (panel);
  if (previous != NULL && previous->panel->background == panel->background)
    share_background (self, previous);
  else
    make_background (self);
  make_parts (self, previous);
  make_bodies (self, previous);
  find_knots (self);
  return self;
}

PpScene *
pp_scene_ref (PpScene *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
scene_clear (gpointer data)
{
  PpScene *self = data;

  for (guint i = 0; i < self->n_bodies; i++)
    g_atomic_rc_box_release_full (self->bodies[i], body_clear);
  for (guint i = 0; i < self->n_parts; i++)
    part_clear (&self->parts[i]);
  for (guint i = 0; i < self->n_knots; i++)
    pp_cells_unref (self->knot_cells[i]);
  g_free (self->bodies);
  g_free (self->reaches);
  g_free (self->pockets);
  g_free (self->parts);
  pp_bands_unref (self->background_bands);
  pp_cells_unref (self->background_cells);
  pp_region_unref (self->background);
  pp_outline_unref (self->background_outline);
  pp_panel_unref (self->panel);
}

void
pp_scene_unref (PpScene *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, scene_clear);
}

gboolean
pp_part_contains (const PpPart *self,
                  PpPoint       p)
{
  return pp_bands_distance (self->bands, p, 2 * PP_TIE) <= PP_TIE
         || pp_region_contains (self->region, p);
}

double
pp_scene_thickness_at (const PpScene *self,
                       PpPoint        at)
{
  double thickness = self->panel->background->thickness;

  for (guint i = 0; i < self->n_parts; i++)
    if (pp_part_contains (&self->parts[i], at))
      thickness += self->parts[i].fused->thickness;
  return thickness;
}
