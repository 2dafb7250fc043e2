/* edit-placements.c: edits of what lies on the glass.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/edit-private.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"

void
pp_edit_put (GPtrArray     *list,
             gboolean       is_there,
             guint          index,
             gpointer       record,
             GDestroyNotify unref)
{
  if (!is_there)
    {
      g_ptr_array_add (list, record);
      return;
    }
  unref (g_ptr_array_index (list, index));
  list->pdata[index] = record;
}

GPtrArray *
pp_edit_copy_placements (const PpPanel *panel)
{
  return pp_records_copy (panel->placements, (PpRecordRef) pp_placement_ref,
                          (GDestroyNotify) pp_placement_unref);
}

gpointer
pp_edit_refuse_unknown (const char *id,
                        GError    **error)
{
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE,
               _("There is no “%s” in this panel."), id != NULL ? id : "");
  return NULL;
}

PpPanel *
pp_edit_with_placements (const PpPanel *panel,
                         GPtrArray     *placements,
                         GError       **error)
{
  PpPanel draft = *panel;
  PpPanel *next;

  if (placements == NULL)
    return NULL;
  draft.placements = placements;
  next = pp_panel_new (&draft, error);
  g_ptr_array_unref (placements);
  return next;
}

/* Puts a changed placement in place of the index-th of `list`. */
static gboolean
put (GPtrArray         *list,
     guint              index,
     const PpPlacement *draft,
     GError           **error)
{
  PpPlacement *changed = pp_placement_new (draft, error);

  if (changed == NULL)
    return FALSE;
  pp_placement_unref (g_ptr_array_index (list, index));
  list->pdata[index] = changed;
  return TRUE;
}

typedef void (*Change) (PpPlacement *draft, gconstpointer data);

/* Changes each of `ids` by `change`. */
static PpPanel *
change_each (const PpPanel      *panel,
             const char * const *ids,
             Change              change,
             gconstpointer       data,
             GError            **error)
{
  g_autoptr (GPtrArray) list = pp_edit_copy_placements (panel);

  for (guint i = 0; ids[i] != NULL; i++)
    {
      guint index;
      PpPlacement draft;

      if (pp_panel_find_placement (panel, ids[i], &index) == NULL)
        return pp_edit_refuse_unknown (ids[i], error);
      if (g_ptr_array_index (list, index) != pp_panel_placement (panel, index))
        continue; /* named twice, changed once */
      draft = *pp_panel_placement (panel, index);
      change (&draft, data);
      if (!put (list, index, &draft, error))
        return NULL;
    }
  return pp_edit_with_placements (panel, g_steal_pointer (&list), error);
}

gboolean
pp_edit_is_taken (const PpPanel *panel,
                  const char    *id)
{
  return pp_panel_find_piece (panel, id, NULL) != NULL
         || pp_panel_find_placement (panel, id, NULL) != NULL
         || pp_panel_find_fused (panel, id, NULL) != NULL
         || pp_panel_find_hole (panel, id, NULL) != NULL;
}

char *
pp_edit_take_id (const PpPanel *panel,
                 const char    *prefix,
                 guint         *next)
{
  for (;;)
    {
      g_autofree char *id = g_strdup_printf ("%s%u", prefix, (*next)++);

      if (!pp_edit_is_taken (panel, id))
        return g_steal_pointer (&id);
    }
}

char *
pp_edit_new_id (const PpPanel *panel,
                const char    *prefix)
{
  guint next = panel->next_id;

  return pp_edit_take_id (panel, prefix, &next);
}

static void
set_pose (PpPlacement  *draft,
          gconstpointer data)
{
  const PpPose *pose = data;

  draft->x = pose->x;
  draft->y = pose->y;
  draft->rotation = pose->rotation;
  draft->mirrored = pose->mirrored;
}

