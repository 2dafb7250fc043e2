/* parking-sheet.c: where each piece waits, full size, while the dry run is taken apart.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Outlines as their pieces lie, front up, in the order in which they will be glued; then number
 * tags to cut. What is glued already needs no place.
 */
#include "config.h"

#include "art/draw.h"
#include "panel/i18n.h"
#include "sheet/bars.h"
#include "sheet/flow.h"
#include "sheet/furniture.h"
#include "sheet/kinds.h"
#include "sheet/numbers.h"
#include "sheet/pack.h"
#include "sheet/signs.h"
#include "sheet/words.h"

#include <math.h>

#define NUMBER_SIZE 18.0 /* pt */
#define LINE_SIZE 11.0
#define TAG_WIDTH 30.0   /* mm */
#define TAG_HEIGHT 13.0
#define TAG_NUMBER 18.0

typedef struct
{
  PpBook    *book;
  PpNumbers *numbers;
  guint      n;
  guint     *order;   /* index of each parked placement, in the order of their numbers */
  PpPacked  *items;
} Parking;

static guint
get_number (const Parking *self,
            guint          item)
{
  return self->numbers->of_job[self->numbers->n_knots + self->order[item]];
}

/* In a frame that is turned back, but mirrored where the placement is. */
static PpPoint
mirror_point (PpPoint       p,
              gconstpointer data)
{
  return (PpPoint) { -p.x, p.y };
}

static PpOutline *
face_outline (const PpBody *body)
{
  if (!body->placement->mirrored)
    return pp_outline_ref (body->piece->outline);
  return pp_outline_map (body->piece->outline, mirror_point, NULL);
}

static void
parking_init (Parking *self,
              PpBook  *book)
{
  const PpScene *scene = book->job->check->scene;

  self->book = book;
  self->numbers = pp_numbers_new (book->job);
  self->n = 0;
  self->order = g_new0 (guint, MAX (scene->n_bodies, 1));
  self->items = g_new0 (PpPacked, MAX (scene->n_bodies, 1));
  for (guint i = 0; i < self->numbers->n_jobs; i++)
    {
      guint job = self->numbers->jobs[i];

      if (job < self->numbers->n_knots
          || scene->bodies[job - self->numbers->n_knots]->placement->glued_at != NULL)
        continue;
      self->order[self->n] = job - self->numbers->n_knots;
      self->items[self->n].outline = face_outline (scene->bodies[self->order[self->n]]);
      self->items[self->n].label = pp_signs_measure_badge (book, i + 1, NUMBER_SIZE);
      self->n++;
    }
}

static void
parking_clear (Parking *self)
{
  pp_packed_clear (self->items, self->n);
  for (guint i = 0; i < self->n; i++)
    pp_outline_unref (self->items[i].outline);
  g_free (self->items);
  g_free (self->order);
  pp_numbers_free (self->numbers);
}

static void
draw_item (const Parking *self,
           guint          item,
           PpPoint        corner)
{
  const PpBody *body = self->book->job->check->scene->bodies[self->order[item]];
  const PpPacked *packed = &self->items[item];
  cairo_t *cr = self->book->cr;

  cairo_save (cr);
  cairo_translate (cr, corner.x, corner.y);
  pp_draw_outline_path (cr, packed->laid);
  if (!self->book->job->mono)
    {
      pp_colour_set (cr, pp_colour_mix (pp_colour_parse (body->piece->colour), PP_COLOUR_WHITE,
                                        0.72), 1);
      cairo_fill_preserve (cr);
    }
  pp_book_set_ink (self->book, PP_INK_TEXT);
  cairo_set_line_width (cr, PP_LINE_MIDDLE);
  cairo_stroke (cr);
  pp_signs_draw_badge (self->book, packed->label_at, get_number (self, item), NUMBER_SIZE, FALSE);
  cairo_restore (cr);
}

static void
say_item (const Parking *self,
          guint          item)
{
  guint job = self->numbers->n_knots + self->order[item];
  g_autoptr (PpJobWords) words = pp_job_words_new (self->book->job, job);
  g_autofree char *line = g_strdup_printf ("%u. %s", get_number (self, item), words->name);

  pp_book_say (self->book, line);
}

static char *
heading_new (const Parking *self,
             guint          page)
{
  guint first = 0, last = 0;

  for (guint i = 0; i < self->n; i++)
    if (self->items[i].laid != NULL && self->items[i].page == page)
      {
        first = first == 0 ? get_number (self, i) : first;
        last = get_number (self, i);
      }
  if (first == last)
    return g_strdup_printf (_("Piece %u"), first);
  return g_strdup_printf (_("Pieces %u to %u"), first, last);
}

static const PpTextStyle line_style = { .size = LINE_SIZE, .ink = PP_INK_SOFT };

static const char *
get_line (void)
{
  return _("Take the dry run apart from the top, highest number first, and lay each piece on its "
           "outline, front up. Glue from the lowest number.");
}

static double
get_line_height (PpBook *book,
                 PpBox   area)
{
  double height;

  pp_text_measure (book, &line_style, get_line (), pp_box_width (area), NULL, &height);
  return height + PP_GAP;
}

