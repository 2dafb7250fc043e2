/* act.h: a panel in the making, after something happened at the bench.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For progress.c. Records of a panel are valid, so those that are changed here are too.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* The next panel, with the lists that it does not share with the one before. */
typedef struct
{
  PpPanel    panel; /* for pp_panel_new(); nothing is found in it by id */
  GPtrArray *placements;
  GPtrArray *tray;
  GPtrArray *log;
  PpWire    *wire;  /* NULL: as before */
  char      *at;    /* RFC 3339 */
} PpAct;

void pp_act_init        (PpAct              *self,
                         const PpPanel      *panel,
                         GDateTime          *at);
void pp_act_clear       (PpAct              *self);
/* One more entry of the log, about ids ended by NULL (nullable). */
void pp_act_log         (PpAct              *self,
                         const char         *at,
                         PpLogWhat           what,
                         const char * const *about);
/* `at` NULL: not glued, not knotted. */
void pp_act_set_glued   (PpAct              *self,
                         guint               placement,
                         const char         *at);
void pp_act_set_knotted (PpAct              *self,
                         const char         *at);
/* The tray has one fewer of the piece of that index. */
void pp_act_break       (PpAct              *self,
                         guint               piece);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PpAct, pp_act_clear)

G_END_DECLS
