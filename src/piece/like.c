/* like.c: a piece like another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "piece/like.h"

#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/tolerance.h"
#include "piece/frame.h"

static PpPoint
scale_point (PpPoint       p,
             gconstpointer data)
{
  const double *scale = data;

  return (PpPoint) { p.x * *scale, p.y * *scale };
}

static PpHeightGrid *
scale_grid (const PpHeightGrid *grid,
            double              scale)
{
  gsize n = (gsize) grid->n_rows * grid->n_columns;
  g_autofree double *heights = g_new (double, n);

  for (gsize i = 0; i < n; i++)
    heights[i] = grid->heights[i] * scale;
  return pp_height_grid_new (grid->x0 * scale, grid->y0 * scale, grid->step * scale, grid->n_rows,
                             grid->n_columns, heights);
}

static PpPiece *
make_scaled (PpPiece *draft,
             double   scale,
             GError **error)
{
  g_autoptr (PpOutline) outline = pp_outline_map (draft->outline, scale_point, &scale);
  g_autoptr (PpHeightGrid) grid
      = draft->form.grid != NULL ? scale_grid (draft->form.grid, scale) : NULL;
  g_autoptr (GBytes) art
      = draft->art != NULL ? pp_frame_art (draft->art, scale, (PpPoint) { 0, 0 }, NULL) : NULL;

  draft->outline = outline;
  draft->art = art;
  draft->mass = NAN;
  draft->form.grid = grid;
  draft->form.rise *= scale;
  draft->form.foot *= scale;
  draft->form.flat *= scale;
  draft->crown.height *= scale;
  draft->crown.radius *= scale;
  return pp_piece_new (draft, error);
}

PpPiece *
pp_like_make (const PpPiece *piece,
              const char    *name,
              double         scale,
              GError       **error)
{
  PpPiece draft = *piece;

  if (!(scale >= PP_LIKE_LEAST && scale <= PP_LIKE_MOST))
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                   _("It can be made from %g to %g times as large."), PP_LIKE_LEAST, PP_LIKE_MOST);
      return NULL;
    }
  if (name != NULL)
    draft.name = name;
  draft.count = 1;
  draft.box = NULL;
  if (fabs (scale - 1) < PP_TIE)
    return pp_piece_new (&draft, error);
  return make_scaled (&draft, scale, error);
}
