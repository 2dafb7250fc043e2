/* edit-acts.c: what is done to the chosen things of a document.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/edit-acts.h"

#include "desk/fuse-acts.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "panel/rig.h"
#include "shape/place.h"
#include "shape/stand.h"

/* Ids of the chosen placements, or NULL if none is. */
static const char * const *
get_chosen (PpDocument *document)
{
  if (pp_document_get_chosen (document) != PP_CHOSEN_PLACEMENTS)
    return NULL;
  return pp_document_get_chosen_ids (document);
}

gboolean
pp_edit_acts_take (PpDocument *document,
                   PpPanel    *next,
                   GError     *error,
                   const char *label,
                   const char *merge_key)
{
  if (!g_error_matches (error, PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT))
    return pp_document_take (document, next, error, label, merge_key);
  g_error_free (error);
  error = g_error_new (PP_PANEL_ERROR, PP_PANEL_ERROR_LIMIT,
                       _("That is more than fits: a panel has at most %u pieces, of %u kinds."),
                       PP_PANEL_MAX_PLACEMENTS, PP_PANEL_MAX_TRAY);
  return pp_document_take (document, NULL, error, label, NULL);
}

/* What an act gave, with its name. */
static gboolean
take (PpDocument         *document,
      PpPanel            *next,
      GError             *error,
      PpEditAct           act,
      const char * const *ids,
      const char         *merge_key)
{
  g_autofree char *label = pp_edit_words_act (act, pp_document_get_panel (document), ids);

  return pp_edit_acts_take (document, next, error, label, merge_key);
}

/* What an act gave that moved them, with its name. */
static void
take_moved (PpDocument         *document,
            PpPanel            *next,
            GError             *error,
            PpEditAct           act,
            const char * const *ids,
            const char         *merge_key)
{
  next = pp_stand_follow (next, ids, &error);
  take (document, next, error, act, ids, merge_key);
}

/* Those that stay put, or those that do not. `ids` is nullable. (transfer full) */
static char **
filter (PpDocument         *document,
        const char * const *ids,
        gboolean            pinned)
{
  const PpPanel *panel = pp_document_get_panel (document);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; ids != NULL && ids[i] != NULL; i++)
    if (pp_panel_find_placement (panel, ids[i], NULL)->pinned == pinned)
      g_strv_builder_add (builder, ids[i]);
  return g_strv_builder_end (builder);
}

char **
pp_edit_acts_filter_movable (PpDocument         *document,
                             const char * const *ids)
{
  g_auto (GStrv) pinned = filter (document, ids, TRUE);
  g_auto (GStrv) movable = filter (document, ids, FALSE);
  g_autofree char *sentence = NULL;

  if (pinned[0] != NULL)
    {
      sentence = pp_edit_words_stay_put (pp_document_get_panel (document),
                                         (const char * const *) pinned, movable[0] != NULL);
      pp_document_refuse (document, sentence);
    }
  return movable[0] != NULL ? g_steal_pointer (&movable) : NULL;
}

char **
pp_edit_acts_list_movable (PpDocument *document)
{
  return pp_edit_acts_filter_movable (document, get_chosen (document));
}

/* Unlike the middle of a box it stays where it is when they are turned about it. */
static PpPoint
get_middle (const PpPanel *panel,
            char         **ids)
{
  PpPoint sum = { 0, 0 };
  guint n;

  for (n = 0; ids[n] != NULL; n++)
    {
      const PpPlacement *placement = pp_panel_find_placement (panel, ids[n], NULL);

      sum.x += placement->x;
      sum.y += placement->y;
    }
  return (PpPoint) { sum.x / n, sum.y / n };
}

void
pp_edit_acts_turn (PpDocument *document,
                   double      degrees)
{
  const PpPanel *panel = pp_document_get_panel (document);
  g_auto (GStrv) ids = pp_edit_acts_list_movable (document);
  g_autofree char *joined = NULL, *key = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (ids == NULL)
    return;
  joined = g_strjoinv (" ", ids);
  key = g_strconcat ("turn ", joined, NULL);
  next = pp_edit_turn (panel, (const char * const *) ids, get_middle (panel, ids), degrees, &error);
  take_moved (document, next, error, PP_ACT_TURN, (const char * const *) ids, key);
}

void
pp_edit_acts_mirror (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  g_auto (GStrv) ids = pp_edit_acts_list_movable (document);
  GError *error = NULL;
  PpBox box;
  PpPanel *next;

  if (ids == NULL)
    return;
  box = pp_place_box (panel, (const char * const *) ids);
  next = pp_edit_mirror (panel, (const char * const *) ids, pp_box_middle (box).x, &error);
  take_moved (document, next, error, PP_ACT_MIRROR, (const char * const *) ids, NULL);
}

void
pp_edit_acts_do (PpDocument      *document,
                 const PpActKind *act)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char * const *ids = get_chosen (document);
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (ids == NULL)
    return;
  label = pp_edit_words_act_kind (act, panel, ids);
  next = act->edit (panel, ids, &error);
  pp_edit_acts_take (document, next, error, label, NULL);
}

