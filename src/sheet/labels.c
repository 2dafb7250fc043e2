/* labels.c: places for numbers on a plan, so that none covers another or leaves the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * First all that can stand at home, so that a crowd moves as few as it can; then the others, each
 * along rings around its anchor.
 */
#include "config.h"

#include "sheet/labels.h"

#define DIRECTIONS 24
#define RINGS 40  /* how far a label goes, in half its height */

typedef struct
{
  PpSheetLabel *labels;
  guint         n_labels;
  PpBox         bounds;
  const PpBox  *obstacles;
  guint         n_obstacles;
  double        gap;
} Plan;

static gboolean
is_free (const Plan         *plan,
         const PpSheetLabel *label)
{
  PpBox box = pp_label_box (label);
  PpBox wide = pp_box_grow (box, plan->gap);

  if (!pp_box_holds (plan->bounds, box))
    return FALSE;
  for (guint i = 0; i < plan->n_obstacles; i++)
    if (pp_box_meets (wide, plan->obstacles[i]))
      return FALSE;
  for (guint i = 0; i < plan->n_labels; i++)
    if (&plan->labels[i] != label && plan->labels[i].placed
        && pp_box_meets (wide, pp_label_box (&plan->labels[i])))
      return FALSE;
  return TRUE;
}

static gboolean
try_at (const Plan   *plan,
        PpSheetLabel *label,
        PpPoint       at)
{
  label->at = at;
  label->placed = is_free (plan, label);
  return label->placed;
}

/* Upper right first: there a leader reads best. */
static void
find_near (const Plan   *plan,
           PpSheetLabel *label)
{
  for (int ring = 1; ring <= RINGS; ring++)
    for (int i = 0; i < DIRECTIONS; i++)
      {
        double angle = (i % 2 == 0 ? i : -i - 1) * G_PI / DIRECTIONS + G_PI / 4;
        double reach = ring * label->height / 2;

        if (try_at (plan, label, (PpPoint) { label->anchor.x + reach * cos (angle),
                                             label->anchor.y - reach * sin (angle) }))
          return;
      }
}

void
pp_labels_place (PpSheetLabel *labels,
                 guint         n_labels,
                 PpBox         bounds,
                 const PpBox  *obstacles,
                 guint         n_obstacles,
                 double        gap)
{
  const Plan plan = { labels, n_labels, bounds, obstacles, n_obstacles, gap };

  for (guint i = 0; i < n_labels; i++)
    labels[i].placed = FALSE;
  for (guint i = 0; i < n_labels; i++)
    try_at (&plan, &labels[i], labels[i].anchor);
  for (guint i = 0; i < n_labels; i++)
    if (!labels[i].placed)
      find_near (&plan, &labels[i]);
}
