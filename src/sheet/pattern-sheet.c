/* pattern-sheet.c: the panel full size, to lie under the clear glass while gluing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What lies under other pieces is drawn too, broken: it is glued before they are there. Small
 * crosses every 50 mm (2 in) from the glass's left and top keep tiles of bare glass from being
 * blank, and are what a place can be measured from.
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/flow.h"
#include "sheet/kinds.h"
#include "sheet/pattern.h"
#include "sheet/text.h"

#include <math.h>

/* mm that a page needs beside the drawing, about. */
#define PAPER_ACROSS 46.0
#define PAPER_DOWN 86.0
#define LEAST_PLAN 60.0 /* mm of height for the plan of tiles */

/* What to do, in the order of doing it; ended by NULL. */
static void
list_lines (const PpPattern *self,
            gboolean       has_tiles,
            const char    *lines[7])
{
  guint n = 0;

  lines[n++] = _("Print at 100 %, not fitted to the page. Hold a ruler to both bars of each page: "
                 "if one is not right, print again before you cut anything.");
  if (has_tiles)
    {
      lines[n++] = _("Cut each tile along its thin line at left and top. Lay it on the broken line "
                     "of its neighbour, so that equal letters meet and the petals are whole; "
                     "tape.");
      lines[n++] = _("Measure the whole across and down once more before you trust it.");
    }
  if (self->book->panel->wire != NULL)
    lines[n++] = _("Lay the glass over the pattern on two flat strips, clear of the wire; draw the "
                   "wire up past the top edge.");
  else
    lines[n++] = _("Lay the glass flat over the pattern, edge on edge.");
  lines[n++] = self->book->job->units == PP_UNITS_INCH
               ? _("Broken lines lie under other pieces. The small crosses stand every 2 in from "
                   "the left and the top of the glass.")
               : _("Broken lines lie under other pieces. The small crosses stand every 50 mm from "
                   "the left and the top of the glass.");
  if (self->book->job->behind)
    lines[n++] = _("This pattern is mirrored, for work from behind: left is right.");
  lines[n] = NULL;
}

static const char *
get_heading (const PpPattern *self)
{
  return self->book->job->behind ? _("Full size, mirrored: from behind") : _("Full size");
}

/* The size of glass, and of paper that takes it in one piece. */
static char *
size_line_new (const PpPattern *self)
{
  PpUnits units = self->book->job->units;
  double step = units == PP_UNITS_INCH ? PP_MM_PER_INCH : 10;
  PpBox box = pp_pattern_get_box (self);
  double width = pp_box_width (box), height = pp_box_height (box);
  g_autofree char *size = pp_size_format (width, height, units);
  g_autofree char *paper = pp_size_format (ceil ((width + PAPER_ACROSS) / step) * step,
                                           ceil ((height + PAPER_DOWN) / step) * step, units);

  return g_strdup_printf (_("Put together it measures %s. A copy shop can print it in one piece on "
                            "paper of %s."), size, paper);
}

/* The words before the plan of tiles; returns where they end. */
static double
draw_words (const PpPattern *self)
{
  PpBook *book = self->book;
  const PpTextStyle style = { .size = 11, .ink = PP_INK_SOFT };
  g_autofree char *line = size_line_new (self);
  const char *lines[7];
  double y;

  list_lines (self, TRUE, lines);
  y = pp_flow_ticks (book, lines, 12, book->area.y0);
  y += pp_text_tell (book, &style, line, (PpPoint) { book->area.x0, y },
                     pp_box_width (book->area)) + 2 * PP_GAP;
  return y;
}

/* The glass and its pieces, small, in the plan of tiles whose left top is at `at`. */
static void
draw_small (const PpPattern *self,
            PpBox            whole,
            PpPoint          at,
            double           scale)
{
  PpBook *book = self->book;
  const PpScene *scene = book->job->check->scene;
  PpMap map = pp_pattern_get_map (self, (PpPoint) { 0, 0 });

  if (pp_book_is_counting (book))
    return;
  map.scale = scale;
  map.place.x0 = pp_box_middle (book->area).x - pp_box_width (map.box) * scale / 2;
  map.place.x1 = map.place.x0 + pp_box_width (map.box) * scale;
  map.place.y0 = at.y + (map.box.y0 - whole.y0) * scale;
  map.place.y1 = map.place.y0 + pp_box_height (map.box) * scale;
  pp_map_draw_glass (&map, book, scene);
  for (guint i = 0; i < scene->n_bodies; i++)
    pp_map_draw_body (&map, book, scene->bodies[i], PP_LOOK_DOWN);
}

/* The page before the tiles. */
static void
draw_opening (const PpPattern *self,
              const PpTiles   *tiles)
{
  PpBook *book = self->book;
  PpBox last = pp_tiles_get_window (tiles, tiles->n_across - 1, tiles->n_down - 1);
  PpBox whole = { tiles->origin.x, tiles->origin.y, last.x1, last.y1 };
  double y = draw_words (self);
  double scale;
  PpPoint at;

  if (book->area.y1 - y < LEAST_PLAN)
    {
      pp_book_begin_page (book, NULL);
      y = book->area.y0;
    }
  scale = fmin (pp_box_width (book->area) / pp_box_width (whole),
                (book->area.y1 - y) / pp_box_height (whole));
  at = (PpPoint) { pp_box_middle (book->area).x - pp_box_width (whole) * scale / 2, y };
  draw_small (self, whole, at, scale);
  pp_tiles_draw_plan (tiles, book, (PpBox) { at.x, y, at.x + pp_box_width (whole) * scale,
                                             y + pp_box_height (whole) * scale });
}

/* All on one page, the words at its foot; FALSE if there is no room. */
static gboolean
draw_on_one_page (PpPattern *self)
{
  PpBook *book = self->book;
  const char *lines[7];
  PpNotice notice = { PP_LEVEL_NOTE, _("How to use it"), lines };
  g_autoptr (PpTiles) tiles = NULL;
  PpBox whole = book->area;
  double height;
  PpBox place;

  list_lines (self, FALSE, lines);
  height = pp_notice_height (book, &notice, pp_box_width (whole));
  book->area.y1 -= height + PP_GAP;
  place = pp_tiles_get_place (book);
  if (pp_box_width (self->what.box) > pp_box_width (place)
      || pp_box_height (self->what.box) > pp_box_height (place))
    {
      book->area = whole;
      return FALSE;
    }
  tiles = pp_tiles_new (&self->what, pp_box_width (place), pp_box_height (place));
  pp_tiles_draw (tiles, book, NULL, TRUE);
  pp_notice_draw (book, &notice, (PpPoint) { whole.x0, book->area.y1 + PP_GAP },
                  pp_box_width (whole));
  book->area = whole;
  return TRUE;
}

static void
draw_sheet (PpBook *book)
{
  g_autoptr (PpNumbers) numbers = pp_numbers_new (book->job);
  PpPattern self;
  g_autoptr (PpTiles) tiles = NULL;
  PpBox place;

  pp_pattern_init (&self, book, numbers);
  pp_book_begin_page (book, get_heading (&self));
  if (draw_on_one_page (&self))
    return;
  place = pp_tiles_get_place (book);
  tiles = pp_tiles_new (&self.what, pp_box_width (place), pp_box_height (place));
  draw_opening (&self, tiles);
  pp_tiles_draw (tiles, book, book->job->behind ? _("Mirrored") : NULL, FALSE);
}

const PpSheetKind pp_pattern_sheet = { "pattern", N_("Pattern"), draw_sheet };
