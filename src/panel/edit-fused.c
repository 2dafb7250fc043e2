/* edit-fused.c: edits of what is fused onto the glass: vases, their pockets, other shapes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"

#include <math.h>

#define THICK 3.0       /* mm of fused glass */
#define INSERT 6.0      /* mm: stems up to 5.5 mm stand in it */
#define OVER_EDGE 12.0  /* mm of glass under the foot */

static GPtrArray *
copy_fused (const PpPanel *panel)
{
  return pp_records_copy (panel->fused, (PpRecordRef) pp_fused_ref,
                          (GDestroyNotify) pp_fused_unref);
}

PpPanel *
pp_edit_set_fused (const PpPanel *panel,
                   const PpFused *fused,
                   GError       **error)
{
  g_autoptr (GPtrArray) list = copy_fused (panel);
  guint index = 0;
  gboolean is_there = pp_panel_find_fused (panel, fused->id, &index) != NULL;
  PpPanel draft = *panel;

  pp_edit_put (list, is_there, index, pp_fused_ref (fused), (GDestroyNotify) pp_fused_unref);
  draft.fused = list;
  return pp_panel_new (&draft, error);
}

static gboolean
is_in_use (const PpPanel *panel,
           const char    *fused)
{
  for (guint i = 0; i < panel->placements->len; i++)
    if (g_strcmp0 (pp_panel_placement (panel, i)->pocket, fused) == 0)
      return TRUE;
  return FALSE;
}

/* The stack with nothing in the pocket of `fused`; the same one where nothing was. */
static GPtrArray *
stack_out_of_pocket (const PpPanel *panel,
                     const char    *fused)
{
  GPtrArray *list;

  if (!is_in_use (panel, fused))
    return g_ptr_array_ref (panel->placements);
  list = pp_edit_copy_placements (panel);
  for (guint i = 0; i < list->len; i++)
    {
      PpPlacement draft = *(const PpPlacement *) g_ptr_array_index (list, i);

      if (g_strcmp0 (draft.pocket, fused) != 0)
        continue;
      draft.pocket = NULL;
      pp_edit_put (list, TRUE, i, pp_placement_new (&draft, NULL),
                   (GDestroyNotify) pp_placement_unref);
    }
  return list;
}

PpPanel *
pp_edit_remove_fused (const PpPanel *panel,
                      const char    *fused,
                      GError       **error)
{
  g_autoptr (GPtrArray) list = NULL;
  g_autoptr (GPtrArray) placements = NULL;
  PpPanel draft = *panel;
  guint index;

  if (pp_panel_find_fused (panel, fused, &index) == NULL)
    return pp_edit_refuse_unknown (fused, error);
  draft.fused = list = copy_fused (panel);
  draft.placements = placements = stack_out_of_pocket (panel, fused);
  g_ptr_array_remove_index (list, index);
  return pp_panel_new (&draft, error);
}

/* The ids of the placements in its pocket. (transfer full) */
static char **
list_stems (const PpPanel *panel,
            const char    *fused)
{
  g_autoptr (GStrvBuilder) stems = g_strv_builder_new ();

  for (guint i = 0; i < panel->placements->len; i++)
    if (g_strcmp0 (pp_panel_placement (panel, i)->pocket, fused) == 0)
      g_strv_builder_add (stems, pp_panel_placement (panel, i)->id);
  return g_strv_builder_end (stems);
}

PpPanel *
pp_edit_set_outlines (const PpPanel *panel,
                      PpFused        draft,
                      PpOutline     *outline,
                      PpOutline     *insert,
                      GError       **error)
{
  g_autoptr (PpFused) fused = NULL;

  draft.outline = outline;
  if (insert != NULL)
    draft.pocket.insert = insert;
  fused = pp_fused_new (&draft, error);
  pp_outline_unref (outline);
  pp_outline_unref (insert);
  return fused != NULL ? pp_edit_set_fused (panel, fused, error) : NULL;
}

PpPanel *
pp_edit_move_fused (const PpPanel *panel,
                    const char    *fused,
                    double         dx,
                    double         dy,
                    GError       **error)
{
  const PpFused *before = pp_panel_find_fused (panel, fused, NULL);
  const PpPoint by = { dx, dy };
  g_auto (GStrv) stems = NULL;
  g_autoptr (PpPanel) moved = NULL;

  if (before == NULL)
    return pp_edit_refuse_unknown (fused, error);
  moved = pp_edit_set_outlines (panel, *before,
                                pp_outline_move (before->outline, by),
                                before->has_pocket
                                  ? pp_outline_move (before->pocket.insert, by)
                                  : NULL,
                                error);
  stems = list_stems (panel, fused);
  if (moved == NULL || stems[0] == NULL)
    return g_steal_pointer (&moved);
  return pp_edit_move (moved, (const char * const *) stems, dx, dy, error);
}

