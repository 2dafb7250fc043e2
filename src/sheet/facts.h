/* facts.h: figures with small headings, that own their words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "sheet/flow.h"

G_BEGIN_DECLS

typedef struct
{
  GArray    *facts;   /* PpFact; NULL while there is none */
  GPtrArray *strings;
} PpFacts;

/* Takes `value` (transfer full); leaves it out if it is empty. `label` must outlive the facts. */
void   pp_facts_add    (PpFacts       *self,
                        const char    *label,
                        char          *value);
/* Likewise, and takes the label too. */
void   pp_facts_take   (PpFacts       *self,
                        char          *label,
                        char          *value);
void   pp_facts_clear  (PpFacts       *self);
/* Says them, a line each: "Weight: 1.2 kg". */
void   pp_facts_say    (const PpFacts *self,
                        PpBook        *book);
double pp_facts_height (const PpFacts *self,
                        PpBook        *book);
/* Draws and says them over the whole width, on a new page where this one has no room. Returns the y
 * below. */
double pp_facts_draw   (const PpFacts *self,
                        PpBook        *book,
                        double         y);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpFacts, pp_facts_clear)

G_END_DECLS
