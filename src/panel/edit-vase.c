/* edit-vase.c: a vase made from other measures, and its pocket.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

#include <math.h>

/* From one box into another. */
typedef struct
{
  PpBox from;
  PpBox to;
} Stretch;

static PpPoint
stretch_point (PpPoint       p,
               gconstpointer data)
{
  const Stretch *s = data;

  return (PpPoint) {
    s->to.x0 + (p.x - s->from.x0) * pp_box_width (s->to) / pp_box_width (s->from),
    s->to.y0 + (p.y - s->from.y0) * pp_box_height (s->to) / pp_box_height (s->from),
  };
}

static gboolean
is_largest (const PpPanel *panel,
            const PpFused *fused)
{
  g_autoptr (PpOutline) largest = pp_edit_cut_largest (panel, fused);

  return largest != NULL && pp_outline_near (largest, fused->pocket.insert);
}

/* The insert for `draft`, which has another outline than `before`. (transfer full) */
static PpOutline *
carry_insert (const PpPanel *panel,
              const PpFused *before,
              const PpFused *draft,
              gboolean       another_kind)
{
  PpBox from = pp_outline_get_box (before->outline), to = pp_outline_get_box (draft->outline);
  PpPoint by = { pp_box_middle (to).x - pp_box_middle (from).x, to.y0 - from.y0 };
  PpOutline *largest = NULL;

  if (another_kind || is_largest (panel, before))
    largest = pp_edit_cut_largest (panel, draft);
  if (largest != NULL)
    return largest;
  return pp_outline_move (before->pocket.insert, by);
}

/* (transfer full) */
static PpOutline *
stretch_to (const PpOutline *outline,
            double           width,
            double           height)
{
  PpBox from = pp_outline_get_box (outline);
  double middle = pp_box_middle (from).x;
  Stretch stretch = { from, { middle - width / 2, from.y1 - height, middle + width / 2, from.y1 } };

  return pp_outline_map (outline, stretch_point, &stretch);
}

PpPanel *
pp_edit_set_vase (const PpPanel *panel,
                  const char    *fused,
                  const PpVase  *vase,
                  GError       **error)
{
  const PpFused *before = pp_panel_find_fused (panel, fused, NULL);
  PpOutline *outline, *insert = NULL;
  PpFused draft;
  PpBox box;

  if (before == NULL)
    return pp_edit_refuse_unknown (fused, error);
  box = pp_outline_get_box (before->outline);
  draft = *before;
  if (vase->kind == PP_VASE_OWN)
    outline = stretch_to (before->outline, vase->widest, vase->height);
  else
    outline = pp_vase_outline (vase, (PpPoint) { pp_box_middle (box).x, box.y1 });
  draft.outline = outline;
  if (before->has_pocket)
    insert = carry_insert (panel, before, &draft,
                           vase->kind != pp_vase_read (before->outline).kind);
  return pp_edit_set_outlines (panel, draft, outline, insert, error);
}

/* (transfer full) */
static PpOutline *
stretch_insert (const PpFused *fused,
                double         width,
                double         depth)
{
  PpBox from = pp_outline_get_box (fused->pocket.insert);
  double middle = pp_box_middle (from).x, top = pp_outline_get_box (fused->outline).y0;
  Stretch stretch = {
    from, { middle - width / 2, fmin (from.y0, top), middle + width / 2, top + depth }
  };

  return pp_outline_map (fused->pocket.insert, stretch_point, &stretch);
}

/* A slot is told by its insert being the one that its own width and depth give. */
static gboolean
is_slot (const PpFused *fused)
{
  PpBox box = pp_outline_get_box (fused->outline);
  PpBox insert = pp_outline_get_box (fused->pocket.insert);
  g_autoptr (PpOutline) slot = NULL;

  if (insert.y1 <= box.y0)
    return FALSE;
  slot = pp_vase_slot (fused->outline, pp_box_middle (insert).x, pp_box_width (insert),
                       insert.y1 - box.y0);
  return pp_outline_near (slot, fused->pocket.insert);
}

PpPanel *
pp_edit_cut_pocket (const PpPanel *panel,
                    const char    *fused,
                    double         width,
                    double         depth,
                    GError       **error)
{
  const PpFused *before = pp_panel_find_fused (panel, fused, NULL);
  PpOutline *insert;
  PpFused draft;

  if (before == NULL)
    return pp_edit_refuse_unknown (fused, error);
  draft = *before;
  if (isnan (width) || isnan (depth))
    insert = pp_edit_cut_largest (panel, before);
  else if (before->has_pocket && !is_slot (before))
    insert = stretch_insert (before, width, depth);
  else
    insert = pp_vase_slot (before->outline,
                           pp_box_middle (pp_outline_get_box (before->outline)).x, width, depth);
  if (insert == NULL)
    {
      g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                           _("There is no room for a pocket with a seam round it. Make the vase "
                             "larger first."));
      return NULL;
    }
  if (!before->has_pocket)
    draft.pocket = pp_edit_begin_pocket ();
  draft.has_pocket = TRUE;
  return pp_edit_set_outlines (panel, draft, pp_outline_ref (before->outline), insert, error);
}
