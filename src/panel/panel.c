/* panel.c: the document: one panel of glass with all that lies on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Behind the public fields stands one table of all ids (panel-ids-private.h), made with the panel:
 * it finds names that lead nowhere, and later every record by its id in constant time.
 */
#include "panel/panel.h"

#include "panel/bounds.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/panel-ids-private.h"
#include "panel/record-private.h"
#include "panel/rules-private.h"

typedef struct
{
  PpPanel     panel; /* first, so that one pointer serves for both */
  GHashTable *ids;   /* of panel-ids-private.h */
} FullPanel;

PpPanel
pp_panel_draft (void)
{
  PpPanel draft = { .title = "", .maker = "", .note = "", .created = "" };

  pp_limits_init (&draft.limits);
  return draft;
}

static gboolean
check_hole (const PpPanel *panel,
            const char    *place,
            const char    *id,
            GError       **error)
{
  if (pp_panel_find_hole (panel, id, NULL) != NULL)
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE,
               _("%s: there is no hole “%s” in this panel."), place, id);
  return FALSE;
}

static gboolean
check_wire_ends (const PpPanel *panel,
                 GError       **error)
{
  const PpWire *wire = panel->wire;

  return wire == NULL
         || (check_hole (panel, "wire.from", wire->from, error)
             && check_hole (panel, "wire.to", wire->to, error));
}

static gboolean
check_placement (const PpPanel     *panel,
                 const PpPlacement *placement,
                 guint              index,
                 GError           **error)
{
  const PpFused *pocket;

  if (pp_panel_find_piece (panel, placement->piece, NULL) == NULL)
    {
      g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE,
                   _("placements[%u].piece: there is no piece “%s” on the tray."), index,
                   placement->piece);
      return FALSE;
    }
  if (placement->pocket == NULL)
    return TRUE;
  pocket = pp_panel_find_fused (panel, placement->pocket, NULL);
  if (pocket != NULL && pocket->has_pocket)
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_REFERENCE,
               _("placements[%u].pocket: there is no fused part “%s” with a pocket."), index,
               placement->pocket);
  return FALSE;
}

static gboolean
check_placements (const PpPanel *panel,
                  GError       **error)
{
  for (guint i = 0; i < panel->placements->len; i++)
    if (!check_placement (panel, pp_panel_placement (panel, i), i, error))
      return FALSE;
  return TRUE;
}

static gboolean
check_count (const char *list,
             guint       n,
             guint       most,
             GError    **error)
{
  if (n <= most)
    return TRUE;
  g_set_error (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT,
               _("%s: there may be at most %u of them, not %u."), list, most, n);
  return FALSE;
}

static gboolean
check_limits (const PpPanel *panel,
              GError       **error)
{
  if (pp_limits_check (&panel->limits, error))
    return TRUE;
  g_prefix_error_literal (error, "limits.");
  return FALSE;
}

static gboolean
check_panel (FullPanel *self,
             GError   **error)
{
  const PpPanel *panel = &self->panel;

  return check_count ("fused", panel->fused->len, PP_PANEL_MAX_FUSED, error)
         && check_count ("holes", panel->holes->len, PP_PANEL_MAX_HOLES, error)
         && check_count ("tray", panel->tray->len, PP_PANEL_MAX_TRAY, error)
         && check_count ("placements", panel->placements->len, PP_PANEL_MAX_PLACEMENTS, error)
         && pp_rule_date (panel->created, "created", error)
         && check_limits (panel, error) && pp_panel_ids_add_all (self->ids, panel, error)
         && check_wire_ends (panel, error) && check_placements (panel, error)
         && pp_bounds_check (panel, error);
}

static GPtrArray *
share_list (GPtrArray     *list,
            GDestroyNotify unref)
{
  return list != NULL ? g_ptr_array_ref (list) : g_ptr_array_new_with_free_func (unref);
}

static void
copy_lists (PpPanel       *self,
            const PpPanel *draft)
{
  self->fused = share_list (draft->fused, (GDestroyNotify) pp_fused_unref);
  self->holes = share_list (draft->holes, (GDestroyNotify) pp_hole_unref);
  self->tray = share_list (draft->tray, (GDestroyNotify) pp_piece_unref);
  self->placements = share_list (draft->placements, (GDestroyNotify) pp_placement_unref);
  self->log = share_list (draft->log, (GDestroyNotify) pp_log_entry_unref);
  self->quiet = share_list (draft->quiet, (GDestroyNotify) pp_quiet_unref);
}

static const PpDisplay *
share_display (const PpDisplay *display)
{
  PpDisplay draft = pp_display_draft ();

  return display != NULL ? pp_display_ref (display) : pp_display_new (&draft, NULL);
}

static const PpAdhesive *
share_adhesive (const PpAdhesive *adhesive)
{
  PpAdhesive draft = pp_adhesive_draft ();

  return adhesive != NULL ? pp_adhesive_ref (adhesive) : pp_adhesive_new (&draft, NULL);
}

static FullPanel *
copy_draft (const PpPanel *draft)
{
  FullPanel *self = g_atomic_rc_box_new0 (FullPanel);

  self->ids = pp_panel_ids_new ();
  self->panel = *draft;
  self->panel.title = g_strdup (draft->title);
  self->panel.maker = g_strdup (draft->maker);
  self->panel.note = g_strdup (draft->note);
  self->panel.created = g_strdup (draft->created);
  self->panel.background = pp_background_ref (draft->background);
  self->panel.wire = draft->wire != NULL ? pp_wire_ref (draft->wire) : NULL;
  self->panel.display = share_display (draft->display);
  self->panel.adhesive = share_adhesive (draft->adhesive);
  self->panel.plan = (const char * const *) g_strdupv ((char **) draft->plan);
  self->panel.plan_extra = g_strdup (draft->plan_extra);
  self->panel.limits_extra = g_strdup (draft->limits_extra);
  self->panel.extra = g_strdup (draft->extra);
  copy_lists (&self->panel, draft);
  return self;
}

