/* stand.c: stems and the pockets they stand in.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/stand.h"

#include "panel/edit.h"
#include "shape/place.h"
#include "shape/region.h"

#define OVER_BOTTOM 1.0 /* mm: a foot is not ground to the shape of its pocket */

/* NULL for what is no stem. (transfer full) */
static PpOutline *
outline_of_stem (const PpPanel     *panel,
                 const PpPlacement *placement)
{
  const PpPiece *piece = pp_panel_get_piece_of (panel, placement);

  return piece->kind == PP_KIND_STEM ? pp_place_outline (piece, placement) : NULL;
}

static PpPoint
find_foot (const PpOutline *outline)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (outline, 0, &n);
  PpPoint foot = p[0];

  for (guint i = 1; i < n; i++)
    if (p[i].y > foot.y)
      foot = p[i];
  return foot;
}

static gboolean
is_inside (const PpOutline *outline,
           PpPoint          p)
{
  g_autoptr (PpRegion) region = NULL;

  if (!pp_box_meets (pp_outline_get_box (outline), (PpBox) { p.x, p.y, p.x, p.y }))
    return FALSE;
  region = pp_region_new (outline);
  return pp_region_contains (region, p);
}

static const PpFused *
find_under (const PpPanel *panel,
            PpPoint        foot)
{
  for (guint i = panel->fused->len; i-- > 0;)
    {
      const PpFused *fused = pp_panel_fused (panel, i);

      if (fused->has_pocket && is_inside (fused->pocket.insert, foot)
          && is_inside (fused->outline, foot))
        return fused;
    }
  return NULL;
}

const PpFused *
pp_stand_find (const PpPanel *panel,
               const char    *placement)
{
  const PpPlacement *placed = pp_panel_find_placement (panel, placement, NULL);
  g_autoptr (PpOutline) stem = placed != NULL ? outline_of_stem (panel, placed) : NULL;

  return stem != NULL ? find_under (panel, find_foot (stem)) : NULL;
}

PpPanel *
pp_stand_follow (PpPanel            *panel,
                 const char * const *placements,
                 GError            **error)
{
  PpPanel *next = panel;

  g_return_val_if_fail (placements != NULL, NULL);

  for (guint i = 0; placements[i] != NULL && next != NULL; i++)
    {
      const PpPlacement *placed = pp_panel_find_placement (next, placements[i], NULL);
      const PpFused *fused = pp_stand_find (next, placements[i]);
      const char *pocket = fused != NULL ? fused->id : NULL;
      g_autoptr (PpPanel) before = NULL;

      if (placed != NULL
          && (pp_panel_get_piece_of (next, placed)->kind != PP_KIND_STEM
              || g_strcmp0 (placed->pocket, pocket) == 0))
        continue;
      before = next;
      next = pp_edit_set_pocket (before, placements[i], pocket, error);
    }
  return next;
}

/* A stem to be set down. */
typedef struct
{
  const char *id;
  double      x;    /* mm, middle of what will be in the pocket */
  double      foot; /* mm, y */
} Stem;

/* The part of an outline lower than `y`. */
static PpBox
box_below (const PpOutline *outline,
           double           y)
{
  PpBox box = pp_box_empty ();
  guint n;
  const PpPoint *p = pp_outline_get_ring (outline, 0, &n);

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint a = p[i], b = p[i + 1];

      if (a.y >= y)
        box = pp_box_add_point (box, a);
      if ((a.y < y) != (b.y < y))
        box = pp_box_add_point (box, (PpPoint) { a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x), y });
    }
  return box;
}

static int
compare_stems (gconstpointer a,
               gconstpointer b)
{
  const Stem *p = a, *q = b;

  return p->x < q->x ? -1 : p->x > q->x;
}

/* The stems among `placements`, from the left. (transfer full) */
static GArray *
list_stems (const PpPanel      *panel,
            const char * const *placements,
            double              depth)
{
  GArray *stems = g_array_new (FALSE, FALSE, sizeof (Stem));

  for (guint i = 0; placements[i] != NULL; i++)
    {
      const PpPlacement *placed = pp_panel_find_placement (panel, placements[i], NULL);
      g_autoptr (PpOutline) outline = placed != NULL ? outline_of_stem (panel, placed) : NULL;
      Stem stem = { placements[i], 0, 0 };

      if (outline == NULL)
        continue;
      stem.foot = find_foot (outline).y;
      stem.x = pp_box_middle (box_below (outline, stem.foot - depth)).x;
      g_array_append_val (stems, stem);
    }
  g_array_sort (stems, compare_stems);
  return stems;
}

PpPanel *
pp_stand_into (const PpPanel      *panel,
               const char * const *placements,
               const char         *fused,
               GError            **error)
{
  const PpFused *part = pp_panel_find_fused (panel, fused, NULL);
  PpPanel *next = pp_panel_ref (panel);
  g_autoptr (GArray) stems = NULL;
  PpBox pocket;

  g_return_val_if_fail (part != NULL && part->has_pocket, next);

  pocket = pp_outline_get_box (part->pocket.insert);
  pocket.y0 = fmax (pocket.y0, pp_outline_get_box (part->outline).y0);
  stems = list_stems (panel, placements, pp_box_height (pocket));
  for (guint i = 0; i < stems->len && next != NULL; i++)
    {
      const Stem *stem = &g_array_index (stems, Stem, i);
      const char * const ids[] = { stem->id, NULL };
      double x = pocket.x0 + pp_box_width (pocket) * (2 * i + 1) / (2 * stems->len);
      g_autoptr (PpPanel) before = next;
      g_autoptr (PpPanel) moved = pp_edit_move (before, ids, x - stem->x,
                                                pocket.y1 - OVER_BOTTOM - stem->foot, error);

      next = moved != NULL ? pp_edit_set_pocket (moved, stem->id, fused, error) : NULL;
    }
  return next;
}
