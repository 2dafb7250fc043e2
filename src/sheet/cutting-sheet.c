/* cutting-sheet.c: glass, fused parts, inserts and pieces to cut, full size.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What fits a page is packed, each outline once with how many are wanted of it; what does not goes
 * on tiles. A rectangle of glass is cut by measure and has no outline here.
 */
#include "config.h"

#include "art/draw.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bars.h"
#include "sheet/flow.h"
#include "sheet/furniture.h"
#include "sheet/kinds.h"
#include "sheet/pack.h"
#include "sheet/plain-line.h"
#include "sheet/tiles.h"

#include <math.h>

#define LABEL_WIDTH 26.0 /* mm, a label is broken there */
#define LIST_SIZE 12.0   /* pt */
#define MOST_NAME 20     /* letters, over tiles */
#define FROM_SEAM 12.0   /* mm, of a label: there are letters and petals */
#define AROUND 3.0       /* mm of paper around an outline on tiles */

typedef struct
{
  const PpOutline *outline; /* owned */
  char            *name;
  char            *thick;   /* "3 mm thick" */
  char            *label;   /* both, a line each */
  gboolean         is_insert;
} Part;

typedef struct
{
  PpBook   *book;
  GArray   *parts; /* Part */
  PpPacked *items; /* one for each */
} Cutting;

static const PpTextStyle label_style = { .size = 10, .align = PP_ALIGN_MIDDLE, .max_lines = 5 };

static void
clear_part (gpointer data)
{
  Part *part = data;

  pp_outline_unref (part->outline);
  g_free (part->name);
  g_free (part->thick);
  g_free (part->label);
}

static void
add_part (Cutting         *self,
          const PpOutline *outline,
          const char      *name,
          double           thickness,
          gboolean         is_insert)
{
  g_autofree char *length = pp_length_format (thickness, self->book->job->units);
  Part part = { .outline = pp_outline_ref (outline), .name = pp_plain_line_new (name),
                .thick = g_strdup_printf (_("%s thick"), length), .is_insert = is_insert };

  part.label = g_strdup_printf ("%s\n%s", part.name, part.thick);
  g_array_append_val (self->parts, part);
}

static void
add_fused (Cutting       *self,
           const PpFused *fused)
{
  const char *name = pp_fused_get_title (fused);
  g_autofree char *insert = NULL;

  add_part (self, fused->outline, name, fused->thickness, FALSE);
  if (!fused->has_pocket)
    return;
  insert = g_strdup_printf (_("Insert for %s"), name);
  add_part (self, fused->pocket.insert, insert, fused->pocket.insert_thickness, TRUE);
}

static void
add_piece (Cutting       *self,
           const PpPiece *piece)
{
  guint wanted = MAX (piece->count, pp_panel_count_placed (self->book->panel, piece->id));
  g_autofree char *name = wanted > 1 ? g_strdup_printf (_("%u × %s"), wanted,
                                                        pp_piece_get_title (piece))
                                     : g_strdup (pp_piece_get_title (piece));

  add_part (self, piece->outline, name, piece->thickness, FALSE);
}

static void
collect (Cutting *self)
{
  const PpPanel *panel = self->book->panel;
  const PpBackground *glass = panel->background;

  if (glass->shape != PP_SHAPE_RECTANGLE)
    add_part (self, self->book->job->check->scene->background_outline,
              _("Background"), glass->thickness, FALSE);
  for (guint i = 0; i < panel->fused->len; i++)
    add_fused (self, pp_panel_fused (panel, i));
  for (guint i = 0; i < panel->tray->len; i++)
    add_piece (self, pp_panel_piece (panel, i));
}

static Part *
get_part (const Cutting *self,
          guint          i)
{
  return &g_array_index (self->parts, Part, i);
}

static void
cutting_init (Cutting *self,
              PpBook  *book)
{
  self->book = book;
  self->parts = g_array_new (FALSE, FALSE, sizeof (Part));
  g_array_set_clear_func (self->parts, clear_part);
  collect (self);
  self->items = g_new0 (PpPacked, MAX (self->parts->len, 1));
  for (guint i = 0; i < self->parts->len; i++)
    {
      PpPoint natural;

      self->items[i].outline = get_part (self, i)->outline;
      pp_text_measure (book, &label_style, get_part (self, i)->label, PP_NO_WIDTH, &natural.x,
                       NULL);
      natural.x = fmin (natural.x + 0.5, LABEL_WIDTH);
      pp_text_measure (book, &label_style, get_part (self, i)->label, natural.x, NULL, &natural.y);
      self->items[i].label = natural;
    }
}

