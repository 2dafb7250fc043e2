/* record-sheet.c: the finished panel: picture, figures, list of pieces, findings.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/draw.h"
#include "check/heights.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/facts.h"
#include "sheet/findings-list.h"
#include "sheet/flow.h"
#include "sheet/kinds.h"
#include "sheet/labels.h"
#include "sheet/map.h"
#include "sheet/numbers.h"
#include "sheet/plain-line.h"
#include "sheet/signs.h"
#include "sheet/words.h"

#include <math.h>

#define MAT 5.0           /* mm of bench around the picture */
#define COLUMN 76.0       /* mm, least width of a column of the list */
#define COLUMN_SPACE 10.0
#define LIST_SIZE 12.0    /* pt */
#define LEAST_LIST_SIZE 10.5

static void
collect_facts (PpFacts          *self,
               const PpSheetJob *job)
{
  const PpCheck *check = job->check;
  const PpPanel *panel = check->panel;
  const PpBackground *glass = panel->background;

  pp_facts_add (self, _("Made by"), pp_plain_line_new (panel->maker));
  pp_facts_add (self, _("Date"), pp_plain_line_new_date (panel));
  pp_facts_add (self, _("Glass"), pp_size_format (glass->width, glass->height, job->units));
  if (pp_stands_over (check))
    pp_facts_add (self, _("With what stands over"),
              pp_size_format (check->extent.width, check->extent.height, job->units));
  pp_facts_add (self, _("Depth in front of the glass"),
                pp_length_format (check->extent.depth, job->units));
  pp_facts_add (self, _("Weight"), pp_mass_format (check->mass.total, job->units));
  pp_facts_add (self, _("Pieces"), g_strdup_printf ("%u", check->n));
  pp_facts_add (self, _("Hangs"), g_strdup (panel->display->place == PP_PLACE_WINDOW
                                            ? _("in a window") : _("on a wall")));
}

static void
draw_in_colour (PpBook      *book,
                const PpMap *map)
{
  const PpCheck *check = book->job->check;
  g_autofree double *bases = NULL, *tops = NULL;

  if (pp_book_is_counting (book))
    return;
  pp_heights_of (check, &bases, &tops);
  cairo_save (book->cr);
  pp_map_apply (map, book->cr);
  pp_draw_scene (book->cr, check->scene, book->job->gallery, bases, tops, NULL);
  cairo_restore (book->cr);
}

static void
draw_in_outlines (PpBook      *book,
                  const PpMap *map)
{
  const PpScene *scene = book->job->check->scene;

  pp_map_draw_glass (map, book, scene);
  for (guint i = 0; i < scene->n_knots; i++)
    pp_map_draw_knot (map, book, pp_scene_knot_hole (scene, i), PP_LOOK_RECORD);
  for (guint i = 0; i < scene->n_bodies; i++)
    pp_map_draw_body (map, book, scene->bodies[i], PP_LOOK_RECORD);
}

static double
get_label_size (guint n)
{
  return n <= 14 ? 13 : n <= 40 ? 11 : PP_TEXT_LEAST;
}

static void
place_labels (PpBook          *book,
              const PpMap     *map,
              const PpNumbers *numbers,
              PpSheetLabel    *labels,
              PpBox            bounds)
{
  const PpScene *scene = book->job->check->scene;
  g_autofree PpPoint *anchors = pp_anchors_new (scene, NULL);
  double size = get_label_size (numbers->n_jobs);

  for (guint i = 0; i < numbers->n_jobs; i++)
    {
      guint job = numbers->jobs[i];
      PpPoint measure = pp_signs_measure_badge (book, i + 1, size);
      PpPoint at = job >= numbers->n_knots
                   ? anchors[job - numbers->n_knots]
                   : pp_scene_knot_place (scene, job);

      labels[i].anchor = pp_map_to_page (map, at);
      labels[i].width = measure.x;
      labels[i].height = measure.y;
    }
  pp_labels_place (labels, numbers->n_jobs, bounds, NULL, 0, 0.5);
}

static void
draw_labels (PpBook          *book,
             const PpMap     *map,
             const PpNumbers *numbers,
             PpBox            bounds)
{
  g_autofree PpSheetLabel *labels = g_new0 (PpSheetLabel, MAX (numbers->n_jobs, 1));
  double size = get_label_size (numbers->n_jobs);

  if (pp_book_is_counting (book))
    return;
  place_labels (book, map, numbers, labels, bounds);
  for (guint i = 0; i < numbers->n_jobs; i++)
    if (labels[i].placed)
      pp_map_draw_leader (map, book, book->job->check->scene, numbers->jobs[i], &labels[i]);
  for (guint i = 0; i < numbers->n_jobs; i++)
    if (labels[i].placed)
      pp_signs_draw_badge (book, labels[i].at, i + 1, size, FALSE);
}

