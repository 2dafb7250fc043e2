/* hanging-sheet.c: holes to drill, wire to cut, where the hook goes, loads and cautions.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/facts.h"
#include "sheet/findings-list.h"
#include "sheet/flow.h"
#include "sheet/hanging-facts.h"
#include "sheet/hanging-figure.h"
#include "sheet/kinds.h"
#include "sheet/letters.h"
#include "sheet/words.h"

#define FIGURE_SHARE 0.5      /* of the page */

static double
draw_facts (PpBook *book,
            double  y)
{
  g_auto (PpFacts) facts = { 0 };

  pp_hanging_facts_add (&facts, book->job->check, book->job->units);
  return pp_facts_draw (&facts, book, y);
}

static char *
use_of (const PpPanel *panel,
        guint          index)
{
  if (pp_wire_ends_in (panel->wire, pp_panel_hole (panel, index)->id))
    return g_strdup (_("wire"));
  return g_strdup (_("not for the wire"));
}

static double
draw_holes (PpBook *book,
            double  y)
{
  const PpPanel *panel = book->panel;
  PpUnits units = book->job->units;
  const PpColumn columns[] = {
    { "", PP_CELL_TICK, PP_ALIGN_LEFT, FALSE },
    { _("hole"), PP_CELL_NUMBER, PP_ALIGN_LEFT, FALSE },
    { units == PP_UNITS_INCH ? _("wide, in") : _("wide, mm"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { pp_from_left_heading (units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { pp_from_top_heading (units), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("for"), PP_CELL_TEXT, PP_ALIGN_LEFT, FALSE },
    { "", PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));
  g_autofree guint *order = pp_letters_of_holes (panel);
  PpBox glass = pp_background_get_box (panel->background);

  if (panel->holes->len == 0)
    return y;
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, order[i]);
      g_autofree char *letter = pp_letters_format (i);
      g_autofree char *wide = pp_length_format_bare (hole->diameter, units);
      g_autofree char *left = pp_length_format_bare (hole->x - glass.x0, units);
      g_autofree char *top = pp_length_format_bare (hole->y - glass.y0, units);
      g_autofree char *use = use_of (panel, order[i]);
      const char *cells[] = { "", letter, wide, left, top, use,
                              hole->drilled ? _("drilled") : _("to drill") };

      pp_table_add (table, cells, NULL);
    }
  y = pp_flow_heading (book, _("Holes, by their middles"), y + 2 * PP_GAP, 30);
  if (!pp_table_fit (table, pp_box_width (book->area), 13, 15))
    pp_table_fit (table, pp_box_width (book->area), 10, 11);
  return pp_flow_table (book, table, y, 1, 0);
}

static gboolean
is_to_drill (const PpPanel *panel)
{
  for (guint i = 0; i < panel->holes->len; i++)
    if (!pp_panel_hole (panel, i)->drilled)
      return TRUE;
  return FALSE;
}

/* Returns the y below. */
static double
draw_drilling (PpBook *book,
               double  y)
{
  const char *const lines[] = {
    _("Drill before anything is glued: wet and slowly, eyes protected, the glass clamped over a "
      "soft support. Keep electrics away from the water; wipe the slurry up while it is wet."),
    _("Measure from the same two edges for every hole, and mark all before you drill one."),
    NULL
  };
  const PpNotice notice = { PP_LEVEL_CAUTION, _("Drilling"), lines };

  return pp_flow_notice (book, &notice, y);
}

static void
draw_cautions (PpBook *book,
               double  y)
{
  const char *const lines[] = {
    _("Not over a bed or a seat. Heed the hook\342\200\231s rating, and use a fixing made for the "
      "wall it goes into."),
    _("Check wire, knots and hook each year; renew what is frayed, bent or loose."),
    _("Glass over a public place needs a qualified person and the local code. These figures are "
      "arithmetic from what you typed, no certificate."),
    NULL
  };
  const PpNotice notice = { PP_LEVEL_CAUTION, _("Hanging"), lines };

  pp_flow_notice (book, &notice, y);
}

static const char *
get_heading (const PpPanel *panel)
{
  if (is_to_drill (panel))
    return _("Holes to drill");
  return panel->wire != NULL ? _("Holes, wire and hook") : _("Holes and weight");
}

/* A page for the drill, another for the wall. */
static void
draw_sheet (PpBook *book)
{
  const PpTextStyle style = { .size = 12 };
  PpBox figure;
  double y;

  pp_book_begin_page (book, get_heading (book->panel));
  figure = book->area;
  figure.y1 = figure.y0 + pp_box_height (figure) * FIGURE_SHARE;
  y = draw_holes (book, pp_hanging_figure_draw (book, figure)) + 2 * PP_GAP;
  if (is_to_drill (book->panel))
    {
      draw_drilling (book, y);
      pp_book_begin_page (book, _("Wire, hook and weight"));
      y = book->area.y0;
    }
  if (book->panel->wire == NULL)
    y += pp_text_tell (book, &style, _("No wire is planned for this panel."),
                       (PpPoint) { book->area.x0, y }, pp_box_width (book->area)) + PP_GAP;
  y = draw_facts (book, y);
  y = pp_findings_list_draw (book, _("Still to look at"), pp_hanging_is_about, 12, y);
  draw_cautions (book, y + 2 * PP_GAP);
}

const PpSheetKind pp_hanging_sheet = { "hanging", N_("Hanging"), draw_sheet };
