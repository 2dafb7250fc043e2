/* clip.c: cut, copy and paste as values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A paste works out first what each name of the clip is called in the panel (pieces, groups), in
 * tables that borrow the clip's names, and then adds the placements in one go.
 */
#include "panel/clip.h"

#include "panel/edit-private.h"
#include "panel/same-make.h"
#include "panel/tally.h"

static PpPlacement *
out_of_pocket (const PpPlacement *placement)
{
  PpPlacement draft = *placement;

  if (placement->pocket == NULL)
    return pp_placement_ref (placement);
  draft.pocket = NULL;
  return pp_placement_new (&draft, NULL);
}

/* Adds the placements of `panel` named in `ids`, and their pieces, to the draft's lists. */
static void
gather (const PpPanel      *panel,
        const char * const *ids,
        PpPanel            *draft)
{
  g_autoptr (GHashTable) needed = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *placement = pp_panel_placement (panel, i);

      if (!g_strv_contains (ids, placement->id))
        continue;
      g_ptr_array_add (draft->placements, out_of_pocket (placement));
      g_hash_table_add (needed, (char *) placement->piece);
    }
  for (guint i = 0; i < panel->tray->len; i++)
    if (g_hash_table_contains (needed, pp_panel_piece (panel, i)->id))
      g_ptr_array_add (draft->tray, pp_piece_ref (pp_panel_piece (panel, i)));
}

PpPanel *
pp_clip_new (const PpPanel      *panel,
             const char * const *placements,
             GError            **error)
{
  g_autoptr (GPtrArray) tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  PpPanel draft = pp_panel_draft ();

  for (guint i = 0; placements[i] != NULL; i++)
    if (pp_panel_find_placement (panel, placements[i], NULL) == NULL)
      return pp_edit_refuse_unknown (placements[i], error);
  draft.units = panel->units;
  draft.background = panel->background;
  draft.tray = tray;
  draft.placements = list;
  gather (panel, placements, &draft);
  return pp_panel_new (&draft, error);
}

/* How many there are is the stock of a maker or a panel, not part of what a piece is. */
static gboolean
is_same_piece (const PpPiece *a,
               const PpPiece *b)
{
  return g_strcmp0 (a->box, b->box) == 0 && pp_piece_is_same_make (a, b);
}

static const PpPiece *
find_same (const PpPanel *panel,
           const PpPiece *piece)
{
  const PpPiece *namesake = pp_panel_find_piece (panel, piece->id, NULL);

  if (namesake != NULL && is_same_piece (namesake, piece))
    return namesake;
  for (guint i = 0; i < panel->tray->len; i++)
    if (is_same_piece (pp_panel_piece (panel, i), piece))
      return pp_panel_piece (panel, i);
  return NULL;
}

typedef struct
{
  const PpPanel *panel;
  const PpPanel *clip;
  guint          next;   /* number for new ids */
  GHashTable    *pieces; /* id in the clip, borrowed -> id in the panel, owned */
  GHashTable    *groups; /* the same for names of groups; no entry: in no group */
} Paste;

/* An id that is not the one of a piece of the clip either, which may keep its own. */
static char *
make_id (Paste      *self,
         const char *prefix)
{
  for (;;)
    {
      g_autofree char *id = pp_edit_take_id (self->panel, prefix, &self->next);

      if (pp_panel_find_piece (self->clip, id, NULL) == NULL)
        return g_steal_pointer (&id);
    }
}

static PpPiece *
with_id (const PpPiece *piece,
         const char    *id)
{
  PpPiece draft = *piece;

  draft.id = id;
  return pp_piece_new (&draft, NULL);
}

/* (transfer none) */
static const PpPiece *
add_piece (Paste         *self,
           GPtrArray     *tray,
           const PpPiece *piece)
{
  g_autofree char *id = NULL;

  if (pp_edit_is_taken (self->panel, piece->id))
    id = make_id (self, "piece-");
  g_ptr_array_add (tray, id != NULL ? with_id (piece, id) : pp_piece_ref (piece));
  return g_ptr_array_index (tray, tray->len - 1);
}

