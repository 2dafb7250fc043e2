/* like.c: a piece like another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The art is put whole into a larger drawing: its root, whose sizes then count from outside, gets
 * the place and size of its box, and a scale goes round it. It is taken as the judge wrote it, so
 * that its root is told by plain search.
 */
#include "config.h"

#include "piece/like.h"

#include "art/art-judge.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/tolerance.h"

#include <string.h>

#define PIXELS_PER_MM (96.0 / PP_MM_PER_INCH) /* CSS: of a root without a viewBox */

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

static void
append_number (GString    *text,
               const char *before,
               double      number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (text, "%s%s", before, g_ascii_dtostr (digits, sizeof digits, number));
}

static void
append_box (GString *text,
            PpBox    box,
            double   scale)
{
  append_number (text, " viewBox=\"", box.x0 * scale);
  append_number (text, " ", box.y0 * scale);
  append_number (text, " ", pp_box_width (box) * scale);
  append_number (text, " ", pp_box_height (box) * scale);
  g_string_append_c (text, '"');
}

/* Of the attributes of a start tag, written ` name="value"`, those that do not size it. */
static void
append_unsized (GString    *text,
                const char *attributes,
                const char *end,
                gboolean   *has_view)
{
  static const char *const sizes[] = { "x", "y", "width", "height", NULL };

  while (attributes < end)
    {
      const char *equals = strchr (attributes, '=');
      const char *next = strchr (equals + 2, '"') + 1;
      g_autofree char *name = g_strndup (attributes + 1, (gsize) (equals - attributes - 1));

      *has_view = *has_view || strcmp (name, "viewBox") == 0;
      if (!g_strv_contains (sizes, name))
        g_string_append_len (text, attributes, next - attributes);
      attributes = next;
    }
}

static void
append_inner (GString    *text,
              const char *art,
              PpBox       box)
{
  const char *end = strchr (art, '>');
  const char *attributes = strpbrk (art, " >");
  gboolean has_view = FALSE;

  g_string_append_len (text, art, attributes - art);
  append_unsized (text, attributes, end, &has_view);
  if (!has_view)
    append_box (text, box, PIXELS_PER_MM);
  append_number (text, " x=\"", box.x0);
  append_number (text, "\" y=\"", box.y0);
  append_number (text, "\" width=\"", pp_box_width (box));
  append_number (text, "\" height=\"", pp_box_height (box));
  g_string_append_printf (text, "\"%s", end);
}

/* NULL for art that may not be drawn. */
static GBytes *
scale_art (GBytes *art,
           double  scale)
{
  g_autoptr (PpArt) loaded = pp_art_new (art, NULL);
  g_autoptr (GBytes) judged = loaded != NULL ? pp_art_judge (art, NULL) : NULL;
  g_autoptr (GString) text = NULL;
  g_autofree char *inner = NULL;

  if (judged == NULL)
    return NULL;
  inner = g_strndup (g_bytes_get_data (judged, NULL), g_bytes_get_size (judged));
  text = g_string_new ("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
  append_box (text, pp_art_get_box (loaded), scale);
  append_number (text, "><g transform=\"scale(", scale);
  g_string_append (text, ")\">");
  append_inner (text, strchr (inner, '<'), pp_art_get_box (loaded));
  g_string_append (text, "</g></svg>\n");
  return g_string_free_to_bytes (g_steal_pointer (&text));
}

static PpPiece *
make_scaled (PpPiece *draft,
             double   scale,
             GError **error)
{
  g_autoptr (PpOutline) outline = pp_outline_map (draft->outline, scale_point, &scale);
  g_autoptr (PpHeightGrid) grid
      = draft->form.grid != NULL ? scale_grid (draft->form.grid, scale) : NULL;
  g_autoptr (GBytes) art = draft->art != NULL ? scale_art (draft->art, scale) : NULL;

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