static void
cutting_clear (Cutting *self)
{
  pp_packed_clear (self->items, self->parts->len);
  g_free (self->items);
  g_array_unref (self->parts);
}

static void
add_polygon (const PpOutline *polygon,
             gpointer         cr)
{
  pp_draw_outline_path (cr, polygon);
}

/* The line to grind to. */
static void
draw_inset (PpBook          *book,
            const PpOutline *outline)
{
  const double dashes[] = { 2, 1.2 };
  g_autoptr (PpRegion) region = NULL;
  g_autoptr (PpRegion) inset = NULL;

  if (book->job->inset <= 0)
    return;
  region = pp_region_new (outline);
  inset = pp_region_inset (region, book->job->inset);
  cairo_save (book->cr);
  cairo_new_path (book->cr);
  pp_region_foreach (inset, add_polygon, book->cr);
  pp_book_set_ink (book, PP_INK_ACCENT);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_set_dash (book->cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_stroke (book->cr);
  cairo_restore (book->cr);
}

/* Inserts, which are no glass, are hatched. */
static void
draw_outline (PpBook          *book,
              const PpOutline *outline,
              gboolean         is_insert)
{
  cairo_t *cr = book->cr;

  if (is_insert)
    {
      cairo_save (cr);
      pp_draw_outline_path (cr, outline);
      cairo_clip (cr);
      pp_book_set_ink (book, PP_INK_DOWN);
      cairo_set_line_width (cr, 0.13);
      pp_ink_hatch (cr, 4, 45);
      cairo_restore (cr);
    }
  pp_draw_outline_path (cr, outline);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_set_line_width (cr, PP_LINE_MIDDLE);
  cairo_stroke (cr);
  draw_inset (book, outline);
}

static void
draw_label (PpBook     *book,
            const char *label,
            PpPoint     size,
            PpPoint     at)
{
  cairo_rectangle (book->cr, at.x - size.x / 2 - 0.4, at.y - size.y / 2, size.x + 0.8, size.y);
  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_fill (book->cr);
  pp_text_draw (book, &label_style, label, (PpPoint) { at.x - size.x / 2, at.y - size.y / 2 },
                size.x);
}

static void
draw_page (const Cutting *self,
           guint          page,
           PpBox          room)
{
  PpBook *book = self->book;

  cairo_save (book->cr);
  cairo_translate (book->cr, room.x0, room.y0);
  for (guint i = 0; i < self->parts->len; i++)
    {
      const PpPacked *item = &self->items[i];
      const Part *part = get_part (self, i);
      g_autofree char *words = g_strdup_printf ("%s, %s", part->name, part->thick);

      if (item->laid == NULL || item->page != page)
        continue;
      draw_outline (book, item->laid, part->is_insert);
      draw_label (book, part->label, item->label, item->label_at);
      pp_book_say (book, words);
    }
  cairo_restore (book->cr);
  pp_bars_draw (book, book->area, 0);
}

typedef struct
{
  const Part     *part;
  const PpPacked *item;
} Large;

/* Each tile has the label where there is room; all have the name in their heading. */
static void
draw_large_tile (PpBook       *book,
                 const PpTile *tile,
                 gpointer      data)
{
  const Large *self = data;
  g_autoptr (PpOutline) shown = pp_outline_move (self->part->outline, tile->shift);
  PpPoint at;

  draw_outline (book, shown, self->part->is_insert);
  if (!pp_book_is_counting (book)
      && pp_pack_find_inside (self->part->outline, pp_box_grow (tile->clear, -FROM_SEAM),
                              self->item->label, &at))
    draw_label (book, self->part->label, self->item->label,
                (PpPoint) { at.x + tile->shift.x, at.y + tile->shift.y });
}

static gboolean
is_large_blank (PpBox    window,
                gpointer data)
{
  const Large *self = data;
  g_autoptr (PpRegion) page = pp_region_new_box (window);
  g_autoptr (PpRegion) region = pp_region_new (self->part->outline);

  return pp_region_overlap (page, region) <= 0;
}

/* What no page takes, on tiles of its own. */
static void
draw_large (const Cutting *self,
            guint          index)
{
  PpBook *book = self->book;
  Large large = { get_part (self, index), &self->items[index] };
  PpBox box = pp_outline_get_box (large.part->outline);
  PpFullSize what = { .box = pp_box_grow (box, AROUND), .is_blank = is_large_blank,
                      .draw = draw_large_tile, .data = &large };
  g_autofree char *name = g_utf8_substring (large.part->name, 0,
                                            MIN (g_utf8_strlen (large.part->name, -1), MOST_NAME));
  PpBox place = pp_bars_inner (pp_furniture_get_area (book, name));
  g_autoptr (PpTiles) tiles = pp_tiles_new (&what, pp_box_width (place), pp_box_height (place));

  pp_tiles_draw (tiles, book, name, FALSE);
}

static char *
glass_line_new (PpBook *book)
{
  const PpBackground *glass = book->panel->background;
  g_autofree char *size = pp_size_format (glass->width, glass->height, book->job->units);
  g_autofree char *thick = pp_length_format (glass->thickness, book->job->units);

  if (glass->corner_radius > 0)
    {
      g_autofree char *radius = pp_length_format (glass->corner_radius, book->job->units);

      return g_strdup_printf (_("The background: %s, %s thick, corners rounded to %s. Cut it by "
                                "measure."), size, thick, radius);
    }
  return g_strdup_printf (_("The background: %s, %s thick. Cut it by measure."), size, thick);
}

/* What to heed; returns the y below. */
static double
draw_reminders (const Cutting *self,
                double         y)
{
  PpBook *book = self->book;
  const char *cutting[6];
  PpNotice notice = { PP_LEVEL_CAUTION, _("Cutting and firing"), cutting };
  g_autofree char *glass = NULL;
  guint n = 0;

  if (book->panel->background->shape == PP_SHAPE_RECTANGLE)
    cutting[n++] = glass = glass_line_new (book);
  cutting[n++] = book->job->inset > 0
                 ? _("Cut on the full line, grind to the broken one. Eyes protected, glass wet at "
                     "the grinder; seam every edge.")
                 : _("Cut inside the line where a grinder follows. Eyes protected, glass wet at "
                     "the grinder; seam every edge.");
  if (book->panel->fused->len > 0)
    {
      cutting[n++] = _("Fuse only glass of one expansion. Fire by the glass maker\342\200\231s own "
                       "schedule; where one layer lies beside two, heat and cool more slowly.");
      cutting[n++] = _("Fibre paper for inserts (hatched): a dust mask rated for it, handled "
                       "damp.");
    }
  cutting[n] = NULL;
  return pp_flow_notice (book, &notice, y);
}

/* Returns the y below. */
static double
draw_list (const Cutting *self,
           double         y)
{
  PpBook *book = self->book;
  const PpColumn columns[] = {
    { "", PP_CELL_TICK, PP_ALIGN_LEFT, FALSE },
    { _("to cut"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { _("size"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { "", PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < self->parts->len; i++)
    {
      const Part *part = get_part (self, i);
      PpBox box = pp_outline_get_box (part->outline);
      g_autofree char *size = pp_size_format (pp_box_width (box), pp_box_height (box),
                                              book->job->units);
      const char *cells[] = { "", part->name, size, part->thick };

      pp_table_add (table, cells, NULL);
    }
  if (self->parts->len == 0)
    return y;
  pp_table_fit (table, pp_box_width (book->area), LIST_SIZE, LIST_SIZE);
  return pp_flow_table (book, table, y, 1, 0);
}

static void
draw_sheet (PpBook *book)
{
  Cutting self;
  const char *heading = _("Full size, to cut");
  PpBox room;
  guint n_pages;

  cutting_init (&self, book);
  room = pp_bars_inner (pp_furniture_get_area (book, heading));
  room = (PpBox) { room.x0 + 1, room.y0 + 1, room.x1 - 1, room.y1 - 1 };
  n_pages = pp_pack (self.items, self.parts->len, pp_box_width (room), pp_box_height (room));
  pp_book_begin_page (book, _("Before you cut"));
  draw_list (&self, draw_reminders (&self, book->area.y0) + 2 * PP_GAP);
  for (guint page = 0; page < n_pages; page++)
    {
      g_autofree char *title = n_pages == 1 ? g_strdup (heading)
                               : g_strdup_printf (_("Full size, to cut: %u of %u"), page + 1,
                                                  n_pages);

      pp_book_begin_page (book, title);
      draw_page (&self, page, room);
    }
  for (guint i = 0; i < self.parts->len; i++)
    if (self.items[i].laid == NULL)
      draw_large (&self, i);
  cutting_clear (&self);
}

const PpSheetKind pp_cutting_sheet = { "cutting", N_("Cutting"), draw_sheet };