PpPanel *
pp_edit_place (const PpPanel *panel,
               const char    *piece,
               PpPose         pose,
               char         **id,
               GError       **error)
{
  g_autoptr (GPtrArray) list = NULL;
  g_autofree char *new_id = pp_edit_new_id (panel, "p");
  PpPlacement draft = pp_placement_draft ();
  PpPlacement *placement;
  PpPanel *next;

  if (pp_panel_find_piece (panel, piece, NULL) == NULL)
    return pp_edit_refuse_unknown (piece, error);
  draft.id = new_id;
  draft.piece = piece;
  set_pose (&draft, &pose);
  placement = pp_placement_new (&draft, error);
  if (placement == NULL)
    return NULL;
  list = pp_edit_copy_placements (panel);
  g_ptr_array_add (list, placement);
  next = pp_edit_with_placements (panel, g_steal_pointer (&list), error);
  if (next != NULL && id != NULL)
    *id = g_steal_pointer (&new_id);
  return next;
}

PpPanel *
pp_edit_set_pose (const PpPanel *panel,
                  const char    *placement,
                  PpPose         pose,
                  GError       **error)
{
  const char * const ids[] = { placement, NULL };

  return change_each (panel, ids, set_pose, &pose, error);
}

static void
move_by (PpPlacement  *draft,
         gconstpointer data)
{
  const PpPoint *by = data;

  draft->x += by->x;
  draft->y += by->y;
}

PpPanel *
pp_edit_move (const PpPanel      *panel,
              const char * const *placements,
              double              dx,
              double              dy,
              GError            **error)
{
  const PpPoint by = { dx, dy };

  return change_each (panel, placements, move_by, &by, error);
}

typedef struct
{
  PpPoint centre;
  double  degrees;
} Turn;

static void
turn_by (PpPlacement  *draft,
         gconstpointer data)
{
  const Turn *turn = data;
  double x = draft->x - turn->centre.x, y = draft->y - turn->centre.y;
  double sine, cosine;

  pp_sincos_degrees (turn->degrees, &sine, &cosine);
  draft->x = turn->centre.x + x * cosine - y * sine;
  draft->y = turn->centre.y + x * sine + y * cosine;
  draft->rotation = fmod (draft->rotation + turn->degrees, 360);
}

PpPanel *
pp_edit_turn (const PpPanel      *panel,
              const char * const *placements,
              PpPoint             centre,
              double              degrees,
              GError            **error)
{
  const Turn turn = { centre, degrees };

  return change_each (panel, placements, turn_by, &turn, error);
}

static void
mirror_in (PpPlacement  *draft,
           gconstpointer data)
{
  const double *axis = data;

  draft->x = 2 * *axis - draft->x;
  draft->rotation = draft->rotation == 0 ? 0 : -draft->rotation;
  draft->mirrored = !draft->mirrored;
}

PpPanel *
pp_edit_mirror (const PpPanel      *panel,
                const char * const *placements,
                double              axis,
                GError            **error)
{
  return change_each (panel, placements, mirror_in, &axis, error);
}

static void
set_group (PpPlacement  *draft,
           gconstpointer data)
{
  draft->group = data;
}

PpPanel *
pp_edit_group (const PpPanel      *panel,
               const char * const *placements,
               const char         *name,
               GError            **error)
{
  if (name != NULL && *name == '\0')
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, _("A group needs a name."));
      return NULL;
    }
  return change_each (panel, placements, set_group, name, error);
}

char *
pp_edit_new_group_name (const PpPanel *panel)
{
  for (guint n = 1;; n++)
    {
      g_autofree char *name = g_strdup_printf ("group-%u", n);
      gboolean taken = FALSE;

      for (guint i = 0; i < panel->placements->len && !taken; i++)
        taken = g_strcmp0 (pp_panel_placement (panel, i)->group, name) == 0;
      if (!taken)
        return g_steal_pointer (&name);
    }
}

static void
set_pinned (PpPlacement  *draft,
            gconstpointer data)
{
  draft->pinned = GPOINTER_TO_INT (data);
}

PpPanel *
pp_edit_pin (const PpPanel      *panel,
             const char * const *placements,
             gboolean            pinned,
             GError            **error)
{
  return change_each (panel, placements, set_pinned, GINT_TO_POINTER (pinned != FALSE), error);
}

