/* hanging-figure.c: the panel as it hangs, from the front with its measures and from the side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measures run from the glass's left and top, as on every sheet; those across stand above it, one
 * over another, those down stand at its left.
 */
#include "config.h"

#include "sheet/hanging-figure.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/hanging-side.h"
#include "sheet/labels.h"
#include "sheet/letters.h"
#include "sheet/map.h"
#include "sheet/text.h"

#include <math.h>

#define STEP 5.6          /* mm, from one measure to the next */
#define MOST_MEASURES 6   /* each way; more stand in the table alone */
#define FIGURE_SHARE 0.6  /* of the room, that measures leave to the figure at least */
#define ARROW 1.6
#define FIGURE_SIZE 9.5   /* pt */
#define LETTER_HEIGHT 3.4 /* mm, of a capital and some air */
#define SIDE_SHARE 0.2    /* of the width, for the view from the side */
#define SIDE_GAP 8.0
#define WORD_ROOM 7.0     /* mm under the figure */
#define HOOK 2.2          /* mm, the mark of the hook */
#define MEASURES_SPACE 2.0 /* mm, between the figure and its measures */

/* How many stand above the figure and at its left. */
typedef struct
{
  guint across;
  guint down;
} Measures;

static const PpTextStyle letter_style = { .size = 12, .bold = TRUE };

static void
draw_arrow (cairo_t *cr,
            PpPoint  tip,
            PpPoint  along)
{
  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, tip.x - along.x * ARROW - along.y * ARROW / 3,
                 tip.y - along.y * ARROW - along.x * ARROW / 3);
  cairo_line_to (cr, tip.x - along.x * ARROW + along.y * ARROW / 3,
                 tip.y - along.y * ARROW + along.x * ARROW / 3);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* The figure stands on the line, or beyond its end where it is too short. */
static void
draw_figure (PpBook *book,
             double  mm,
             PpPoint from,
             PpPoint to)
{
  const PpTextStyle style = { .size = FIGURE_SIZE };
  g_autofree char *text = pp_length_format_bare (mm, book->job->units);
  gboolean is_across = fabs (from.y - to.y) < fabs (from.x - to.x);
  double length = pp_point_distance (from, to);
  PpPoint at = { (from.x + to.x) / 2, (from.y + to.y) / 2 };
  double width;

  pp_text_measure (book, &style, text, PP_NO_WIDTH, &width, NULL);
  if (length < width + 2 * ARROW + 2)
    at = is_across ? (PpPoint) { to.x + width / 2 + 1.5, to.y }
                   : (PpPoint) { to.x, to.y + width / 2 + 1.5 };
  pp_book_set_ink (book, PP_INK_PAPER);
  cairo_save (book->cr);
  cairo_translate (book->cr, at.x, at.y);
  if (!is_across)
    cairo_rotate (book->cr, -G_PI / 2);
  cairo_rectangle (book->cr, -width / 2 - 0.7, -1.7, width + 1.4, 3.4);
  cairo_fill (book->cr);
  pp_text_draw_centred (book, &style, text, (PpPoint) { 0, 0 });
  cairo_restore (book->cr);
}

static void
draw_measure (PpBook *book,
              double  mm,
              PpPoint from,
              PpPoint to)
{
  double length = pp_point_distance (from, to);
  PpPoint along;

  if (length <= 0)
    return;
  along = (PpPoint) { (to.x - from.x) / length, (to.y - from.y) / length };
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_set_line_width (book->cr, PP_LINE_THIN);
  cairo_move_to (book->cr, from.x, from.y);
  cairo_line_to (book->cr, to.x, to.y);
  cairo_stroke (book->cr);
  draw_arrow (book->cr, to, along);
  draw_arrow (book->cr, from, (PpPoint) { -along.x, -along.y });
  draw_figure (book, mm, from, to);
}