void
pp_edit_acts_pin (PpDocument *document,
                  gboolean    pinned)
{
  const char * const *ids = get_chosen (document);
  GError *error = NULL;
  PpPanel *next;

  if (ids == NULL)
    return;
  next = pp_edit_pin (pp_document_get_panel (document), ids, pinned, &error);
  take (document, next, error, pinned ? PP_ACT_PIN : PP_ACT_LET_GO, ids, NULL);
}

double
pp_edit_acts_get_shift (const PpPanel *panel)
{
  return panel->units == PP_UNITS_INCH ? PP_MM_PER_INCH / 2 : 10;
}

static gboolean
is_in_group (const PpPanel *panel,
             const char    *id,
             const char    *group)
{
  return g_strcmp0 (pp_panel_find_placement (panel, id, NULL)->group, group) == 0;
}

/* The copies of those in `group`, if all of them were copied and they are several; else NULL.
 * `copies` as `ids`. (transfer full) */
static char **
list_copied_group (const PpPanel      *panel,
                   const char * const *ids,
                   char              **copies,
                   const char         *group)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  guint n_copied = 0, n = 0;

  for (guint i = 0; ids[i] != NULL; i++)
    if (is_in_group (panel, ids[i], group))
      {
        g_strv_builder_add (builder, copies[i]);
        n_copied++;
      }
  for (guint i = 0; i < panel->placements->len; i++)
    n += g_strcmp0 (pp_panel_placement (panel, i)->group, group) == 0;
  return n_copied > 1 && n_copied == n ? g_strv_builder_end (builder) : NULL;
}

/* Takes `next` (nullable), where the copies are in the groups of their originals, and gives it
 * with each group copied whole as a group of its own. */
static PpPanel *
part_groups (const PpPanel      *panel,
             PpPanel            *next,
             const char * const *ids,
             char              **copies,
             GError            **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; ids[i] != NULL && next != NULL; i++)
    {
      char *group = (char *) pp_panel_find_placement (panel, ids[i], NULL)->group;
      g_auto (GStrv) whole = NULL;

      if (group == NULL || !g_hash_table_add (seen, group))
        continue;
      whole = list_copied_group (panel, ids, copies, group);
      if (whole != NULL)
        {
          g_autoptr (PpPanel) before = next;

          next = pp_group_act.edit (before, (const char * const *) whole, error);
        }
    }
  return next;
}

void
pp_edit_acts_duplicate (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char * const *ids = get_chosen (document);
  double shift = pp_edit_acts_get_shift (panel);
  g_auto (GStrv) copies = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (ids == NULL)
    return;
  next = pp_edit_duplicate (panel, ids, shift, shift, &copies, &error);
  next = part_groups (panel, next, ids, copies, &error);
  if (take (document, next, error, PP_ACT_DUPLICATE, ids, NULL))
    pp_document_choose (document, PP_CHOSEN_PLACEMENTS, (const char * const *) copies);
}

void
pp_edit_acts_put_wire_on (PpDocument *document)
{
  GError *error = NULL;
  PpPanel *next;

  if (pp_document_get_panel (document)->wire != NULL)
    return;
  next = pp_rig_put_wire_on (pp_document_get_panel (document), &error);
  if (pp_document_take (document, next, error, _("Put a wire on"), NULL))
    pp_document_choose (document, PP_CHOSEN_WIRE, NULL);
}

void
pp_edit_acts_remove_hole (PpDocument *document,
                          const char *id)
{
  GError *error = NULL;
  PpPanel *next = pp_edit_remove_hole (pp_document_get_panel (document), id, &error);

  pp_document_take (document, next, error, _("Remove the hole"), NULL);
}

void
pp_edit_acts_remove_wire (PpDocument *document)
{
  GError *error = NULL;
  PpPanel *next = pp_edit_set_wire (pp_document_get_panel (document), NULL, &error);

  pp_document_take (document, next, error, _("Take the wire off"), NULL);
}

static void
remove_pieces (PpDocument *document,
               PpEditAct   act)
{
  const char * const *ids = get_chosen (document);
  GError *error = NULL;
  PpPanel *next = pp_edit_remove (pp_document_get_panel (document), ids, &error);

  take (document, next, error, act, ids, NULL);
}

void
pp_edit_acts_remove (PpDocument *document,
                     PpEditAct   act)
{
  switch (pp_document_get_chosen (document))
    {
    case PP_CHOSEN_PLACEMENTS:
      remove_pieces (document, act);
      break;
    case PP_CHOSEN_HOLE:
      pp_edit_acts_remove_hole (document, pp_document_get_chosen_ids (document)[0]);
      break;
    case PP_CHOSEN_WIRE:
      pp_edit_acts_remove_wire (document);
      break;
    case PP_CHOSEN_FUSED:
      pp_fuse_acts_remove (document);
      break;
    case PP_CHOSEN_NOTHING:
    case PP_CHOSEN_GLASS:
      break;
    }
}

void
pp_edit_acts_choose_all (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) ids = NULL;

  for (guint i = 0; i < panel->placements->len; i++)
    g_strv_builder_add (builder, pp_panel_placement (panel, i)->id);
  ids = g_strv_builder_end (builder);
  pp_document_choose (document, PP_CHOSEN_PLACEMENTS, (const char * const *) ids);
}
