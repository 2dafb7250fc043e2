/* edit-evenly.c: pieces at equal distances.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"
#include "panel/even.h"

/* A placement on the line along which they are spaced. */
typedef struct
{
  const char *id;
  double      at; /* mm */
} Spaced;

static int
compare_spaced (gconstpointer a,
                gconstpointer b)
{
  const Spaced *p = a, *q = b;

  return p->at < q->at ? -1 : p->at > q->at;
}

/* Whether they lie more across than down; unknown ids are passed over. */
static gboolean
lie_across (const PpPanel      *panel,
            const char * const *placements)
{
  PpBox box = pp_box_empty ();

  for (guint i = 0; placements[i] != NULL; i++)
    {
      const PpPlacement *placed = pp_panel_find_placement (panel, placements[i], NULL);

      if (placed != NULL)
        box = pp_box_add_point (box, (PpPoint) { placed->x, placed->y });
    }
  return pp_box_width (box) >= pp_box_height (box);
}

/* In order along the line, equals in the order given. NULL for an unknown id. (transfer full) */
static GArray *
put_in_line (const PpPanel      *panel,
             const char * const *placements,
             gboolean            across,
             GError            **error)
{
  g_autoptr (GArray) line = g_array_new (FALSE, FALSE, sizeof (Spaced));

  for (guint i = 0; placements[i] != NULL; i++)
    {
      const PpPlacement *placed = pp_panel_find_placement (panel, placements[i], NULL);
      Spaced spaced;

      if (placed == NULL)
        return pp_edit_refuse_unknown (placements[i], error);
      spaced = (Spaced) { placed->id, across ? placed->x : placed->y };
      g_array_append_val (line, spaced);
    }
  g_array_sort (line, compare_spaced);
  return g_steal_pointer (&line);
}

PpPanel *
pp_edit_space_evenly (const PpPanel      *panel,
                      const char * const *placements,
                      GError            **error)
{
  gboolean across = lie_across (panel, placements);
  g_autoptr (GArray) line = put_in_line (panel, placements, across, error);
  PpPanel *next;

  if (line == NULL)
    return NULL;
  next = pp_panel_ref (panel);
  for (guint i = 1; next != NULL && i + 1 < line->len; i++)
    {
      const Spaced *first = &g_array_index (line, Spaced, 0);
      const Spaced *last = &g_array_index (line, Spaced, line->len - 1);
      const Spaced *spaced = &g_array_index (line, Spaced, i);
      double by = first->at + (last->at - first->at) * i / (line->len - 1) - spaced->at;
      const char * const ids[] = { spaced->id, NULL };
      g_autoptr (PpPanel) before = next;

      next = pp_edit_move (before, ids, across ? by : 0, across ? 0 : by, error);
    }
  return next;
}
