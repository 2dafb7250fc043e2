/* record-glass.c: background, fused parts and pieces: records with outlines, glass and art.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/record.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/record-private.h"
#include "panel/rules-private.h"

static PpGlass
glass_copy (const PpGlass *draft)
{
  PpGlass glass = *draft;

  glass.colour = g_strdup (draft->colour);
  glass.extra = g_strdup (draft->extra);
  return glass;
}

static void
glass_clear (PpGlass *glass)
{
  pp_record_free_string (glass->colour);
  pp_record_free_string (glass->extra);
}

static gboolean
check_glass (const PpGlass *glass,
             gboolean       may_follow,
             GError       **error)
{
  gboolean follows = may_follow && isnan (glass->density);
  gboolean grows_alike = may_follow && isnan (glass->expansion);

  return (follows || pp_rule_positive (glass->density, "glass.density", error))
         && pp_rule_between (glass->refractive_index, 1, 10, "glass.refractive_index", error)
         && pp_rule_between (glass->transmittance, 0, 1, "glass.transmittance", error)
         && (grows_alike || pp_rule_not_negative (glass->expansion, "glass.expansion", error))
         && pp_rule_colour (glass->colour, "glass.colour", error);
}

static double
longer_side (const PpOutline *outline)
{
  PpBox box = pp_outline_get_box (outline);

  return fmax (pp_box_width (box), pp_box_height (box));
}

static gboolean
check_outline (const PpOutline *outline,
               const char      *member,
               GError         **error)
{
  PpBox box;

  if (outline == NULL)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("%s: is missing and must be given."), member);
      return FALSE;
    }
  box = pp_outline_get_box (outline);
  if (!pp_rule_finite (box.x1 - box.x0, member, error)
      || !pp_rule_finite (box.y1 - box.y0, member, error)
      || !pp_rule_coordinate (box.x0, member, error) || !pp_rule_coordinate (box.x1, member, error)
      || !pp_rule_coordinate (box.y0, member, error) || !pp_rule_coordinate (box.y1, member, error))
    return FALSE;
  if (longer_side (outline) <= PP_OUTLINE_MAX_SIDE)
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT,
               _("%s: must be at most %.0f mm a side, not %.0f."), member, PP_OUTLINE_MAX_SIDE,
               longer_side (outline));
  return FALSE;
}

PpBackground
pp_background_draft (void)
{
  return (PpBackground) {
    .shape = PP_SHAPE_RECTANGLE,
    .glass = { .density = 2500, .refractive_index = 1.52, .transmittance = 0.9,
               .expansion = 9e-6, .colour = "#eef4f2" },
  };
}

/* A free background is as large as its outline. */
static PpBackground
sized (const PpBackground *draft)
{
  PpBackground whole = *draft;

  if (draft->shape == PP_SHAPE_FREE && draft->outline != NULL)
    {
      PpBox box = pp_outline_get_box (draft->outline);

      whole.width = pp_box_width (box);
      whole.height = pp_box_height (box);
      whole.corner_radius = 0;
    }
  else
    whole.outline = NULL;
  return whole;
}

static gboolean
check_side (double      side,
            const char *member,
            GError    **error)
{
  if (!pp_rule_positive (side, member, error))
    return FALSE;
  if (side <= PP_BACKGROUND_MAX_SIDE)
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT,
               _("%s: must be at most %.0f mm, not %.0f."), member, PP_BACKGROUND_MAX_SIDE, side);
  return FALSE;
}

PpBackground *
pp_background_new (const PpBackground *draft,
                   GError            **error)
{
  PpBackground whole = sized (draft);
  PpBackground *self;

  if ((whole.shape == PP_SHAPE_FREE && !check_outline (whole.outline, "outline", error))
      || !check_side (whole.width, "width", error) || !check_side (whole.height, "height", error)
      || !pp_rule_between (whole.corner_radius, 0, fmin (whole.width, whole.height) / 2,
                           "corner_radius", error)
      || !pp_rule_positive (whole.thickness, "thickness", error)
      || !check_glass (&whole.glass, FALSE, error))
    return NULL;
  self = pp_record_copy (PpBackground, &whole);
  self->outline = whole.outline != NULL ? pp_outline_ref (whole.outline) : NULL;
  self->glass = glass_copy (&whole.glass);
  self->extra = g_strdup (whole.extra);
  return self;
}

static void
background_clear (gpointer data)
{
  PpBackground *self = data;

  pp_outline_unref (self->outline);
  glass_clear (&self->glass);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpBackground, pp_background, background_clear)

PpBox
pp_background_get_box (const PpBackground *self)
{
  if (self->shape == PP_SHAPE_FREE)
    return pp_outline_get_box (self->outline);
  return (PpBox) { 0, 0, self->width, self->height };
}

PpFused
pp_fused_draft (void)
{
  return (PpFused) {
    .id = "",
    .name = "",
    .glass = { .density = NAN, .refractive_index = 1.52, .transmittance = 0.9, .expansion = NAN,
               .colour = "#c98a2b" },
    .pocket = { .gap = NAN },
  };
}

static gboolean
check_pocket (const PpPocket *pocket,
              GError        **error)
{
  return pp_rule_positive (pocket->insert_thickness, "pocket.insert_thickness", error)
         && pp_rule_not_negative_or_null (pocket->gap, "pocket.gap", error)
         && check_outline (pocket->insert, "pocket.insert", error);
}

