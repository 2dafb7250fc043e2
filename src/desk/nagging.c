/* nagging.c: what is better left unsaid while the first few pieces go down.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule: what the next piece may put right by itself waits, what only the maker can put right
 * is said at once. An empty panel shows all of its wire, both its knots and every spare hole; one
 * flower hangs it crooked and two are an even number; each of that is so in every panel while it
 * grows, and passes. That a piece has nothing under it, that a hole is too near the edge or the
 * hook too weak does not pass: more pieces make it worse, or glass is drilled meanwhile.
 *
 * Nor does the waiting hide anything from a maker who means to stop at three pieces: it ends as
 * soon as the tray is empty, or as the bench has begun.
 */
#include "config.h"

#include "desk/nagging.h"

static const char * const passing[] = {
  /* hidden by pieces still to come */
  "wire-shows", "hidden-barely", "shows-aslant", "knot-shows", "knot-barely", "hole-shows",
  /* the weight is not yet where it will be */
  "not-level", "slips", "leans",
  /* the group is not yet all there */
  "even-group",
  NULL,
};

static gboolean
has_reached_the_bench (const PpPanel *panel)
{
  if (panel->plan != NULL || panel->log->len > 0)
    return TRUE;
  if (panel->wire != NULL && panel->wire->knotted_at != NULL)
    return TRUE;
  for (guint i = 0; i < panel->placements->len; i++)
    if (pp_panel_placement (panel, i)->glued_at != NULL)
      return TRUE;
  return FALSE;
}

static gboolean
is_just_begun (const PpPanel *panel)
{
  guint pieces = 0;

  if (panel->placements->len >= PP_NAGGING_FEW || has_reached_the_bench (panel))
    return FALSE;
  for (guint i = 0; i < panel->tray->len; i++)
    pieces += pp_panel_piece (panel, i)->count;
  return panel->placements->len == 0 || panel->placements->len < pieces;
}

gboolean
pp_finding_waits (const PpFinding *finding,
                  const PpPanel   *panel)
{
  g_return_val_if_fail (finding != NULL && panel != NULL, FALSE);

  return g_strv_contains (passing, finding->code) && is_just_begun (panel);
}