static void
panel_clear (gpointer data)
{
  FullPanel *self = data;
  PpPanel *panel = &self->panel;

  g_hash_table_unref (self->ids);
  pp_record_free_string (panel->title);
  pp_record_free_string (panel->maker);
  pp_record_free_string (panel->note);
  pp_record_free_string (panel->created);
  pp_background_unref (panel->background);
  pp_wire_unref (panel->wire);
  pp_display_unref (panel->display);
  pp_adhesive_unref (panel->adhesive);
  g_strfreev ((char **) panel->plan);
  pp_record_free_string (panel->plan_extra);
  pp_record_free_string (panel->limits_extra);
  pp_record_free_string (panel->extra);
  g_ptr_array_unref (panel->fused);
  g_ptr_array_unref (panel->holes);
  g_ptr_array_unref (panel->tray);
  g_ptr_array_unref (panel->placements);
  g_ptr_array_unref (panel->log);
  g_ptr_array_unref (panel->quiet);
}

PpPanel *
pp_panel_new (const PpPanel *draft,
              GError       **error)
{
  FullPanel *self;

  g_return_val_if_fail (draft->background != NULL, NULL);
  self = copy_draft (draft);
  if (!check_panel (self, error))
    {
      pp_panel_unref (&self->panel);
      return NULL;
    }
  self->panel.next_id = pp_panel_ids_find_next (self->ids, &self->panel);
  return &self->panel;
}

PpPanel *
pp_panel_ref (const PpPanel *self)
{
  return g_atomic_rc_box_acquire ((PpPanel *) self);
}

void
pp_panel_unref (const PpPanel *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full ((PpPanel *) self, panel_clear);
}

static gconstpointer
find_record (const PpPanel *self,
             const char    *id,
             PpIdKind       kind,
             GPtrArray     *list,
             guint         *index)
{
  const FullPanel *full = (const FullPanel *) self;
  guint found;

  if (id == NULL || !pp_panel_ids_find (full->ids, id, kind, &found))
    return NULL;
  if (index != NULL)
    *index = found;
  return g_ptr_array_index (list, found);
}

const PpFused *
pp_panel_find_fused (const PpPanel *self,
                     const char    *id,
                     guint         *index)
{
  return find_record (self, id, PP_ID_FUSED, self->fused, index);
}

const PpHole *
pp_panel_find_hole (const PpPanel *self,
                    const char    *id,
                    guint         *index)
{
  return find_record (self, id, PP_ID_HOLE, self->holes, index);
}

const PpPiece *
pp_panel_find_piece (const PpPanel *self,
                     const char    *id,
                     guint         *index)
{
  return find_record (self, id, PP_ID_PIECE, self->tray, index);
}

const PpPlacement *
pp_panel_find_placement (const PpPanel *self,
                         const char    *id,
                         guint         *index)
{
  return find_record (self, id, PP_ID_PLACEMENT, self->placements, index);
}

const PpPiece *
pp_panel_get_piece_of (const PpPanel     *self,
                       const PpPlacement *placement)
{
  return pp_panel_find_piece (self, placement->piece, NULL);
}

/* Own choice: on a wall little light comes through, in a window it does. */
#define OPAQUE_ON_WALL 0.35
#define OPAQUE_IN_WINDOW 0.15

double
pp_panel_get_limit (const PpPanel *self,
                    PpLimit        limit)
{
  double own = self->limits.value[limit];

  if (!isnan (own))
    return own;
  if (limit == PP_LIMIT_OPAQUE)
    return self->display->place == PP_PLACE_WALL ? OPAQUE_ON_WALL : OPAQUE_IN_WINDOW;
  return pp_limit_get_default (limit);
}

double
pp_panel_get_fused_density (const PpPanel *self,
                            const PpFused *fused)
{
  return isnan (fused->glass.density) ? self->background->glass.density : fused->glass.density;
}

double
pp_panel_get_fused_expansion (const PpPanel *self,
                              const PpFused *fused)
{
  return isnan (fused->glass.expansion) ? self->background->glass.expansion
                                        : fused->glass.expansion;
}

double
pp_panel_get_hole_distance (const PpPanel *self)
{
  const PpHole *from = pp_panel_find_hole (self, self->wire->from, NULL);
  const PpHole *to = pp_panel_find_hole (self, self->wire->to, NULL);

  return hypot (to->x - from->x, to->y - from->y);
}

PpPoint
pp_panel_get_hole_middle (const PpPanel *self)
{
  const PpHole *from = pp_panel_find_hole (self, self->wire->from, NULL);
  const PpHole *to = pp_panel_find_hole (self, self->wire->to, NULL);

  return (PpPoint) { (from->x + to->x) / 2, (from->y + to->y) / 2 };
}

double
pp_panel_get_wire_length (const PpPanel *self)
{
  if (self->wire == NULL)
    return 0;
  return isnan (self->wire->length) ? pp_panel_get_hole_distance (self) : self->wire->length;
}

guint
pp_panel_count_placed (const PpPanel *self,
                       const char    *piece_id)
{
  guint n = 0;

  for (guint i = 0; i < self->placements->len; i++)
    n += g_str_equal (pp_panel_placement (self, i)->piece, piece_id);
  return n;
}

gboolean
pp_panel_is_quiet (const PpPanel      *self,
                   const char         *code,
                   const char * const *about)
{
  for (guint i = 0; i < self->quiet->len; i++)
    if (pp_quiet_is_of (g_ptr_array_index (self->quiet, i), code, about))
      return TRUE;
  return FALSE;
}