/* A line out of the figure to its measure; lighter than any outline. */
static void
draw_extension (PpBook *book,
                PpPoint from,
                PpPoint to)
{
  pp_book_set_ink (book, PP_INK_SOFT);
  cairo_set_line_width (book->cr, 0.13);
  cairo_move_to (book->cr, from.x, from.y);
  cairo_line_to (book->cr, to.x, to.y);
  cairo_stroke (book->cr);
}

/* Whether a hole before it in the order has the same distance that way. */
static gboolean
is_measured (const PpPanel *panel,
             const guint   *order,
             guint          place,
             gboolean       is_across)
{
  const PpHole *hole = pp_panel_hole (panel, order[place]);

  for (guint i = 0; i < place; i++)
    {
      const PpHole *other = pp_panel_hole (panel, order[i]);

      if (is_across ? fabs (other->x - hole->x) <= PP_TIE : fabs (other->y - hole->y) <= PP_TIE)
        return TRUE;
    }
  return FALSE;
}

/* As many as `room` mm hold beside the figure. */
static guint
count_measures (const PpPanel *panel,
                const guint   *order,
                gboolean       is_across,
                double         room)
{
  double most = ((1 - FIGURE_SHARE) * room - MEASURES_SPACE) / STEP;
  guint n = 0;

  for (guint i = 0; i < panel->holes->len; i++)
    n += is_measured (panel, order, i, is_across) ? 0 : 1;
  return MIN (n, (guint) CLAMP (most, 0, MOST_MEASURES));
}

static void
draw_measures (PpBook      *book,
               const PpMap *map,
               const guint *order,
               Measures     most)
{
  PpBox glass = pp_background_get_box (book->panel->background);
  PpPoint corner = pp_map_to_page (map, (PpPoint) { glass.x0, glass.y0 });
  guint across = 0, down = 0;

  for (guint i = 0; i < book->panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (book->panel, order[i]);
      PpPoint at = pp_map_to_page (map, (PpPoint) { hole->x, hole->y });

      if (!is_measured (book->panel, order, i, TRUE) && across < most.across)
        {
          double y = map->place.y0 - STEP * ++across + 2;

          draw_extension (book, at, (PpPoint) { at.x, y - 1 });
          draw_extension (book, corner, (PpPoint) { corner.x, y - 1 });
          draw_measure (book, hole->x - glass.x0, (PpPoint) { corner.x, y }, (PpPoint) { at.x, y });
        }
      if (!is_measured (book->panel, order, i, FALSE) && down < most.down)
        {
          double x = map->place.x0 - STEP * ++down + 2;

          draw_extension (book, at, (PpPoint) { x - 1, at.y });
          draw_extension (book, corner, (PpPoint) { x - 1, corner.y });
          draw_measure (book, hole->y - glass.y0, (PpPoint) { x, corner.y }, (PpPoint) { x, at.y });
        }
    }
}

static void
draw_hook (PpBook *book,
           PpPoint at)
{
  cairo_t *cr = book->cr;

  pp_book_set_ink (book, PP_INK_FAULT);
  cairo_set_line_width (cr, PP_LINE_HEAVY);
  cairo_move_to (cr, at.x, at.y - 2.4 * HOOK);
  cairo_line_to (cr, at.x, at.y - HOOK);
  cairo_arc (cr, at.x, at.y - HOOK / 2, HOOK / 2, -G_PI / 2, G_PI);
  cairo_stroke (cr);
}

/* Where the wire's path turns: the hook, or nowhere if it is taut. */
static void
draw_wire (PpBook      *book,
           const PpMap *map)
{
  const PpHang *hang = book->job->check->hang;
  const PpScene *scene = book->job->check->scene;
  cairo_t *cr = book->cr;

  if (hang == NULL)
    return;
  for (guint i = 0; i < 2; i++)
    {
      PpPoint at = pp_map_to_page (map, pp_scene_knot_place (scene, i));

      if (i == 0)
        cairo_move_to (cr, at.x, at.y);
      if (i == 1 && !hang->is_taut)
        {
          PpPoint hook = pp_map_to_page (map, hang->hook);

          cairo_line_to (cr, hook.x, hook.y);
        }
      if (i == 1)
        cairo_line_to (cr, at.x, at.y);
    }
  pp_book_set_ink (book, PP_INK_ACCENT);
  cairo_set_line_width (cr, PP_LINE_STRONG);
  cairo_stroke (cr);
  if (!hang->is_taut)
    draw_hook (book, pp_map_to_page (map, hang->hook));
}

