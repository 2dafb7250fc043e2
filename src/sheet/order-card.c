/* order-card.c: the card of a mix: parts to measure and times to keep.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "sheet/order-plan.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "sheet/bead.h"
#include "sheet/signs.h"
#include "sheet/text.h"
#include "sheet/words.h"

#define PADDING 4.0 /* mm */

static double
draw_pair (PpBook     *book,
           const char *label,
           const char *value,
           double      value_size,
           PpPoint     at,
           double      width)
{
  const PpTextStyle label_style = { .size = 9.5, .ink = PP_INK_SOFT };
  const PpTextStyle value_style = { .size = value_size, .bold = TRUE };
  double height = pp_text_draw (book, &label_style, label, at, width);

  at.y += height - 0.5;
  return height + pp_text_draw (book, &value_style, value, at, width) + 1;
}

/* Returns the y below. */
static double
draw_parts (PpBook      *book,
            const PpMix *mix,
            PpPoint      at,
            double       width)
{
  g_autofree char *a = pp_volume_format (mix->a);
  g_autofree char *b = pp_volume_format (mix->b);
  g_autofree char *words = g_strdup_printf (_("Measure %s of part A and %s of part B."), a, b);
  g_autofree char *bead_label = pp_bead_label_format (book->job->units);
  g_autofree char *bead = pp_bead_format (mix->a, mix->b, book->job->units);
  double left = draw_pair (book, _("part A"), a, 18, at, width / 2 - 1);
  double right = draw_pair (book, _("part B"), b, 18, (PpPoint) { at.x + width / 2, at.y },
                            width / 2);

  pp_book_say (book, words);
  at.y += fmax (left, right);
  return at.y + draw_pair (book, bead_label, bead, 11, at, width);
}

static double
draw_time (PpBook     *book,
           const char *label,
           double      minutes,
           PpPoint     at,
           double      width)
{
  g_autofree char *clock = pp_clock_format (minutes);
  g_autofree char *words = g_strdup_printf ("%s: %s.", label, clock);

  pp_book_say (book, words);
  return at.y + draw_pair (book, label, clock, 13, at, width);
}

/* When the last job of a mix is done, min. */
static double
get_end_of (const PpPlan *plan,
            guint         mix)
{
  const PpStep *last = &plan->steps[pp_order_run_of_mix (plan, mix).end - 1];

  return last->start + last->minutes;
}

/* What is needed to mix and to keep time; returns the y below. */
static double
draw_card_words (PpBook     *book,
                 guint       index,
                 PpOrderRun  run,
                 PpPoint     at,
                 double      width)
{
  const PpTextStyle sitting_style = { .size = 13, .bold = TRUE, .ink = PP_INK_ACCENT };
  const PpTextStyle wait_style = { .size = 10.5, .bold = TRUE, .ink = PP_INK_TEXT };
  const PpPlan *plan = book->job->plan;
  const PpMix *mix = &plan->mixes[index];
  const PpAdhesive *glue = book->panel->adhesive;
  PpOrderRun whole = pp_order_run_of_mix (plan, index);
  const PpStep *last = &plan->steps[whole.end - 1];
  double zero = pp_sitting_start (plan, run.sitting);

  if (plan->steps[plan->n_steps - 1].sitting > 1)
    {
      g_autofree char *sitting = g_strdup_printf (_("Sitting %u"), run.sitting);

      at.y += pp_text_tell (book, &sitting_style, sitting, at, width) + 1;
    }
  at.y = draw_parts (book, mix, at, width);
  if (index > 0 && mix->start > get_end_of (plan, index - 1) + PP_TIE)
    at.y += pp_text_tell (book, &wait_style, _("Wait: what lies there must grab first."), at, width)
            + 1;
  at.y = draw_time (book, _("let the parts touch at"), mix->start - zero, at, width);
  at.y = draw_time (book, _("mixed: first piece at"), mix->start + glue->mixing - zero, at, width);
  at.y = draw_time (book, _("last piece down by"), mix->start + glue->working_life - zero, at,
                    width);
  return draw_time (book, _("trim the rims, while the glue cuts like rubber, from about"),
                    last->start + last->minutes + glue->grab - zero, at, width);
}

double
pp_order_card_measure (PpBook     *book,
                       guint       index,
                       PpOrderRun  run,
                       double      width)
{
  g_autofree char *words = g_strdup (book->words->str);
  PpPoint corner = { 0, PADDING - 1 };
  double bottom;

  /* Drawn unseen and unheard. */
  cairo_push_group (book->cr);
  bottom = draw_card_words (book, index, run, corner, width - 2 * PADDING);
  cairo_pattern_destroy (cairo_pop_group (book->cr));
  g_string_assign (book->words, words);
  return bottom + PADDING - 1;
}

double
pp_order_card_draw (PpBook     *book,
                    guint       index,
                    PpOrderRun  run,
                    PpBox       box)
{
  double width = pp_box_width (box);

  box.y1 = box.y0 + pp_order_card_measure (book, index, run, width);
  pp_signs_draw_card (book, box);
  draw_card_words (book, index, run, (PpPoint) { box.x0 + PADDING, box.y0 + PADDING - 1 },
                   width - 2 * PADDING);
  return box.y1;
}