PpOutline *
pp_edit_cut_largest (const PpPanel *panel,
                     const PpFused *draft)
{
  double seam = pp_panel_get_limit (panel, PP_LIMIT_SEAM);
  double middle = pp_box_middle (pp_outline_get_box (draft->outline)).x;
  double width, depth;

  if (!pp_vase_largest_slot (draft->outline, seam, &width, &depth))
    return NULL;
  return pp_vase_slot (draft->outline, middle, width, depth);
}

PpPocket
pp_edit_begin_pocket (void)
{
  return (PpPocket) { .insert_thickness = INSERT, .gap = NAN };
}

/* Adds a part that has all but its id and its pocket, the latter `insert` (nullable, taken). */
static PpPanel *
add_fused (const PpPanel *panel,
           PpFused        draft,
           PpOutline     *insert,
           char         **id,
           GError       **error)
{
  g_autofree char *new_id = pp_edit_new_id (panel, "vase");
  g_autoptr (PpFused) fused = NULL;
  PpPanel *next;

  draft.id = new_id;
  draft.has_pocket = insert != NULL;
  if (draft.has_pocket)
    {
      draft.pocket = pp_edit_begin_pocket ();
      draft.pocket.insert = insert;
    }
  fused = pp_fused_new (&draft, error);
  pp_outline_unref (insert);
  next = fused != NULL ? pp_edit_set_fused (panel, fused, error) : NULL;
  if (next != NULL && id != NULL)
    *id = g_steal_pointer (&new_id);
  return next;
}

/* Where the middle of a foot so wide stands on the glass. */
static PpPoint
find_stand (const PpBackground *glass,
            double              foot)
{
  PpBox box = pp_background_get_box (glass);
  double x = pp_box_middle (box).x, y = glass->height - fmin (OVER_EDGE, glass->height / 10);

  if (glass->shape == PP_SHAPE_ELLIPSE)
    y -= glass->height / 2 * (1 - sqrt (1 - pow (fmin (foot / glass->width, 1), 2)));
  if (glass->shape == PP_SHAPE_FREE)
    y = box.y0 + 0.8 * pp_box_height (box);
  return (PpPoint) { x, y };
}

PpPanel *
pp_edit_fuse_vase (const PpPanel *panel,
                   const char    *name,
                   char         **id,
                   GError       **error)
{
  PpVase vase = pp_vase_wish (panel, PP_VASE_JUG);
  PpPoint stand = find_stand (panel->background, vase.foot);
  g_autoptr (PpOutline) outline = pp_vase_outline (&vase, stand);
  PpFused draft = pp_fused_draft ();

  draft.name = name;
  draft.role = PP_ROLE_VASE;
  draft.thickness = THICK;
  draft.outline = outline;
  draft.glass.transmittance = 0.4;
  return add_fused (panel, draft, pp_edit_cut_largest (panel, &draft), id, error);
}

PpPanel *
pp_edit_fuse_piece (const PpPanel   *panel,
                    const char      *placement,
                    const PpOutline *outline,
                    char           **id,
                    GError         **error)
{
  const PpPlacement *placed = pp_panel_find_placement (panel, placement, NULL);
  const PpPiece *piece;
  g_autoptr (PpPanel) without = NULL;
  PpFused draft = pp_fused_draft ();

  if (placed == NULL)
    return pp_edit_refuse_unknown (placement, error);
  piece = pp_panel_get_piece_of (panel, placed);
  draft.name = piece->name;
  draft.role = PP_ROLE_SHAPE;
  draft.thickness = piece->thickness;
  draft.outline = outline;
  draft.glass.density = piece->density;
  draft.glass.transmittance = piece->transmittance;
  draft.glass.colour = piece->colour;
  without = pp_edit_remove (panel, (const char *[]) { placement, NULL }, error);
  return without != NULL ? add_fused (without, draft, NULL, id, error) : NULL;
}

PpPanel *
pp_edit_close_pocket (const PpPanel *panel,
                      const char    *fused,
                      GError       **error)
{
  guint index = 0;
  const PpFused *before = pp_panel_find_fused (panel, fused, &index);
  g_autoptr (GPtrArray) list = NULL;
  g_autoptr (GPtrArray) placements = NULL;
  g_autoptr (PpFused) closed = NULL;
  PpPanel draft = *panel;
  PpFused part;

  if (before == NULL)
    return pp_edit_refuse_unknown (fused, error);
  part = *before;
  part.has_pocket = FALSE;
  part.pocket = (PpPocket) { .gap = NAN };
  closed = pp_fused_new (&part, error);
  if (closed == NULL)
    return NULL;
  draft.fused = list = copy_fused (panel);
  draft.placements = placements = stack_out_of_pocket (panel, fused);
  pp_edit_put (list, TRUE, index, pp_fused_ref (closed), (GDestroyNotify) pp_fused_unref);
  return pp_panel_new (&draft, error);
}
