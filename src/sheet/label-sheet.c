/* label-sheet.c: a card for the box and one for the back of the panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/facts.h"
#include "sheet/kinds.h"
#include "sheet/plain-line.h"
#include "sheet/text.h"

#include <math.h>

#define CARD_WIDTH 150.0 /* mm */
#define ARROW 9.0        /* mm, of "this side up" */

typedef struct
{
  double padding; /* mm */
  double title;   /* pt */
  double text;
} Look;

/* The second for paper on which the first would be too high. */
static const Look looks[] = { { 7, 20, 11 }, { 3, 12, PP_TEXT_LEAST } };

/* Behind the glass: wire and knots lie there too. */
static double
get_packed_depth (const PpCheck *check)
{
  const PpPanel *panel = check->panel;
  double behind = panel->wire != NULL ? panel->wire->diameter : 0;

  return check->depth + panel->background->thickness + behind;
}

static char *
packed_size_format (const PpCheck *check,
                    PpUnits        units)
{
  g_autofree char *width = pp_length_format_bare (check->extent.width, units);
  g_autofree char *height = pp_length_format_bare (check->extent.height, units);
  g_autofree char *depth = pp_length_format (get_packed_depth (check), units);

  /* Translators: width by height by depth. */
  return g_strdup_printf (_("%s × %s × %s"), width, height, depth);
}

typedef struct
{
  const char *subtitle;
  PpFacts     facts;
  const char *lines[7]; /* ended by NULL */
  gboolean    has_arrows;
} Card;

static void
card_clear (Card *self)
{
  pp_facts_clear (&self->facts);
}

/* For the box. */
static void
fill_box_card (Card   *self,
               PpBook *book)
{
  const PpCheck *check = book->job->check;
  PpUnits units = book->job->units;

  self->subtitle = _("Glass. Handle with care.");
  self->has_arrows = TRUE;
  pp_facts_add (&self->facts, _("Size to pack"), packed_size_format (check, units));
  pp_facts_add (&self->facts, _("Weight without the box"),
                pp_mass_format (check->mass.total, units));
  self->lines[0] = _("Pack it upright, pieces free of pressure, with soft foam all around the "
                     "glass and nothing leaning on the pieces.");
  self->lines[1] = _("Keep it from frost and heat on the way.");
}

/* For whoever hangs it. */
static void
fill_owner_card (Card   *self,
                 PpBook *book)
{
  const PpCheck *check = book->job->check;
  PpUnits units = book->job->units;
  guint n = 0;

  pp_facts_add (&self->facts, _("Made by"), pp_plain_line_new (book->panel->maker));
  pp_facts_add (&self->facts, _("Date"), pp_plain_line_new_date (book->panel));
  pp_facts_add (&self->facts, _("Size"),
                pp_size_format (check->extent.width, check->extent.height, units));
  pp_facts_add (&self->facts, _("Weight"), pp_mass_format (check->mass.total, units));
  pp_facts_add (&self->facts, _("Hook and fixing rated for at least"),
                pp_mass_format (check->mass.total, units));
  self->lines[n++] = book->panel->display->place == PP_PLACE_WINDOW
                     ? _("To hang free in a window: from a hook in sound wood or masonry, not on "
                         "the glass.")
                     : _("To hang on a wall, with a fixing made for that wall.");
  self->lines[n++] = _("Not over a bed or a seat. Check wire, knots and hook each year.");
  self->lines[n++] = _("Dust with a soft dry brush. No water on the glue, no cleaner with "
                       "solvent.");
  self->lines[n++] = _("Clear glue yellows in strong sun: choose a place out of the hottest.");
  self->lines[n++] = _("Lift it by the glass with both hands, never by a flower.");
}

static void
draw_arrow_up (PpBook *book,
               PpPoint foot)
{
  cairo_t *cr = book->cr;

  cairo_move_to (cr, foot.x, foot.y - ARROW);
  cairo_line_to (cr, foot.x + ARROW * 0.4, foot.y - ARROW * 0.5);
  cairo_line_to (cr, foot.x + ARROW * 0.15, foot.y - ARROW * 0.5);
  cairo_line_to (cr, foot.x + ARROW * 0.15, foot.y);
  cairo_line_to (cr, foot.x - ARROW * 0.15, foot.y);
  cairo_line_to (cr, foot.x - ARROW * 0.15, foot.y - ARROW * 0.5);
  cairo_line_to (cr, foot.x - ARROW * 0.4, foot.y - ARROW * 0.5);
  cairo_close_path (cr);
  pp_book_set_ink (book, PP_INK_TEXT);
  cairo_fill (cr);
}