PpFused *
pp_fused_new (const PpFused *draft,
              GError       **error)
{
  PpFused *self;

  if (!pp_rule_id (draft->id, "id", error)
      || !pp_rule_positive (draft->thickness, "thickness", error)
      || !check_outline (draft->outline, "outline", error)
      || !check_glass (&draft->glass, TRUE, error)
      || (draft->has_pocket && !check_pocket (&draft->pocket, error)))
    return NULL;
  self = pp_record_copy (PpFused, draft);
  self->id = g_strdup (draft->id);
  self->name = g_strdup (draft->name);
  self->outline = pp_outline_ref (draft->outline);
  self->glass = glass_copy (&draft->glass);
  self->pocket.insert = draft->has_pocket ? pp_outline_ref (draft->pocket.insert) : NULL;
  self->pocket.extra = g_strdup (draft->pocket.extra);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
fused_clear (gpointer data)
{
  PpFused *self = data;

  pp_record_free_string (self->id);
  pp_record_free_string (self->name);
  pp_outline_unref (self->outline);
  glass_clear (&self->glass);
  pp_outline_unref (self->pocket.insert);
  pp_record_free_string (self->pocket.extra);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpFused, pp_fused, fused_clear)

PpPiece
pp_piece_draft (void)
{
  return (PpPiece) {
    .id = "",
    .name = "",
    .kind = PP_KIND_FLOWER,
    .count = 1,
    .mass = NAN,
    .density = 2500,
    .colour = "#f2efe2",
    .form = { .kind = PP_FORM_FLAT, .foot = 10, .flat = NAN },
  };
}

static gboolean
check_grid (const PpHeightGrid *grid,
            GError            **error)
{
  if (grid == NULL || grid->n_rows == 0 || grid->n_columns == 0)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("form.heights: a measured form needs at least one height."));
      return FALSE;
    }
  for (gsize i = 0; i < (gsize) grid->n_rows * grid->n_columns; i++)
    if (!pp_rule_finite (grid->heights[i], "form.heights", error))
      return FALSE;
  return pp_rule_finite (grid->x0, "form.x", error) && pp_rule_finite (grid->y0, "form.y", error)
         && pp_rule_positive (grid->step, "form.step", error);
}

static gboolean
check_form (const PpForm *form,
            GError      **error)
{
  if (form->kind == PP_FORM_MEASURED)
    return check_grid (form->grid, error);
  return pp_rule_not_negative (form->rise, "form.rise", error)
         && pp_rule_not_negative (form->foot, "form.foot", error)
         && pp_rule_not_negative_or_null (form->flat, "form.flat", error);
}

static gboolean
check_crown (const PpCrown *crown,
             GError       **error)
{
  return pp_rule_not_negative (crown->height, "crown.height", error)
         && (crown->height == 0 || pp_rule_positive (crown->radius, "crown.radius", error));
}

/* More copies than any tray holds; so that sums of counts stay small. */
#define MAX_COUNT 100000

static gboolean
check_piece (const PpPiece *draft,
             GError       **error)
{
  if (draft->art != NULL && g_bytes_get_size (draft->art) > PP_PIECE_MAX_ART)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT,
                   _("art: may be at most 8 MiB; draw it with fewer points or smaller pictures."));
      return FALSE;
    }
  return pp_rule_id (draft->id, "id", error)
         && pp_rule_between (draft->count, 0, MAX_COUNT, "count", error)
         && pp_rule_positive (draft->thickness, "thickness", error)
         && pp_rule_positive_or_null (draft->mass, "mass", error)
         && pp_rule_positive (draft->density, "density", error)
         && pp_rule_between (draft->transmittance, 0, 1, "transmittance", error)
         && pp_rule_colour (draft->colour, "colour", error) && check_form (&draft->form, error)
         && check_crown (&draft->crown, error) && check_outline (draft->outline, "outline", error);
}

PpPiece *
pp_piece_new (const PpPiece *draft,
              GError       **error)
{
  PpPiece *self;

  if (!check_piece (draft, error))
    return NULL;
  self = pp_record_copy (PpPiece, draft);
  self->id = g_strdup (draft->id);
  self->name = g_strdup (draft->name);
  self->colour = g_strdup (draft->colour);
  self->form.grid = draft->form.kind == PP_FORM_MEASURED ? pp_height_grid_ref (draft->form.grid)
                                                         : NULL;
  self->form.extra = g_strdup (draft->form.extra);
  self->crown.extra = g_strdup (draft->crown.extra);
  self->outline = pp_outline_ref (draft->outline);
  self->art = draft->art != NULL ? g_bytes_ref (draft->art) : NULL;
  self->box = g_strdup (draft->box);
  self->extra = g_strdup (draft->extra);
  return self;
}

static void
piece_clear (gpointer data)
{
  PpPiece *self = data;

  pp_record_free_string (self->id);
  pp_record_free_string (self->name);
  pp_record_free_string (self->colour);
  pp_height_grid_unref (self->form.grid);
  pp_record_free_string (self->form.extra);
  pp_record_free_string (self->crown.extra);
  pp_outline_unref (self->outline);
  g_clear_pointer (&self->art, g_bytes_unref);
  pp_record_free_string (self->box);
  pp_record_free_string (self->extra);
}

PP_RECORD_REF_UNREF (PpPiece, pp_piece, piece_clear)
