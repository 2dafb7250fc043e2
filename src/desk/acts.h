/* acts.h: the acts on the chosen pieces that are one edit: what each does, is called, and when.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is a value in a file of its own, NAME-act.c, and a line in acts.list. Plain data and
 * functions without a widget.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

/* Of the chosen pieces, what acts depend on; all 0 and FALSE where none is chosen or seen. */
typedef struct
{
  guint    n;
  gboolean can_rise;    /* past one that is not chosen */
  gboolean can_sink;
  gboolean is_group;    /* all are of one group */
  gboolean has_grouped; /* one of them is of a group */
  gboolean all_pinned;
} PpChosenFacts;

/* Groups of acts in the menu, in its order. */
typedef enum
{
  PP_SECTION_TURN,
  PP_SECTION_STACK,
  PP_SECTION_GROUP,
} PpActSection;

typedef struct
{
  const char  *name;    /* the action is "win.NAME" */
  const char  *label;   /* marked for translation, not translated */
  const char  *keys[4]; /* accelerators, ended by NULL; none begins with Super or Alt */
  PpActSection section;
  gboolean   (*can)  (const PpChosenFacts *chosen);
  /* As the edits of panel/edit.h: `ids` are the chosen pieces, at least one, lowest first. */
  PpPanel   *(*edit) (const PpPanel *panel, const char * const *ids, GError **error);
  /* The name of the step of undo: of one `piece`, or of `n` where it is NULL; (transfer full). */
  char      *(*say)  (const char *piece, guint n);
} PpActKind;

/* All, in the order of the menu; (transfer none). */
const PpActKind * const *pp_acts      (guint *n_acts);
/* NULL if there is none of that name. */
const PpActKind         *pp_acts_find (const char *name);

#define PP_ACT(name) extern const PpActKind pp_##name##_act;
#include "desk/acts.list"
#undef PP_ACT

G_END_DECLS
