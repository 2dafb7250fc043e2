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
#include "sheet/hanging-figure.h"
#include "sheet/kinds.h"
#include "sheet/words.h"

#include <math.h>
#include <string.h>

#define FIGURE_SHARE 0.5      /* of the page */
#define EYE_HEIGHT_MM 1450.0  /* where galleries hang the middle of a picture: 57 to 60 in */
#define EYE_HEIGHT_INCH (57 * 25.4)

/* Newtons as the weight that pulls so: makers have scales. */
static char *
pull_format (double  newtons,
             PpUnits units)
{
  return isfinite (newtons) ? pp_mass_format (newtons / PP_GRAVITY * 1000, units)
                            : g_strdup (_("not known"));
}

static double
get_hole_to_hole (const PpCheck *check)
{
  const PpWire *wire = check->panel->wire;

  return isfinite (wire->length) ? wire->length : check->hang->hole_distance;
}

static void
add_wire (PpFacts      *facts,
          const PpCheck *check,
          PpUnits       units)
{
  const PpWire *wire = check->panel->wire;
  double between = get_hole_to_hole (check);

  pp_facts_add (facts, _("Cut wire"), pp_length_format (between + 2 * wire->tail, units));
  pp_facts_add (facts, _("of it from hole to hole"), pp_length_format (between, units));
  pp_facts_add (facts, _("at each end, for its knot"), pp_length_format (wire->tail, units));
  pp_facts_add (facts, _("Wire, thick"), pp_length_format (wire->diameter, units));
  pp_facts_add (facts, _("Knots, in front, wide"), pp_length_format (wire->knot_diameter, units));
  if (isfinite (check->hang->greatest_tension))
    pp_facts_add (facts, _("Greatest pull on the wire, as a weight"),
                  pull_format (check->hang->greatest_tension, units));
  pp_facts_add (facts, _("The wire may carry"),
                pull_format (check->hang->allowed_tension, units));
}

static char *
hook_below_top_format (const PpHang *hang,
                       double        below,
                       PpUnits       units)
{
  g_autofree char *length = pp_length_format (fabs (below), units);

  return g_strdup_printf (below >= 0 ? _("%s below it") : _("%s above it"), length);
}

static void
add_hook (PpFacts       *facts,
          const PpCheck *check,
          PpUnits        units)
{
  const PpHang *hang = check->hang;
  PpBox glass = pp_background_get_box (check->panel->background);
  double eye = units == PP_UNITS_INCH ? EYE_HEIGHT_INCH : EYE_HEIGHT_MM;
  g_autofree char *eye_text = pp_length_format (eye, units);
  double height = eye + pp_box_middle (glass).y - hang->hook.y;

  if (hang->is_taut)
    return;
  pp_facts_add (facts, _("Hook, from the left of the glass"),
                pp_length_format (hang->hook.x - glass.x0, units));
  pp_facts_add (facts, _("Hook and the top of the glass"),
                hook_below_top_format (hang, hang->hook.y - glass.y0, units));
  pp_facts_take (facts,
                 g_strdup_printf (_("Hook over the floor, for the middle of the glass at %s"),
                                  eye_text),
                 pp_length_format (height, units));
}

static double
draw_facts (PpBook *book,
            double  y)
{
  const PpCheck *check = book->job->check;
  PpUnits units = book->job->units;
  g_auto (PpFacts) facts = { 0 };

  pp_facts_add (&facts, _("Weight, finished"), pp_mass_format (check->mass.total, units));
  pp_facts_take (&facts, g_strdup (_("Hook and fixing rated for at least")),
                 pp_mass_format (check->mass.total, units));
  if (check->hang != NULL)
    {
      add_wire (&facts, check, units);
      add_hook (&facts, check, units);
      if (check->panel->display->place == PP_PLACE_WINDOW && isfinite (check->hang->lean))
        pp_facts_add (&facts, _("Its top leans forward"), pp_angle_format (check->hang->lean));
    }
  return pp_facts_draw (&facts, book, y);
}

static char *
use_of (const PpPanel *panel,
        guint          index)
{
  const PpWire *wire = panel->wire;
  const PpHole *hole = pp_panel_hole (panel, index);

  if (wire != NULL && (g_str_equal (hole->id, wire->from) || g_str_equal (hole->id, wire->to)))
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
  g_autofree guint *order = pp_holes_from_left (panel);
  PpBox glass = pp_background_get_box (panel->background);

  if (panel->holes->len == 0)
    return y;
  for (guint i = 0; i < panel->holes->len; i++)
    {
      const PpHole *hole = pp_panel_hole (panel, order[i]);
      g_autofree char *letter = pp_hole_letter_format (i);
      g_autofree char *wide = pp_length_format_bare (hole->diameter, units);
      g_autofree char *left = pp_length_format_bare (hole->x - glass.x0, units);
      g_autofree char *top = pp_length_format_bare (hole->y - glass.y0, units);
      g_autofree char *use = use_of (panel, order[i]);
      const char *cells[] = { "", letter, wide, left, top, use,
                              hole->drilled ? _("drilled") : _("to drill") };

      pp_table_add (table, cells, NULL);
    }
  y = pp_flow_heading (book, _("Holes, by their middles"), y + 2 * PP_GAP, 30);
  pp_table_fit (table, pp_box_width (book->area), 13, 15);
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

static gboolean
is_about_hanging (const PpFinding *finding)
{
  static const char *const codes[] = { "hole-edge", "hole-wire", "hole-border", "hole-pocket",
                                       "hole-small", "hole-large", "hole-corner", "hole-hole",
                                       "knot-small", "turns-over", "wire-short", "wire-taut",
                                       "not-level", "slips", "wire-load", "leans", "hook-load" };

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    if (g_str_equal (finding->code, codes[i]))
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
void
pp_hanging_sheet_draw (PpBook *book)
{
  const PpTextStyle style = { .size = 12 };
  const char *none = _("No wire is planned for this panel.");
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
    {
      y += pp_text_draw (book, &style, none, (PpPoint) { book->area.x0, y },
                         pp_box_width (book->area)) + PP_GAP;
      pp_book_say (book, none);
    }
  y = draw_facts (book, y);
  y = pp_findings_list_draw (book, _("Still to look at"), is_about_hanging, 12, y);
  draw_cautions (book, y + 2 * PP_GAP);
}