static double
get_radius (const PpMap  *map,
            const PpHole *hole)
{
  return fmax (hole->diameter / 2 * map->scale, 1.2);
}

static PpBox
get_hook_box (const PpMap  *map,
              const PpHang *hang)
{
  PpPoint at;

  if (hang == NULL || hang->is_taut)
    return pp_box_empty ();
  at = pp_map_to_page (map, hang->hook);
  return (PpBox) { at.x - HOOK / 2, at.y - 2.4 * HOOK, at.x + HOOK / 2, at.y };
}

/* Toward the middle of the glass, where there is no border to run into, and clear of hook, holes
 * and other letters. */
static PpSheetLabel *
place_letters (PpBook      *book,
               const PpMap *map,
               const guint *order)
{
  guint n = book->panel->holes->len;
  g_autofree PpBox *marks = g_new (PpBox, n + 1);
  PpSheetLabel *labels = g_new0 (PpSheetLabel, MAX (n, 1));
  PpPoint middle = pp_box_middle (map->place);

  for (guint i = 0; i < n; i++)
    {
      const PpHole *hole = pp_panel_hole (book->panel, order[i]);
      PpPoint at = pp_map_to_page (map, (PpPoint) { hole->x, hole->y });
      double away = get_radius (map, hole) + 2.4;
      g_autofree char *letter = pp_letters_format (i);

      pp_text_measure (book, &letter_style, letter, PP_NO_WIDTH, &labels[i].width, NULL);
      labels[i].height = LETTER_HEIGHT;
      labels[i].anchor = (PpPoint) { at.x + (at.x < middle.x ? away : -away),
                                     at.y + (at.y < middle.y ? away : -away) };
      marks[i] = pp_box_grow ((PpBox) { at.x, at.y, at.x, at.y }, get_radius (map, hole));
    }
  marks[n] = get_hook_box (map, book->job->check->hang);
  pp_labels_place (labels, n, pp_box_grow (map->place, LETTER_HEIGHT), marks, n + 1, 0.2);
  return labels;
}

/* A letter that found no room beside its hole is led to it. */
static void
draw_letter (PpBook             *book,
             guint               place,
             PpPoint             hole,
             const PpSheetLabel *label)
{
  g_autofree char *letter = pp_letters_format (place);

  if (pp_point_distance (label->at, label->anchor) > LETTER_HEIGHT)
    draw_extension (book, hole, label->at);
  pp_book_set_ink (book, PP_INK_TEXT);
  pp_text_draw_centred (book, &letter_style, letter, label->at);
}

static void
draw_holes (PpBook      *book,
            const PpMap *map,
            const guint *order)
{
  g_autofree PpSheetLabel *letters = place_letters (book, map, order);
  cairo_t *cr = book->cr;

  for (guint i = 0; i < book->panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (book->panel, order[i]);
      PpPoint at = pp_map_to_page (map, (PpPoint) { hole->x, hole->y });

      draw_letter (book, i, at, &letters[i]);
      cairo_new_sub_path (cr);
      cairo_arc (cr, at.x, at.y, get_radius (map, hole), 0, 2 * G_PI);
      pp_book_set_ink (book, PP_INK_PAPER);
      cairo_fill_preserve (cr);
      pp_book_set_ink (book, PP_INK_TEXT);
      cairo_set_line_width (cr, PP_LINE_HEAVY);
      cairo_stroke (cr);
    }
}

