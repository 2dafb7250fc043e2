/* materials-sheet.c: all that is needed: pieces, glass, wire, props, epoxy, tools.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bead.h"
#include "sheet/facts.h"
#include "sheet/flow.h"
#include "sheet/kinds.h"
#include "sheet/plain-line.h"
#include "sheet/supports.h"

#include <math.h>

#define SIZE 12.0 /* pt */
#define KEEP 35.0 /* mm under a heading */

static char *
count_format (guint n)
{
  return n > 0 ? g_strdup_printf ("%u", n) : g_strdup ("");
}

static void
add_piece (PpBook        *book,
           PpTable       *table,
           const PpPiece *piece)
{
  guint placed = pp_panel_count_placed (book->panel, piece->id);
  PpBox box = pp_outline_get_box (piece->outline);
  g_autofree char *name = pp_plain_line_new (pp_piece_get_title (piece));
  g_autofree char *size = pp_size_format (pp_box_width (box), pp_box_height (box),
                                          book->job->units);
  g_autofree char *used = count_format (placed);
  g_autofree char *have = g_strdup_printf ("%u", piece->count);
  g_autofree char *missing = count_format (placed > piece->count ? placed - piece->count : 0);
  const char *cells[] = { "", name, size, used, have, missing };

  pp_table_add (table, cells, NULL);
}