static PpBox
get_room (PpBook *book,
          PpBox   area)
{
  PpBox room = pp_bars_inner (area);

  room.y0 += get_line_height (book, area);
  room.x0 += 1;
  room.y1 -= 1;
  return room;
}

static void
draw_page (const Parking *self,
           guint          page)
{
  PpBook *book = self->book;
  PpBox area = book->area;
  PpBox room = get_room (book, area);

  pp_text_tell (book, &line_style, get_line (), (PpPoint) { area.x0, area.y0 },
                pp_box_width (area));
  area.y0 = room.y0;
  for (guint i = 0; i < self->n; i++)
    if (self->items[i].laid != NULL && self->items[i].page == page)
      {
        draw_item (self, i, (PpPoint) { room.x0, room.y0 });
        say_item (self, i);
      }
  pp_bars_draw (book, area, 0);
}

/* What no page takes. */
static void
draw_large (const Parking *self)
{
  PpBook *book = self->book;
  const PpColumn columns[] = {
    { "", PP_CELL_NUMBER, PP_ALIGN_RIGHT, FALSE },
    { _("piece"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < self->n; i++)
    {
      guint job = self->numbers->n_knots + self->order[i];
      g_autoptr (PpJobWords) words = NULL;
      g_autofree char *number = NULL;
      const char *cells[2];

      if (self->items[i].laid != NULL)
        continue;
      words = pp_job_words_new (book->job, job);
      number = g_strdup_printf ("%u", get_number (self, i));
      cells[0] = number;
      cells[1] = words->name;
      pp_table_add (table, cells, NULL);
    }
  if (pp_table_get_n_rows (table) == 0)
    return;
  pp_book_begin_page (book, _("Larger than this paper: lay them on the bench with their tags"));
  pp_table_fit (table, pp_box_width (book->area), 13, 16);
  pp_flow_table (book, table, book->area.y0, 1, 0);
}

static void
draw_tag (const Parking *self,
          guint          item,
          PpBox          box)
{
  const PpTextStyle number_style = { .size = TAG_NUMBER, .bold = TRUE };
  const PpTextStyle name_style = { .size = PP_TEXT_LEAST, .max_lines = 3 };
  const double dashes[] = { 1.2, 1.2 };
  PpBook *book = self->book;
  g_autofree char *number = g_strdup_printf ("%u", get_number (self, item));
  g_autoptr (PpJobWords) words = pp_job_words_new (book->job,
                                                   self->numbers->n_knots + self->order[item]);
  double width, height;

  pp_text_measure (book, &number_style, number, PP_NO_WIDTH, &width, NULL);
  pp_text_draw_centred (book, &number_style, number,
                        (PpPoint) { box.x0 + 1.5 + width / 2, pp_box_middle (box).y });
  width = pp_box_width (box) - width - 5;
  pp_text_measure (book, &name_style, words->name, width, NULL, &height);
  pp_text_draw (book, &name_style, words->name,
                (PpPoint) { box.x1 - width - 1.2, pp_box_middle (box).y - height / 2 }, width);
  cairo_save (book->cr);
  cairo_set_dash (book->cr, dashes, G_N_ELEMENTS (dashes), 0);
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_rectangle (book->cr, box.x0, box.y0, pp_box_width (box), pp_box_height (box));
  cairo_stroke (book->cr);
  cairo_restore (book->cr);
}

static void
draw_tags (const Parking *self)
{
  PpBook *book = self->book;
  guint across, down;

  pp_book_begin_page (book, _("Number tags to cut"));
  across = MAX (1, (guint) floor (pp_box_width (book->area) / TAG_WIDTH));
  down = MAX (1, (guint) floor (pp_box_height (book->area) / TAG_HEIGHT));
  for (guint i = 0; i < self->n; i++)
    {
      guint place = i % (across * down);
      double width = pp_box_width (book->area) / across;
      double x, y;

      if (i > 0 && place == 0)
        pp_book_begin_page (book, NULL);
      x = book->area.x0 + place % across * width;
      y = book->area.y0 + place / across * TAG_HEIGHT;
      draw_tag (self, i, (PpBox) { x, y, x + width, y + TAG_HEIGHT });
      say_item (self, i);
    }
}

static void
draw_all (Parking *self)
{
  /* Any heading of one line leaves as much. */
  PpBox room = get_room (self->book, pp_furniture_get_area (self->book, _("Pieces")));
  guint n_pages = pp_pack (self->items, self->n, pp_box_width (room), pp_box_height (room));

  for (guint page = 0; page < n_pages; page++)
    {
      g_autofree char *heading = heading_new (self, page);

      pp_book_begin_page (self->book, heading);
      draw_page (self, page);
    }
  draw_large (self);
  draw_tags (self);
}

static void
draw_sheet (PpBook *book)
{
  Parking self;

  parking_init (&self, book);
  if (self.n > 0)
    draw_all (&self);
  else
    {
      pp_book_begin_page (book, _("Nothing to park"));
      pp_furniture_draw_empty (book, book->job->check->n == 0
                                     ? _("Nothing lies on the glass yet.")
                                     : _("All that lies on this glass is glued already."));
    }
  parking_clear (&self);
}

const PpSheetKind pp_parking_sheet = { "parking", N_("Parking"), draw_sheet };