static void
draw_from_side (PpBook      *book,
                const PpMap *map,
                double       x)
{
  const PpCheck *check = book->job->check;
  cairo_t *cr = book->cr;

  cairo_save (cr);
  cairo_translate (cr, x, map->place.y0);
  cairo_scale (cr, map->scale, map->scale);
  cairo_translate (cr, 0, -map->box.y0);
  pp_hanging_side_lean (cr, check->scene, check->hang);
  pp_hanging_side_add_pieces (cr, check);
  pp_book_set_ink (book, PP_INK_DOWN);
  cairo_set_line_width (cr, PP_LINE_THIN / map->scale);
  cairo_stroke (cr);
  pp_hanging_side_add_glass (cr, check->scene);
  pp_book_set_ink (book, PP_INK_GLASS);
  cairo_fill_preserve (cr);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_set_line_width (cr, PP_LINE_STRONG / map->scale);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_word (PpBook     *book,
           const char *text,
           double      x,
           double      y)
{
  const PpTextStyle style = { .size = 10, .ink = PP_INK_SOFT };

  pp_text_draw_centred (book, &style, text, (PpPoint) { x, y });
}

static void
draw_front (PpBook      *book,
            const PpMap *map,
            const guint *order,
            Measures     measures)
{
  const PpScene *scene = book->job->check->scene;

  pp_map_draw_glass (map, book, scene);
  for (guint i = 0; i < scene->n_bodies; i++)
    pp_map_draw_body (map, book, scene->bodies[i], PP_LOOK_DOWN);
  draw_measures (book, map, order, measures);
  draw_wire (book, map);
  draw_holes (book, map, order);
}

/* The panel with its hook in the area, and as much of it as measures leave. */
static PpMap
fit (PpBook  *book,
     PpBox    area,
     Measures measures)
{
  const PpCheck *check = book->job->check;
  double side = pp_box_width (area) * SIDE_SHARE;
  PpMap map = { .box = pp_map_get_extent (check->scene) };
  double depth = check->depth + book->panel->background->thickness;
  double width, height;

  if (check->hang != NULL && !check->hang->is_taut)
    {
      map.box = pp_box_add_point (map.box, check->hang->hook);
      map.box.y0 = fmin (map.box.y0, check->hang->hook.y - HOOK);
    }
  area.x0 += STEP * measures.down + MEASURES_SPACE;
  area.y0 += STEP * measures.across + MEASURES_SPACE;
  width = fmax (pp_box_width (area) - side - SIDE_GAP, 1);
  height = fmax (pp_box_height (area), 1);
  map.scale = fmin (fmin (width / pp_box_width (map.box), height / pp_box_height (map.box)), 1);
  map.scale = fmin (map.scale, side / fmax (depth, 1));
  area.x0 += (width - pp_box_width (map.box) * map.scale) / 2;
  map.place = (PpBox) { area.x0, area.y0, area.x0 + pp_box_width (map.box) * map.scale,
                        area.y0 + pp_box_height (map.box) * map.scale };
  return map;
}

double
pp_hanging_figure_draw (PpBook *book,
                        PpBox   area)
{
  g_autofree guint *order = pp_letters_of_holes (book->panel);
  PpBox room = { area.x0, area.y0, area.x1, area.y1 - WORD_ROOM };
  double across = pp_box_width (room) * (1 - SIDE_SHARE) - SIDE_GAP;
  Measures measures = { count_measures (book->panel, order, TRUE, pp_box_height (room)),
                        count_measures (book->panel, order, FALSE, across) };
  PpMap map = fit (book, room, measures);
  double side = map.place.x1 + SIDE_GAP + book->panel->background->thickness * map.scale;

  if (pp_book_is_counting (book))
    return map.place.y1 + WORD_ROOM;
  draw_front (book, &map, order, measures);
  draw_from_side (book, &map, side);
  draw_word (book, _("from the front"), pp_box_middle (map.place).x, map.place.y1 + 4);
  draw_word (book, _("from the side"), fmin (side + 8, area.x1 - 10), map.place.y1 + 4);
  return map.place.y1 + WORD_ROOM;
}
