/* changes.c: where what lies on the glass differs between two checks.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/changes.h"

#include <string.h>

static gboolean
same_records (GPtrArray *a,
              GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (g_ptr_array_index (a, i) != g_ptr_array_index (b, i))
      return FALSE;
  return TRUE;
}

gboolean
pp_panel_has_same_ground (const PpPanel *a,
                          const PpPanel *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  return a->background == b->background && a->wire == b->wire && a->adhesive == b->adhesive
         && a->display == b->display && same_records (a->fused, b->fused)
         && same_records (a->holes, b->holes)
         && memcmp (&a->limits, &b->limits, sizeof a->limits) == 0;
}

static void
add_body (GArray          *changes,
          const PpSettled *settled,
          guint            i)
{
  if (i < settled->scene->n_bodies)
    g_array_append_val (changes, settled->scene->bodies[i]->box);
}

static gboolean
is_same (const PpSettled *a,
         const PpSettled *b,
         guint            i)
{
  return i < a->scene->n_bodies && i < b->scene->n_bodies
         && a->scene->bodies[i] == b->scene->bodies[i]
         && (a->rests[i] == b->rests[i]
             || (a->rests[i]->state == PP_STATE_FLOATS) == (b->rests[i]->state == PP_STATE_FLOATS));
}

GArray *
pp_changes_find (const PpSettled *before,
                 const PpSettled *now)
{
  GArray *changes = g_array_new (FALSE, FALSE, sizeof (PpBox));

  for (guint i = 0; i < MAX (before->scene->n_bodies, now->scene->n_bodies); i++)
    if (!is_same (before, now, i))
      {
        add_body (changes, before, i);
        add_body (changes, now, i);
      }
  return changes;
}

gboolean
pp_changes_meet (GArray *changes,
                 PpBox   box)
{
  for (guint i = 0; i < changes->len; i++)
    if (pp_box_meets (g_array_index (changes, PpBox, i), box))
      return TRUE;
  return FALSE;
}
