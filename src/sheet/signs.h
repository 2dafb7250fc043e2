/* signs.h: the few signs that sheets share: petals, cards, marks of a level, numbers in badges.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/finding.h"
#include "sheet/book.h"

G_BEGIN_DECLS

/* Five petals: the mark of the program on paper, and on the edges of tiles. */
void    pp_signs_draw_petals   (PpBook  *book,
                                PpPoint  at,
                                double   radius);

/* A card with round corners behind what is drawn on it. */
void    pp_signs_draw_card     (PpBook  *book,
                                PpBox    box);

/* Triangle for a fault, diamond for a caution, circle for a note; `size` mm across. */
void    pp_signs_draw_mark     (PpBook  *book,
                                PpLevel  level,
                                PpPoint  at,
                                double   size);
/* Number in a round or long badge: white on dark for a step, dark on white else. */
void    pp_signs_draw_badge    (PpBook  *book,
                                PpPoint  at,
                                guint    number,
                                double   size,
                                gboolean is_step);
/* mm, how large pp_signs_draw_badge() draws it. */
PpPoint pp_signs_measure_badge (PpBook  *book,
                                guint    number,
                                double   size);

G_END_DECLS
