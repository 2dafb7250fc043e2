/* fit.c: a layout spaced out anew for another size of glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The upper left corner of the glass's box stays where it is, as all frames begin there.
 */
#include "advise/fit.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "shape/background.h"

typedef struct
{
  const PpPanel *panel;
  PpBox          box;   /* of the glass as it was */
  double         sx;
  double         sy;
} Fit;

/* In proportion about the middle, which moves with the lower right corner. */
static PpPoint
carry (const Fit *self,
       PpPoint    p)
{
  return (PpPoint) { self->box.x0 + self->sx * (p.x - self->box.x0),
                     self->box.y0 + self->sy * (p.y - self->box.y0) };
}

static PpPoint
carry_point (PpPoint       p,
             gconstpointer data)
{
  return carry (data, p);
}

static PpBackground *
fit_background (const Fit *self,
                GError   **error)
{
  PpBackground draft = *self->panel->background;
  g_autoptr (PpOutline) outline = NULL;

  draft.width *= self->sx;
  draft.height *= self->sy;
  draft.corner_radius = fmin (draft.corner_radius, fmin (draft.width, draft.height) / 2);
  if (draft.outline != NULL)
    draft.outline = outline = pp_outline_map (draft.outline, carry_point, self);
  return pp_background_new (&draft, error);
}

/* How a fused part moves: its middle in proportion sideways, with the lower edge upright. */
static PpPoint
part_way (const Fit     *self,
          const PpFused *fused)
{
  PpPoint middle = pp_box_middle (pp_outline_get_box (fused->outline));

  return (PpPoint) { carry (self, middle).x - middle.x,
                     (self->sy - 1) * pp_box_height (self->box) };
}

static gpointer
fit_part (const Fit    *self,
          gconstpointer record,
          GError      **error)
{
  const PpFused *fused = record;
  PpPoint by = part_way (self, fused);
  PpFused draft = *fused;
  g_autoptr (PpOutline) outline = pp_outline_move (fused->outline, by);
  g_autoptr (PpOutline) insert = NULL;

  draft.outline = outline;
  if (draft.has_pocket)
    draft.pocket.insert = insert = pp_outline_move (fused->pocket.insert, by);
  return pp_fused_new (&draft, error);
}

static gpointer
fit_hole (const Fit    *self,
          gconstpointer record,
          GError      **error)
{
  const PpHole *hole = record;
  PpHole draft = *hole;
  PpPoint at = carry (self, (PpPoint) { hole->x, hole->y });

  if (!hole->drilled)
    {
      draft.x = at.x;
      draft.y = at.y;
    }
  return pp_hole_new (&draft, error);
}

static gpointer
fit_placement (const Fit    *self,
               gconstpointer record,
               GError      **error)
{
  const PpPlacement *placement = record;
  PpPlacement draft = *placement;
  PpPoint at = { placement->x, placement->y };

  if (placement->pocket != NULL)
    {
      PpPoint by = part_way (self, pp_panel_find_fused (self->panel, placement->pocket, NULL));

      at = (PpPoint) { at.x + by.x, at.y + by.y };
    }
  else
    at = carry (self, at);
  draft.x = at.x;
  draft.y = at.y;
  return pp_placement_new (&draft, error);
}

typedef gpointer (*FitFunc) (const Fit *self, gconstpointer record, GError **error);

/* NULL after an error. */
static GPtrArray *
fit_all (const Fit     *self,
         GPtrArray     *list,
         FitFunc        fit,
         GDestroyNotify unref,
         GError       **error)
{
  g_autoptr (GPtrArray) fitted = g_ptr_array_new_with_free_func (unref);

  for (guint i = 0; i < list->len; i++)
    {
      gpointer record = fit (self, g_ptr_array_index (list, i), error);

      if (record == NULL)
        return NULL;
      g_ptr_array_add (fitted, record);
    }
  return g_steal_pointer (&fitted);
}

/* Takes `panel`, whose holes have moved. */
static PpPanel *
fit_wire (const Fit *self,
          PpPanel   *panel,
          GError   **error)
{
  double before;
  PpWire draft;
  PpPanel whole = *panel, *next;
  g_autoptr (PpWire) wire = NULL;

  if (panel->wire == NULL || panel->wire->knotted_at != NULL)
    return panel;
  draft = *panel->wire;
  before = pp_panel_get_hole_distance (self->panel);
  if (isnan (draft.length) || before <= 0)
    return panel;
  draft.length *= pp_panel_get_hole_distance (panel) / before;
  wire = pp_wire_new (&draft, error);
  whole.wire = wire;
  next = wire != NULL ? pp_panel_new (&whole, error) : NULL;
  pp_panel_unref (panel);
  return next;
}

static gboolean
is_begun (const PpPanel *panel)
{
  for (guint i = 0; i < panel->placements->len; i++)
    if (pp_panel_placement (panel, i)->glued_at != NULL)
      return TRUE;
  return FALSE;
}

/* FALSE with `error` set where the panel does not take another size. */
static gboolean
may_fit (const PpPanel *panel,
         double         width,
         double         height,
         GError       **error)
{
  const char *why = NULL;

  if (!(width > 0 && height > 0 && width <= PP_BACKGROUND_MAX_SIDE
        && height <= PP_BACKGROUND_MAX_SIDE))
    why = _("Glass must be more than 0 and at most 3000 mm wide and high.");
  else if (is_begun (panel))
    why = _("Pieces are glued on this glass already. Begin another like it, and fit that.");
  if (why != NULL)
    g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, why);
  return why == NULL;
}

PpPanel *
pp_fit_new (const PpPanel *panel,
            double         width,
            double         height,
            GError       **error)
{
  Fit self;
  PpPanel draft, *moved;
  g_autoptr (PpBackground) background = NULL;
  g_autoptr (GPtrArray) fused = NULL;
  g_autoptr (GPtrArray) holes = NULL;
  g_autoptr (GPtrArray) placements = NULL;

  g_return_val_if_fail (panel != NULL, NULL);

  if (!may_fit (panel, width, height, error))
    return NULL;
  self = (Fit) { .panel = panel, .box = pp_background_get_box (panel->background) };
  self.sx = width / pp_box_width (self.box);
  self.sy = height / pp_box_height (self.box);
  draft = *panel;
  draft.background = background = fit_background (&self, error);
  if (background == NULL)
    return NULL;
  draft.fused = fused = fit_all (&self, panel->fused, fit_part,
                                 (GDestroyNotify) pp_fused_unref, error);
  if (fused == NULL)
    return NULL;
  draft.holes = holes = fit_all (&self, panel->holes, fit_hole,
                                 (GDestroyNotify) pp_hole_unref, error);
  if (holes == NULL)
    return NULL;
  draft.placements = placements = fit_all (&self, panel->placements, fit_placement,
                                           (GDestroyNotify) pp_placement_unref, error);
  if (placements == NULL)
    return NULL;
  moved = pp_panel_new (&draft, error);
  return moved != NULL ? fit_wire (&self, moved, error) : NULL;
}