/* The tray with what the clip needs; the panel's own where it has all of it. (transfer full) */
static GPtrArray *
join_trays (Paste *self)
{
  GPtrArray *tray = pp_edit_copy_tray (self->panel);

  for (guint i = 0; i < self->clip->tray->len; i++)
    {
      const PpPiece *piece = pp_panel_piece (self->clip, i);
      const PpPiece *same = find_same (self->panel, piece);

      if (same == NULL)
        same = add_piece (self, tray, piece);
      g_hash_table_insert (self->pieces, (char *) piece->id, g_strdup (same->id));
    }
  if (tray->len > self->panel->tray->len)
    return tray;
  g_ptr_array_unref (tray);
  return g_ptr_array_ref (self->panel->tray);
}

/* How many placements are in each group, by name. (transfer full) */
static GHashTable *
count_groups (const PpPanel *panel)
{
  GHashTable *counts = pp_tally_new ();

  for (guint i = 0; i < panel->placements->len; i++)
    if (pp_panel_placement (panel, i)->group != NULL)
      pp_tally_add (counts, pp_panel_placement (panel, i)->group);
  return counts;
}

/* A name that neither `taken` nor `also` has. (transfer full) */
static char *
make_group_name (GHashTable *taken,
                 GHashTable *also,
                 guint      *next)
{
  for (;;)
    {
      g_autofree char *name = g_strdup_printf ("group-%u", (*next)++);

      if (!g_hash_table_contains (taken, name) && !g_hash_table_contains (also, name))
        return g_steal_pointer (&name);
    }
}

static void
name_groups (Paste *self)
{
  g_autoptr (GHashTable) taken = count_groups (self->panel);
  g_autoptr (GHashTable) counts = count_groups (self->clip);
  guint next = 1;

  for (guint i = 0; i < self->clip->placements->len; i++)
    {
      char *group = (char *) pp_panel_placement (self->clip, i)->group;

      if (group == NULL || pp_tally_get (counts, group) < 2
          || g_hash_table_contains (self->groups, group))
        continue;
      g_hash_table_insert (self->groups, group,
                           g_hash_table_contains (taken, group)
                             ? make_group_name (taken, counts, &next) : g_strdup (group));
    }
}

static PpPlacement *
make_placement (Paste             *self,
                const PpPlacement *original,
                double             dx,
                double             dy,
                GError           **error)
{
  g_autofree char *id = make_id (self, "p");
  PpPlacement draft = *original;

  draft.id = id;
  draft.piece = g_hash_table_lookup (self->pieces, original->piece);
  draft.x += dx;
  draft.y += dy;
  if (original->group != NULL)
    draft.group = g_hash_table_lookup (self->groups, original->group);
  draft.pocket = NULL;
  draft.pinned = FALSE;
  draft.glued_at = NULL;
  draft.extra = NULL;
  return pp_placement_new (&draft, error);
}

/* The stack with the clip's on top; NULL where one cannot be. (transfer full) */
static GPtrArray *
join_stacks (Paste   *self,
             double   dx,
             double   dy,
             GError **error)
{
  g_autoptr (GPtrArray) list = pp_edit_copy_placements (self->panel);

  for (guint i = 0; i < self->clip->placements->len; i++)
    {
      PpPlacement *placement = make_placement (self, pp_panel_placement (self->clip, i), dx, dy,
                                               error);

      if (placement == NULL)
        return NULL;
      g_ptr_array_add (list, placement);
    }
  return g_steal_pointer (&list);
}

/* The ids of the placements from `first` up. (transfer full) */
static char **
list_ids (const PpPanel *panel,
          guint          first)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();

  for (guint i = first; i < panel->placements->len; i++)
    g_strv_builder_add (ids, pp_panel_placement (panel, i)->id);
  return g_strv_builder_end (ids);
}

PpPanel *
pp_edit_paste (const PpPanel *panel,
               const PpPanel *clip,
               double         dx,
               double         dy,
               char        ***ids,
               GError       **error)
{
  g_autoptr (GHashTable) pieces = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  g_autoptr (GHashTable) groups = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  Paste self = { panel, clip, panel->next_id, pieces, groups };
  g_autoptr (GPtrArray) tray = join_trays (&self);
  g_autoptr (GPtrArray) list = NULL;
  PpPanel draft = *panel;
  PpPanel *next;

  name_groups (&self);
  list = join_stacks (&self, dx, dy, error);
  if (list == NULL)
    return NULL;
  draft.tray = tray;
  draft.placements = list;
  next = pp_panel_new (&draft, error);
  if (next != NULL && ids != NULL)
    *ids = list_ids (next, panel->placements->len);
  return next;
}
