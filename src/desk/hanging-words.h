/* hanging-words.h: how the panel hangs, said in a sentence or two.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/hang.h"

G_BEGIN_DECLS

/* `hang`: NULL without a wire. (transfer full) */
char *pp_hanging_words_sentence  (const PpPanel *panel,
                                  const PpHang  *hang);
/* A pull as the weight that would pull as much; "not known" for NAN. (transfer full) */
char *pp_hanging_words_pull      (double         newtons,
                                  PpUnits        units);

G_END_DECLS