static double
lay_text (PpBook            *book,
          const PpTextStyle *style,
          const char        *text,
          PpPoint            at,
          double             width,
          gboolean           draw)
{
  double height;

  if (draw)
    return pp_text_draw (book, style, text, at, width);
  pp_text_measure (book, style, text, width, NULL, &height);
  return height;
}

/* Measures, and draws if it is told to, so that the two cannot differ. Returns the height. */
static double
lay_card (PpBook     *book,
          const Card *card,
          const Look *look,
          PpPoint     at,
          double      width,
          gboolean    draw)
{
  const PpTextStyle title_style = { .size = look->title, .bold = TRUE, .max_lines = 4 };
  const PpTextStyle subtitle_style = { .size = look->text + 2, .bold = TRUE,
                                       .ink = PP_INK_CAUTION };
  const PpTextStyle text_style = { .size = look->text };
  g_autofree char *title = pp_plain_line_new_title (book->panel);
  double inner = width - 2 * look->padding;
  double arrows = card->has_arrows ? 2.2 * ARROW : 0;
  PpPoint p = { at.x + look->padding, at.y + look->padding };

  if (draw && card->has_arrows)
    for (guint i = 0; i < 2; i++)
      draw_arrow_up (book, (PpPoint) { at.x + width - look->padding - ARROW * (0.4 + i),
                                       p.y + ARROW });
  p.y += lay_text (book, &title_style, title, p, inner - arrows, draw) + 1;
  if (card->subtitle != NULL)
    p.y += lay_text (book, &subtitle_style, card->subtitle, p, inner - arrows, draw) + 1;
  p.y = fmax (p.y, at.y + look->padding + (card->has_arrows ? ARROW : 0)) + PP_GAP;
  p.y += pp_flow_facts (book, (const PpFact *) (void *) card->facts.facts->data,
                        card->facts.facts->len, p, inner, draw) + 2 * PP_GAP;
  for (guint i = 0; card->lines[i] != NULL; i++)
    p.y += lay_text (book, &text_style, card->lines[i], p, inner, draw) + 1.2;
  return p.y + look->padding - 1.2 - at.y;
}

static void
say_card (PpBook     *book,
          const Card *card)
{
  if (card->subtitle != NULL)
    pp_book_say (book, card->subtitle);
  pp_facts_say (&card->facts, book);
  for (guint i = 0; card->lines[i] != NULL; i++)
    pp_book_say (book, card->lines[i]);
}

/* With a line to cut along. Returns the y below. */
static double
draw_card (PpBook     *book,
           const Card *card,
           double      y)
{
  const double dashes[] = { 2.4, 1.6 };
  double width = fmin (CARD_WIDTH, pp_box_width (book->area));
  const Look *look = &looks[0];
  double height = lay_card (book, card, look, (PpPoint) { 0, 0 }, width, FALSE);
  PpPoint at = { pp_box_middle (book->area).x - width / 2, y };

  if (height > pp_box_height (book->area))
    {
      look = &looks[1];
      height = lay_card (book, card, look, (PpPoint) { 0, 0 }, width, FALSE);
    }
  if (y > book->area.y0 && y + height > book->area.y1)
    {
      pp_book_begin_page (book, NULL);
      at.y = book->area.y0;
    }
  lay_card (book, card, look, at, width, TRUE);
  say_card (book, card);
  cairo_save (book->cr);
  cairo_set_dash (book->cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_rectangle (book->cr, at.x, at.y, width, height);
  pp_book_set_ink (book, PP_INK_SOFT);
  cairo_set_line_width (book->cr, PP_LINE_MIDDLE);
  cairo_stroke (book->cr);
  cairo_restore (book->cr);
  return at.y + height;
}

static void
draw_sheet (PpBook *book)
{
  Card box = { 0 }, owner = { 0 };
  double y;

  pp_book_begin_page (book, _("For the box, and for whoever hangs it"));
  fill_box_card (&box, book);
  fill_owner_card (&owner, book);
  y = draw_card (book, &box, book->area.y0) + 4 * PP_GAP;
  draw_card (book, &owner, y);
  card_clear (&box);
  card_clear (&owner);
}

const PpSheetKind pp_label_sheet = { "label", N_("Label"), draw_sheet };
