/* small-panel.h: panels written as a few words, for the tests.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each list is words with a space between them; NULL is the empty list (plan, wire: none).
 */
#pragma once

#include "panel/panel.h"

typedef struct
{
  const char *fused;      /* ids; "jug+" has a pocket */
  const char *holes;      /* ids */
  const char *wire;       /* "from to" */
  const char *tray;       /* ids */
  const char *placements; /* "id:piece", "id:piece:pocket"; "id" alone is of oxeye */
  const char *plan;       /* jobs */
  const char *log;        /* "mixed p1|placed p2 p3" */
  const char *quiet;      /* "even-group p1 p2|stem-loose p3" */
  guint       next_id;
  const char *title;
  const char *created;
  GBytes     *art; /* of each piece on the tray */
} SmallPanel;

/* 20 mm a side round the origin. (transfer full) */
PpOutline *small_square        (void);
/* (transfer full); the i-th placement lies at (i, 2 i), turned by 15 i degrees. */
PpPanel   *small_panel_new     (const SmallPanel *words, GError **error);
/* For words that are known to be good. */
PpPanel   *small_panel_good    (const SmallPanel *words);
PpFused   *small_fused         (const char *word);
PpHole    *small_hole          (const char *id);
PpPiece   *small_piece         (const char *id, GBytes *art);
PpWire    *small_wire          (const char *from, const char *to, GError **error);
/* Asserts that each list of the panel reads as `words` has it; NULL is not compared, "" is empty,
 * and a plan of "none" is NULL. */
void       small_panel_compare (const PpPanel *panel, const SmallPanel *words);
/* Asserts domain, code and how the message begins. */
void       small_assert_error  (const GError *error, int code, const char *begins);