static double
draw_pieces (PpBook *book,
             double  y)
{
  const PpColumn columns[] = {
    { "", PP_CELL_TICK, PP_ALIGN_LEFT, FALSE },
    { _("piece"), PP_CELL_TEXT, PP_ALIGN_LEFT, TRUE },
    { _("size"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("on the glass"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("made, in all"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
    { _("still to make"), PP_CELL_TEXT, PP_ALIGN_RIGHT, FALSE },
  };
  g_autoptr (PpTable) table = pp_table_new (book, columns, G_N_ELEMENTS (columns));

  if (book->panel->tray->len == 0)
    return y;
  for (guint i = 0; i < book->panel->tray->len; i++)
    add_piece (book, table, pp_panel_piece (book->panel, i));
  y = pp_flow_heading (book, _("Pieces"), y, KEEP);
  if (!pp_table_fit (table, pp_box_width (book->area), SIZE, SIZE))
    pp_table_fit (table, pp_box_width (book->area), 10, 10);
  return pp_flow_table (book, table, y, 1, 0) + 2 * PP_GAP;
}

static char *
thick_size_format (double  width,
                   double  height,
                   double  thickness,
                   PpUnits units)
{
  g_autofree char *size = pp_size_format (width, height, units);
  g_autofree char *thick = pp_length_format (thickness, units);

  return g_strdup_printf (_("%s, %s thick"), size, thick);
}

static void
add_fused (PpFacts       *facts,
           PpBook        *book,
           const PpFused *fused)
{
  PpBox box = pp_outline_get_box (fused->outline);
  PpUnits units = book->job->units;

  pp_facts_take (facts, pp_plain_line_new (pp_fused_get_title (fused)),
                 thick_size_format (pp_box_width (box), pp_box_height (box), fused->thickness,
                                    units));
  if (!fused->has_pocket)
    return;
  box = pp_outline_get_box (fused->pocket.insert);
  pp_facts_add (facts, _("Fibre paper for its insert"),
                thick_size_format (pp_box_width (box), pp_box_height (box),
                                   fused->pocket.insert_thickness, units));
}

static double
draw_glass (PpBook *book,
            double  y)
{
  const PpPanel *panel = book->panel;
  const PpBackground *glass = panel->background;
  const PpWire *wire = panel->wire;
  PpUnits units = book->job->units;
  g_auto (PpFacts) facts = { 0 };

  pp_facts_add (&facts, _("Background"),
                thick_size_format (glass->width, glass->height, glass->thickness, units));
  if (panel->fused->len > 0)
    pp_facts_add (&facts, _("Expansion (COE)"),
                  g_strdup_printf ("%.0f", glass->glass.expansion * 1e7));
  for (guint i = 0; i < panel->fused->len; i++)
    add_fused (&facts, book, pp_panel_fused (panel, i));
  if (wire != NULL)
    {
      pp_facts_add (&facts, _("Wire to cut"),
                    pp_length_format (pp_panel_get_wire_length (panel) + 2 * wire->tail, units));
      pp_facts_add (&facts, _("Wire, thick"), pp_length_format (wire->diameter, units));
      pp_facts_add (&facts, _("Hook and fixing rated for at least"),
                    pp_mass_format (book->job->check->mass.total, units));
    }
  y = pp_flow_heading (book, _("Glass and wire"), y, KEEP);
  return pp_facts_draw (&facts, book, y) + 2 * PP_GAP;
}

static void
add_both_parts (PpFacts *facts,
                PpBook  *book)
{
  const PpPlan *plan = book->job->plan;
  double a = 0, b = 0;

  for (guint i = 0; i < plan->n_mixes; i++)
    {
      a += plan->mixes[i].a;
      b += plan->mixes[i].b;
    }
  pp_facts_add (facts, _("Part A, in all"), pp_volume_format (a));
  pp_facts_add (facts, _("Part B, in all"), pp_volume_format (b));
  pp_facts_add (facts, _("Mixes"), g_strdup_printf ("%u", plan->n_mixes));
  pp_facts_add (facts, _("To work with, each mix"),
                pp_time_format (book->panel->adhesive->working_life
                                - book->panel->adhesive->mixing));
  pp_facts_take (facts, pp_bead_label_format (book->job->units),
                 pp_bead_format (a, b, book->job->units));
}

static double
draw_epoxy (PpBook *book,
            double  y)
{
  const PpPlan *plan = book->job->plan;
  g_auto (PpFacts) facts = { 0 };
  g_autofree char *name = pp_plain_line_new (book->panel->adhesive->name);

  if (plan == NULL || !plan->exists || plan->n_steps == 0)
    return y;
  pp_facts_add (&facts, _("Glue"), g_strdup (name));
  add_both_parts (&facts, book);
  y = pp_flow_heading (book, _("Epoxy"), y, KEEP);
  return pp_facts_draw (&facts, book, y) + 2 * PP_GAP;
}

static double
draw_props (PpBook *book,
            double  y)
{
  double below = pp_supports_draw (book, _("Props and weights"), y);

  return below > y ? below + 2 * PP_GAP : y;
}

static double
draw_tools (PpBook *book,
            double  y)
{
  const char *const lines[] = {
    _("Nitrile gloves, eye protection, a window that opens"),
    _("Cups, sticks, kitchen scales or a syringe for each part, a clock that shows seconds"),
    _("Lint-free cloth, alcohol or glass cleaner without wax, a clean brush"),
    _("A sharp blade for the rims, cotton buds, a bag for what has cured"),
    _("Two flat strips for the glass to rest on, tape, the pattern and the parking sheet"),
    NULL
  };
  const char *const clean[] = {
    _("Wipe skin and tools at once with soap and water; solvent carries epoxy into the skin."),
    _("Let leftover mix cure in its cup in the open before it goes into the bin: a large rest runs "
      "hot."),
    _("Sweep glass dust up wet, never dry; fibre paper dust too, with a mask rated for it."),
    _("Where a data sheet or a local rule says otherwise, it is right."),
    NULL
  };
  const PpNotice notice = { PP_LEVEL_CAUTION, _("Clean-up and care"), clean };

  y = pp_flow_heading (book, _("Tools"), y, KEEP);
  y = pp_flow_ticks (book, lines, SIZE, y) + PP_GAP;
  return pp_flow_notice (book, &notice, y);
}

static void
draw_sheet (PpBook *book)
{
  double y;

  pp_book_begin_page (book, _("What you need"));
  y = draw_pieces (book, book->area.y0);
  y = draw_glass (book, y);
  y = draw_epoxy (book, y);
  y = draw_props (book, y);
  draw_tools (book, y);
}

const PpSheetKind pp_materials_sheet = { "materials", N_("Materials"), draw_sheet };