static void
set_pocket (PpPlacement  *draft,
            gconstpointer data)
{
  draft->pocket = data;
}

PpPanel *
pp_edit_set_pocket (const PpPanel *panel,
                    const char    *placement,
                    const char    *fused,
                    GError       **error)
{
  const char * const ids[] = { placement, NULL };

  return change_each (panel, ids, set_pocket, fused, error);
}

static void
set_piece (PpPlacement  *draft,
           gconstpointer data)
{
  draft->piece = data;
}

static void
set_piece_out_of_pocket (PpPlacement  *draft,
                         gconstpointer data)
{
  draft->piece = data;
  draft->pocket = NULL;
}

PpPanel *
pp_edit_swap (const PpPanel *panel,
              const char    *placement,
              const char    *piece,
              GError       **error)
{
  const char * const ids[] = { placement, NULL };
  const PpPlacement *placed = pp_panel_find_placement (panel, placement, NULL);
  const PpPiece *next = pp_panel_find_piece (panel, piece, NULL);
  gboolean was_stem = placed != NULL
                      && pp_panel_get_piece_of (panel, placed)->kind == PP_KIND_STEM;

  if (next == NULL)
    return pp_edit_refuse_unknown (piece, error);
  return change_each (panel, ids,
                      was_stem && next->kind != PP_KIND_STEM ? set_piece_out_of_pocket : set_piece,
                      piece, error);
}

static PpPlacement *
copy_of (const PpPlacement *original,
         const char        *id,
         PpPoint            by,
         GError           **error)
{
  PpPlacement draft = *original;

  draft.id = id;
  draft.pinned = FALSE;
  draft.glued_at = NULL;
  draft.extra = NULL;
  move_by (&draft, &by);
  return pp_placement_new (&draft, error);
}

/* Where the placement's id stands in `ids`, at `from` or later; FALSE if it does not. */
static gboolean
find_from (const char * const *ids,
           const char          *id,
           guint               *from)
{
  while (ids[*from] != NULL && !g_str_equal (ids[*from], id))
    (*from)++;
  return ids[*from] != NULL;
}

/* Puts a copy of each placement named on top of `list`, in stacking order; `new_ids` are theirs,
 * in the order in which `placements` names them. */
static gboolean
add_copies (const PpPanel      *panel,
            const char * const *placements,
            PpPoint             by,
            GPtrArray          *list,
            char              **new_ids,
            GError            **error)
{
  guint next = panel->next_id;

  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *original = pp_panel_placement (panel, i);
      guint at = 0;
      PpPlacement *copy;

      if (!find_from (placements, original->id, &at))
        continue;
      new_ids[at] = pp_edit_take_id (panel, "p", &next);
      copy = copy_of (original, new_ids[at], by, error);
      if (copy == NULL)
        return FALSE;
      g_ptr_array_add (list, copy);
      for (guint again = at + 1; find_from (placements, original->id, &again); again++)
        new_ids[again] = g_strdup (new_ids[at]);
    }
  return TRUE;
}

PpPanel *
pp_edit_duplicate (const PpPanel      *panel,
                   const char * const *placements,
                   double              dx,
                   double              dy,
                   char             ***ids,
                   GError            **error)
{
  g_autoptr (GPtrArray) list = NULL;
  guint n = g_strv_length ((char **) placements);
  g_autoptr (GPtrArray) new_ids = g_ptr_array_new_with_free_func (g_free);
  PpPanel *next;

  for (guint i = 0; i < n; i++)
    if (pp_panel_find_placement (panel, placements[i], NULL) == NULL)
      return pp_edit_refuse_unknown (placements[i], error);
  g_ptr_array_set_size (new_ids, (int) n + 1);
  list = pp_edit_copy_placements (panel);
  if (!add_copies (panel, placements, (PpPoint) { dx, dy }, list, (char **) new_ids->pdata, error))
    return NULL;
  next = pp_edit_with_placements (panel, g_steal_pointer (&list), error);
  if (next != NULL && ids != NULL)
    *ids = (char **) g_ptr_array_free (g_steal_pointer (&new_ids), FALSE);
  return next;
}
