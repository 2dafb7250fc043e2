/* over.c: what lies over and under a piece in the stack.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "shape/over.h"

#include "panel/tolerance.h"

static gboolean
overlap (const PpScene *scene,
         guint          i,
         guint          j)
{
  const PpBody *a = scene->bodies[i], *b = scene->bodies[j];

  return pp_box_meets (a->box, b->box)
         && pp_region_overlap (a->region, b->region)
              > pp_panel_get_limit (scene->panel, PP_LIMIT_OVERLAP) + PP_TIE;
}

int
pp_over_next (const PpScene *scene,
              guint          index,
              gboolean       over)
{
  g_return_val_if_fail (scene != NULL && index < scene->n_bodies, PP_NO_INDEX);

  if (over)
    {
      for (guint j = index + 1; j < scene->n_bodies; j++)
        if (overlap (scene, index, j))
          return (int) j;
    }
  else
    for (guint j = index; j-- > 0;)
      if (overlap (scene, index, j))
        return (int) j;
  return PP_NO_INDEX;
}