static void
draw_nothing (PpBook *book,
              PpBox   place)
{
  const PpTextStyle style = { .size = 13, .ink = PP_INK_SOFT, .align = PP_ALIGN_MIDDLE };

  pp_text_tell (book, &style, _("Nothing lies on the glass yet."),
                (PpPoint) { place.x0, pp_box_middle (place).y }, pp_box_width (place));
}

/* Picture on its mat with the numbers. Returns the y below. */
static double
draw_picture (PpBook          *book,
              const PpNumbers *numbers,
              double           bottom)
{
  PpBox mat = book->area;
  PpMap map;

  mat.y1 = bottom;
  map = pp_map_fit (book->job->check->scene, pp_box_grow (mat, -MAT), FALSE);
  mat.y1 = fmin (bottom, map.place.y1 + MAT);
  pp_signs_draw_card (book, mat);
  if (book->job->mono)
    draw_in_outlines (book, &map);
  else
    draw_in_colour (book, &map);
  draw_labels (book, &map, numbers, pp_box_grow (mat, -1));
  if (book->job->check->n == 0)
    draw_nothing (book, pp_box_grow (mat, -MAT));
  return mat.y1;
}

static const PpTextStyle note_style = { .size = 11, .max_lines = 6 };

static double
get_note_height (PpBook     *book,
                 const char *note)
{
  double height;

  if (*note == '\0')
    return 0;
  pp_text_measure (book, &note_style, note, pp_box_width (book->area), NULL, &height);
  return height + PP_GAP;
}

/* Picture, figures and the maker's note. Returns the y below. */
static double
draw_front (PpBook          *book,
            const PpNumbers *numbers)
{
  double width = pp_box_width (book->area);
  g_autofree char *note = pp_plain_line_new_lines (book->panel->note);
  double note_height = get_note_height (book, note);
  g_auto (PpFacts) facts = { 0 };
  double y;

  collect_facts (&facts, book->job);
  y = draw_picture (book, numbers, book->area.y1 - pp_facts_height (&facts, book)
                                   - note_height - 2 * PP_GAP) + PP_GAP + 1;
  y = pp_facts_draw (&facts, book, y);
  if (note_height > 0)
    pp_text_tell (book, &note_style, note, (PpPoint) { book->area.x0, y + PP_GAP }, width);
  return y + note_height;
}

static void
add_piece (PpBook          *book,
           PpTable         *table,
           const PpNumbers *numbers,
           guint            index)
{
  g_autoptr (PpJobWords) words = pp_job_words_new (book->job, numbers->jobs[index]);
  g_autofree char *number = g_strdup_printf ("%u", index + 1);
  g_autofree char *line = g_strdup_printf ("%s. %s: %s.", number, words->name, words->place);
  const char *cells[] = { number, words->name, words->middle_left, words->middle_top, words->turn };

  pp_table_add (table, cells, line);
}

static PpTable *
make_list (PpBook          *book,
           const PpNumbers *numbers)
{
  const PpColumn columns[] = {
    { "", PP_CELL_NUMBER, PP_ALIGN_RIGHT, FALSE },
    { _("piece"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { pp_from_left_heading (book->job->units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { pp_from_top_heading (book->job->units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("points to, o\342\200\231clock"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
  };
  PpTable *table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < numbers->n_jobs; i++)
    add_piece (book, table, numbers, i);
  return table;
}

static double
draw_list (PpBook          *book,
           const PpNumbers *numbers,
           double           y)
{
  g_autoptr (PpTable) table = NULL;
  double width = pp_box_width (book->area);
  guint n = (guint) fmax (1, floor ((width + COLUMN_SPACE) / (COLUMN + COLUMN_SPACE)));
  double column;

  if (numbers->n_jobs == 0)
    return y;
  column = (width + COLUMN_SPACE) / n - COLUMN_SPACE;
  y = pp_flow_heading (book, _("Pieces and knots, by the middle of each"), y + 2 * PP_GAP, 45);
  table = make_list (book, numbers);
  if (!pp_table_fit (table, column, LIST_SIZE, LIST_SIZE))
    pp_table_fit (table, column, LEAST_LIST_SIZE, LEAST_LIST_SIZE);
  return pp_flow_table (book, table, y, n, COLUMN_SPACE);
}

static gboolean
is_open (const PpFinding *finding)
{
  return !finding->quiet;
}

static gboolean
is_quiet (const PpFinding *finding)
{
  return finding->quiet;
}

static void
draw_sheet (PpBook *book)
{
  g_autofree char *title = pp_plain_line_new_title (book->panel);
  g_autoptr (PpNumbers) numbers = pp_numbers_new (book->job);
  double y;

  pp_book_begin_page (book, title);
  y = draw_front (book, numbers);
  y = draw_list (book, numbers, y);
  y = pp_findings_list_draw (book, _("Still to look at"), is_open, LIST_SIZE, y);
  pp_findings_list_draw (book, _("You know about these"), is_quiet, LEAST_LIST_SIZE, y);
}

const PpSheetKind pp_record_sheet = { "record", N_("Record"), draw_sheet };
